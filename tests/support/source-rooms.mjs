/** Seeded rooms with bass sources and seats, for the figures of the optimiser. Invented; nothing measured. */

/** @param {{ uniform(): number }} rng */
const between = (rng, from, to) => from + (to - from) * rng.uniform();

/**
 * A room of 35 to 130 m3, sources on the floor along its walls and seats on a grid about its middle.
 *
 * @param {{ Rng: new (seed: number) => { uniform(): number } }} engine
 */
export function sourceRoom({ Rng }, seed, sourceCount = 4, seatCount = 9) {
  const rng = new Rng(1000 + seed);
  const size = {
    lengthMetres: between(rng, 4.4, 8),
    widthMetres: between(rng, 3.4, 5.8),
    heightMetres: between(rng, 2.35, 3.2),
  };
  const absorption = Array.from({ length: 6 }, () => between(rng, 0.06, 0.22));
  const { lengthMetres: l, widthMetres: w } = size;
  const sources = Array.from({ length: sourceCount }, (_, k) => {
    const along = between(rng, 0.3, k % 2 ? w - 0.3 : l - 0.3);
    const wall = Math.floor(k / 2) % 2;
    return k % 2
      ? { x: wall ? l - 0.3 : 0.3, y: along, z: 0.25 }
      : { x: along, y: wall ? w - 0.3 : 0.3, z: 0.25 };
  });
  const across = Math.ceil(Math.sqrt(seatCount));
  const seats = Array.from({ length: seatCount }, (_, k) => ({
    x: l * 0.42 + (Math.floor(k / across) * l * 0.36) / Math.max(1, across - 1),
    y: w * 0.28 + ((k % across) * w * 0.44) / Math.max(1, across - 1),
    z: 1.2,
  }));
  return { size, absorption, sources, seats };
}

/** Responses of all sources at all seats from the synthesiser, and the ridges of the room as they are. */
export function sourceMatrix(engine, room, frequenciesHz, { noiseDb = -60, seed = 1 } = {}) {
  const { createRoom, recordingFromSamples, synthesise, transferMatrix, sharedRidges } = engine;
  const made = createRoom({ size: room.size, absorption: room.absorption });
  const modes = [];
  const grid = room.sources.map((source, s) =>
    room.seats.map((seat, k) => {
      const params = { room: made, seat, source, sampleRate: 2000, seconds: 1.5, noiseDb };
      const synthesis = synthesise({ ...params, seed: seed * 1000 + s * 100 + k });
      modes.push(synthesis.modes);
      const options = { seat, source, timeReference: 'common' };
      return {
        ...recordingFromSamples(synthesis.samples, 2000, options),
        onsetSeconds: synthesis.onsetSeconds,
      };
    }),
  );
  const recordings = grid.flat();
  const indices = grid.map((seats, s) => seats.map((_, k) => s * seats.length + k));
  // The synthesiser's own modes in the form of a fit: what a perfect one would tell.
  const resonances = modes[0]
    .map((mode, m) => ({
      frequencyHz: mode.frequencyHz,
      decayTimeSeconds: mode.decayTimeSeconds,
      kind: 'resolved',
      amplitudes: modes.map((list) => list[m].amplitude),
      phasesRadians: modes.map((list) => list[m].phaseRadians),
    }))
    .filter(({ frequencyHz }) => frequencyHz <= frequenciesHz[frequenciesHz.length - 1]);
  const ridges = sharedRidges(resonances, recordings, indices);
  const job = transferMatrix(grid, frequenciesHz);
  for (;;) {
    const step = job.next();
    if (step.done) return { matrix: step.value, ridges, recordings, indices };
  }
}
