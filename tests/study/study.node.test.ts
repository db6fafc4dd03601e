import { expect, it, describe } from 'vitest';
import { createRoom, parseRoomSize, type Room } from '../../src/room/index.js';
import { defaultDiagnosisParams, diagnose } from '../../src/diagnosis/index.js';
import { encodeWav, openRecording } from '../../src/signal/index.js';
import { drain } from '../../src/study/jobs.js';
import { createPool, type Pool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import type { StudySnapshot } from '../../src/study/types.js';
import { addMode } from '../support/signals.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';

const rate = 4000;

/** A file with one mode. */
function modeFile(frequencyHz: number, decaySeconds = 0.8): ArrayBuffer {
  const samples = addMode(new Float64Array(2 * rate), rate, frequencyHz, decaySeconds, 0.5, 0.05);
  return encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-64' }).buffer;
}

/** A pool on the main thread that lists what it is asked for, and what it computes as it has no result yet. */
function countingPool(): Pool & { readonly asked: string[]; readonly computed: string[] } {
  const pool = createPool({ routes: [] });
  const asked: string[] = [];
  const computed: string[] = [];
  return {
    asked,
    computed,
    get way() {
      return pool.way;
    },
    run: (type, params, options) => {
      asked.push(type);
      if (options?.key === undefined || pool.peek(type, options.key) === undefined) computed.push(type);
      return pool.run(type, params, options);
    },
    peek: (type, key) => pool.peek(type, key),
    dispose: () => pool.dispose(),
  };
}

const roomOf = (size: string, temperatureCelsius = 20): Room =>
  createRoom({ size: parseRoomSize(size), temperatureCelsius });

const peakFrequency = ({ grid }: StudySnapshot): number => {
  const first = grid!.levelsDb.subarray(0, grid!.frequenciesHz.length);
  return grid!.frequenciesHz[first.indexOf(Math.max(...first))];
};

describe('a study', () => {
  it('is empty at first, and after everything is removed', async () => {
    const study = createStudy({ pool: countingPool() });
    expect(study.snapshot.status).toBe('empty');
    const key = await study.addRecording(modeFile(50), { label: 'one' });
    expect((await study.settled()).status).toBe('ready');
    study.removeRecording(key);
    expect(study.snapshot).toMatchObject({ status: 'empty', grid: null, diagnosis: null, recordings: [] });
  });

  it('shows what a fit has found so far, until its diagnosis is there', async () => {
    const study = createStudy({ pool: countingPool() });
    const seen: number[] = [];
    study.subscribe(({ firstAnswer, diagnosis }) => {
      if (!firstAnswer) return;
      expect(diagnosis).toBeNull();
      seen.push(firstAnswer.resonances[0].frequencyHz);
    });
    await study.addRecording(modeFile(50), { label: 'one' });
    const { firstAnswer, diagnosis } = await study.settled();
    expect(seen.length).toBeGreaterThan(0);
    expect(seen[0]).toBeCloseTo(50, 0);
    expect(firstAnswer).toBeNull();
    expect(diagnosis!.resonances[0].frequencyHz).toBeCloseTo(50, 1);
    study.clear();
    expect(study.snapshot.firstAnswer).toBeNull();
  });

  it('reads a recording and computes its picture, with progress that never falls', async () => {
    const study = createStudy({ pool: countingPool() });
    const fractions: number[] = [];
    const seen = new Set<string>();
    study.subscribe(({ progress, status }) => {
      seen.add(status);
      if (progress) fractions.push(progress.fraction);
    });
    await study.addRecording(modeFile(50), { label: 'one' });
    const snapshot = await study.settled();
    expect(snapshot.recordings.map(({ label }) => label)).toEqual(['one']);
    expect(Math.abs(peakFrequency(snapshot) / 50 - 1)).toBeLessThan(0.02);
    expect(fractions.length).toBeGreaterThan(2);
    expect(fractions).toEqual([...fractions].sort((a, b) => a - b));
    expect([...seen]).toEqual(['working', 'ready']);
    expect(snapshot.progress).toBeNull();
  });

  it('computes nothing again for what only the view needs, nor for the same choice', async () => {
    const pool = countingPool();
    const study = createStudy({ pool });
    await study.addRecording(modeFile(50), {});
    const before = await study.settled();
    const asked = pool.asked.length;
    study.setChoices({ rangeDb: 30 });
    study.setChoices({ scale: 'clear' });
    study.setChoices({ windowSeconds: 0.3 });
    study.setCursor({ frequencyHz: 50, timeSeconds: 0.1 });
    study.setActive(0);
    const after = await study.settled();
    expect(after.choices.rangeDb).toBe(30);
    expect(after.choices.scale).toBe('clear');
    expect(after.cursor).toEqual({ frequencyHz: 50, timeSeconds: 0.1 });
    expect(after.grid).toBe(before.grid);
    expect(after.diagnosis).toBe(before.diagnosis);
    expect(pool.asked.length).toBe(asked);
  });

  it('fits anew only where the fit depends on what changed: not for a limit, nor for air, nor for proportions', async () => {
    const pool = countingPool();
    const study = createStudy({ pool });
    await study.addRecording(modeFile(50), { label: 'a' });
    study.setRoom(roomOf('6x4x2.5'));
    const before = await study.settled();
    pool.computed.length = 0;
    study.setRoom(roomOf('6x4x2.5', 25));
    const warmer = await study.settled();
    study.setRoom(roomOf('4x6x2.5'));
    await study.settled();
    study.setChoices({ limit: 'target' });
    const target = await study.settled();
    // Every wish goes by way of the fit, which is there: only `interpret` is computed.
    expect(pool.computed).toEqual(['interpret', 'interpret', 'interpret']);
    expect(target.diagnosis!.limit).toBe('target');
    expect(target.diagnosis!.fit).toBe(before.diagnosis!.fit);
    expect(target.grid).toBe(before.grid);
    const modeOf = ({ diagnosis }: StudySnapshot) => diagnosis!.room!.modes[0].frequencyHz;
    // 25 instead of 20 degrees: sqrt(298.15 / 293.15).
    expect(modeOf(warmer) / modeOf(before)).toBeCloseTo(1.00849, 4);
  });

  it('keeps the selected ridge where it still is one, and lets it go where it is not', async () => {
    const study = createStudy({ pool: countingPool() });
    await study.addRecording(modeFile(50, 1.5), { label: 'a' });
    const ridgeAt50 = ({ diagnosis }: StudySnapshot): number =>
      diagnosis!.ridges.findIndex(({ frequencyHz }) => Math.abs(frequencyHz - 50) < 0.1);
    const before = ridgeAt50(await study.settled());
    expect(before).toBeGreaterThanOrEqual(0);
    study.selectRidge(before);
    study.setRoom(roomOf('6x4x2.5'));
    // The volume is known now, and with it how many modes may hide behind one: the fit is told anew.
    const after = await study.settled();
    expect(after.selectedRidge).toBe(ridgeAt50(after));
    study.selectRidge(70);
    expect(study.snapshot.selectedRidge).toBeNull();
    study.selectRidge(before);
    study.setChoices({ fromHz: 60 });
    expect((await study.settled()).selectedRidge).toBeNull();
  });

  it('drops what was computed for choices that are no longer wanted', async () => {
    const study = createStudy({ pool: countingPool() });
    await study.addRecording(modeFile(50), {});
    await study.settled();
    const windows: number[] = [];
    study.subscribe(({ grid }, previous) => {
      if (grid && grid !== previous.grid) windows.push(grid.windowSeconds);
    });
    for (const windowSeconds of [0.1, 0.2, 0.4]) study.setChoices({ windowSeconds });
    const snapshot = await study.settled();
    expect(snapshot.grid?.windowSeconds).toBe(0.4);
    expect(windows).toEqual([0.4]);
  });

  it('takes what it has computed before from the cache, at once', async () => {
    const pool = countingPool();
    const study = createStudy({ pool });
    await study.addRecording(modeFile(50), { label: 'a' });
    await study.addRecording(modeFile(80), { label: 'b' });
    const first = await study.settled();
    study.setActive(1);
    expect(study.snapshot.grid).toBeNull();
    const second = await study.settled();
    expect(Math.abs(peakFrequency(second) / 80 - 1)).toBeLessThan(0.02);
    const asked = pool.asked.length;
    study.setActive(0);
    expect(study.snapshot.grid).toBe(first.grid);
    expect(study.snapshot.diagnosis).toBe(first.diagnosis);
    expect(study.snapshot.status).toBe('ready');
    expect(pool.asked.length).toBe(asked);
  });

  it('keeps the order in which recordings were added, and shows the first', async () => {
    const study = createStudy({ pool: countingPool() });
    await Promise.all(
      [50, 60, 70].map((hertz) => study.addRecording(modeFile(hertz), { label: String(hertz) })),
    );
    const { recordings, active, grid } = await study.settled();
    expect(recordings.map(({ label }) => label)).toEqual(['50', '60', '70']);
    expect(active).toBe(0);
    expect(grid).not.toBeNull();
  });

  it('makes a refused file a failure beside those that are read, and lets it go when it is removed', async () => {
    const study = createStudy({ pool: countingPool() });
    const text = new TextEncoder().encode('Text, and more than twelve bytes of it').buffer;
    const bad = await study.addRecording(text, { label: 'notes.txt' });
    expect((await study.settled()).status).toBe('error');
    await study.addRecording(modeFile(50), { label: 'good' });
    const { status, failures, recordings } = await study.settled();
    expect(status).toBe('ready');
    expect(recordings).toHaveLength(1);
    expect(failures).toEqual([{ code: 'wav-not-riff', params: { found: 'Text' }, label: 'notes.txt' }]);
    study.removeRecording(bad);
    expect(study.snapshot.failures).toEqual([]);
  });

  it('says what is wrong with choices instead of showing an old picture under them', async () => {
    const study = createStudy({ pool: countingPool() });
    await study.addRecording(modeFile(50), { label: 'a' });
    await study.settled();
    study.setChoices({ fromHz: 150, toHz: 100 });
    expect(study.snapshot).toMatchObject({ status: 'error', grid: null, diagnosis: null });
    expect(study.snapshot.failures[0]).toMatchObject({ code: 'band-order', label: null });
    study.setChoices({ fromHz: 20, toHz: 200, windowSeconds: 50 });
    const { grid, failures } = await study.settled();
    expect(grid).toBeNull();
    expect(failures[0]).toMatchObject({ code: 'grid-window', label: 'a' });
    study.setChoices({ windowSeconds: 0.3 });
    expect((await study.settled()).failures).toEqual([]);
  });

  it('gives a new snapshot on every change and never changes an old one', async () => {
    const study = createStudy({ pool: countingPool() });
    const pairs: [StudySnapshot, StudySnapshot][] = [];
    const first = study.snapshot;
    const off = study.subscribe((now, before) => pairs.push([now, before]));
    await study.addRecording(modeFile(50), {});
    await study.settled();
    pairs.forEach(([now, before], i) => {
      expect(now).not.toBe(before);
      expect(before).toBe(i === 0 ? first : pairs[i - 1][0]);
    });
    off();
    const count = pairs.length;
    study.setCursor({ frequencyHz: 40, timeSeconds: 0 });
    expect(pairs).toHaveLength(count);
    expect(first).toMatchObject({ status: 'empty', recordings: [] });
  });

  it('does nothing more once it is disposed of, also amid its work', async () => {
    const study = createStudy({ pool: countingPool() });
    let told = 0;
    const reading = study.addRecording(modeFile(50), {});
    study.subscribe(() => told++);
    study.dispose();
    await reading;
    await study.settled();
    study.setChoices({ fromHz: 30 });
    study.setCursor({ frequencyHz: 40, timeSeconds: 0 });
    expect(told).toBe(0);
  });

  it('leaves the bytes it is given to their owner', async () => {
    const study = createStudy({ pool: countingPool() });
    const bytes = modeFile(50);
    const length = bytes.byteLength;
    await study.addRecording(bytes, {});
    await study.settled();
    expect(bytes.byteLength).toBe(length);
  });
});

describeWithRecordings('a study of real recordings', () => {
  it('tells the same of a file as the command does', async () => {
    const study = createStudy({ pool: countingPool() });
    study.setRoom(roomOf('9.7x5.5x2.7'));
    await study.addRecording(recordingBytes(recordingNames.corner1).slice().buffer, { label: 'corner' });
    const { diagnosis } = await study.settled();
    const recording = openRecording(recordingBytes(recordingNames.corner1), { label: 'corner' });
    const params = { ...defaultDiagnosisParams, room: roomOf('9.7x5.5x2.7') };
    expect(diagnosis).toEqual(drain(diagnose([recording], params)));
  });

  it('shows a file without range as read, with the note that says why there are no ridges', async () => {
    const study = createStudy({ pool: countingPool() });
    await study.addRecording(recordingBytes(recordingNames.clap).slice().buffer, { label: 'clap' });
    const { status, failures, diagnosis } = await study.settled();
    expect(status).toBe('ready');
    expect(failures).toEqual([]);
    expect(diagnosis!.ridges).toEqual([]);
    expect(diagnosis!.files[0].notes.map(({ code }) => code)).toContain('no-range');
  });

  it('shows each of five rooms without a failure', async () => {
    const study = createStudy({ pool: countingPool() });
    const { corner1, frl, livingRoom, coupled, office } = recordingNames;
    for (const name of [corner1, frl, livingRoom, coupled, office])
      await study.addRecording(recordingBytes(name).slice().buffer, { label: name });
    for (let index = 0; index < 5; index++) {
      study.setActive(index);
      const { grid, diagnosis, failures, active } = await study.settled();
      expect(diagnosis!.files[0].label).toBe(study.snapshot.recordings[index].label);
      expect(active).toBe(index);
      expect(failures).toEqual([]);
      expect(grid!.levelsDb.every(Number.isFinite)).toBe(true);
    }
  });
});
