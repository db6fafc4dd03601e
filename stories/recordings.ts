/** Impulse responses for the stories, made here: each story shows the same with no server behind it. */
interface Mode {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
  readonly amplitude: number;
  /** Of the sine at the onset, radians. */
  readonly phase?: number;
}

const sampleRate = 8000;

/** A small generator (mulberry32), so that every visit sees the same noise. */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

/** A float WAV file of decaying tones with an onset after 50 ms, and noise 70 dB down where no other amplitude is given. */
function wavOf(modes: readonly Mode[], seconds = 2, noiseAmplitude = 3e-4): ArrayBuffer {
  const frames = Math.round(seconds * sampleRate);
  const bytes = new ArrayBuffer(44 + 4 * frames);
  const view = new DataView(bytes);
  const text = (at: number, value: string): void =>
    [...value].forEach((letter, k) => view.setUint8(at + k, letter.charCodeAt(0)));
  text(0, 'RIFF');
  view.setUint32(4, 36 + 4 * frames, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 3, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 4 * sampleRate, true);
  view.setUint16(32, 4, true);
  view.setUint16(34, 32, true);
  text(36, 'data');
  view.setUint32(40, 4 * frames, true);
  const onset = Math.round(0.05 * sampleRate);
  const random = noise(7);
  for (let n = 0; n < frames; n += 1) {
    const t = (n - onset) / sampleRate;
    let sample = noiseAmplitude * random();
    if (t >= 0)
      for (const { frequencyHz, decayTimeSeconds, amplitude, phase = 0 } of modes)
        // ln 1000: the amplitude falls 60 dB in the decay time.
        sample +=
          amplitude *
          Math.exp((-Math.LN10 * 3 * t) / decayTimeSeconds) *
          Math.sin(2 * Math.PI * frequencyHz * t + phase);
    view.setFloat32(44 + 4 * n, sample, true);
  }
  return bytes;
}

const addressOf = (bytes: ArrayBuffer): string =>
  URL.createObjectURL(new Blob([bytes], { type: 'audio/wav' }));

const wellTreated: Mode[] = [31.8, 41.9, 52.6, 63.6, 67.2, 76.1, 83.7, 95.3, 104.8, 118.2, 131].map(
  (frequencyHz, k) => ({ frequencyHz, decayTimeSeconds: 0.28 - 0.006 * k, amplitude: 0.1 + 0.03 * (k % 3) }),
);

/** A room of 5.4 x 4.1 x 2.7 m (invented) whose first length mode hangs. */
export const slowRoom = (): string =>
  addressOf(
    wavOf(
      wellTreated.map((mode, k) =>
        k === 0
          ? { ...mode, decayTimeSeconds: 1.3, amplitude: 0.3 }
          : k === 4
            ? { ...mode, decayTimeSeconds: 0.9 }
            : { ...mode, decayTimeSeconds: 0.4 },
      ),
    ),
  );

/** The same room, treated. */
export const treatedRoom = (): string => addressOf(wavOf(wellTreated));

/** No recording at all. */
export const brokenFile = (): string => addressOf(new TextEncoder().encode('This is a letter.').buffer);

export const roomSize = '5.4x4.1x2.7';

/** Ends while it still sounds. */
export const shortFile = (): string => addressOf(wavOf(wellTreated, 0.25));

/** Hardly out of its own noise. */
export const noisyFile = (): string =>
  addressOf(wavOf(wellTreated.map((mode) => ({ ...mode, amplitude: mode.amplitude * 0.004 }))));

/** More ridges than a room has: some hundred resonances that ring for five seconds. */
export const crowdedFile = (): string => {
  const random = noise(2);
  const count = 120;
  return addressOf(
    wavOf(
      Array.from({ length: count }, (_, k) => ({
        frequencyHz: 22 + (178 * (k + 0.17 * (1 + random()))) / count,
        decayTimeSeconds: 5 + random(),
        amplitude: 0.025 + 0.005 * random(),
        phase: Math.PI * random(),
      })),
      7,
      1e-5,
    ),
  );
};
