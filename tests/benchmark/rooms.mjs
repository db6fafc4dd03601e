/**
 * Invented rooms that are not ideal, as lists of resonances with the mode that made each, for the calibration of
 * matches: all frequencies off by a common 2 % and each by its own 2.5 % (sd), one mode in ten unseen, amplitudes at
 * every seat off by 3 dB, one resonance in ten of no mode.
 */

/**
 * @typedef {{ x: number, y: number, z: number }} Position
 * @typedef {{ seat: Position, source: Position, onsetSeconds: number, timeReference: 'common' }} Place
 * @typedef {{ order: readonly [number, number, number] | null, frequencyHz: number, amplitudes: number[] }} Ring
 * @typedef {{ room: any, places: Place[], rings: (Ring & { cluster: boolean })[] }} Case
 */

const toHz = 200;
const fromHz = 20;
const faintestDb = -25;

/**
 * @param {any} engine
 * @param {{ seed: number, seats?: number, apartHz?: number, wrong?: boolean, strangers?: number }} params
 *   `apartHz`: modes closer than this ring as one; `wrong`: the room handed out has other sides than the one that rang
 * @returns {Case}
 */
export function unidealRoom(engine, { seed, seats = 1, apartHz = 0, wrong = false, strangers = 0.1 }) {
  const rng = new engine.Rng(seed);
  const between = (/** @type {number} */ a, /** @type {number} */ b) => a + (b - a) * rng.uniform();
  const size = {
    lengthMetres: between(3.8, 7),
    widthMetres: between(2.9, 5.2),
    heightMetres: between(2.3, 3.3),
  };
  const source = { x: between(0.3, 0.9), y: between(0.3, 0.9), z: between(0.2, 0.6) };
  const speed = 343.2;
  /** @type {Place[]} */
  const places = Array.from({ length: seats }, () => ({
    seat: {
      x: between(0.5, size.lengthMetres - 0.5),
      y: between(0.5, size.widthMetres - 0.5),
      z: between(1, 1.5),
    },
    source,
    onsetSeconds: 0.02,
    timeReference: 'common',
  }));
  const scale = 1 + 0.02 * rng.gaussian();
  /** @type {Ring[]} */
  const all = engine.boxModes(size, speed, toHz * 1.1).map((/** @type {any} */ { order, frequencyHz }) => {
    const norm = engine.modeNorm(order) * engine.modeShape(order, size, source);
    return {
      order,
      frequencyHz: frequencyHz * scale * (1 + 0.025 * rng.gaussian()),
      amplitudes: places.map(
        ({ seat }) => norm * engine.modeShape(order, size, seat) * 10 ** ((3 * rng.gaussian()) / 20),
      ),
    };
  });
  const count = Math.round(strangers * all.length);
  for (let i = 0; i < count; i++)
    all.push({
      order: null,
      frequencyHz:
        all[Math.floor(rng.uniform() * (all.length - i))].frequencyHz * (1 + 0.08 * rng.gaussian()),
      amplitudes: places.map(() => rng.gaussian()),
    });
  const reference = median(all.map(({ amplitudes }) => rms(amplitudes)));
  const seen = all
    .filter(({ amplitudes }) => 20 * Math.log10(rms(amplitudes) / reference) > faintestDb)
    .filter(() => rng.uniform() > 0.1)
    .filter(({ frequencyHz }) => frequencyHz > fromHz && frequencyHz < toHz)
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
  const rings = joined(seen, apartHz).map((ring) => ({
    ...ring,
    frequencyHz: ring.frequencyHz + 0.1 * rng.gaussian(),
  }));
  const off = () => 1 + (rng.uniform() < 0.5 ? -1 : 1) * between(0.1, 0.25);
  const handed = wrong
    ? {
        lengthMetres: size.lengthMetres * off(),
        widthMetres: size.widthMetres * off(),
        heightMetres: size.heightMetres * off(),
      }
    : size;
  return {
    room: engine.createRoom({ size: handed, speedOfSoundMetresPerSecond: speed }),
    places: places.map((place) => ({ ...place })),
    rings,
  };
}

