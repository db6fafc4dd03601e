import { refusal } from './error-codes.js';

/** Sample rates that are read, Hz: from decimated bass responses to the fastest converters on the market. */
export const lowestSampleRate = 1000;
export const highestSampleRate = 384000;

/** More than any microphone array in use; a greater number in a header is a broken header. */
export const highestChannelCount = 1024;

/** Samples of all channels together that are held in memory: half a gigabyte as 64-bit floats. */
export const highestSampleCount = 2 ** 26;

/** Recordings of one study: 20 seats for 10 sources, before and after, and some. */
export const mostRecordings = 500;

/** Samples that the recordings of one study hold together: a gigabyte as 64-bit floats. */
export const mostStudySamples = 2 ** 27;

/** One period at 100 Hz: from less, nothing can be said about the bass. */
export const shortestSeconds = 0.01;

/** @throws RingdownError `too-long` */
export function requireFits(frames: number, channels: number, sampleRate: number): void {
  if (frames * channels <= highestSampleCount) return;
  throw refusal('too-long', {
    seconds: frames / sampleRate,
    channels,
    limitSeconds: Math.floor(highestSampleCount / channels / sampleRate),
  });
}

/** A recording so far from its source, m, is made close to it; further away the room is as loud as the source. */
export const nearFieldBounds = [0.005, 0.3] as const;
/** Where nobody says how close: half the radius of a cone of 20 cm, below which no microphone comes nearer. m. */
export const nearFieldMetres = 0.05;
