import { fixture } from '@open-wc/testing';
import type { RingdownStudy } from '../../src/elements/study/study.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/wav-write.js';
import { waitUntil } from './support.js';

const size = { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 };
const sources = { A: { x: 0.3, y: 0.3, z: 0.3 }, B: { x: 5.3, y: 3.8, z: 0.3 } };
const seats = {
  desk: { x: 3.6, y: 1.5, z: 1.2 },
  sofa: { x: 4.6, y: 1.2, z: 1.2 },
  guest: { x: 3.9, y: 2.5, z: 1.2 },
};

const addresses = new Map<string, string>();

/** An impulse response of the room; made once. */
function address(source: keyof typeof sources, seat: keyof typeof seats, absorption: number): string {
  const key = `${source} ${seat} ${absorption}`;
  let found = addresses.get(key);
  if (!found) {
    const room = createRoom({ size, absorption });
    const { samples } = synthesise({
      ...{ room, source: sources[source], seat: seats[seat], sampleRate: 4000, seconds: 1.2, noiseDb: -60 },
      seed: seat.length + (source === 'A' ? 10 : 20),
    });
    const bytes = encodeWav({ channels: [samples], sampleRate: 4000, encoding: 'float-32' });
    found = URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'audio/wav' }));
    addresses.set(key, found);
  }
  return found;
}

export interface SystemPage {
  readonly style?: string;
  readonly lang?: string;
  readonly clock?: 'common' | 'none';
  /** Points left out, as "B sofa". */
  readonly missing?: readonly string[];
  readonly named?: boolean;
  readonly stages?: readonly ('before' | 'after')[];
}

/** A study with two sources at three seats, and one view. */
export async function systemPage(tag: string, page: SystemPage = {}): Promise<RingdownStudy> {
  const { style = '', lang = 'en', clock = 'common', missing = [], named = true, stages = ['before'] } = page;
  const recordings = stages.flatMap((stage) =>
    (['A', 'B'] as const).flatMap((source) =>
      (['desk', 'sofa', 'guest'] as const)
        .filter((seat) => !missing.includes(`${source} ${seat}`))
        .map((seat, k) => {
          const at = (p: { x: number; y: number; z: number }): string => `${p.x} ${p.y} ${p.z}`;
          const label = `src${source === 'A' ? 1 : 2}_seat${k + 1}_${stage}`;
          const places = named
            ? `seat="${at(seats[seat])}" source="${at(sources[source])}" stage="${stage}"`
            : '';
          return `<ringdown-recording clock="${clock}" src="${address(source, seat, stage === 'after' ? 0.2 : 0.1)}" label="${label}" ${places}></ringdown-recording>`;
        }),
    ),
  );
  const box = await fixture(
    `<div style="${style}" lang="${lang}"><ringdown-study room="5.6x4.1x2.6" no-files>${recordings.join('')}<${tag}></${tag}></ringdown-study></div>`,
  );
  const study = box.querySelector('ringdown-study')!;
  await waitUntil(
    () => study.snapshot.recordings.length === recordings.length && !study.snapshot.progress,
    'the recordings',
    { timeout: 40000 },
  );
  return study;
}
