import type { Sentence } from '../types.js';

/** What elements say around their pictures and tables: names, instructions, read-outs, states. */
export const views: Readonly<Record<string, Sentence>> = {
  // Names of pictures and parts: static, without changing state.
  'waterfall-name': (p, n) => `Waterfall of ${n.text(p.label)}: level over frequency and time`,
  'spectrogram-name': (p, n) => `Spectrogram of ${n.text(p.label)}: level over time and frequency`,
  'ridges-name': (p, n) => `Ridges of ${n.text(p.label)}`,
  'this-recording': () => 'this recording',
  waterfall: () => 'Waterfall',
  spectrogram: () => 'Spectrogram',
  ridges: () => 'Ridges',

  'waterfall-help': () =>
    'Drag to turn the picture, drag with two fingers or turn the wheel with Control held to come nearer. The sliders below move the cursor and turn the view; the table of ridges holds the same results.',
  'spectrogram-help': () =>
    'Point at the picture to read it. The sliders below move the same cursor; the table of ridges holds the same results.',

  // Axes.
  'frequency-axis': () => 'Frequency, Hz',
  'time-axis': () => 'Time, s',
  'level-axis': () => 'Level, dB',

  // On the pictures.
  several: () => 'several',
  'best-candidate': (p, n) =>
    `${n.text(p.order)} ${Number(p.weight) > 0.99 ? '>\u00a0' : ''}${n.percent(Math.min(0.99, Number(p.weight)))}`,
  curtain: (p, n) => `${n.text(p.limit)} limit`,

  // The cursor.
  'cursor-frequency': () => 'Cursor: frequency',
  'cursor-time': () => 'Cursor: time',
  readout: (p, n) => `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}`,
  'readout-noise': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: in the noise (${n.decibels(p.levelDb)})`,
  'readout-past-end': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: past the end of the recording`,
  'readout-unresolved': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: too low for what is left of the recording`,
  'readout-fast': (p, n) =>
    `${n.hertz(p.frequencyHz)}, ${n.seconds(p.timeSeconds)}: ${n.decibels(p.levelDb)}, no slower than the window`,
  'readout-none': () => 'No cursor',

  // Viewpoints and turning.
  'view-group': () => 'Viewpoint',
  'view-corner': () => 'Corner',
  'view-front': () => 'Front',
  'view-side': () => 'Side',
  'view-high': () => 'High',
  'view-plan': () => 'Plan',
  'turn-and-tilt': () => 'Turn and tilt',
  turn: () => 'Turn',
  tilt: () => 'Tilt',
  nearer: () => 'Nearness',
  degrees: (p, n) => `${n.integer(p.degrees)}°`,
  times: (p, n) => `${n.number(p.factor, 1)} ×`,
  'drawn-flat': () => 'Drawn without WebGL, which is missing or was refused here; the data are the same.',
  'key-ridge': () => 'ridge, to where it sinks',
  'key-noise': () => 'in the noise',
  'key-fast': () => 'no slower than the window',
  'key-past-end': () => 'past the end of the recording',
  'key-curtain': (p, n) => `${n.text(p.limit)}: what still stands there exceeds it`,
  'key-axial': () => 'axial mode, predicted',
  'key-tangential': () => 'tangential',
  'key-oblique': () => 'oblique',
  'figure-title': (p, n) => `${n.text(p.label)}: ${n.text(p.picture).toLowerCase()}`,
  'figure-origin': (p, n) => `File ${n.text(p.hash)} …, ringdown ${n.text(p.version)}.`,
  'figure-origin-several': (p, n) =>
    `From ${n.integer(p.count)} recordings, whose hashes this file holds; ringdown ${n.text(p.version)}.`,
  'figure-origin-room': (p, n) => `Predicted by ringdown ${n.text(p.version)}.`,
  save: () => 'Save the picture',
  'save-width': () => 'Width of the PNG',
  pixels: (p, n) => `${n.integer(p.width)} px`,
  'copy-link': () => 'Copy link to this view',
  'link-copied': () => 'Copied.',
  'link-by-hand': () => 'The browser does not let this page copy; take the address from here:',
  'link-address': () => 'Link to this view',
  'save-failed': () => 'The browser could make no picture of this size; choose a smaller one.',
  'key-line': () =>
    'Flagged ridges; marks below are predicted modes: one stroke axial, two tangential, three oblique.',

  // The study.
  'choose-file': () => 'Choose a file …',
  'drop-hint': () => 'or drop an impulse response here (WAV, FLAC, AES69 or text)',
  'drop-now': () => 'Drop to analyse',
  'choices-summary': () => 'Axes, colours and reading',
  'choices-now': (p, n) =>
    `${n.hertz(p.fromHz, 0)} to ${n.hertz(p.toHz, 0)}, ${n.text(p.axis)}; ${n.seconds(p.spanSeconds)}; ${n.decibels(p.rangeDb)}`,
  'choose-fromHz': () => 'From, Hz',
  'choose-toHz': () => 'to, Hz',
  'choose-axis': () => 'Frequency axis',
  'choose-spanSeconds': () => 'Time shown',
  'choose-rangeDb': () => 'Range',
  'choose-method': () => 'Slices',
  'choose-windowSeconds': () => 'Window',
  'choose-limit': () => 'Held against',
  'choose-scale': () => 'Colours',
  'scale-auto': () => 'as the page',
  'scale-dusk': () => 'night blue to ivory',
  'scale-dawn': () => 'paper to ink',
  'scale-clear': () => 'for colour-vision deficiency',
  'choose-recording': () => 'Shown',
  empty: () => 'No recording yet.',
  fetching: () => 'Fetching the recording',
  working: (p, n) => `${n.text(p.stage)}: ${n.percent(p.fraction)}`,
  'notes-summary': (p, n) =>
    Number(p.count) === 1 ? 'One note on this recording' : `${n.integer(p.count)} notes on this recording`,
  'failure-of': (p, n) => `${n.text(p.label)}: ${n.text(p.sentence)}`,
  'open-study': () => 'Open study …',
  'save-study': () => 'Save study',
  'clear-study': () => 'Clear …',
  'clear-meaning': (p) =>
    `Takes away all recordings, the room and all that was typed${p.kept ? ', and the copy that this browser keeps' : ''}. A saved file stays.`,
  'clear-all': () => 'Clear all',
  'study-kept': () => 'Kept in this browser.',
  remove: (p, n) => `Remove ${n.text(p.label)}`,
  'ready-none': (p, n) => `No ridge above the ${n.text(p.limit)} limit.`,
  ready: (p, n) =>
    `${Number(p.count) === 1 ? 'One ridge' : `${n.integer(p.count)} ridges`} above the ${n.text(p.limit)} limit. ${Number(p.count) === 1 ? 'It is' : 'The worst is'} at ${n.hertz(p.frequencyHz)}${typeof p.decayTimeSeconds === 'number' ? `, ${n.seconds(p.decayTimeSeconds)}${typeof p.limitSeconds === 'number' ? ` where ${n.seconds(p.limitSeconds)} is the limit` : ''}` : ''}.`,
  refused: () => 'No decay is read from this recording; the notes say why.',

  // The table of ridges.
  'first-answer': (p, n) =>
    `First answer, being refined: the ${Number(p.count) === 1 ? 'longest decay' : `${n.integer(p.count)} longest decays`}`,
  'no-ridges': (p, n) =>
    `Nothing hangs above the ${n.text(p.limit)} limit between ${n.hertz(p.fromHz, 0)} and ${n.hertz(p.toHz, 0)}. Fitted here: ${Number(p.count) === 1 ? 'one resonance' : `${n.integer(p.count)} resonances`}.`,
  'no-ridges-node': () =>
    'No ridge here does not mean no mode in the room: the seat or the source may sit on a node.',
  'no-room': () => 'No room was given, so no mode is named.',
  'no-candidates': () => 'no mode near',
  'none-share': (p, n) => `none of these ${n.percent(p.share)}`,
  'more-candidates': (p, n) => `${n.integer(p.count)} more`,
  candidate: (p, n) =>
    `${n.text(p.order)} ${n.text(p.kind)}, predicted ${n.hertz(p.frequencyHz)}: ${n.percent(p.weight)}`,
  'same-group': () => 'Too close to be told apart by frequency in this recording.',
  remedies: () => 'What may help',
  evidence: () => 'All candidates, and what may help',
  'all-rows': (p, n) => `Show all ${n.integer(p.count)} ridges`,
  'fewer-rows': (p, n) => `Show the worst ${n.integer(p.count)}`,
  'select-ridge': (p, n) => `Ridge at ${n.text(p.frequency)}`,
  excess: (p, n) => `${n.number(p.excess, 1)} ×`,
  'excess-bar': (p, n) => `${n.seconds(p.decayTimeSeconds)} of a limit of ${n.seconds(p.limitSeconds)}`,
  audible: (p, n) => `audible: ${n.text(p.audible)}`,
  'why-hum': (p, n) =>
    `A steady line ${n.hertz(Math.abs(Number(p.offHz)), 2)} from ${n.integer(p.multiple)} × ${n.integer(p.mainsHz)} Hz, which does not decay.`,
  'why-alone': (p, n) =>
    `It rings alone where a room has some ${n.integer(p.expectedModes)} modes: a boost or another resonant device does so (Q ${n.number(p.q, 1)}).`,
  'why-two-slopes': (p, n) =>
    `Two decays at one frequency, ${n.seconds(p.earlySeconds)} and ${n.seconds(p.lateSeconds)}${p.lateDb === null ? '' : `, the later ${n.decibels(Math.abs(Number(p.lateDb)))} ${Number(p.lateDb) < 0 ? 'below' : 'above'} the earlier at the onset`}: a panel or a coupled room gives its sound back so, or two modes too close to part.`,
  'why-modes': (p, n) =>
    `That one of the predicted modes near it is right has a chance of ${n.percent(p.chance)}.`,
  'why-one-shape': (p, n) =>
    `All ${n.integer(p.seats)} seats hear it at one level (${n.decibels(p.spreadDb, 1)} rms apart, where other resonances are ${n.decibels(p.othersDb, 1)}) and in one phase (within ${n.integer(p.degrees)}°): the tail of the loudspeaker or its port does so, and so does a mode that is alike at these seats. A recording close to the source decides.`,
  'why-near-field': (p, n) =>
    `A recording ${n.metres(p.metres)} from the source rings at the same frequency (${n.hertz(p.frequencyHz, 1)} ± ${n.hertz(p.frequencySdHz, 1)}) for as long (${n.seconds(p.decayTimeSeconds)} ± ${n.seconds(p.decayTimeSdSeconds)}). A mode of the room sounds there too, but in this room at most ${n.decibels(p.mostDb, 0)} re the direct sound; this is ${n.decibels(p.aboveDirectDb, 0)}. So the source, its port, or a filter in its path rings. Placement and absorption will not cure that.`,
  'why-not-near-field': (p, n) =>
    `Every seat hears it alike, as the tail of a source would be heard, but a recording ${n.metres(p.metres)} from the source does not ring there: neither the source nor its port.`,
  'near-field-tag': () => 'near field',
  'near-field-column': () => 'Distance in m, if close to the source',
  'near-field-hint': () =>
    'A recording made close to its source is evidence of whether the source itself rings; it is no seat, and no mean or plan rests on it. Distance to a port or the middle of a cone, 0.005 to 0.3 m (half the radius of the cone where that is more); empty for a recording at a seat.',
  'cause-and-candidates': () => 'Cause and candidates',
  unexplained: () => 'A band that hangs although no resonance explains it.',
  'ridges-foot': () =>
    'Sorted by how far each exceeds its limit. Uncertainties are one standard deviation. Percentages are the chance of each candidate; real walls move modes by up to 5 or 6 % from the rigid box.',
  'fit-quality': (p, n) =>
    `The resonances hold ${n.percent(p.explained, Number(p.explained) > 0.99 ? 1 : 0)} of the energy that was fitted, noise included. What they leave has a whiteness of ${n.number(p.whiteness, 2)}: 1 is noise, and ringing that was missed draws it towards 0.`,
  'ridge-flag': (p, n) =>
    typeof p.decayTimeSeconds === 'number'
      ? `${n.hertz(p.frequencyHz)} · ${n.seconds(p.decayTimeSeconds)}`
      : n.hertz(p.frequencyHz),
  'mode-mark': (p, n) => `${n.text(p.order)} ${n.text(p.kind)} ${n.hertz(p.frequencyHz)}`,
};
