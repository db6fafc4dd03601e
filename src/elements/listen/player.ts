import type { HeardKind, Listened } from '../../study/listen.js';

/** From one sound to another, and to silence, s: long enough not to click. */
const fadeSeconds = 0.03;

/** Makes a context where the browser has such; null where it has none or refuses. Called in a user's gesture. */
export function newContext(): AudioContext | null {
  try {
    return typeof AudioContext === 'undefined' ? null : new AudioContext({ latencyHint: 'playback' });
  } catch {
    return null;
  }
}

/**
 * Plays the sounds of one rendering beside each other, round and round, and lets one of them be heard: so another is heard
 * at the same place of the music at once. Owns its context, which ends with it.
 */
export class Player {
  readonly #context: AudioContext;
  readonly #volume: GainNode;
  readonly #gains = new Map<HeardKind, GainNode>();
  #sources: AudioBufferSourceNode[] = [];
  #seconds = 0;
  #began = 0;
  #closed = false;

  constructor(context: AudioContext) {
    this.#context = context;
    this.#volume = context.createGain();
    this.#volume.gain.value = 0;
    this.#volume.connect(context.destination);
    void context.resume().catch(() => undefined);
  }

  /** Whether the browser lets it sound: some wait for a key or a press. */
  get running(): boolean {
    return this.#context.state === 'running';
  }

  get position(): number {
    if (this.#seconds === 0) return 0;
    return Math.max(0, this.#context.currentTime - this.#began) % this.#seconds;
  }

  start({ heard, sampleRate, seconds }: Listened, chosen: HeardKind): void {
    if (this.#closed) return;
    this.#drop();
    const context = this.#context;
    const at = context.currentTime + 0.05;
    for (const { kind, samples } of heard) {
      const buffer = context.createBuffer(1, samples.length, sampleRate);
      buffer.getChannelData(0).set(samples);
      const source = context.createBufferSource();
      source.buffer = buffer;
      source.loop = true;
      const gain = context.createGain();
      gain.gain.value = kind === chosen ? 1 : 0;
      source.connect(gain).connect(this.#volume);
      source.start(at);
      this.#sources.push(source);
      this.#gains.set(kind, gain);
    }
    this.#seconds = seconds;
    this.#began = at;
  }

  choose(chosen: HeardKind): void {
    for (const [kind, gain] of this.#gains) this.#fade(gain, kind === chosen ? 1 : 0);
  }

  /** @param gain 0 is muted; 1 is the level of the rendering, and no more than that is possible. */
  set volume(gain: number) {
    this.#fade(this.#volume, Math.min(1, Math.max(0, gain)));
  }

  #fade({ gain }: GainNode, to: number): void {
    if (this.#closed) return;
    const now = this.#context.currentTime;
    gain.cancelScheduledValues(now);
    gain.setValueAtTime(gain.value, now);
    gain.linearRampToValueAtTime(to, now + fadeSeconds);
  }

  #drop(): void {
    for (const source of this.#sources) {
      source.stop();
      source.disconnect();
    }
    this.#sources = [];
    this.#gains.clear();
  }

  /** Silence at once, and the browser's audio is given back. */
  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    this.#volume.disconnect();
    this.#drop();
    void this.#context.close().catch(() => undefined);
  }
}