/** Neighbours closer than `apartHz` become one, of the strongest one's mode. @param {Ring[]} rings @param {number} apartHz */
function joined(rings, apartHz) {
  /** @type {Ring[][]} */
  const groups = [];
  for (const ring of rings) {
    const last = groups[groups.length - 1];
    if (last && ring.frequencyHz - last[last.length - 1].frequencyHz < apartHz) last.push(ring);
    else groups.push([ring]);
  }
  return groups.map((group) => {
    const energy = group.map(({ amplitudes }) => rms(amplitudes) ** 2);
    const total = energy.reduce((sum, value) => sum + value, 0);
    return {
      order: group[energy.indexOf(Math.max(...energy))].order,
      frequencyHz: group.reduce((sum, { frequencyHz }, i) => sum + (energy[i] / total) * frequencyHz, 0),
      amplitudes: group[0].amplitudes.map((_, k) => group.reduce((sum, ring) => sum + ring.amplitudes[k], 0)),
      cluster: group.length > 1,
    };
  });
}

const rms = (/** @type {number[]} */ values) =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
const median = (/** @type {number[]} */ values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/**
 * Candidates of every ring of a case, as `diagnose` would have them.
 * @param {any} engine
 * @param {Case} made
 * @param {{ placesKnown?: boolean }} [options]
 */
export function matched(engine, { room, places, rings }, { placesKnown = true } = {}) {
  const known = placesKnown ? places : [];
  const observations = rings.map(({ frequencyHz, amplitudes, cluster }) => ({
    frequencyHz,
    frequencySdHz: 0.1,
    levelDb: 20 * Math.log10(rms(amplitudes)),
    cluster,
    shape: engine.measuredShape(
      {
        frequencyHz,
        decayTimeSeconds: null,
        amplitudes: amplitudes.map(Math.abs),
        amplitudeSd: amplitudes.map(() => 0.02 * rms(amplitudes)),
        phasesRadians: amplitudes.map(
          (a, k) =>
            (a < 0 ? Math.PI : 0) + (known[k] ? 2 * Math.PI * frequencyHz * flight(known[k], room) : 0),
        ),
      },
      room,
      known,
    ),
  }));
  return engine.matchObservations(observations, {
    room,
    modes: engine.candidateModes(room, toHz),
    resolvableSpacingHz: null,
    places: known,
  });
}

const flight = (/** @type {Place} */ { seat, source }, /** @type {any} */ room) =>
  Math.hypot(seat.x - source.x, seat.y - source.y, seat.z - source.z) / room.speedOfSoundMetresPerSecond;

/**
 * @param {any} engine
 * @param {{ seeds: number, placesKnown?: boolean, seats?: number, apartHz?: number, wrong?: boolean, strangers?: number }} params
 */
export function calibrate(engine, { seeds, placesKnown = true, ...params }) {
  const bins = Array.from({ length: 5 }, () => ({ count: 0, right: 0, weight: 0 }));
  let [ridges, sure, none, mostlyNone, surest] = [0, 0, 0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const made = unidealRoom(engine, { seed, ...params });
    matched(engine, made, { placesKnown }).forEach(
      (/** @type {any[]} */ candidates, /** @type {number} */ i) => {
        ridges++;
        const sum = candidates.reduce((all, { weight }) => all + weight, 0);
        const best = candidates[0]?.weight ?? 0;
        if (best >= 0.7) sure++;
        if (best >= 0.7 && String(candidates[0].order) === String(made.rings[i].order)) surest++;
        if (1 - sum > best) none++;
        if (1 - sum > 0.5) mostlyNone++;
        for (const { order, weight } of candidates) {
          const bin = bins[Math.min(4, Math.floor(weight * 5))];
          bin.count++;
          bin.weight += weight;
          if (String(order) === String(made.rings[i].order)) bin.right++;
        }
      },
    );
  }
  return {
    ridges,
    sure: sure / ridges,
    sureAndRight: surest / Math.max(1, sure),
    none: none / ridges,
    mostlyNone: mostlyNone / ridges,
    bins: bins.map(({ count, right, weight }) => ({ count, weight: weight / count, right: right / count })),
  };
}
