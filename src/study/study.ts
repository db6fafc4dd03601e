import type { Recording } from '../signal/index.js';
import type { Grid, Response } from '../decay/index.js';
import { heardResonances } from '../diagnosis/heard.js';
import type { Diagnosis, RidgeFit } from '../diagnosis/index.js';
import type { ResonanceFit } from '../resonance/index.js';
import { RingdownError } from '../signal/errors.js';
import { choicesFailure, defaultChoices, fitParamsOf } from './choices.js';
import { diagnosisRequest, gridRequest, responseRequest, ridgeRequest, ridgeTarget } from './requests.js';
import type { PageDecoder } from './decode.js';
import { createEntries, type Entry } from './entries.js';
import { createFollower, type FollowerRequest } from './follower.js';
import { createFollowers } from './followers.js';
import { sharedPool, type Pool } from './pool.js';
import { recordingMoved } from './places.js';
import { createRoomPart, sameOrder } from './room-part.js';
import { createRound } from './round.js';
import { emptyTexts } from './sheet-texts.js';
import { sameElements, sameFrequency, sameList } from './same.js';
import type { Part, Study, StudyChoices, StudyFailure, StudyPlace, StudySnapshot } from './types.js';

export { defaultChoices } from './choices.js';

export interface StudyOptions {
  /** That of the page where none is given. */
  readonly pool?: Pool;
  readonly choices?: Partial<StudyChoices>;
  /** Of the page, for files that browsers decode and the engine does not. */
  readonly decoder?: PageDecoder;
}

