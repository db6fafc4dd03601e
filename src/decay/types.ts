/** `sliding`: a window slid along, labelled by its centre. `cumulative`: a fixed right edge, labelled by its left edge. */
export type GridMethod = 'sliding' | 'cumulative' | 'constant-q';

export interface GridParams {
  readonly method: GridMethod;
  /** Full length of the Hann window of a sliding slice; of the fade-in of a cumulative one. */
  readonly windowSeconds: number;
  readonly stepSeconds: number;
  /** From the onset (time zero of the picture) to the last slice. */
  readonly spanSeconds: number;
  /** Any ascending list. */
  readonly frequenciesHz: Float64Array;
}

/** What a view cannot show, as data, so that it is drawn as such. */
export interface GridLimits {
  /** The window's own decay: seconds its response to one impulse takes to fall 60 dB. */
  readonly windowDecaySeconds: number;
  /** Two ridges closer than this are one in this picture (about 2 / window for Hann), per frequency, Hz. */
  readonly resolutionHz: Float32Array;
  /** Noise floor as it shows in this grid, dB relative to the grid's reference, per frequency; -300 if none was found. */
  readonly noiseFloorDb: Float32Array;
  /** Last time, from the onset, at which a slice rests wholly on data. */
  readonly dataEndSeconds: number;
  /** Per slice: the lowest frequency that means anything (cumulative: 1 / time left), Hz. */
  readonly lowestHz: Float32Array;
}

/** Level over time and frequency. `levelsDb[t * frequenciesHz.length + f]`. */
export interface Grid {
  readonly method: GridMethod;
  readonly windowSeconds: number;
  readonly stepSeconds: number;
  readonly frequenciesHz: Float64Array;
  /** From the onset. */
  readonly timesSeconds: Float64Array;
  /** dB relative to the loudest point of the first slice at time zero. */
  readonly levelsDb: Float32Array;
  /** The level of that point re full scale of the file: 20 log10 of the amplitude of a sine that would read the same. */
  readonly referenceDbFs: number;
  readonly limits: GridLimits;
}

/** Usable decay range of one third-octave band (IEC 61260-1 edges): its peak over its own noise floor. */
export interface BandRange {
  readonly centreHz: number;
  readonly fromHz: number;
  readonly toHz: number;
  readonly rangeDb: number;
}
