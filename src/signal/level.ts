/** Largest magnitude; 0 for no samples. NaN is passed over. */
export function peakOf(samples: Float64Array): number {
  let peak = 0;
  // By index: an iterator makes an object of every sample until the loop is compiled.
  for (let n = 0; n < samples.length; n++) {
    const magnitude = Math.abs(samples[n]);
    if (magnitude > peak) peak = magnitude;
  }
  return peak;
}

/** The value below which `fraction` of the values lie, linear between ranks. The array is not changed. */
export function quantile(values: Float64Array, fraction: number): number {
  const sorted = values.slice().sort();
  const rank = fraction * (sorted.length - 1);
  const below = Math.floor(rank);
  const low = sorted[below] ?? NaN;
  const high = sorted[below + 1] ?? low;
  return low + (rank - below) * (high - low);
}

/** Mean of the values from one index up to another; 0 where there are none. */
export function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i];
  return to > from ? sum / (to - from) : 0;
}

/** Means of consecutive blocks of whole length; one block over all where there is less than one. */
export function blockMeans(samples: Float64Array, blockSamples: number): Float64Array {
  const length = Math.max(1, Math.min(Math.round(blockSamples), samples.length));
  const means = new Float64Array(Math.floor(samples.length / length));
  for (let block = 0; block < means.length; block++) {
    let sum = 0;
    for (let i = block * length; i < (block + 1) * length; i++) sum += samples[i];
    means[block] = sum / length;
  }
  return means;
}
