import type { Diagnosis, FileFacts, NearField, Ridge } from '../diagnosis/index.js';
import type { BandDecay, DecayReading, Grid } from '../decay/index.js';
import type { Resonance } from '../resonance/index.js';
import { modeLevels, type PositionMetres, type RoomPrediction } from '../room/index.js';
import type { Note, Recording } from '../signal/index.js';
import type { Speaker } from '../words/index.js';
import { engineVersion } from '../study/version.js';

/** Version of the documents' form: it changes when a field changes its name or its meaning. */
const version = 1;

/** JSON has no infinity and no NaN: what is not known is null. */
const finite = (value: number | null | undefined): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;

const params = (given: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(given).map(([name, value]) => [name, typeof value === 'number' ? finite(value) : value]),
  );

const noteDocument = (note: Note, speaker: Speaker) => ({
  ...params(note.params),
  code: note.code,
  message: speaker.note(note),
});

const readingDocument = ({ seconds, refused }: DecayReading) => ({ seconds: finite(seconds), refused });

const bandDocument = (band: BandDecay) => ({
  centre: finite(band.centreHz),
  from: finite(band.fromHz),
  to: finite(band.toHz),
  range: finite(band.rangeDb),
  usable: finite(band.usableSeconds),
  shortest: finite(band.shortestSeconds),
  edt: readingDocument(band.edt),
  t20: readingDocument(band.t20),
  t30: readingDocument(band.t30),
});

/** What was given beside a file and done to its samples. */
const givenDocument = ({
  microphone,
  fullScaleDb,
  sweep,
}: Pick<Recording, 'microphone' | 'fullScaleDb' | 'sweep'>) => ({
  ...(sweep && { sweep: { file: sweep.label, hash: sweep.hash } }),
  ...(microphone && {
    microphone: {
      file: microphone.label,
      hash: microphone.hash,
      frequencies: microphone.frequenciesHz.map(finite),
      levels: microphone.levelsDb.map(finite),
    },
  }),
  ...(fullScaleDb !== undefined && { fullScale: fullScaleDb }),
});

const fileDocument = (file: FileFacts, speaker: Speaker) => ({
  file: file.label,
  hash: file.hash,
  sampleRate: file.sampleRate,
  channels: file.channelCount,
  channel: file.channel,
  seconds: finite(file.durationSeconds),
  onset: finite(file.onsetSeconds),
  ...givenDocument(file),
  range: file.range.map(({ fromHz, toHz, rangeDb }) => ({
    from: finite(fromHz),
    to: finite(toHz),
    decibels: finite(rangeDb),
  })),
  bands: file.bands.map(bandDocument),
  notes: file.notes.map((note) => noteDocument(note, speaker)),
});

const resonanceDocument = (r: Resonance) => ({
  frequency: finite(r.frequencyHz),
  frequencySd: finite(r.frequencySdHz),
  decayTime: finite(r.decayTimeSeconds),
  decayTimeSd: finite(r.decayTimeSdSeconds),
  ...(r.kind === 'two-slopes' ? { decayTimeEarly: finite(r.decayTimeEarlySeconds) } : {}),
  q: finite(r.q),
  level: finite(r.levelDb),
  levels: r.levelsDb.map(finite),
  kind: r.kind,
  fit: { from: finite(r.fitFromSeconds), to: finite(r.fitToSeconds) },
});

const ridgeDocument = (ridge: Ridge, speaker: Speaker) => ({
  resonance: ridge.resonance,
  frequency: finite(ridge.frequencyHz),
  decayTime: finite(ridge.decayTimeSeconds),
  limit: finite(ridge.limitSeconds),
  excess: finite(ridge.excess),
  limitName: ridge.limitName,
  audible: ridge.audible,
  cause: ridge.cause,
  evidence: ridge.evidence
    ? {
        ...params(ridge.evidence.params),
        kind: ridge.evidence.kind,
        message: speaker.view(`why-${ridge.evidence.kind}`, ridge.evidence.params),
      }
    : null,
  seats: [...ridge.seats],
  candidates: ridge.candidates.map((candidate) => ({
    order: [...candidate.order],
    kind: candidate.kind,
    frequency: finite(candidate.frequencyHz),
    deviation: finite(candidate.deviation),
    weight: finite(candidate.weight),
    shapeMatch: finite(candidate.shapeMatch),
  })),
  remedies: ridge.remedies.map((remedy) => ({
    ...params(remedy.params),
    kind: remedy.kind,
    message: speaker.remedy(remedy),
  })),
});

