/**
 * Makes what the lessons of `demo/class` rest on: recordings of the rooms of Radio Quillmarsh, which exist only here, and
 * the figures of the answers, computed by the engine that the elements use. Called by `make-demo.mjs`.
 */
import { writeFile } from 'node:fs/promises';
import { liveRoom } from './lib/invented-rooms.mjs';

/** Enough for the bass, and a quarter of a megabyte in all. */
const sampleRate = 8000;
const peak = 0.7;

const live = { text: '5.6x3.9x2.7', temperatureCelsius: 20 };
const bassSource = { highPassHz: 22, highPassOrder: 4, lowPassHz: 160, lowPassOrder: 4 };
const realWalls = { frequencyFraction: 0.008, decayLog: 0.06, levelDb: 1 };

/** Deep absorbers that take the mode near 44 Hz too. */
const absorbing = liveRoom.map((band) =>
  band.frequencyHz === 44 ? { ...band, absorption: [0.35, 0.35, 0.32, 0.32, 0.3, 0.4] } : band,
);

const places = {
  a: '3.7 3.0 1.2',
  b: '4.6 2.05 1.1',
  corner: '0.5 0.45 0.3',
  middle: '0.5 1.95 0.3',
  left: '0.5 0.3 0.3',
  right: '0.5 3.6 0.3',
};

/** @param {number} frequencyHz @param {number} decay s @param {number} amplitude @param {number} [phase] */
const mode = (frequencyHz, decay, amplitude, phase = 0) => ({ frequencyHz, decay, amplitude, phase });
/** What a well-damped room has beside what there is to see. */
const others = [31, 57.4, 66.1, 74.9, 88.3, 97.2, 109, 121.6, 134].map((f, k) =>
  mode(f, 0.26 - 0.012 * k, 0.06),
);

/**
 * @param {any} engine
 * @param {{ modes?: ReturnType<typeof mode>[], clicks?: [number, number][], seconds?: number, noiseDb?: number, hum?: [number, number][], seed?: number }} what
 */
function made(engine, { modes = [], clicks = [[0, 1]], seconds = 2, noiseDb = -66, hum = [], seed = 3 }) {
  const onset = 0.05;
  const samples = new Float64Array(Math.round(seconds * sampleRate));
  const rng = new engine.Rng(seed);
  for (const [late, gain] of clicks) addDelayedClick(samples, (onset + late) * sampleRate, 0.5 * gain);
  for (let n = 0; n < samples.length; n++) {
    const t = n / sampleRate - onset;
    if (t >= 0)
      for (const { frequencyHz, decay, amplitude, phase } of modes)
        samples[n] +=
          amplitude *
          Math.exp((-Math.log(1000) * t) / decay) *
          Math.sin(2 * Math.PI * frequencyHz * t + phase);
    for (const [f, db] of hum)
      samples[n] += 0.2 * 10 ** (db / 20) * Math.sin(2 * Math.PI * f * (n / sampleRate) + f);
    samples[n] += 10 ** (noiseDb / 20) * 0.2 * rng.gaussian();
  }
  return samples;
}

/** A click between two samples, by a windowed sinc. @param {Float64Array} samples @param {number} at @param {number} gain */
function addDelayedClick(samples, at, gain) {
  for (let n = Math.ceil(at - 32); n <= at + 32; n++) {
    const x = n - at;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    samples[n] += gain * sinc * Math.cos((Math.PI * x) / 64) ** 2;
  }
}

/** Level of the whole response at a frequency, dB. @param {ArrayLike<number>} samples @param {number} frequencyHz */
function levelAt(samples, frequencyHz) {
  let re = 0;
  let im = 0;
  for (let n = 0; n < samples.length; n++) {
    const w = (2 * Math.PI * frequencyHz * n) / sampleRate;
    re += samples[n] * Math.cos(w);
    im -= samples[n] * Math.sin(w);
  }
  return 20 * Math.log10(Math.hypot(re, im));
}

/**
 * @param {{ folder: string, engine: any }} options
 * @returns {Promise<string[]>} the files that were written
 */
