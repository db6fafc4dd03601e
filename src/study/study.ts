import type { Progress, Recording } from '../signal/index.js';
import type { Grid, Examination } from '../decay/index.js';
import type { Diagnosis } from '../diagnosis/index.js';
import { choicesFailure, defaultChoices } from './choices.js';
import { diagnosisRequest, gridRequest, examineRecording } from './requests.js';
import { failureOf } from './failure.js';
import { createFollower } from './follower.js';
import { sharedPool, type Pool } from './pool.js';
import { createRound } from './round.js';
import type { RecordingOptions, Study, StudyChoices, StudyFailure, StudySnapshot } from './types.js';

export { defaultChoices } from './choices.js';

export interface StudyOptions {
  /** That of the page where none is given. */
  readonly pool?: Pool;
  readonly choices?: Partial<StudyChoices>;
}

interface Entry {
  readonly key: string;
  readonly label: string;
  recording: Recording | null;
  examination: Examination | null;
  failure: StudyFailure | null;
  /** Stops its reading; null once read or refused. */
  stop: (() => void) | null;
}

type ReadEntry = Entry & { recording: Recording; examination: Examination };

/** Share of its reading in the work of one recording; see `requests.ts` for the others. */
const openWeight = 1;
/** Share of the reading in that: the examination takes the rest. */
const readShare = 0.5;

const emptySnapshot: StudySnapshot = {
  status: 'empty',
  progress: null,
  recordings: [],
  examinations: [],
  active: 0,
  room: null,
  choices: defaultChoices,
  diagnosis: null,
  grid: null,
  failures: [],
  cursor: null,
  selectedRidge: null,
};

/**
 * One investigation. Results follow recordings, room and choices; each is computed once, by the pool, and only where
 * what it depends on has changed: a range of levels changes no grid, a room changes no fit.
 */
