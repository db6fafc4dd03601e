/** Signals given by formulas alone, so that the SciPy scripts make the same without sharing a random generator. */

/** mode(f, T, a) of the inputs that break a naive build: a exp(-6.9078 t / T) sin(2 pi f t) from `startSeconds`. */
export function addMode(
  samples: Float64Array,
  sampleRate: number,
  frequencyHz: number,
  decaySeconds: number,
  amplitude = 1,
  startSeconds = 0,
): Float64Array {
  for (let i = Math.ceil(startSeconds * sampleRate); i < samples.length; i++) {
    const t = i / sampleRate - startSeconds;
    samples[i] +=
      amplitude * Math.exp((-6.907755279 * t) / decaySeconds) * Math.sin(2 * Math.PI * frequencyHz * t);
  }
  return samples;
}

/** The signal of tests/reference/grid_reference.py: five modes, a click, and 40 steady tones above the bass. */
export function referenceSignal(sampleRate = 48000, seconds = 2): Float64Array {
  const samples = new Float64Array(Math.round(seconds * sampleRate));
  const onset = Math.round(0.02 * sampleRate);
  const modes = [
    [31.7, 1.1, 0.8],
    [47.3, 0.6, 1],
    [50.9, 0.7, 0.6],
    [88.2, 0.35, 0.9],
    [143.6, 0.25, 0.7],
  ];
  for (const [f, decay, amplitude] of modes)
    addMode(samples, sampleRate, f, decay, amplitude, onset / sampleRate);
  samples[onset] += 3;
  for (let k = 0; k < 40; k++) {
    const w = (2 * Math.PI * 260 * 1.11 ** k) / sampleRate;
    for (let i = 0; i < samples.length; i++) samples[i] += 0.01 * Math.sin(w * i + k);
  }
  return samples;
}