export async function makeClass({ folder, engine }) {
  const { createRoom, parseRoomSize, parsePosition, synthesise } = engine;
  const room = createRoom({ size: parseRoomSize(live.text), temperatureCelsius: live.temperatureCelsius });
  /** @type {string[]} */
  const files = [];
  /** @param {string} file @param {Float64Array} samples @param {number} [gain] */
  const write = async (file, samples, gain) => {
    const largest = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const channel = samples.map((value) => value * (gain ?? peak / largest));
    await writeFile(
      folder + file,
      engine.encodeWav({ channels: [channel], sampleRate, encoding: 'float-32' }),
    );
    files.push(file);
  };
  /** @param {string} seat @param {string} source @param {unknown} [absorption] */
  const measured = (seat, source, absorption = liveRoom) =>
    synthesise({
      ...{ room, sampleRate, absorption, seat: parsePosition(seat), source: parsePosition(source) },
      ...{ rollOff: bassSource, spread: realWalls, noiseDb: -62, seed: 11 },
    });

  // Lesson 3: one seat, two sources on one clock.
  const beside = '3.7 3.5 1.2';
  const [left, right] = [places.left, places.right].map((source) => measured(beside, source).samples);
  const pairGain = peak / [...left, ...right].reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  await write('class-left.wav', left, pairGain);
  await write('class-right.wav', right, pairGain);

  // Lesson 4: one decay alone, and two that lie close.
  const pair = [mode(80, 0.6, 0.2), mode(83, 0.6, 0.2, 1.2)];
  await write('class-decays.wav', made(engine, { modes: [mode(50, 0.45, 0.3), ...pair] }));

  // Lesson 5: one standing wave and five impostors.
  const boost = engine.filterSamples(
    made(engine, { modes: others }),
    engine.sectionsOf([{ kind: 'peaking', frequencyHz: 50, gainDb: 6, q: 16 }], sampleRate),
  );
  const early = made(engine, { modes: [mode(30, 1.2, 0.3), ...others], seconds: 0.35 });
  const gallery = {
    a: made(engine, {
      modes: [mode(48, 0.3, 0.2), ...others],
      hum: [
        [50, -30],
        [100, -40],
        [150, -36],
      ],
    }),
    b: measured(places.a, places.corner).samples,
    c: made(engine, {
      clicks: [
        [0, 1],
        [0.00583, 0.9],
      ],
    }),
    d: boost,
    e: early,
    f: made(engine, { modes: [mode(45, 0.3, 0.4), mode(45, 1.6, 0.4 * 10 ** (-18 / 20)), ...others] }),
  };
  for (const [name, samples] of Object.entries(gallery)) await write(`class-${name}.wav`, samples);

  // Lesson 6: two seats, three remedies for the wave across the width.
  const before = { a: measured(places.a, places.corner), b: measured(places.b, places.corner) };
  const across = before.a.modes.find((/** @type {any} */ { order }) => order.join() === '0,1,0');
  const target = 0.4;
  const cut = engine.matchedCut(across.frequencyHz, across.decayTimeSeconds, target);
  const sections = engine.sectionsOf([cut], sampleRate);
  const absorbed = {
    a: measured(places.a, places.corner, absorbing),
    b: measured(places.b, places.corner, absorbing),
  };
  const decayAbsorbed = absorbed.a.modes.find(
    (/** @type {any} */ { order }) => order.join() === '0,1,0',
  ).decayTimeSeconds;
  /** @type {Record<string, Record<'a' | 'b', Float64Array>>} */
  const remedies = {
    before: { a: before.a.samples, b: before.b.samples },
    cut: {
      a: engine.filterSamples(before.a.samples, sections),
      b: engine.filterSamples(before.b.samples, sections),
    },
    moved: { a: measured(places.a, places.middle).samples, b: measured(places.b, places.middle).samples },
    absorbed: { a: absorbed.a.samples, b: absorbed.b.samples },
  };
  const all = Object.values(remedies).flatMap(({ a, b }) => [...a, ...b]);
  const gain = peak / all.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  /** @type {Record<string, Record<string, number>>} */
  const levels = {};
  for (const [name, seats] of Object.entries(remedies)) {
    levels[name] = {};
    for (const seat of /** @type {const} */ (['a', 'b'])) {
      await write(`class-${name}-${seat}.wav`, seats[seat], gain);
      levels[name][seat] =
        levelAt(seats[seat], across.frequencyHz) - levelAt(remedies.before[seat], across.frequencyHz);
    }
  }

  await writeFile(
    `${folder}class.json`,
    `${JSON.stringify(
      figures(engine, room, {
        ...{ frequencyHz: across.frequencyHz, beforeSeconds: across.decayTimeSeconds, targetSeconds: target },
        ...{ cutDb: cut.gainDb, cutQ: cut.q, absorbedSeconds: decayAbsorbed, levelsDb: levels },
      }),
      null,
      2,
    )}\n`,
  );
  return [...files, 'class.json'];
}

