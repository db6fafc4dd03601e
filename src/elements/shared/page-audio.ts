import type { PageDecoder } from '../../study/decode.js';

/**
 * The browser's own decoder, through a context of the file's rate: a context of another rate would resample without
 * saying so.
 */
export const decodeInPage: PageDecoder = async (bytes, sampleRate) => {
  const context = new OfflineAudioContext(1, 1, sampleRate);
  // The decoder takes the buffer away.
  const buffer = await context.decodeAudioData(bytes.slice().buffer);
  return {
    channels: Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i)),
  };
};
