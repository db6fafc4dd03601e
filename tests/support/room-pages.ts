import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';

/** Pages with an invented room of two sources and two seats, for suites that look at pictures. */
const size = { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 };
const sources = { A: [0.5, 0.4, 0.3], B: [5.1, 3.5, 0.3] } as const;
const seats = { desk: [3.7, 3, 1.2], sofa: [4.6, 1.9, 1.2] } as const;
type Source = keyof typeof sources;
type Seat = keyof typeof seats;

function wav(source: Source, seat: Seat, absorption = 0.3): Uint8Array {
  const at = ([x, y, z]: readonly [number, number, number]) => ({ x, y, z });
  const { samples } = synthesise({
    ...{ room: createRoom({ size, absorption }), seat: at(seats[seat]), source: at(sources[source]) },
    ...{ noiseDb: -60, sampleRate: 8000, seconds: 1.6, seed: seat.length + (source === 'A' ? 10 : 20) },
  });
  return encodeWav({ channels: [samples], sampleRate: 8000, encoding: 'float-32' });
}

/** The files that the recordings below name. */
export const roomFiles = (): Record<string, Uint8Array> => ({
  'A-desk.wav': wav('A', 'desk'),
  'A-sofa.wav': wav('A', 'sofa'),
  'B-desk.wav': wav('B', 'desk'),
  'B-sofa.wav': wav('B', 'sofa'),
  'treated.wav': wav('A', 'desk', 0.5),
});

const recording = (source: Source, seat: Seat): string =>
  `<ringdown-recording src="/${source}-${seat}.wav" label="Source ${source}, ${seat}" clock="common" seat="${seat}" source="${source}"></ringdown-recording>`;

/** Recordings of a study: one, of every source at every seat, and of one seat before and after the walls took up more. */
export const recordings = {
  one: recording('A', 'desk'),
  several: [
    recording('A', 'desk'),
    recording('A', 'sofa'),
    recording('B', 'desk'),
    recording('B', 'sofa'),
  ].join(''),
  stages: (['before', 'after'] as const)
    .map(
      (stage) =>
        `<ringdown-recording src="/${stage === 'before' ? 'A-desk' : 'treated'}.wav" label="Desk, ${stage}" seat="desk" source="A" stage="${stage}"></ringdown-recording>`,
    )
    .join(''),
} as const;

const places = [...Object.entries(seats), ...Object.entries(sources)]
  .map(
    ([name, at]) =>
      `<ringdown-place kind="${name in seats ? 'seat' : 'source'}" name="${name}" at="${at.join(' ')}"></ringdown-place>`,
  )
  .join('');

/** @param tags Elements by their names without the prefix, each with its attributes. */
export const studyOf = (of: keyof typeof recordings, tags: readonly string[]): string =>
  `<ringdown-study room="5.6x3.9x2.7" no-files no-choices>${places}${recordings[of]}${tags.map((tag) => `<ringdown-${tag}></ringdown-${tag.split(' ')[0]}>`).join('')}</ringdown-study>`;

/** Waits, in the page, until every study is read and nothing is being worked out. */
export function allReady(): boolean {
  const found = [...document.querySelectorAll('ringdown-study')];
  const ready = found.every(
    (one) => 'snapshot' in one && (one.snapshot as { status: string } | null)?.status === 'ready',
  );
  return ready && document.querySelectorAll(':state(busy)').length === 0;
}