/** The figures of the answers. @param {any} engine @param {any} room @param {object} remedies */
function figures(engine, room, remedies) {
  const { createRoom, parsePosition, modeDecayTime, decayOfQ, speedOfSound, roomModes, roomModeShape } =
    engine;
  /** @param {number[]} order @param {any} of */
  const frequencyOf = (order, of) =>
    roomModes(of, 200).find((/** @type {any} */ one) => one.order.join() === order.join()).frequencyHz;
  const taught = createRoom({
    size: { lengthMetres: 5, widthMetres: 4, heightMetres: 3 },
    speedOfSoundMetresPerSecond: 343,
    absorption: 0.1,
  });
  const walls = Array(6).fill(0.1);
  const cube = { lengthMetres: 4, widthMetres: 4, heightMetres: 4 };
  /** @param {number[]} order @param {any} size */
  const decay = (order, size) => modeDecayTime(order, size, 343, walls);
  const orders = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
    [1, 1, 0],
    [1, 0, 1],
    [0, 1, 1],
    [1, 1, 1],
  ];
  /** @param {number[]} order @param {string} place */
  const shape = (order, place) => roomModeShape(order, room, parsePosition(place));
  const warmer = speedOfSound(25, null) / speedOfSound(15, null);
  return {
    room: live.text,
    speed: room.speedOfSoundMetresPerSecond,
    walk: {
      firstHz: frequencyOf([1, 0, 0], room),
      secondHz: frequencyOf([2, 0, 0], room),
      // A mode of 50 Hz at 20 °C, from 15 to 25 °C.
      warmerHz: (50 * (speedOfSound(25, null) - speedOfSound(15, null))) / speedOfSound(20, null),
      warmerShare: warmer - 1,
    },
    kinds: {
      decays: orders.map((order) => ({
        order,
        frequencyHz: frequencyOf(order, taught),
        seconds: decay(order, taught.size),
      })),
      cubeAxial: decay([1, 0, 0], cube) / decay([1, 1, 1], cube),
      cubeTangential: decay([1, 1, 0], cube) / decay([1, 1, 1], cube),
      q16: [32, 63, 125].map((frequencyHz) => ({ frequencyHz, seconds: decayOfQ(frequencyHz, 16) })),
    },
    places: {
      widthHz: frequencyOf([0, 1, 0], room),
      seatWall: shape([0, 1, 0], '2.8 3.9 1.2'),
      seatMiddle: shape([0, 1, 0], '2.8 1.95 1.2'),
      left: shape([0, 1, 0], places.left),
      right: shape([0, 1, 0], places.right),
    },
    windows: {
      // A Hann window slid past one impulse falls 60 dB in 0.49 of its length: the energy is the window squared.
      clickSeconds: 0.3 * hannFall(60),
      // What of a decay of 0.45 s stands within 40 dB.
      shownSeconds: (0.45 * 40) / 60,
      // Two ridges part from about 2 / df on (Hann).
      partsSeconds: 2 / 3,
    },
    impostors: {
      boostSeconds: engine.ownDecaySeconds({ kind: 'peaking', frequencyHz: 50, gainDb: 6, q: 16 }),
      // The first dip of a reflection that comes so much later lies at half a period.
      dipHz: 1 / (2 * 0.00583),
    },
    remedies,
  };
}

/** Time in window lengths from the centre of a Hann window until an impulse has fallen so far. @param {number} db */
function hannFall(db) {
  const amplitude = 10 ** (-db / 20);
  // sin^2(pi x) = amplitude, from the middle outwards.
  return 0.5 - Math.asin(Math.sqrt(amplitude)) / Math.PI;
}
