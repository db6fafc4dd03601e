import { containerOf, flacContainer, flacHeader, RingdownError, sofaContainer } from '../signal/index.js';
import type { DecodedAudio } from '../signal/index.js';
import { readSofaApart } from './pool/sofa.js';
import * as maths from '../signal/maths.js';

/** What a browser's own decoder made of a file, at the file's own rate. */
export interface PageAudio {
  readonly channels: readonly Float32Array[];
}

/** Decodes bytes at a rate, without resampling; of the page, since the study knows none. */
export type PageDecoder = (bytes: Uint8Array, sampleRate: number) => Promise<PageAudio>;

export interface DecodeOptions {
  readonly measurement?: number | undefined;
  readonly decoder?: PageDecoder | undefined;
  readonly signal?: AbortSignal | undefined;
}

/**
 * The audio of files that the engine cannot open by itself: AES69 (SOFA) by its own worker, FLAC by the page's decoder.
 * Null for all others, which are the engine's to read or to refuse.
 *
 * @throws RingdownError those of `readSofaApart`, `flac-header`, `container-decode`
 */
export async function decodeApart(bytes: Uint8Array, options: DecodeOptions): Promise<DecodedAudio | null> {
  const container = containerOf(bytes);
  const { decoder, measurement, signal } = options;
  if (container === sofaContainer) return readSofaApart(bytes, { measurement, signal });
  if (container !== flacContainer || !decoder) return null;
  const { sampleRate, bits, frames, channels: count } = flacHeader(bytes);
  const { channels } = await decoder(bytes, sampleRate).catch((thrown: unknown) => {
    const detail = thrown instanceof Error ? thrown.message || thrown.name : String(thrown);
    throw new RingdownError('container-decode', { container, detail: detail.slice(0, 120) });
  });
  // A decoder that resampled or trimmed gives another number of samples than the file holds.
  const got = channels[0]?.length ?? 0;
  if (channels.length !== count || (frames !== null && got !== frames))
    throw new RingdownError('container-decode', { container, detail: `${got} of ${frames ?? 0} samples` });
  return {
    sampleRate,
    channels: channels.map((samples) => wholeSteps(samples, bits)),
    encoding: `FLAC ${bits}`,
    notes: [],
  };
}

/**
 * The integers of the file again. Some browsers divide positive samples by one step less than full scale, and negative
 * ones by full scale: an error of half a step per full scale, which at 16 bits would be a distortion at -90 dB.
 */
function wholeSteps(samples: Float32Array, bits: number): Float64Array {
  const fullScale = maths.power(2, bits - 1);
  const offSteps = (scale: number): number => {
    let sum = 0;
    for (const value of samples) if (value > 0) sum += Math.abs(value * scale - Math.round(value * scale));
    return sum;
  };
  const positive = offSteps(fullScale) <= offSteps(fullScale - 1) ? fullScale : fullScale - 1;
  return Float64Array.from(
    samples,
    (value) => Math.round(value * (value > 0 ? positive : fullScale)) / fullScale,
  );
}
