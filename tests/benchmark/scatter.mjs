/**
 * How fits of single recordings scatter about the joint fit of all of them, in their stated uncertainties. Each resonance of
 * a single fit is held against the strongest of the joint fit, in that recording, that lies within half its bandwidth or two
 * of its standard deviations.
 */

/** @typedef {import('../../src/resonance/types.js').Resonance} Resonance */
/**
 * @typedef {{ recording: number, frequencyHz: number, frequencySdHz: number, decaySeconds: number, decaySdSeconds: number,
 *   jointHz: number | null, jointSeconds: number | null, zFrequency: number, zDecay: number }} Row
 */

/**
 * @param {readonly Resonance[]} joint
 * @param {readonly (readonly Resonance[])[]} singles per recording
 * @param {number} fromHz
 * @param {number} toHz
 * @returns {Row[]}
 */
export function scatterOf(joint, singles, fromHz, toHz) {
  const rings = (/** @type {Resonance} */ one) => one.kind !== 'hum' && one.kind !== 'source';
  return singles.flatMap((single, c) =>
    single
      .filter((one) => rings(one) && one.frequencyHz >= fromHz && one.frequencyHz <= toHz)
      .map((one) => {
        const { frequencyHz, frequencySdHz } = one;
        const decaySeconds = one.decayTimeSeconds ?? NaN;
        const decaySdSeconds = one.decayTimeSdSeconds ?? NaN;
        const width = Math.log(1000) / Math.PI / decaySeconds;
        const [found] = joint
          .filter(rings)
          .filter(
            (other) => Math.abs(other.frequencyHz - frequencyHz) < Math.max(width / 2, 2 * frequencySdHz),
          )
          .sort((a, b) => b.levelsDb[c] - a.levelsDb[c]);
        const row = { recording: c + 1, frequencyHz, frequencySdHz, decaySeconds, decaySdSeconds };
        if (!found)
          return { ...row, jointHz: null, jointSeconds: null, zFrequency: Infinity, zDecay: Infinity };
        const late = found.decayTimeSeconds ?? NaN;
        const times = [late, ...(found.decayTimeEarlySeconds === null ? [] : [found.decayTimeEarlySeconds])];
        const away = (/** @type {number} */ t) => Math.abs(Math.log(t / decaySeconds));
        const jointSeconds = times.sort((a, b) => away(a) - away(b))[0];
        const relative = Math.hypot(decaySdSeconds / decaySeconds, (found.decayTimeSdSeconds ?? NaN) / late);
        return {
          ...row,
          jointHz: found.frequencyHz,
          jointSeconds,
          zFrequency: (frequencyHz - found.frequencyHz) / Math.hypot(frequencySdHz, found.frequencySdHz),
          zDecay: Math.log(decaySeconds / jointSeconds) / relative,
        };
      }),
  );
}
