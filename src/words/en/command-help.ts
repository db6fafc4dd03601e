import type { CommandHelp } from '../command.js';

/** What each command does and takes. The lines are the help's own; nothing is made from them. */
const roomHelp = [
  ['--room LxWxH', 'sides in metres, as 5.3x4.1x2.7 or 16x12x8 ft; 4,5 is read as 4.5'],
  [
    '--plan "X,Y ..."',
    'instead, the corners of the floor plan in turn, m, as “0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5”',
  ],
  ['--height M', 'of a plan; the ceiling must be level'],
  ['--temperature C', 'of the air, for the speed of sound (20)'],
  ['--humidity PERCENT', 'relative humidity, for the speed of sound'],
  ['--speed M/S', 'speed of sound itself, instead of the two above'],
] as const;

const bandHelp = [
  ['--from HZ', 'lowest frequency (20)'],
  ['--to HZ', 'highest frequency (200)'],
] as const;

const channelHelp = ['--channel N', 'channel to read, counted from 1; never summed'] as const;
const rateHelp = ['--rate HZ', 'sample rate of a text file that holds no times'] as const;
const measurementHelp = ['--measurement N', 'which measurement of an AES69 (SOFA) file, from 1 (1)'] as const;
const givenHelp = [
  ['--microphone FILE', 'text with the microphone’s response (Hz and dB), taken off; once, or once per file'],
  ['--calibration DB', 'sound pressure level of a sine that reaches full scale, dB re 20 µPa; likewise'],
] as const;
const absorptionHelp = [
  '--absorption A',
  'of all walls, or six (x=0, x=L, y=0, y=W, floor, ceiling)',
] as const;
const wallsHelp = [
  '--walls NAMES',
  'what all walls, or the six, are made of, instead (an unknown name lists them)',
] as const;
const jsonHelp = ['--json', 'one JSON document per file and line, version 1'] as const;

const langHelp = ['--lang TAG', 'language of words (en or de) and of numbers (en)'] as const;

