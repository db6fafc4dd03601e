import type { Sentence } from '../types.js';

/** What the element says through which a room is listened to. */
export const listenViews: Readonly<Record<string, Sentence>> = {
  listen: () => 'Listen',
  'listen-material': () => 'Played',
  'material-bass-line': () => 'a bass line',
  'material-tone-walk': () => 'a walk of tones',
  'material-burst': () => 'three bursts',
  'listen-response': () => 'Through',
  'response-measured': () => 'the measured response',
  'response-predicted': () => 'the predicted room',
  'listen-heard': () => 'Heard',
  'heard-dry': () => 'dry',
  'heard-room': () => 'through the room',
  'heard-treated': () => 'treated',
  'heard-mode': () => 'the mode alone',
  'listen-play': () => 'Play',
  'listen-stop': () => 'Stop',
  'listen-render': () => 'Work it out',
  'listen-mute': () => 'Muted',
  'listen-volume': () => 'Level',
  'listen-muted': () => 'muted',

  // What is going on.
  'listen-idle': () => 'Nothing is playing, and the sound is muted.',
  'listen-idle-loud': () => 'Nothing is playing.',
  'listen-working': (p, n) => `Working the sound out: ${n.percent(p.fraction)}`,
  'listen-ready': () => 'The sound is worked out; it can be saved and read in the table below.',
  'listen-playing-muted': (p, n) =>
    `Playing ${n.text(p.material)}, ${n.text(p.heard)}, muted. Turn the loudspeakers down, then press “Muted”.`,
  'listen-playing': (p, n) =>
    `Playing ${n.text(p.material)}, ${n.text(p.heard)}, at ${n.decibels(p.volumeDb)} below its full level.`,
  'listen-blocked': () =>
    'The browser holds the sound back until a key or button is pressed: press Stop, then Play.',
  'listen-no-audio': () =>
    'This browser plays no sound here; what would be heard can be worked out, read in the table and saved as a WAV file.',

  // Why.
  'listen-why-muted': (p, n) =>
    `It starts muted, because a sound that nobody expects can hurt ears and loudspeakers. No sample passes ${n.decibels(p.ceilingDb)} re full scale: a soft limiter bends what exceeds ${n.decibels(p.kneeDb)}, and the slider only turns down.`,
  'listen-why-bass': () =>
    'Bass moves a cone far before it sounds loud: begin quietly, raise it by steps, stop at the first rattle, and keep to the loudspeaker maker’s limits. Loud sound harms hearing: 85 dBA for 8 h a day is a recommended limit, each 3 dB more halves the time, and national law may be stricter.',
  'listen-why-small': (p, n) =>
    `Loudspeakers of laptops and phones play next to nothing below about 60 to 80 Hz (common practice)${typeof p.frequencyHz === 'number' && p.frequencyHz < 80 ? `, so they do not play ${n.hertz(p.frequencyHz)}, which is what matters here` : ''}. Use headphones, or loudspeakers that reach lower.`,
  'listen-why-room': () =>
    'Loudspeakers add the room you sit in to the one you listen to; headphones do not.',
  'listen-why-matched': (p, n) =>
    `All sounds are brought to one mean power (${n.decibels(p.meanDb, 0)} re full scale, or less where peaks ask for it), so that what differs is how they ring and not how loud they are.`,

  // What is heard.
  'listen-line': (p, n) => `A bass line on ${n.hertz(p.rootHz)}, the note next to ${n.hertz(p.centreHz)}.`,
  'listen-walk': (p, n) =>
    `Tones in semitones from half an octave below ${n.hertz(p.centreHz)} to half an octave above.`,
  'listen-burst': (p, n) =>
    `Five-cycle bursts half an octave below ${n.hertz(p.centreHz)}, at it, and half an octave above.`,
  'listen-through-measured': (p, n) =>
    `Through the recording ${n.text(p.label)}, used for ${n.seconds(p.seconds)} from its onset: after that it meets its noise or ends.`,
  'listen-through-reduced': (p, n) =>
    `This saved study holds the bass of its recordings and not their files, so everything is heard to ${n.hertz(p.toHz, 0)} only, dry too.`,
  'listen-through-low-rate': (p, n) =>
    `The recording has a low sample rate, so everything is heard to ${n.hertz(p.toHz, 0)} only, dry too.`,
  'listen-through-predicted': (p, n) =>
    `Through a response predicted from the room by its modes to 400 Hz and the direct sound above${p.assumed ? `, with an absorption of ${n.number(p.absorption, 1)} assumed, since no walls were given` : ''}. A real room is not so plain.`,
  'listen-through-nothing': () =>
    'There is no response to listen through: give a recording, or a room with a seat and a source.',
  'listen-treated-design': (p, n) =>
    `Treated with the ${Number(p.count) === 1 ? 'filter' : `${n.integer(p.count)} filters`} of this study: ${n.text(p.bands)}.`,
  'listen-treated-proposed': (p, n) =>
    `Treated with matched cuts proposed for the ridges above their limit: ${n.text(p.bands)}.`,
  'listen-treated-nothing': () =>
    'Nothing to treat: the study has no filters, and no ridge here calls for a cut.',
  'listen-band': (p, n) => `${n.decibels(p.gainDb, 1)} at ${n.hertz(p.frequencyHz)}, Q ${n.number(p.q, 1)}`,
  'listen-mode': (p, n) =>
    `The mode alone is a resonator of ${n.hertz(p.frequencyHz)} that decays in ${n.seconds(p.decayTimeSeconds)}, driven by the same notes.`,
  'listen-mode-nothing': () => 'No mode is in view that could be heard alone.',
  'listen-level-axis': () => 'Level, dB re the loudest',
  'key-note': () => 'a note is played',
  'listen-name': (p, n) => `Sounds with their levels over time: ${n.text(p.label)}`,
  'listen-picture': (p, n) =>
    `Level over time of each sound, the loudest at the top; in front what is heard: ${n.text(p.heard)}`,

  // Table and file.
  'listen-sound-column': () => 'Sound',
  'listen-now-column': () => 'Now',
  'listen-mean-column': () => 'Mean power, re full scale',
  'listen-peak-column': () => 'Peak, re full scale',
  'listen-match-column': () => 'Brought to one power by',
  'listen-limiter-column': () => 'Limiter',
  'listen-rings-column': () => 'Rings on after the last note, to −30 dB',
  'listen-untouched': () => 'untouched',
  'listen-save': (p, n) => `Save as WAV: ${n.text(p.heard)}`,
};