export function createStudy(options: StudyOptions = {}): Study {
  // The pool is made with the first recording, so that a study can be made where no worker ever will be.
  const pool = (): Pool => options.pool ?? sharedPool();
  const listeners = new Set<(snapshot: StudySnapshot, previous: StudySnapshot) => void>();
  const waiting = new Set<(snapshot: StudySnapshot) => void>();
  const entries: Entry[] = [];
  let snapshot: StudySnapshot = { ...emptySnapshot, choices: { ...defaultChoices, ...options.choices } };
  let chosen: string | null = null;
  let made = 0;
  let disposed = false;

  const round = createRound(() => publish());
  const grid = createFollower<Grid>(round, () => update());
  const diagnosis = createFollower<Diagnosis>(round, () => update());

  const readable = (): ReadEntry[] =>
    entries.filter((entry): entry is ReadEntry => entry.recording !== null && entry.examination !== null);

  /** The entry that the pictures show; null while an earlier one, which would be shown instead, is still read. */
  const activeEntry = (): ReadEntry | null => {
    const list = readable();
    const wanted = list.find(({ key }) => key === chosen);
    if (wanted) return wanted;
    const first = entries.find(({ recording, stop }) => recording !== null || stop !== null);
    return list.find(({ key }) => key === first?.key) ?? null;
  };

  /** Makes every result follow its inputs, then says what is. */
  const update = (change: Partial<StudySnapshot> = {}): void => {
    if (disposed) return;
    const next = { ...snapshot, ...change };
    const entry = activeEntry();
    const { choices, room } = next;
    const wrong = choicesFailure(choices);
    if (!entry || wrong) {
      grid.follow(null);
      diagnosis.follow(null);
    } else {
      const { recording } = entry;
      if (snapshot.recordings[snapshot.active] !== recording) {
        grid.forget();
        diagnosis.forget();
      }
      grid.follow(gridRequest(pool(), recording, choices));
      diagnosis.follow(diagnosisRequest(pool(), recording, choices, room));
    }
    publish({
      ...change,
      recordings: sameList(
        snapshot.recordings,
        readable().map(({ recording }) => recording),
      ),
      examinations: sameElements(
        snapshot.examinations,
        readable().map(({ examination }) => examination),
      ),
      active: Math.max(0, entry ? readable().indexOf(entry) : 0),
      grid: grid.value,
      diagnosis: diagnosis.value,
      selectedRidge: sameRidge(next, diagnosis.value),
      failures: sameList(snapshot.failures, failures(entry, wrong && { ...wrong, label: null })),
    });
  };

  const failures = (entry: Entry | null, wrong: StudyFailure | null): StudyFailure[] => {
    const list = entries.flatMap(({ failure }) => failure ?? []);
    if (wrong) list.push(wrong);
    if (entry) {
      const { label } = entry;
      for (const { failure } of [grid, diagnosis]) if (failure) list.push({ ...failure, label });
    }
    return list;
  };

  const publish = (change: Partial<StudySnapshot> = {}): void => {
    const previous = snapshot;
    const { progress } = round;
    const next = { ...snapshot, ...change, progress };
    snapshot = { ...next, status: statusOf(next, entries.length) };
    for (const listener of [...listeners]) listener(snapshot, previous);
    if (progress !== null || snapshot.progress !== null) return;
    for (const resolve of waiting) resolve(snapshot);
    waiting.clear();
  };

  const read = async (entry: Entry, bytes: Uint8Array, given: RecordingOptions): Promise<void> => {
    const controller = new AbortController();
    const piece = round.begin('open', openWeight);
    entry.stop = () => {
      controller.abort();
      piece.end();
    };
    try {
      const params = { bytes, options: { ...given, label: entry.label } };
      const { signal } = controller;
      const scaled = (from: number, to: number) => ({
        signal,
        onProgress: ({ stage, fraction }: Progress) =>
          piece.report({ stage, fraction: from + (to - from) * fraction }),
      });
      const recording = await pool().run('open', params, scaled(0, readShare));
      // Whether it is fit to be read is known before any of its pictures.
      const examination = await examineRecording(pool(), recording, scaled(readShare, 1));
      if (!signal.aborted) Object.assign(entry, { recording, examination });
    } catch (thrown) {
      if (!controller.signal.aborted) entry.failure = { ...failureOf(thrown), label: entry.label };
    }
    if (controller.signal.aborted) return;
    entry.stop = null;
    // The next pieces begin before this one ends, so that the round does not come to rest between them.
    update();
    piece.end();
    publish();
  };

  const remove = (gone: readonly Entry[]): void => {
    for (const entry of gone) {
      entry.stop?.();
      entries.splice(entries.indexOf(entry), 1);
    }
    update({ cursor: entries.length > 0 ? snapshot.cursor : null });
  };

  return {
    get snapshot() {
      return snapshot;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async addRecording(bytes, given) {
      made++;
      const key = `recording-${made}`;
      if (disposed) return key;
      const entry: Entry = {
        key,
        label: given.label ?? '',
        recording: null,
        examination: null,
        failure: null,
        stop: null,
      };
      entries.push(entry);
      const reading = read(entry, new Uint8Array(bytes), given);
      publish();
      await reading;
      return key;
    },
    removeRecording(key) {
      remove(entries.filter((entry) => entry.key === key));
    },
    clear() {
      remove([...entries]);
    },
    setActive(index) {
      const entry = readable()[index];
      if (!entry || entry.key === chosen) return;
      chosen = entry.key;
      update({ selectedRidge: null });
    },
    setRoom(room) {
      if (JSON.stringify(room) !== JSON.stringify(snapshot.room)) update({ room });
    },
    setChoices(some) {
      const choices = { ...snapshot.choices, ...some };
      if (JSON.stringify(choices) !== JSON.stringify(snapshot.choices)) update({ choices });
    },
    setCursor(cursor) {
      if (!disposed && JSON.stringify(cursor) !== JSON.stringify(snapshot.cursor)) publish({ cursor });
    },
    selectRidge(index) {
      const known = index !== null && snapshot.diagnosis?.ridges[index] ? index : null;
      if (!disposed && known !== snapshot.selectedRidge) publish({ selectedRidge: known });
    },
    settled: () =>
      round.progress === null || disposed
        ? Promise.resolve(snapshot)
        : new Promise((resolve) => waiting.add(resolve)),
    dispose() {
      if (disposed) return;
      for (const { stop } of entries) stop?.();
      grid.follow(null);
      diagnosis.follow(null);
      disposed = true;
      listeners.clear();
      for (const resolve of waiting) resolve(snapshot);
      waiting.clear();
    },
  };
}

function statusOf(snapshot: StudySnapshot, count: number): StudySnapshot['status'] {
  if (snapshot.progress) return 'working';
  if (count === 0) return 'empty';
  return snapshot.grid || snapshot.diagnosis ? 'ready' : 'error';
}

/** Two fits of one recording place a resonance within this; ridges of one fit lie further apart. Hz. */
const sameFrequencyHz = 0.2;

/** The selected ridge in another diagnosis of the same recording: the one at its frequency, where there still is one. */
function sameRidge({ diagnosis, selectedRidge }: StudySnapshot, now: Diagnosis | null): number | null {
  if (selectedRidge === null || !diagnosis || !now) return null;
  if (diagnosis === now) return selectedRidge;
  const { frequencyHz } = diagnosis.ridges[selectedRidge];
  const apart = now.ridges.map((ridge) => Math.abs(ridge.frequencyHz - frequencyHz));
  const least = Math.min(...apart);
  return least <= sameFrequencyHz ? apart.indexOf(least) : null;
}

/** The old list where the new one says the same, so that who compares by identity sees no change. */
function sameList<T>(old: readonly T[], list: readonly T[]): readonly T[] {
  return old.length === list.length && JSON.stringify(old.map(mark)) === JSON.stringify(list.map(mark))
    ? old
    : list;
}

const sameElements = <T>(old: readonly T[], list: readonly T[]): readonly T[] =>
  old.length === list.length && old.every((value, i) => value === list[i]) ? old : list;

const marks = new WeakMap<object, number>();
let lastMark = 0;

/** Recordings are compared by identity, since their samples are long; failures by what they say. */
function mark(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('samples' in value)) return value;
  if (!marks.has(value)) marks.set(value, ++lastMark);
  return marks.get(value);
}