const roomFields = (prediction: RoomPrediction) => {
  const { size, plan, speedOfSoundMetresPerSecond } = prediction.room;
  return {
    ...(plan
      ? {
          plan: {
            corners: plan.corners.map(({ x, y }) => [x, y]),
            height: plan.heightMetres,
            meshError: finite(prediction.meshError),
          },
        }
      : {}),
    size: [size.lengthMetres, size.widthMetres, size.heightMetres],
    volume: finite(prediction.volumeCubicMetres),
    speedOfSound: finite(speedOfSoundMetresPerSecond),
    transitionFrequency: finite(prediction.transitionFrequencyHz),
    modes: prediction.modes.map(({ order, kind, frequencyHz, decayTimeSeconds }) => ({
      order: [...order],
      kind,
      frequency: finite(frequencyHz),
      decayTime: finite(decayTimeSeconds),
    })),
  };
};

/** What `modes` adds where seats or sources are given: level of each mode, source by source, at each seat; nodes. */
export const levelFields = (
  { room, modes }: RoomPrediction,
  seats: readonly PositionMetres[],
  sources: readonly PositionMetres[],
  notes: readonly Note[],
  speaker: Speaker,
) =>
  seats.length === 0 && sources.length === 0
    ? {}
    : {
        seats: seats.map(({ x, y, z }) => [x, y, z]),
        sources: sources.map(({ x, y, z }) => [x, y, z]),
        levels: modes.map((mode) => {
          const levels = modeLevels(mode, room, sources, seats);
          return sources.map((_, source) =>
            levels
              .filter((one) => one.source === source)
              .map(({ levelDb, shapeDb, shape }) => ({
                level: finite(levelDb),
                shape: finite(shape),
                shapeLevel: finite(shapeDb),
              })),
          );
        }),
        notes: notes.map((note) => noteDocument(note, speaker)),
      };

export const roomDocument = (prediction: RoomPrediction) => ({ version, room: roomFields(prediction) });

export const diagnosisDocument = (diagnosis: Diagnosis, speaker: Speaker) => ({
  version,
  files: diagnosis.files.map((file) => fileDocument(file, speaker)),
  resonances: diagnosis.resonances.map(resonanceDocument),
  ridges: diagnosis.ridges.map((ridge) => ridgeDocument(ridge, speaker)),
  room: diagnosis.room && roomFields(diagnosis.room),
  ...(diagnosis.nearFields && { nearFields: diagnosis.nearFields.map(nearFieldDocument) }),
});

const nearFieldDocument = ({ label, hash, distanceMetres, source, resonances }: NearField) => ({
  file: label,
  hash,
  distance: distanceMetres,
  source: source && [source.x, source.y, source.z],
  resonances: resonances.map((one) => ({
    frequency: finite(one.frequencyHz),
    frequencySd: finite(one.frequencySdHz),
    decayTime: finite(one.decayTimeSeconds),
    decayTimeSd: finite(one.decayTimeSdSeconds),
    aboveDirect: finite(one.aboveDirectDb),
  })),
});

/** In place of a document: which file was refused, and why. */
export const refusalDocument = (file: string, code: string, message: string) => ({
  version,
  file,
  error: { code, message },
});

/**
 * A file that is sound but says nothing about the bass: refused as above, and beside the refusal what is known of it, so
 * that its range per band can be seen. It has neither resonances nor ridges.
 */
export const noRangeDocument = (file: string, note: Note, diagnosis: Diagnosis, speaker: Speaker) => ({
  ...refusalDocument(file, note.code, speaker.note(note)),
  ...diagnosisDocument(diagnosis, speaker),
});

/** Levels row by row, one row per time; null where nothing is known of a limit. */
export const gridDocument = (file: string, recording: Recording, grid: Grid) => {
  const columns = grid.frequenciesHz.length;
  const numbers = (list: ArrayLike<number>) => Array.from(list, finite);
  return {
    version,
    file,
    hash: recording.hash,
    ...givenDocument(recording),
    engine: engineVersion,
    method: grid.method,
    window: grid.windowSeconds,
    step: grid.stepSeconds,
    from: finite(grid.frequenciesHz[0]),
    to: finite(grid.frequenciesHz[columns - 1]),
    reference: finite(grid.referenceDbFs),
    frequencies: numbers(grid.frequenciesHz),
    times: numbers(grid.timesSeconds),
    levels: Array.from(grid.timesSeconds, (_, t) =>
      numbers(grid.levelsDb.subarray(t * columns, (t + 1) * columns)).map(hundredths),
    ),
    limits: {
      windowDecay: finite(grid.limits.windowDecaySeconds),
      resolution: numbers(grid.limits.resolutionHz),
      noiseFloor: numbers(grid.limits.noiseFloorDb),
      dataEnd: finite(grid.limits.dataEndSeconds),
      lowest: numbers(grid.limits.lowestHz),
    },
  };
};

/** A level is known to a hundredth of a decibel at best. */
const hundredths = (value: number | null): number | null =>
  value === null ? null : Math.round(value * 100) / 100;
