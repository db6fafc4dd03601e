import { computeGrid, logFrequencies, type Grid, type GridMethod } from '../decay/index.js';
import { openFile, RingdownError, type Recording } from '../signal/index.js';
import { drain } from '../signal/drain.js';
import { engineVersion } from '../study/version.js';
import type { CommandSpeaker } from '../words/command.js';
import { givenCaptions, gridCaption } from '../words/index.js';
import { readBand } from './band.js';
import { exitStatus, type CommandIo } from './io.js';
import { gridDocument, refusalDocument } from './json.js';
import type { OptionSpecs, Words } from './options.js';
import { oneFile, refuse } from './files.js';
import { filesBeside, readingOptions, readingSpecs } from './reading.js';
import { table, wrap } from './table.js';

export const gridOptions: OptionSpecs = {
  ...{ method: {}, window: {}, step: {}, span: {}, from: {}, to: {} },
  ...readingSpecs,
  ...{ csv: { flag: true }, json: { flag: true } },
};

const methods: readonly GridMethod[] = ['sliding', 'cumulative', 'constant-q'];

/** `ringdown grid`: level over time and frequency of one recording. */
export async function grid(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  const file = oneFile(words);
  if (words.has('csv') && words.has('json'))
    throw new RingdownError('option-both', { name: 'csv', other: 'json' });
  const { fromHz, toHz } = readBand(words);
  const params = {
    method: words.choice('method', methods) ?? 'sliding',
    windowSeconds: words.number('window', 0.005, 10) ?? 0.3,
    stepSeconds: words.number('step', 0.0005, 1) ?? 0.01,
    spanSeconds: words.number('span', 0.01, 20) ?? 1,
    frequenciesHz: logFrequencies(fromHz, toHz),
  };
  const reading = readingOptions(words);
  try {
    const beside = await filesBeside(words, 0, io);
    const recording = await openFile(await io.readFile(file), { label: file, ...reading, ...beside });
    const result = drain(computeGrid(recording, params));
    if (words.has('json')) io.out(`${JSON.stringify(gridDocument(file, recording, result))}\n`);
    else
      io.out(
        `${words.has('csv') ? gridCsv(recording, result, speaker) : gridText(recording, result, speaker)}\n`,
      );
    return exitStatus.done;
  } catch (thrown) {
    const { code, message } = refuse(file, thrown, io, speaker);
    if (words.has('json')) io.out(`${JSON.stringify(refusalDocument(file, code, message))}\n`);
    return exitStatus.refused;
  }
}

/**
 * Comma-separated values as in RFC 4180, with a decimal point: frequencies across, times down, dB within. Lines that
 * begin with # say of what file and how it was made.
 */
function gridCsv(
  recording: Recording,
  { frequenciesHz, timesSeconds, levelsDb, ...grid }: Grid,
  speaker: CommandSpeaker,
): string {
  const columns = frequenciesHz.length;
  const lines = [
    `# ringdown ${engineVersion}; SHA-256 ${recording.hash}; channel ${recording.channel}`,
    `# ${grid.method}; window ${grid.windowSeconds} s; step ${grid.stepSeconds} s; 0 dB = ${grid.referenceDbFs.toFixed(2)} dB re full scale; time from the onset`,
    ...givenCaptions(speaker, recording).map((text) => `# ${text}`),
    ...(recording.fullScaleDb === undefined
      ? []
      : [`# full scale = ${recording.fullScaleDb} dB re 20 µPa by the calibration given`]),
    ['seconds', ...Array.from(frequenciesHz, (f) => `${f.toFixed(3)} Hz`)].join(','),
  ];
  timesSeconds.forEach((time, t) => {
    const row = Array.from(levelsDb.subarray(t * columns, (t + 1) * columns), (level) => level.toFixed(2));
    lines.push([time.toFixed(4), ...row].join(','));
  });
  return lines.join('\n');
}

/** Whole decibels; minus zero is zero. */
const text = (level: number): string => (Math.round(level) || 0).toFixed(0);

/** Steps of the picture in text, s. */
const textSteps = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];

/** A picture in numbers: about ten frequencies across, about twenty times down. */
function gridText(recording: Recording, grid: Grid, speaker: CommandSpeaker): string {
  const { frequenciesHz, timesSeconds, levelsDb, limits } = grid;
  const columns = frequenciesHz.length;
  const every = Math.max(1, Math.ceil(columns / 11));
  const picks = Array.from({ length: Math.ceil(columns / every) }, (_, i) => i * every);
  const span = timesSeconds[timesSeconds.length - 1];
  const apart = textSteps.find((step) => span / step <= 21 && step >= grid.stepSeconds) ?? grid.stepSeconds;
  const rows: string[][] = [];
  let next = 0;
  timesSeconds.forEach((time, t) => {
    if (time < next - 1e-9) return;
    next += apart;
    const cell = (f: number): string => {
      const level = levelsDb[t * columns + f];
      const lost = time > limits.dataEndSeconds || frequenciesHz[f] < limits.lowestHz[t];
      if (lost) return '.';
      return level <= limits.noiseFloorDb[f] ? `(${text(level)})` : text(level);
    };
    rows.push([speaker.n.number(time, 3), ...picks.map(cell)]);
  });
  const heads = [
    { head: 's', right: true },
    ...picks.map((f) => ({ head: `${frequenciesHz[f].toFixed(0)} Hz`, right: true })),
  ];
  return [
    speaker.command('recording', { label: recording.label, channel: recording.channel }),
    wrap(gridCaption(speaker, grid, undefined, recording)),
    speaker.command('grid-legend'),
    '',
    table(heads, rows),
  ].join('\n');
}
