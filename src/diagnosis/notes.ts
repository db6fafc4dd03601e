import { mainsHz, mainsWander } from '../resonance/hum.js';
import type { Examination } from '../decay/index.js';
import type { Resonance, ResonanceFit } from '../resonance/types.js';
import type { RoomPrediction } from '../room/types.js';
import type { Note, NoteCode, Recording } from '../signal/types.js';
import { nodeNotes } from './nodes.js';
import { rateSuspect } from './rate-suspect.js';
import { faintHumDb, inaudibleDb, rings, seatsOf } from './ridges.js';

export interface NoteSources {
  readonly recording: Recording;
  /** Of the recording within the fit. */
  readonly index: number;
  readonly examination: Examination;
  readonly fit: ResonanceFit;
  readonly prediction: RoomPrediction | null;
}

/** What forbids a reading first, then what bends it, then what it means for the room; what was chosen last. */
const order: readonly NoteCode[] = [
  ...([
    'no-range',
    'clipped',
    'quantised',
    'truncated',
    'short',
    'rate-suspect',
    'late-energy',
    'hum',
  ] as const),
  ...([
    'noisy',
    'two-slopes',
    'near-field',
    'boundary',
    'node',
    'other-room',
    'aligned',
    'dc',
    'size-guessed',
  ] as const),
  ...(['not-finite', 'silent', 'measurement-chosen', 'channel-chosen', 'positions', 'swept'] as const),
  ...(['microphone', 'calibrated'] as const),
];

const loudestDb = (resonances: readonly Resonance[], index: number): number =>
  Math.max(...resonances.map(({ levelsDb }) => levelsDb[index]));

/** One `hum` note per family of lines at multiples of the mains that this recording hears. */
export function humNotes(resonances: readonly Resonance[], index: number): Note[] {
  const loudest = loudestDb(resonances, index);
  const lines = resonances.filter(
    (one) => one.kind === 'hum' && seatsOf(one).includes(index) && one.levelsDb[index] > loudest - faintHumDb,
  );
  return mainsHz.flatMap((mains): Note[] => {
    const family = lines.filter(({ frequencyHz }) => {
      const multiple = Math.max(1, Math.round(frequencyHz / mains)) * mains;
      return Math.abs(frequencyHz / multiple - 1) < mainsWander;
    });
    if (family.length === 0) return [];
    const strongest = family.reduce((most, one) => (one.levelsDb[index] > most.levelsDb[index] ? one : most));
    return [
      {
        code: 'hum',
        params: {
          mainsHz: mains,
          linesHz: family.map(({ frequencyHz }) => frequencyHz.toFixed(1)).join(' '),
          frequencyHz: strongest.frequencyHz,
          levelDb: strongest.levelsDb[index] - loudest,
        },
      },
    ];
  });
}

/**
 * The notes on bends. Where a resonance with two decays lies in a band that bends, its own two times stand for those of
 * the band, which the band's filter blurs; how far down each reaches is the band's.
 */
function slopeNotes({ resonances }: ResonanceFit, { notes }: Examination, index: number): Note[] {
  const faintest = loudestDb(resonances, index) - inaudibleDb;
  const bent = resonances.filter(({ kind, levelsDb }) => kind === 'two-slopes' && levelsDb[index] > faintest);
  const bands = notes.filter(({ code }) => code === 'two-slopes');
  const holds = ({ params }: Note, { frequencyHz: f }: Resonance): boolean =>
    f >= Number(params.fromHz) && f <= Number(params.toHz);
  const fitted = bent.map((one): Note => {
    const band = bands.find((note) => holds(note, one));
    const { earlyFromDb = null, earlyToDb = null, lateFromDb = null, lateToDb = null } = band?.params ?? {};
    return {
      code: 'two-slopes',
      params: {
        frequencyHz: one.frequencyHz,
        earlySeconds: one.decayTimeEarlySeconds,
        lateSeconds: one.decayTimeSeconds,
        ...{ fitFromSeconds: one.fitFromSeconds, fitToSeconds: one.fitToSeconds },
        ...(band ? { earlyFromDb, earlyToDb, lateFromDb, lateToDb } : {}),
      },
    };
  });
  return [...fitted, ...bands.filter((note) => !bent.some((one) => holds(note, one)))];
}

/** Within this of a dip, as a share, and this far below the loudest, a resonance gives the dip a tail. */
const tailShare = 0.04;
const tailDb = 25;

const hasTail = (dip: Note, resonances: readonly Resonance[]): boolean =>
  resonances.some(
    (one) =>
      rings(one) &&
      one.levelDb > -tailDb &&
      Math.abs(one.frequencyHz / Number(dip.params.frequencyHz) - 1) < tailShare,
  );

/** What the fit says of one recording of several is told with that one, by its name. */
function ofOneFile(note: Note, index: number, label: string): Note[] {
  const { recording, ...params } = note.params;
  if (recording === undefined) return [note];
  return recording === index + 1 ? [{ ...note, params: { ...params, label } }] : [];
}

/**
 * Every note on one file, each once: of its reader, its samples, the fit and the room. Where the fit is refused for want
 * of range that is the one thing said of noise.
 */
export function fileNotes({ recording, index, examination, fit, prediction }: NoteSources): Note[] {
  const room = prediction?.room ?? null;
  const refused = fit.notes.some(({ code }) => code === 'no-range');
  const suspect = rateSuspect(fit.resonances, room, recording.reduced?.sampleRate ?? recording.sampleRate);
  const { nearFieldMetres: metres } = recording;
  const notes: Note[] = [
    ...recording.notes,
    ...(metres === undefined ? [] : [{ code: 'near-field', params: { metres } } as const]),
    ...examination.notes.filter(
      (note) =>
        !(note.code === 'noisy' && refused) &&
        note.code !== 'two-slopes' &&
        !(note.code === 'boundary' && hasTail(note, fit.resonances)),
    ),
    ...fit.notes
      .flatMap((note) => ofOneFile(note, index, recording.label))
      .filter(({ code }) => code !== 'hum' && !examination.notes.some((known) => known.code === code)),
    ...humNotes(fit.resonances, index),
    ...(refused ? [] : slopeNotes(fit, examination, index)),
    ...(prediction ? nodeNotes(prediction.room, prediction.modes, recording) : []),
    ...(suspect ? [suspect] : []),
  ];
  const rank = ({ code }: Note): number => order.indexOf(code);
  return distinct(notes).sort((a, b) => rank(a) - rank(b));
}

function distinct(notes: readonly Note[]): Note[] {
  const seen = new Set<string>();
  return notes.filter((note) => {
    const key = JSON.stringify(note);
    return !seen.has(key) && !!seen.add(key);
  });
}
