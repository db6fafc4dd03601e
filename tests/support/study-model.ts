import { createRoom, type Room } from '../../src/room/index.js';
import { RingdownError, Rng } from '../../src/signal/index.js';
import type { Pool, RunOptions } from '../../src/study/pool.js';
import { createStudy, defaultChoices } from '../../src/study/study.js';
import type { Part, Study, StudyChoices, StudySnapshot } from '../../src/study/types.js';

/** One thing that is done to a study; numbers are taken modulo what there is. */
export type Step = readonly [kind: string, a: number, b: number];

const parts: readonly Part[] = ['responses', 'ridgeFit', 'prediction', 'pressure'];

const kinds: readonly (readonly [string, number])[] = [
  ...([
    ['add', 10],
    ['add-bad', 3],
    ['remove', 8],
    ['remove-gone', 1],
    ['clear', 1],
    ['active', 8],
  ] as const),
  ...([
    ['room', 6],
    ['choices', 10],
    ['wrong-choices', 2],
    ['cursor', 3],
    ['ridge', 4],
    ['resonance', 3],
  ] as const),
  ...([
    ['need', 5],
    ['let-go', 5],
    ['place', 2],
    ['answer', 25],
    ['crash', 3],
    ['turn', 8],
    ['settle', 4],
  ] as const),
];

export function stepsOf(seed: number, count: number): Step[] {
  const rng = new Rng(seed);
  const all = kinds.reduce((sum, [, weight]) => sum + weight, 0);
  return Array.from({ length: count }, (): Step => {
    let left = rng.uniform() * all;
    const kind = kinds.find(([, weight]) => (left -= weight) < 0) ?? kinds[0];
    return [kind[0], Math.floor(rng.uniform() * 1000), Math.floor(rng.uniform() * 1000)];
  });
}

interface Asked {
  readonly type: string;
  readonly params: Record<string, never>;
  readonly answer: () => void;
  readonly crash: () => void;
}

/** What a job would make, with what it was made of written on it. */
function madeOf(type: string, params: Record<string, unknown>): unknown {
  const recording = (params.recording ?? (params.recordings as unknown[] | undefined)?.[0]) as
    { readonly hash: string } | undefined;
  if (type === 'open') {
    const { bytes, options } = params as { bytes: Uint8Array; options: { label: string } };
    if (bytes[0] === 0) throw new RingdownError('silent', { channels: 1 });
    const { label } = options;
    return {
      ...{ samples: new Float64Array(8), sampleRate: 8000, channel: 1, channelCount: 1, onsetSeconds: 0 },
      ...{
        label,
        hash: `h${bytes[0]}`,
        stage: '',
        seat: null,
        source: null,
        notes: [],
        timeReference: 'none',
      },
    };
  }
  const of = recording?.hash;
  if (type === 'interpret') {
    const { diagnosis } = params as { diagnosis: { room: Room | null; limit: string; fromHz: number } };
    const ridges = [40, 60, 90].map((frequencyHz, resonance) => ({
      ...{ frequencyHz, resonance, decayTimeSeconds: 1, decayTimeSdSeconds: 0.1, candidates: [] },
    }));
    const resonances = ridges.map(({ frequencyHz }) => ({
      frequencyHz,
      decayTimeSeconds: 1,
      decayTimeSdSeconds: 0.1,
    }));
    return { of, params: diagnosis, ridges, resonances, fit: { of }, files: [] };
  }
  if (type === 'predict') return { of: params.room, modes: [{ order: [1, 0, 0], frequencyHz: 34 }] };
  if (type === 'pressure') return { of: params.room };
  return { of, params: params.grid ?? params.response ?? params.fit ?? null };
}

/** A pool that answers when it is told to, in any order, or not at all. */
function slowPool(): Pool & { readonly asked: Asked[] } {
  const asked: Asked[] = [];
  const known = new Map<string, unknown>();
  const run = (type: string, params: Record<string, never>, options: RunOptions = {}): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const leave = (): void => {
        const at = asked.indexOf(one);
        if (at >= 0) asked.splice(at, 1);
      };
      const one: Asked = {
        type,
        params,
        answer() {
          leave();
          try {
            const made = madeOf(type, params);
            if (options.key) known.set(type + options.key, made);
            resolve(made);
          } catch (error) {
            reject(error instanceof Error ? error : new Error(String(error)));
          }
        },
        crash() {
          leave();
          reject(new RingdownError('worker-crashed'));
        },
      };
      options.signal?.addEventListener('abort', () => {
        leave();
        reject(new RingdownError('cancelled'));
      });
      if (options.signal?.aborted) reject(new RingdownError('cancelled'));
      else asked.push(one);
    });
  return {
    asked,
    way: 'main',
    run: run as unknown as Pool['run'],
    peek: ((type: string, key: string) => known.get(type + key)) as Pool['peek'],
    dispose: () => undefined,
  };
}

