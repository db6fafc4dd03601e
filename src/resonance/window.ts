/** Shortest and longest span of decay that is looked at. s. */
const shortestSeconds = 0.35;
const longestSeconds = 1.6;

/** Last time at which the energy of 50 ms stands above two and a half times the floor's. s. */
function lastAboveFloor(samples: Float64Array, sampleRate: number, floorVariance: number): number {
  const width = Math.max(1, Math.floor(0.05 * sampleRate));
  let sum = 0;
  let last = 0;
  for (let n = 0; n < samples.length; n++) {
    sum += samples[n] ** 2;
    if (n >= width) sum -= samples[n - width] ** 2;
    if (sum / width > 2.5 * floorVariance) last = n - width / 2;
  }
  return Math.max(0, last) / sampleRate;
}

export interface FitWindow {
  /** The decay of interest ends here; the start values rest on it. s. */
  readonly decaySeconds: number;
  /** Samples in the fit: a quarter more and 0.1 s, so that the fit sees the floor. */
  readonly count: number;
}

/**
 * @param channels All of one rate; the shortest decides what there is.
 * @param floorVariances Per channel, of the samples.
 */
export function fitWindow(
  channels: readonly Float64Array[],
  sampleRate: number,
  floorVariances: readonly number[],
): FitWindow {
  const available = Math.min(...channels.map((samples) => samples.length));
  let decay = 0;
  channels.forEach((samples, c) => {
    decay = Math.max(decay, lastAboveFloor(samples, sampleRate, floorVariances[c]));
  });
  const decaySeconds = Math.min(Math.max(decay, shortestSeconds), available / sampleRate, longestSeconds);
  const wanted = Math.min(1.25 * decaySeconds + 0.1, longestSeconds + 0.2);
  return { decaySeconds, count: Math.min(available, Math.floor(wanted * sampleRate)) };
}
