/**
 * Makes the invented recordings of the demo: impulse responses in the rooms of Radio Quillmarsh, a community station
 * that exists only here. Computed by the built engine, so run after `npm run build`; a few seconds, always the same bytes.
 */
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { liveRoom } from './lib/invented-rooms.mjs';
import { Complaint, root, script } from './lib/project.mjs';
import { makeClass } from './make-class.mjs';
import { makeStation } from './make-station.mjs';

/** Deep tuned absorbers on both ends and the ceiling. */
const treated = [
  { frequencyHz: 35, absorption: [0.45, 0.45, 0.42, 0.42, 0.3, 0.5] },
  { frequencyHz: 100, absorption: [0.65, 0.65, 0.6, 0.6, 0.5, 0.7] },
  { frequencyHz: 250, absorption: [0.75, 0.75, 0.7, 0.7, 0.65, 0.85] },
];

/**
 * @typedef {object} Take
 * @property {string} file
 * @property {string} label
 * @property {string} room LxWxH, m
 * @property {string} seat x y z, m
 * @property {string} source x y z, m
 * @property {string} sentence what there is to see
 * @property {Record<string, unknown>} synth what goes to the synthesiser beside room and places
 */

/** A studio monitor that reaches down to 38 Hz, and a bass source of 4th order. */
const monitor = { highPassHz: 38, highPassOrder: 4, lowPassHz: null, lowPassOrder: 4 };
const bassSource = { highPassHz: 22, highPassOrder: 4, lowPassHz: 160, lowPassOrder: 4 };

/** @type {Take[]} */
const takes = [
  {
    file: 'live-room-desk.wav',
    label: 'Live room, desk',
    room: '5.6x3.9x2.7',
    seat: '3.7 3.0 1.2',
    source: '0.5 0.45 0.3',
    sentence:
      'The live room of the station: one standing wave across its width hangs for more than a second.',
    synth: { absorption: liveRoom, rollOff: bassSource, noiseDb: -62, seed: 11 },
  },
  {
    file: 'live-room-sofa.wav',
    label: 'Live room, sofa',
    room: '5.6x3.9x2.7',
    seat: '4.6 2.05 1.1',
    source: '0.5 0.45 0.3',
    sentence: 'The same room from near the middle of its width, where that wave is hardly heard.',
    synth: { absorption: liveRoom, rollOff: bassSource, noiseDb: -62, seed: 11 },
  },
  {
    file: 'talk-studio.wav',
    label: 'Talk studio',
    room: '4.6x3.4x2.5',
    seat: '2.9 1.3 1.2',
    source: '0.6 0.7 1.1',
    sentence: 'The talk studio, well treated: everything is over within half a second.',
    synth: { absorption: treated, rollOff: monitor, noiseDb: -58, seed: 12 },
  },
  {
    file: 'edit-room-hum.wav',
    label: 'Edit room, with hum',
    room: '3.6x2.9x2.4',
    seat: '2.2 1.1 1.2',
    source: '0.4 0.5 0.9',
    sentence: 'The edit room, measured over a bad earth: mains hum that never decays, and is no mode.',
    synth: {
      absorption: 0.25,
      rollOff: monitor,
      noiseDb: -60,
      hum: { mainsHz: 50, levelsDb: [-34, -48, -42] },
      seed: 13,
    },
  },
  {
    file: 'booth-short.wav',
    label: 'Voice booth, cut short',
    room: '2.6x2.1x2.3',
    seat: '1.5 0.8 1.2',
    source: '0.3 0.4 0.5',
    sentence:
      'The voice booth, in a file that ends after a third of a second: what lies past its end is not known.',
    synth: { absorption: 0.16, rollOff: monitor, noiseDb: -58, seconds: 0.36, seed: 14 },
  },
];

/** Real walls are not rigid: modes lie a little off, and ring and sound a little otherwise than the box says. */
const realWalls = { frequencyFraction: 0.008, decayLog: 0.06, levelDb: 1 };
/** Largest sample of every file; only levels within a file are compared. */
const peak = 0.7;

/**
 * Writes the files and their list.
 * @param {{ folder?: string, engine?: any }} [options] other places, for tests
 * @returns {Promise<{ folder: string, files: string[] }>}
 */
export async function makeDemo({ folder = `${root}demo/recordings/`, engine } = {}) {
  if (!engine && !existsSync(`${root}dist/engine.js`)) {
    throw new Complaint('The engine is not built yet: run “npm run build” first.');
  }
  const built = engine ?? (await import(pathToFileURL(`${root}dist/engine.js`).href));
  const { createRoom, encodeWav, parsePosition, parseRoomSize, synthesise } = built;
  await mkdir(folder, { recursive: true });
  for (const take of takes) {
    const { samples, sampleRate } = synthesise({
      room: createRoom({ size: parseRoomSize(take.room), temperatureCelsius: 20 }),
      seat: parsePosition(take.seat),
      source: parsePosition(take.source),
      spread: realWalls,
      ...take.synth,
    });
    const gain = peak / samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const channel = samples.map((value) => value * gain);
    await writeFile(folder + take.file, encodeWav({ channels: [channel], sampleRate, encoding: 'float-32' }));
  }
  const list = takes.map(({ file, label, room, seat, source, sentence }) => ({
    file,
    label,
    room,
    seat,
    source,
    sentence,
  }));
  await writeFile(`${folder}recordings.json`, `${JSON.stringify(list, null, 2)}\n`);
  const ofClass = await makeClass({ folder, engine: built });
  const ofStation = await makeStation({ folder: `${folder}station/`, engine: built });
  return { folder, files: [...takes.map(({ file }) => file), ...ofClass, ...ofStation] };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await script(async () => {
    const begin = performance.now();
    const { files } = await makeDemo();
    const seconds = ((performance.now() - begin) / 1000).toFixed(1);
    console.log(`Made ${files.length} files of invented rooms in demo/recordings in ${seconds} s.`);
  });
}
