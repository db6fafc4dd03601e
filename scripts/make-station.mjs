/**
 * The invented recordings of the workbench: the listening room of Radio Quillmarsh with four bass sources and nine seats.
 * Before any work each source at each seat, by one clock and at one gain; afterwards all sources together at each seat.
 */
import { mkdir, writeFile } from 'node:fs/promises';

const room = '6.2x4.6x2.8';
const sampleRate = 4000;
const seconds = 1.5;
/** Largest sample over all files: levels between them mean something. */
const peak = 0.7;

/** Boards on studs with little that takes the bass; afterwards deep panels on the far end and the ceiling. */
const before = [
  { frequencyHz: 31, absorption: [0.14, 0.14, 0.12, 0.12, 0.1, 0.14] },
  { frequencyHz: 63, absorption: [0.2, 0.2, 0.17, 0.17, 0.14, 0.2] },
  { frequencyHz: 125, absorption: [0.32, 0.32, 0.28, 0.28, 0.22, 0.32] },
];
const after = [
  { frequencyHz: 31, absorption: [0.2, 0.5, 0.18, 0.18, 0.1, 0.42] },
  { frequencyHz: 63, absorption: [0.28, 0.66, 0.26, 0.26, 0.14, 0.6] },
  { frequencyHz: 125, absorption: [0.42, 0.72, 0.4, 0.4, 0.22, 0.7] },
];

/** Half width of the white noise of every file re the largest sample: some 62 dB down from 20 to 200 Hz. */
const noise = 4.6e-3;

const sources = [
  { name: 'S1', at: { x: 0.35, y: 0.4, z: 0.3 } },
  { name: 'S2', at: { x: 0.35, y: 4.2, z: 0.3 } },
  { name: 'S3', at: { x: 5.85, y: 0.45, z: 0.3 } },
  { name: 'S4', at: { x: 3.1, y: 4.25, z: 0.3 } },
];
const seats = Array.from({ length: 9 }, (_, k) => ({
  name: String(k + 1),
  at: { x: 2.6 + 0.95 * Math.floor(k / 3), y: 1.35 + 0.9 * (k % 3), z: 1.2 },
}));

/** @param {{ x: number, y: number, z: number }} at */
const written = ({ x, y, z }) => `${x.toFixed(2)} ${y.toFixed(2)} ${z.toFixed(2)}`;

/**
 * Writes 45 files and their list.
 * @param {{ folder: string, engine: any }} where
 * @returns {Promise<string[]>} names of the files
 */
export async function makeStation({ folder, engine }) {
  const { Rng, createRoom, encodeWav, parseRoomSize, synthesise } = engine;
  const made = createRoom({ size: parseRoomSize(room), temperatureCelsius: 20 });
  const rollOff = { highPassHz: 22, highPassOrder: 4, lowPassHz: 150, lowPassOrder: 4 };
  const spread = { frequencyFraction: 0.006, decayLog: 0.05, levelDb: 0 };
  /** @param {number} s @param {number} k @param {object[]} absorption @returns {Float64Array} */
  const response = (s, k, absorption) =>
    synthesise({
      ...{ room: made, source: sources[s].at, seat: seats[k].at, sampleRate, seconds, absorption },
      ...{ rollOff, spread, seed: 31 },
    }).samples;
  const grid = sources.map((_, s) => seats.map((_, k) => response(s, k, before)));
  const later = seats.map((_, k) => {
    const each = sources.map((_, s) => response(s, k, after));
    return each[0].map((_, n) => each.reduce((sum, one) => sum + one[n], 0));
  });
  const loudest = [...grid.flat(), ...later].reduce(
    (most, one) => one.reduce((/** @type {number} */ high, value) => Math.max(high, Math.abs(value)), most),
    0,
  );
  await mkdir(folder, { recursive: true });
  let count = 0;
  /** @param {string} file @param {Float64Array} samples */
  const write = (file, samples) => {
    count += 1;
    // Noise of its own in every file: the same in all would look like something that they share.
    const random = new Rng(310 + count);
    const channels = [
      samples.map((value) => ((value + loudest * noise * (2 * random.uniform() - 1)) * peak) / loudest),
    ];
    return writeFile(folder + file, encodeWav({ channels, sampleRate, encoding: 'pcm-24' }));
  };
  const recordings = [];
  for (const [s, { name: source, at }] of sources.entries())
    for (const [k, seat] of seats.entries()) {
      const file = `sub${s + 1}_seat${seat.name}_before.wav`;
      await write(file, grid[s][k]);
      recordings.push({
        file,
        source,
        seat: seat.name,
        stage: 'before',
        at: written(at),
        place: written(seat.at),
      });
    }
  for (const [k, seat] of seats.entries()) {
    const file = `all_seat${seat.name}_after.wav`;
    await write(file, later[k]);
    recordings.push({
      file,
      source: 'all',
      seat: seat.name,
      stage: 'after',
      at: null,
      place: written(seat.at),
    });
  }
  await writeFile(`${folder}station.json`, `${JSON.stringify({ room, recordings }, null, 1)}\n`);
  return [...recordings.map(({ file }) => file), 'station.json'];
}
