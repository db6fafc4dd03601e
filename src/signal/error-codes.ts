import { RingdownError } from './errors.js';
import type { ParamValue } from './types.js';

/**
 * Every cause for which `signal/` refuses an input, with the names of its parameters: one code per cause. The sentences
 * are in `words/`, which is checked for completeness against this list.
 */
export const signalErrorParams = {
  /** The file has no bytes. */
  'file-empty': [],
  /** More samples than are held in memory. `limitSeconds` is what would fit at this rate and channel count. */
  'too-long': ['seconds', 'channels', 'limitSeconds'],
  /** Shorter than any answer about the bass could rest on. */
  'too-short': ['seconds', 'samples', 'neededSeconds'],
  /** A readable file without a single sample in it. */
  'no-samples': [],
  /** Every sample of every channel is the same number. */
  silent: ['channels'],
  /** The channel to be read holds NaN or infinity; `firstSeconds` is where the first is. */
  'not-finite': ['channel', 'count', 'firstSeconds'],
  /** A channel was asked for that the file does not have. `channel` as asked, 1-based; `count` those there are. */
  'channel-range': ['channel', 'count'],
  /** Several channels, and each holds over 90 % of its energy within 2 ms, as a loopback does. */
  'only-loopback': ['count'],
  /** A sample rate, given with samples, outside what is read. Hz. */
  rate: ['rate', 'lowest', 'highest'],
  /** Channels of different lengths were given. */
  'lengths-differ': ['channel', 'samples', 'expected'],

  /** The file does not begin as a WAV file does; `found` is its first four bytes as text. */
  'wav-not-riff': ['found'],
  /** A RIFF file of another kind; `found` is its form type. */
  'wav-not-wave': ['found'],
  /** RIFX: big-endian samples. */
  'wav-big-endian': [],
  /** The file ends within its first twelve bytes, or within its format chunk. */
  'wav-truncated-header': ['bytes'],
  /** No `fmt ` chunk. */
  'wav-no-format': [],
  /** A `fmt ` chunk too small for what it announces. */
  'wav-format-short': ['bytes', 'needed'],
  /** No `data` chunk. */
  'wav-no-data': [],
  /** Compressed or unknown samples; `codec` is a name of the trade or the format tag, `tag` the number. */
  'wav-codec-unsupported': ['codec', 'tag'],
  /** A word length that is not read; `encoding` is `pcm` or `float`. */
  'wav-bits': ['bits', 'encoding'],
  /** A sample rate outside what is read. Hz. */
  'wav-rate': ['rate', 'lowest', 'highest'],
  /** A channel count of zero, or beyond what is read. */
  'wav-channels': ['channels', 'highest'],
  /** Bytes per frame that fit neither channels nor word length. */
  'wav-frame-size': ['frameBytes', 'channels', 'bits'],

  /** A container that is known but not read here; `container` is its name in the trade. */
  'container-unread': ['container'],
  /** FLAC, which a browser decodes and this place does not. */
  'container-browser': ['container'],
  /** A lossy or otherwise unfit container; `container` is its name in the trade. */
  'container-lossy': ['container'],
  /** The browser could not decode what it was given. */
  'container-decode': ['container', 'detail'],
  /** A FLAC file without its first block of metadata. */
  'flac-header': [],

  /** A parameter of a sweep outside what is made. */
  'sweep-bounds': ['name', 'value', 'from', 'to'],
  /** The recording ends before its sweep does. */
  'sweep-recording-short': ['seconds', 'neededSeconds'],
  /** A sweep whose frequency does not rise by a constant ratio per second. */
  'sweep-not-exponential': [],
  /** Recording and sweep of different rates. Hz. */
  'sweep-rate': ['rate', 'sweepRate'],

  /** HDF5 that is no AES69 file, or that the reader cannot follow; `detail` is its own words. */
  'sofa-unreadable': ['detail'],
  /** An HDF5 file without the attributes and data of AES69. */
  'sofa-not': [],
  /** Data of another type than impulse responses. */
  'sofa-data-type': ['dataType'],
  /** Measured without a room. */
  'sofa-free-field': ['conventions'],
  /** A measurement was asked for that the file does not have. 1-based. */
  'sofa-measurement': ['measurement', 'count'],
  /** A measurement was asked for of a file that holds one response per channel only. */
  'measurement-none': ['measurement'],
  /** Stopped after so long. */
  'sofa-slow': ['seconds'],
  /** No worker can be made here to read it in. */
  'sofa-worker': [],
  /** A SOFA file where only files that need no reader of their own are opened. */
  'sofa-apart': [],

  /** A line of a text file is no number, or has another count of columns; 1-based. */
  'text-line': ['line', 'text'],
  /** More text than a response or a microphone takes. */
  'text-too-large': ['megabytes', 'mostMegabytes'],
  /** More than two columns. */
  'text-columns': ['columns', 'line'],
  /** Commas that may part columns or mark decimals. */
  'text-ambiguous': [],
  /** Times that are not evenly spaced, from this line on. */
  'text-times-uneven': ['line'],
  /** One column, and no sample rate given. */
  'text-rate-needed': [],
  /** The rate given and that in the header differ. Hz. */
  'file-rate-differs': ['rate', 'found'],
  /** The rate given and that of the times differ. Hz. */
  'text-rate-differs': ['rate', 'found'],

  /** No two lines of frequency and level in the text of a microphone. */
  'microphone-none': ['lines'],
  /** Neither two columns nor three. */
  'microphone-columns': ['columns', 'line'],
  /** A frequency that does not lie above the one before it. Hz, 1-based. */
  'microphone-order': ['frequencyHz', 'line'],
  /** A level that no microphone has, dB. */
  'microphone-level': ['levelDb', 'mostDb', 'line'],
  /** A calibration that no input has, dB re 20 µPa at full scale. */
  'calibration-range': ['fullScaleDb', 'lowest', 'highest'],

  /** Samples above full scale cannot be written in an integer format without clipping. */
  'write-clips': ['peak', 'encoding'],
  /** NaN or infinity cannot be written. */
  'write-not-finite': ['channel'],
} as const satisfies Record<string, readonly string[]>;

export type SignalErrorCode = keyof typeof signalErrorParams;
export type SignalErrorParams<C extends SignalErrorCode> = {
  readonly [P in (typeof signalErrorParams)[C][number]]: ParamValue;
};

/** The error for a cause of the list above, its parameters checked by the compiler. */
export function refusal<C extends SignalErrorCode>(code: C, params: SignalErrorParams<C>): RingdownError {
  return new RingdownError(code, { ...(params as Record<string, ParamValue>) });
}