const roomOf = (a: number): Room | null =>
  a % 4 === 0 ? null : createRoom({ size: { lengthMetres: 4 + (a % 3), widthMetres: 4, heightMetres: 2.5 } });

const someChoices = (a: number): Partial<StudyChoices> =>
  [
    { rangeDb: 30 + (a % 3) * 10 },
    { windowSeconds: [0.2, 0.3, 0.5][a % 3] },
    { limit: (['audibility', 'target', 'neighbours'] as const)[a % 3] },
    { toHz: [150, 200, 250][a % 3] },
    { ...defaultChoices },
  ][a % 5];

/** What a study is to be, in the simplest words: a list, a choice, a room. */
class Model {
  entries: { key: Promise<string>; label: string; hash: string; bad: boolean }[] = [];
  chosen: string | null = null;
  room: Room | null = null;
  choices: StudyChoices = defaultChoices;
  readonly needs: { part: Part; letGo: () => void }[] = [];
  made = 0;
  crashed = 0;
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What must hold at every moment, also while all is under way. */
function always(snapshot: StudySnapshot): string | null {
  const { recordings, active, grid, diagnosis, responses, status, progress, selectedRidge } = snapshot;
  const shown = recordings[active] as { hash: string } | undefined;
  if (active < 0 || (recordings.length > 0 && active >= recordings.length)) return `active is ${active}`;
  if ((status === 'working') !== (progress !== null))
    return `${status} with progress ${JSON.stringify(progress)}`;
  if (progress && !(progress.fraction >= 0 && progress.fraction <= 1))
    return `a fraction of ${progress.fraction}`;
  const ofOther = (result: unknown): boolean =>
    result !== null && (result as { of: string }).of !== shown?.hash;
  if (ofOther(grid)) return 'the picture of another recording';
  if (ofOther(diagnosis)) return 'the diagnosis of another recording';
  if (responses.length > 0 && responses.length !== recordings.length) return `${responses.length} responses`;
  for (const [k, response] of responses.entries())
    if (response && (response as unknown as { of: string }).of !== recordings[k].hash)
      return `response ${k} of another`;
  if (selectedRidge !== null && selectedRidge >= (diagnosis?.ridges.length ?? 0))
    return `ridge ${selectedRidge}`;
  if (snapshot.examinations.length !== recordings.length) return 'examinations of others';
  return null;
}

/** What must hold once everything has come to rest. */
function atRest(snapshot: StudySnapshot, model: Model): string | null {
  const good = model.entries.filter(({ bad }) => !bad);
  const labels = good.map(({ label }) => label);
  if (
    !same(
      snapshot.recordings.map(({ label }) => label),
      labels,
    )
  )
    return `recordings ${snapshot.recordings.map(({ label }) => label).join()}, wanted ${labels.join()}`;
  if (snapshot.progress) return 'progress at rest';
  if (!same(snapshot.room, model.room)) return 'another room';
  if (!same(snapshot.choices, model.choices)) return 'other choices';
  const status = model.entries.length === 0 ? 'empty' : null;
  if (status && snapshot.status !== status) return `${snapshot.status}, wanted ${status}`;
  const wrong = model.choices.fromHz >= model.choices.toHz;
  const bad = model.entries.filter((entry) => entry.bad).length + (wrong ? 1 : 0);
  const told = snapshot.failures.filter(({ code }) => code !== 'worker-crashed').length;
  if (told !== bad) return `${told} failures, wanted ${bad}`;
  if (good.length === 0 || wrong) return (snapshot.grid ?? snapshot.diagnosis) ? 'results of nothing' : null;
  const wanted = good.find(({ label }) => label === model.chosen) ?? good[0];
  if (snapshot.recordings[snapshot.active].label !== wanted.label)
    return `${snapshot.recordings[snapshot.active].label} is shown, wanted ${wanted.label}`;
  // A job that crashed leaves its result out, and says so.
  if (snapshot.failures.some(({ code }) => code === 'worker-crashed')) return null;
  const grid = snapshot.grid as unknown as { params: { windowSeconds: number } } | null;
  if (grid?.params.windowSeconds !== model.choices.windowSeconds) return 'the picture of other choices';
  const diagnosis = snapshot.diagnosis as unknown as { params: { room: Room | null; limit: string } } | null;
  if (
    !diagnosis ||
    !same(diagnosis.params.room, model.room) ||
    diagnosis.params.limit !== model.choices.limit
  )
    return 'the diagnosis of another room or limit';
  const needed = (part: Part): boolean => model.needs.some((need) => need.part === part);
  if (needed('responses') !== snapshot.responses.length > 0) return `responses: ${snapshot.responses.length}`;
  if (needed('responses') && snapshot.responses.includes(null)) return 'a response that never came';
  const modes = model.room !== null && (needed('prediction') || needed('pressure'));
  if (modes !== (snapshot.prediction !== null)) return 'modes of no room, or none of a room';
  return null;
}

/** Does the steps to a study and to the model. Returns the first thing that differs, with its step; null for none. */
export async function played(steps: readonly Step[]): Promise<{ at: number; what: string } | null> {
  const pool = slowPool();
  const study: Study = createStudy({ pool });
  const model = new Model();
  let complaint: string | null = null;
  study.subscribe((snapshot) => (complaint ??= always(snapshot)));
  for (const [at, [kind, a, b]] of steps.entries()) {
    act(study, model, pool, kind, a, b);
    for (let turns = kind === 'turn' ? 12 : b % 4; turns > 0; turns--) await Promise.resolve();
    complaint ??= always(study.snapshot);
    if (kind === 'settle' || at === steps.length - 1) {
      await settle(study, pool);
      complaint ??= atRest(study.snapshot, model);
    }
    if (complaint) return { at, what: complaint };
  }
  study.dispose();
  const last = study.snapshot;
  act(study, model, pool, 'choices', 1, 0);
  act(study, model, pool, 'add', 1, 0);
  await settle(study, pool);
  return study.snapshot === last && pool.asked.length === 0
    ? null
    : { at: steps.length, what: 'work after the end' };
}

/** Answers all that is asked until nothing more is. */
async function settle(study: Study, pool: { readonly asked: Asked[] }): Promise<void> {
  for (let quiet = 0; quiet < 30; quiet++) {
    for (const one of [...pool.asked]) {
      one.answer();
      quiet = 0;
    }
    await Promise.resolve();
  }
  await study.settled();
}

function act(
  study: Study,
  model: Model,
  pool: { readonly asked: Asked[] },
  kind: string,
  a: number,
  b: number,
): void {
  const { entries } = model;
  const readable = study.snapshot.recordings;
  const add = (bad: boolean): void => {
    const hash = bad ? 0 : 1 + (a % 5);
    const label = `r${model.made++}`;
    const key = study.addRecording(Uint8Array.of(hash).buffer, { label });
    entries.push({ key, label, hash: `h${hash}`, bad });
  };
  if (kind === 'add') add(false);
  if (kind === 'add-bad') add(true);
  if (kind === 'remove' && entries.length > 0) {
    // The keys are handed out in order, and known before the file is read.
    const [gone] = entries.splice(a % entries.length, 1);
    study.removeRecording(`recording-${Number(gone.label.slice(1)) + 1}`);
  }
  if (kind === 'remove-gone') study.removeRecording('recording-none');
  if (kind === 'clear') {
    study.clear();
    entries.length = 0;
  }
  if (kind === 'active' && readable.length > 0) {
    const index = a % (readable.length + 1);
    study.setActive(index);
    if (index < readable.length) model.chosen = readable[index].label;
  }
  if (kind === 'room') study.setRoom((model.room = roomOf(a)));
  if (kind === 'choices') {
    const choices = someChoices(a);
    study.setChoices(choices);
    model.choices = { ...model.choices, ...choices };
  }
  if (kind === 'wrong-choices') {
    study.setChoices({ fromHz: 300, toHz: 100 });
    model.choices = { ...model.choices, fromHz: 300, toHz: 100 };
  }
  if (kind === 'cursor') study.setCursor(a % 3 ? { frequencyHz: a, timeSeconds: 0.1 } : null);
  if (kind === 'ridge') study.selectRidge(a % 5 === 0 ? null : (a % 5) - 1);
  if (kind === 'resonance') study.selectResonance(a % 5 === 0 ? null : (a % 5) - 1);
  if (kind === 'need') {
    const part = parts[a % parts.length];
    model.needs.push({ part, letGo: study.need(part) });
  }
  if (kind === 'let-go' && model.needs.length > 0) {
    const [need] = model.needs.splice(a % model.needs.length, 1);
    need.letGo();
    need.letGo();
  }
  if (kind === 'place')
    study.setPlaces([{ kind: 'seat', name: `s${a % 3}`, at: { x: 1 + (b % 3), y: 1, z: 1 } }]);
  if (kind === 'answer')
    for (let k = 0; k <= b % 3 && pool.asked.length > 0; k++) pool.asked[a % pool.asked.length].answer();
  // A crash of its reading refuses a file for good; of a picture it is tried again with the next wish.
  if (kind === 'crash') pool.asked.find(({ type }) => !['open', 'examine'].includes(type))?.crash();
}

/** The steps without any that are not needed for something to differ: halves, quarters and so on are left out in turn. */
export async function shrunk(steps: readonly Step[]): Promise<readonly Step[]> {
  let now = steps;
  for (let size = now.length >> 1; size >= 1; size >>= 1)
    for (let from = 0; from + size <= now.length;) {
      const fewer = [...now.slice(0, from), ...now.slice(from + size)];
      if (await played(fewer)) now = fewer;
      else from += size;
    }
  return now;
}