export const commandHelp: Readonly<Record<string, CommandHelp>> = {
  diagnose: {
    brief: 'what rings in the bass of impulse responses, and what may be done about it',
    usage: 'ringdown diagnose FILE... [options]',
    does: 'Reads impulse responses (WAV, AES69, or text of one or two columns), fits what rings, and flags the ridges that hang, each with its limit, candidate room modes and what might help.',
    options: [
      ...roomHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      ...bandHelp,
      ['--limit NAME', 'audibility (default), target, or neighbours'],
      ['--seat X,Y,Z', 'place of the microphone, m from one low corner; once, or once per file'],
      ['--source X,Y,Z', 'place of the source, likewise'],
      ['--near-field FILE', 'close to a source: shows whether it rings itself, is no seat; may be repeated'],
      [
        '--near-distance M',
        'how close, to a port or the middle of a cone (0.05); once, or once per --near-field',
      ],
      ['--near-source X,Y,Z', 'which source, by its place; likewise'],
      ['--together', 'the files are of one room: fitted together, one document'],
      ['--fit-room', 'fit the sides of --room to the resonances, and say how likely that is chance'],
      jsonHelp,
      langHelp,
    ],
    more: [
      'Each file is read on its own unless --together, or several places, say that all are of one room.',
      'A refused file does not stop the others.',
    ],
  },
  grid: {
    brief: 'level over time and frequency, as numbers',
    usage: 'ringdown grid FILE [options]',
    does: 'Computes level over time and frequency, the numbers of a waterfall or spectrogram.',
    options: [
      ['--method NAME', 'sliding (default), cumulative or constant-q'],
      ['--window S', 'length of the window (0.3)'],
      ['--step S', 'time between slices (0.01)'],
      ['--span S', 'time shown from the onset (1)'],
      ...bandHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      ['--csv', 'all levels as comma-separated values'],
      ['--json', 'all levels and limits as one JSON document'],
      langHelp,
    ],
    more: ['Without --csv or --json a short table is printed.'],
  },
  modes: {
    brief: 'the standing waves of a room, and how loud each is at its seats',
    usage: 'ringdown modes --room LxWxH | --plan CORNERS --height M [options]',
    does: 'Lists the standing waves of a room with rigid walls, a box or a floor plan times one height, and how loud each is at the seats.',
    options: [
      ...roomHelp,
      absorptionHelp,
      wallsHelp,
      ['--seat X,Y,Z', 'place of a seat, m from one low corner; may come several times'],
      ['--source X,Y,Z', 'place of a source, likewise; without one, a corner of the floor'],
      ['--to HZ', 'highest frequency (200)'],
      jsonHelp,
      langHelp,
    ],
    more: [],
  },
  figure: {
    brief: 'a picture as SVG or PNG, of a recording, a saved study or a room',
    usage: 'ringdown figure FILE --view NAME --out FILE.svg|FILE.png [options]',
    does: 'Draws one picture with its signs, caption and origin: of an impulse response, of a saved study (JSON), or with --view modes of a room alone.',
    options: [
      ['--view NAME', 'waterfall (default), spectrogram, decay-times, response or modes'],
      ['--out FILE', 'where it is written; .svg or .png says what it is'],
      ['--look NAME', 'paper (default), light or dark'],
      ['--scale NAME', 'colours of level: auto (by the look, default), dusk, dawn or clear'],
      ['--width PX', 'width of the picture, in which letters have 11 (900)'],
      ['--pixels N', 'width of a PNG in pixels (1800)'],
      ['--label TEXT', 'what it is called (the file’s name)'],
      ['--method NAME', 'sliding (default), cumulative or constant-q'],
      ['--window S', 'length of the window (0.3)'],
      ['--step S', 'time between slices (0.01)'],
      ['--span S', 'time shown from the onset (1)'],
      ['--range DB', 'levels shown below the top (50)'],
      ['--limit NAME', 'audibility (default), target, or neighbours'],
      ...bandHelp,
      ...roomHelp,
      channelHelp,
      rateHelp,
      measurementHelp,
      ...givenHelp,
      langHelp,
    ],
    more: ['A PNG needs the package @resvg/resvg-js beside this one; an SVG needs nothing.'],
  },
  sweep: {
    brief: 'a sweep to be played and recorded, as a WAV file',
    usage: 'ringdown sweep --out FILE.wav [options]',
    does: 'Writes an exponential sweep, from which “ringdown response” works out the impulse response of a room.',
    options: [
      ['--from HZ', 'where it begins (15)'],
      ['--to HZ', 'where it ends (400)'],
      ['--seconds S', 'how long it takes (10)'],
      ['--silence S', 'behind it, for the room to ring out (4)'],
      ['--rate HZ', 'sample rate (48000)'],
      ['--level DB', 'peak re full scale, -60 to -3 (-12)'],
      ['--out FILE.wav', 'where to write'],
      langHelp,
    ],
    more: [
      'It is a loud, long low tone: begin quietly, protect ears and loudspeakers, and keep to the',
      'maker’s limits; the command repeats the cautions whenever it writes one.',
    ],
  },
  response: {
    brief: 'the impulse response from a recorded sweep, as a WAV file',
    usage: 'ringdown response SWEEP RECORDING --out FILE.wav [options]',
    does: 'Divides the recording of an exponential sweep by the sweep that was played (ISO 18233), keeps the distortion of the loudspeaker out of the response, and says how strong it was.',
    options: [
      ['--channel N', 'of the recording, counted from 1; all of them unless one is named'],
      ['--out FILE.wav', 'where to write'],
      langHelp,
    ],
    more: [
      'SWEEP is the file that was played, by whatever program it was made, or the same recorded by wire.',
    ],
  },
  synth: {
    brief: 'the impulse response of a box, as a WAV file',
    usage: 'ringdown synth --room LxWxH --seat X,Y,Z --source X,Y,Z --out FILE.wav [options]',
    does: 'Computes the impulse response of a box between two places as a sum of its modes, and writes it as a float WAV file.',
    options: [
      ...roomHelp,
      ['--seat X,Y,Z', 'place of the microphone, m from one low corner'],
      ['--source X,Y,Z', 'place of the source'],
      absorptionHelp,
      wallsHelp,
      ['--seconds S', 'length (2)'],
      ['--rate HZ', 'sample rate (48000)'],
      ['--noise DB', 'noise within 20 to 200 Hz, dB re the peak of the response, or none (-70)'],
      ['--seed N', 'of the noise: the same seed gives the same file (1)'],
      ['--out FILE.wav', 'where to write'],
      langHelp,
    ],
    more: [],
  },
};
