import { describe, expect, it } from 'vitest';
import { encodeWav, type Recording } from '../../src/signal/index.js';
import { openStudyText, documentText, studyDocument } from '../../src/study/document.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { createSystem } from '../../src/study/system.js';
import { nearFieldScene } from '../support/near-field.js';

const bytesOf = ({ samples, sampleRate }: Recording): ArrayBuffer =>
  encodeWav({ channels: [samples], sampleRate, encoding: 'float-64' }).buffer;

const tail = { frequencyHz: 47, decayTimeSeconds: 0.9, peakDb: 6 };
const { room, source, seats, near } = nearFieldScene(3, 0.03, tail, { seatCount: 2 });

async function made() {
  const pool = createPool({ routes: [] });
  const study = createStudy({ pool });
  study.setRoom(room);
  await study.addRecording(bytesOf(near), { label: 'near', source, nearFieldMetres: 0.03 });
  for (const seat of seats)
    await study.addRecording(bytesOf(seat), {
      label: seat.label,
      source,
      seat: seat.seat,
      timeReference: 'common',
    });
  await study.settled();
  return { study, pool };
}

describe('a study with a recording close to its source', () => {
  it('shows a seat first, and names the source that rings by it', async () => {
    const { study } = await made();
    const { recordings, active, diagnosis } = study.snapshot;
    expect(recordings[active].label).toBe('seat 1');
    const ridge = diagnosis!.ridges.find(({ frequencyHz }) => Math.abs(frequencyHz - 47) < 0.5);
    expect(ridge).toMatchObject({ cause: 'source', evidence: { kind: 'near-field' } });
    // Taken back, it is a seat like any other, and evidence no more.
    study.setRecording(0, { nearFieldMetres: null });
    await study.settled();
    expect(study.snapshot.diagnosis!.ridges.some(({ evidence }) => evidence?.kind === 'near-field')).toBe(
      false,
    );
    study.dispose();
  });

  it('has it among no seats: not in sums, spreads or what is compared', async () => {
    const { study, pool } = await made();
    const system = createSystem(study, { pool });
    system.need('decays');
    await system.settled();
    const { arrangement, grid, before } = system.snapshot;
    expect(arrangement.seats).toHaveLength(2);
    expect(grid.recordings.flat()).toEqual([1, 2]);
    expect(before!.recordings).toHaveLength(2);
    expect(before!.diagnosis.ridges.filter(({ evidence }) => evidence?.kind === 'near-field')).toHaveLength(
      1,
    );
    system.dispose();
    study.dispose();
  });

  it('is saved and opened with its distance', async () => {
    const { study } = await made();
    const opened = openStudyText(documentText(studyDocument(study.snapshot, null)));
    expect(opened.recordings.map(({ nearFieldMetres }) => nearFieldMetres)).toEqual([
      0.03,
      undefined,
      undefined,
    ]);
    const broken = JSON.parse(documentText(studyDocument(study.snapshot, null))) as {
      recordings: { nearFieldMetres?: number | null }[];
    };
    delete broken.recordings[0].nearFieldMetres;
    expect(openStudyText(JSON.stringify(broken)).recordings[0].nearFieldMetres).toBeUndefined();
    broken.recordings[0].nearFieldMetres = 4;
    expect(() => openStudyText(JSON.stringify(broken))).toThrowError(/study-broken/);
    study.dispose();
  });
});
