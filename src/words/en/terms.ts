import type { Term } from '../types.js';

type Terms = Readonly<Record<string, Term>>;

export const resonanceKinds: Terms = {
  resolved: { name: 'one mode', meaning: 'One mode, told apart from its neighbours.' },
  cluster: {
    name: 'cluster',
    meaning: 'Stands for several modes so close that no method could part them in this recording.',
  },
  'two-slopes': {
    name: 'two slopes',
    meaning: 'One frequency with two decays; the decay time is that of the later.',
  },
  hum: { name: 'hum', meaning: 'A steady tone that never decays: electrical, not the room.' },
  source: { name: 'source', meaning: 'So short that it is the loudspeaker’s or the direct sound’s.' },
};

export const modeKinds: Terms = {
  axial: { name: 'axial', meaning: 'Between two opposite walls.' },
  tangential: { name: 'tangential', meaning: 'Between two pairs of walls.' },
  oblique: { name: 'oblique', meaning: 'Between all three pairs of walls.' },
  plan: { name: 'of the plan', meaning: 'Between the walls of the floor plan, the same at every height.' },
  mixed: {
    name: 'of plan and height',
    meaning: 'Between the walls of the floor plan, and floor and ceiling.',
  },
};

export const constructions: Terms = {
  concrete: { name: 'concrete', meaning: 'Smooth concrete, painted or not.' },
  'painted-brick': { name: 'painted brick', meaning: 'Brick or block, painted.' },
  'plaster-on-brick': { name: 'plaster on brick', meaning: 'Plaster straight on brick or block.' },
  'plasterboard-on-studs': {
    name: 'plasterboard on studs',
    meaning: 'One layer of plasterboard over an empty cavity.',
  },
  'wood-panelling': { name: 'wood panelling', meaning: 'Thin panels of wood on battens.' },
  'wood-floor-on-joists': { name: 'wood floor on joists', meaning: 'Boards over a hollow.' },
  'parquet-on-concrete': { name: 'parquet on concrete', meaning: 'Wood laid straight on concrete.' },
  carpet: { name: 'carpet', meaning: 'Carpet straight on a hard floor.' },
  'carpet-on-underlay': { name: 'carpet on underlay', meaning: 'Carpet on a soft underlay.' },
  window: { name: 'window', meaning: 'Ordinary window glass.' },
  'large-pane': { name: 'large pane', meaning: 'Large panes of heavy glass.' },
  'heavy-curtain': { name: 'heavy curtain', meaning: 'Heavy cloth, draped to half its width.' },
  'mineral-wool-50': { name: 'mineral wool, 50 mm', meaning: 'Bare boards on a hard wall.' },
  'mineral-wool-100': { name: 'mineral wool, 100 mm', meaning: 'Bare boards on a hard wall.' },
};

export const causes: Terms = {
  'room-mode': { name: 'room mode', meaning: 'A standing wave of the room may explain it.' },
  boundary: { name: 'boundary', meaning: 'A reflection from a near surface: a dip without a tail.' },
  hum: { name: 'hum', meaning: 'Electrical hum: it never decays.' },
  source: { name: 'source', meaning: 'The loudspeaker’s own tail.' },
  equaliser: { name: 'equaliser', meaning: 'A boost that rings by itself.' },
  coupled: { name: 'coupled room', meaning: 'A neighbouring space that gives its sound back slowly.' },
  unknown: { name: 'unknown', meaning: 'It rings on, but nothing known explains it.' },
};

export const limits: Terms = {
  audibility: {
    name: 'audibility',
    meaning:
      'A band between published thresholds of audible modal decay, 32 to 250 Hz; interpolation between their points is ours, and the evidence disagrees below 63 Hz.',
  },
  target: {
    name: 'target',
    meaning:
      'A reverberation target of a listening room from its volume, raised towards the bass; its slope is quoted from memory.',
  },
  neighbours: {
    name: 'neighbours',
    meaning: '1.5 times the median decay within an octave, and more than two standard deviations above it.',
  },
};

export const audible: Terms = {
  yes: { name: 'yes', meaning: 'Longer than every published threshold here.' },
  possibly: { name: 'possibly', meaning: 'Between published thresholds: studies disagree.' },
  unknown: { name: 'unknown', meaning: 'No published threshold covers this frequency.' },
};

export const methods: Terms = {
  sliding: { name: 'sliding', meaning: 'A window slid along the response, labelled by its centre.' },
  cumulative: {
    name: 'cumulative',
    meaning: 'The spectrum of what remains after each moment, labelled by its left edge.',
  },
  'constant-q': {
    name: 'constant-Q',
    meaning: 'A window whose length follows frequency, labelled by its centre.',
  },
};

export const axes: Terms = {
  log: { name: 'logarithmic', meaning: 'Every octave is as wide as the next.' },
  linear: { name: 'linear', meaning: 'Every hertz is as wide as the next.' },
};

/** What is being done, by the stage codes of the engine. */
export const stages: Readonly<Record<string, string>> = {
  open: 'Reading the file',
  microphone: 'Taking off the response of the microphone',
  plan: 'Computing the waves of the floor plan',
  read: 'Reading the file',
  onset: 'Finding the onset',
  decimate: 'Reducing the sample rate',
  grid: 'Computing the picture',
  floor: 'Finding the noise floor',
  bands: 'Reading the decay per band',
  sweep: 'Working the response out of the sweep',
  fit: 'Fitting resonances',
  response: 'Computing the response',
  diagnose: 'Comparing with limits and modes',
  synth: 'Computing the impulse response',
  reduce: 'Taking the bass of each recording',
  transfer: 'Computing the responses of sources at seats',
  combine: 'Adding the sources up at each seat',
  residues: 'Finding how each source drives the ridges',
  optimise: 'Looking for better settings of the sources',
  listen: 'Working the sound out',
  wait: 'Waiting for a free worker',
};

/** Column heads, buttons, short labels. */
export const labels: Readonly<Record<string, string>> = {
  frequency: 'Frequency',
  decayTime: 'Decay time',
  q: 'Q',
  edt: 'EDT',
  t20: 'T20',
  t30: 'T30',
  level: 'Level',
  limit: 'Limit',
  excess: 'Times the limit',
  audible: 'Audible',
  cause: 'Cause',
  candidates: 'Candidates',
  kind: 'Kind',
  order: 'Order',
  planOrder: 'Wave + height',
  time: 'Time',
  x: 'x',
  y: 'y',
  z: 'Height',
  none: 'none of these',
  several: 'several',
  never: 'never',
  file: 'File',
  hash: 'Hash',
};
