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

/** What is being done, by the stage codes of the engine. */
export const stages: Readonly<Record<string, string>> = {
  open: 'Reading the file',
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
  transfer: 'Computing the responses of sources at seats',
  combine: 'Adding the sources up at each seat',
  residues: 'Finding how each source drives the ridges',
  optimise: 'Looking for better settings of the sources',
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
  time: 'Time',
  none: 'none of these',
  several: 'several',
  never: 'never',
  file: 'File',
  hash: 'Hash',
};