const emptySnapshot: StudySnapshot = {
  status: 'empty',
  progress: null,
  recordings: [],
  examinations: [],
  active: 0,
  room: null,
  choices: defaultChoices,
  diagnosis: null,
  firstAnswer: null,
  grid: null,
  failures: [],
  cursor: null,
  selectedRidge: null,
  selectedResonance: null,
  responses: [],
  ridgeFit: null,
  places: [],
  sheet: emptyTexts,
  prediction: null,
  selectedMode: null,
  pressure: null,
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
  let snapshot: StudySnapshot = { ...emptySnapshot, choices: { ...defaultChoices, ...options.choices } };
  let chosen: string | null = null;
  let disposed = false;

  const round = createRound(() => publish());
  const entries = createEntries({
    ...{ pool, round, decoder: options.decoder },
    onRead: () => update(),
    onChange: () => publish(),
  });
  const grid = createFollower<Grid>(round, () => update());
  const diagnosis = createFollower<Diagnosis>(round, () => update());
  const responses = createFollowers<Response>(round, () => update());
  // A ridge is looked at as fast as it is selected: that is no work to wait for.
  const quiet = createRound(() => undefined);
  const ridge = createFollower<RidgeFit>(quiet, () => update());
  const roomPart = createRoomPart(round, quiet, pool, () => update());
  const needs = new Map<Part, number>();

  /** One request for each recording that can be read, that of the shown one first; none where nobody needs the part. */
  const requests = <T>(
    part: Part,
    shown: Recording | null,
    make: (recording: Recording) => FollowerRequest<T>,
  ): Map<object, FollowerRequest<T>> => {
    const list = entries.readable().map(({ recording }) => recording);
    list.sort((a, b) => Number(b === shown) - Number(a === shown));
    return new Map(needs.get(part) && shown ? list.map((recording) => [recording, make(recording)]) : []);
  };

  /** Makes every result follow its inputs, then says what is. */
  const update = (change: Partial<StudySnapshot> = {}): void => {
    if (disposed) return;
    const next = { ...snapshot, ...change };
    const entry = entries.active(chosen);
    const { choices, room } = next;
    const wrong = choicesFailure(choices);
    const shown = entry && !wrong ? entry.recording : null;
    const read = entries.readable().map(({ recording }) => recording);
    if (!shown) {
      grid.follow(null);
      diagnosis.follow(null);
    } else {
      if (snapshot.recordings[snapshot.active] !== shown) {
        grid.forget();
        diagnosis.forget();
      }
      grid.follow(gridRequest(pool(), shown, choices));
    }
    responses.follow(requests('responses', shown, (r) => responseRequest(pool(), r, choices)));
    if (shown) diagnosis.follow(diagnosisRequest(pool(), shown, choices, room, read));
    const selection = sameSelection(next, diagnosis.value);
    const { selectedRidge, selectedResonance } = selection;
    const target =
      shown && diagnosis.value && needs.get('ridgeFit')
        ? ridgeTarget(diagnosis.value, selectedRidge, selectedResonance)
        : null;
    ridge.follow(
      target && ridgeRequest(pool(), shown!, diagnosis.value!, fitParamsOf(choices, room), target),
    );
    const recordings = sameList(snapshot.recordings, read);
    publish({
      ...change,
      ...selection,
      recordings,
      examinations: sameElements(
        snapshot.examinations,
        entries.readable().map(({ examination }) => examination),
      ),
      active: Math.max(0, entry ? entries.readable().indexOf(entry) : 0),
      grid: grid.value,
      diagnosis: diagnosis.value,
      firstAnswer: diagnosis.value ? null : (diagnosis.draft as ResonanceFit | null),
      responses: responses.values(recordings),
      ridgeFit: ridge.value,
      ...roomPart.follow({ ...next, ...selection, recordings, diagnosis: diagnosis.value }, (part) =>
        Boolean(needs.get(part)),
      ),
      failures: sameList(snapshot.failures, failures(entry, wrong && { ...wrong, label: null })),
    });
  };

  const failures = (entry: Entry | null, wrong: StudyFailure | null): StudyFailure[] => {
    const list = entries.all.flatMap(({ failure }) => failure ?? []);
    if (wrong) list.push(wrong);
    if (entry?.recording) {
      const { label, recording } = entry;
      const failed = [grid, diagnosis, ridge].map(({ failure }) => failure);
      failed.push(responses.failure(recording));
      // One cause may refuse several results.
      const told = new Set<string>();
      for (const failure of failed) {
        if (!failure || told.has(JSON.stringify(failure))) continue;
        told.add(JSON.stringify(failure));
        list.push({ ...failure, label });
      }
      // Of the others there is only the response; what was said of the shown one holds for them too.
      for (const other of entries.readable()) {
        const failure = responses.failure(other.recording);
        if (other === entry || !failure || told.has(JSON.stringify(failure))) continue;
        told.add(JSON.stringify(failure));
        list.push({ ...failure, label: other.label });
      }
    }
    return [...list, ...roomPart.failures];
  };

  const publish = (change: Partial<StudySnapshot> = {}): void => {
    const previous = snapshot;
    const { progress } = round;
    const next = { ...snapshot, ...change, progress };
    snapshot = { ...next, status: statusOf(next, entries.all.length) };
    for (const listener of [...listeners]) listener(snapshot, previous);
    if (progress !== null || quiet.progress !== null) return;
    for (const resolve of waiting) resolve(snapshot);
    waiting.clear();
  };

  const remove = (gone: (entry: Entry) => boolean): void => {
    entries.remove(gone);
    update({ cursor: entries.all.length > 0 ? snapshot.cursor : null });
  };

  const select = (selectedRidge: number | null, selectedResonance: number | null): void => {
    if (selectedRidge === snapshot.selectedRidge && selectedResonance === snapshot.selectedResonance) return;
    update({ selectedRidge, selectedResonance });
  };

  return {
    get snapshot() {
      return snapshot;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    addRecording: (bytes, given) =>
      disposed ? Promise.resolve(entries.nextKey()) : entries.addFile(new Uint8Array(bytes), given),
    addCopy: (recording) => (disposed ? Promise.resolve(entries.nextKey()) : entries.addCopy(recording)),
    setRecording(index, about) {
      if (entries.describe(index, about)) update();
    },
    removeRecording(key) {
      remove((entry) => entry.key === key);
    },
    clear() {
      remove(() => true);
    },
    setActive(index) {
      const entry = entries.readable()[index];
      if (!entry || entry.key === chosen) return;
      chosen = entry.key;
      update({ selectedRidge: null, selectedResonance: null });
    },
    setRoom(room) {
      if (JSON.stringify(room) !== JSON.stringify(snapshot.room)) update({ room });
    },
    setPlaces(places) {
      if (JSON.stringify(places) !== JSON.stringify(snapshot.places)) update({ places });
    },
    movePlace(place, to) {
      entries.readable().forEach(({ recording }, index) => {
        const about = recordingMoved(recording, place, to);
        if (about) entries.describe(index, about);
      });
      const { kind, name } = place;
      const moved = (one: StudyPlace): boolean => one.kind === kind && one.name === name;
      update({ places: snapshot.places.map((one) => (moved(one) ? { ...one, at: to } : one)) });
    },
    setSheet(change) {
      const sheet = { ...snapshot.sheet, ...change };
      if (!disposed && JSON.stringify(sheet) !== JSON.stringify(snapshot.sheet)) publish({ sheet });
    },
    selectMode(order) {
      if (!sameOrder(order, snapshot.selectedMode)) update({ selectedMode: order });
    },
    setChoices(some) {
      const choices = { ...snapshot.choices, ...some };
      if (JSON.stringify(choices) !== JSON.stringify(snapshot.choices)) update({ choices });
    },
    setCursor(cursor) {
      if (!disposed && JSON.stringify(cursor) !== JSON.stringify(snapshot.cursor)) publish({ cursor });
    },
    selectRidge(index) {
      const found = index === null ? undefined : snapshot.diagnosis?.ridges[index];
      select(found ? index : null, found?.resonance ?? null);
    },
    selectResonance(index) {
      const found = index !== null && snapshot.diagnosis?.resonances[index] ? index : null;
      const ridges = snapshot.diagnosis?.ridges ?? [];
      const flagged = found === null ? -1 : ridges.findIndex(({ resonance }) => resonance === found);
      select(flagged < 0 ? null : flagged, found);
    },
    setChannel(index, channel) {
      if (!disposed) entries.readChannel(index, channel);
    },
    need(part) {
      let held = true;
      needs.set(part, (needs.get(part) ?? 0) + 1);
      if (needs.get(part) === 1) update();
      return () => {
        if (!held) return;
        held = false;
        needs.set(part, needs.get(part)! - 1);
        if (!needs.get(part)) update();
      };
    },
    async fitRoom(signal) {
      const { room, diagnosis: shown } = snapshot;
      if (!room || !shown || disposed) throw new RingdownError('fit-room-nothing', {});
      const params = { room, resonances: heardResonances(shown.resonances) };
      return pool().run('fit-room', params, { key: JSON.stringify(params), signal });
    },
    settled: () =>
      (round.progress === null && quiet.progress === null) || disposed
        ? Promise.resolve(snapshot)
        : new Promise((resolve) => waiting.add(resolve)),
    dispose() {
      if (disposed) return;
      entries.stop();
      grid.follow(null);
      diagnosis.follow(null);
      ridge.follow(null);
      responses.follow(new Map());
      roomPart.stop();
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

type Selection = Pick<StudySnapshot, 'selectedRidge' | 'selectedResonance'>;

/** What is selected in another diagnosis of the same recording: what lies at its frequency, where there still is such. */
function sameSelection(next: StudySnapshot, now: Diagnosis | null): Selection {
  const { diagnosis, selectedRidge, selectedResonance } = next;
  if (diagnosis === now) return { selectedRidge, selectedResonance };
  return {
    selectedRidge: sameFrequency(diagnosis?.ridges, selectedRidge, now?.ridges),
    selectedResonance: sameFrequency(diagnosis?.resonances, selectedResonance, now?.resonances),
  };
}
