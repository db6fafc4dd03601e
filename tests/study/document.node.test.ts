import { describe, expect, it } from 'vitest';
import {
  createPlan,
  createRoom,
  parseCorners,
  predictRoom,
  synthesise,
  wallsFromNames,
} from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { decodeSamples, encodeSamples } from '../../src/study/base64.js';
import { documentText, openStudyText, resultDocument, studyDocument } from '../../src/study/document.js';
import { migrated } from '../../src/study/migrations.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { defaultDesign } from '../../src/study/system-design.js';
import { createSpeaker } from '../../src/words/index.js';

const pool = createPool({ routes: [] });
const room = createRoom({
  size: { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 },
  absorption: 0.1,
});
const seat = { x: 3.6, y: 1.5, z: 1.2 };
const source = { x: 0.3, y: 0.3, z: 0.3 };

async function madeStudy() {
  const { samples } = synthesise({ room, seat, source, seconds: 1.6, noiseDb: -55 });
  const study = createStudy({ pool });
  study.setRoom(room);
  const about = { seat, source, seatName: 'console', sourceName: 'A', timeReference: 'common' as const };
  await study.addRecording(
    encodeWav({ channels: [samples], sampleRate: 48000, encoding: 'float-32' }).buffer,
    { label: 'console, before', stage: 'before', ...about },
  );
  return { study, snapshot: await study.settled() };
}

async function opened(text: string) {
  const { recordings, room: place, choices } = openStudyText(text);
  const study = createStudy({ pool: createPool({ routes: [] }), choices });
  study.setRoom(place);
  for (const recording of recordings) await study.addCopy(recording);
  return study.settled();
}

const { snapshot } = await madeStudy();
const document = studyDocument(snapshot, defaultDesign, [
  resultDocument('recording', 'console', snapshot.diagnosis!),
]);
const text = documentText(document);

describe('a saved study', () => {
  it('keeps what was given beside a recording: microphone, calibration and sweep', async () => {
    const study = createStudy({ pool });
    const { samples } = synthesise({ room, seat, source, seconds: 1.2, sampleRate: 8000 });
    const bytes = encodeWav({ channels: [samples], sampleRate: 8000, encoding: 'float-32' }).slice().buffer;
    const microphone = { label: 'mic 7', bytes: new TextEncoder().encode('20 -3\n200 0.5') };
    await study.addRecording(bytes, { microphone, fullScaleDb: 114.5 });
    const [given] = (await study.settled()).recordings;
    const [kept] = openStudyText(documentText(studyDocument(study.snapshot, defaultDesign))).recordings;
    expect(kept.microphone).toEqual(given.microphone);
    expect(kept.fullScaleDb).toBe(114.5);
    expect(kept.sweep).toBeUndefined();
    expect(kept.notes).toEqual(given.notes);
    study.dispose();
  });

  it('opens again to the same picture without the recording: levels within 0.05 dB, resolved ridges the same', async () => {
    const again = await opened(text);
    const [a, b] = [snapshot.grid!, again.grid!];
    expect(b.timesSeconds).toEqual(a.timesSeconds);
    let compared = 0;
    a.levelsDb.forEach((level, k) => {
      if (level < -50) return;
      compared++;
      expect(Math.abs(b.levelsDb[k] - level)).toBeLessThan(0.05);
    });
    expect(compared).toBeGreaterThan(2000);
    const ridges = (of: typeof snapshot) => of.diagnosis!.ridges;
    let resolved = 0;
    let same = 0;
    for (const ridge of ridges(snapshot)) {
      const [other] = [...ridges(again)].sort(
        (x, y) => Math.abs(x.frequencyHz - ridge.frequencyHz) - Math.abs(y.frequencyHz - ridge.frequencyHz),
      );
      const shift = Math.abs(other.frequencyHz - ridge.frequencyHz);
      const stretch = Math.abs(other.decayTimeSeconds! / ridge.decayTimeSeconds! - 1);
      if (shift < 0.1 && stretch < 0.05 && other.cause === ridge.cause) same++;
      if (ridge.resonance === null) continue;
      if (snapshot.diagnosis!.resonances[ridge.resonance].kind !== 'resolved') continue;
      resolved++;
      expect(shift, `${ridge.frequencyHz} Hz`).toBeLessThan(0.05);
      expect(stretch, `${ridge.frequencyHz} Hz`).toBeLessThan(0.02);
    }
    // Where modes crowd, what cannot be told apart may be parted otherwise in the copy.
    expect(resolved).toBeGreaterThan(5);
    expect(same / ridges(snapshot).length).toBeGreaterThan(0.8);
    expect(Math.abs(ridges(again).length - ridges(snapshot).length)).toBeLessThan(4);
    // What is told of the file is told of the file, not of its copy.
    const [file, copy] = [snapshot.diagnosis!.files[0], again.diagnosis!.files[0]];
    expect(copy).toMatchObject({ hash: file.hash, sampleRate: 48000, label: 'console, before' });
    expect(copy.durationSeconds).toBeCloseTo(file.durationSeconds, 9);
    expect(copy.onsetSeconds).toBeCloseTo(file.onsetSeconds, 9);
    expect(again.recordings[0]).toMatchObject({
      seatName: 'console',
      sourceName: 'A',
      timeReference: 'common',
      seat,
    });
  });

  it('takes some 10 kB per second of recording, and is the same each time', async () => {
    expect(document.recordings[0].low.samples.length).toBeLessThan(14000);
    const once = await madeStudy();
    const results = [resultDocument('recording', 'console', once.snapshot.diagnosis!)];
    expect(documentText(studyDocument(once.snapshot, defaultDesign, results))).toBe(text);
    expect(text).not.toMatch(/\d{4}-\d\d-\d\d/);
  });

  it('saved again after opening is what it was', async () => {
    const again = await opened(text);
    const second = studyDocument(again, defaultDesign, document.results);
    expect(second.recordings).toEqual(document.recordings);
    expect(second.choices).toEqual(document.choices);
    expect(second.room).toEqual(document.room);
  });

  it('keeps the colours that were chosen; one of before there was a choice has those of the page', () => {
    const chosen = { ...document, choices: { ...document.choices, scale: 'clear' as const } };
    expect(openStudyText(documentText(chosen)).choices.scale).toBe('clear');
    const { scale: _, ...older } = document.choices;
    expect(openStudyText(JSON.stringify({ ...document, choices: older })).choices).toEqual(document.choices);
    expect(document.choices.scale).toBe('auto');
  });

  it('keeps a room given by a plan, with walls that change with frequency', () => {
    const corners = parseCorners('0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5');
    const place = createRoom({
      plan: createPlan(corners, 2.4),
      temperatureCelsius: 23,
      absorption: wallsFromNames(['plaster-on-brick'], corners.length + 2),
    });
    const saved = JSON.parse(documentText(studyDocument({ ...snapshot, room: place }, null))) as {
      room: { plan: { corners: { x: number; y: number }[] } };
    };
    const read = openStudyText(JSON.stringify(saved)).room!;
    expect(read).toEqual(place);
    const modes = (of: typeof place) => predictRoom(of, { toHz: 60 }).modes;
    expect(modes(read)).toEqual(modes(place));
    saved.room.plan.corners = saved.room.plan.corners.slice(0, 2);
    expect(() => openStudyText(JSON.stringify(saved))).toThrow(
      expect.objectContaining({ code: 'plan-corners' }),
    );
  });

  it('keeps seats and sources that nobody has recorded yet', () => {
    const places = [{ kind: 'seat' as const, name: 'sofa', at: { x: 1, y: 2, z: 1.2 } }];
    const saved = studyDocument({ ...snapshot, places }, null);
    expect(openStudyText(documentText(saved)).places).toEqual(places);
    const before = openStudyText(JSON.stringify({ ...saved, places: undefined }));
    expect(before.places).toEqual([]);
    const broken = { ...saved, places: [{ ...places[0], kind: 'chair' }] };
    expect(() => openStudyText(JSON.stringify(broken))).toThrow(
      expect.objectContaining({ code: 'study-broken', params: { where: 'places[1].kind' } }),
    );
  });

  it('opens from an older version, and refuses a newer one and a stranger', () => {
    const { recordings, ...rest } = document;
    const old = {
      ...rest,
      version: 0,
      recordings: recordings.map((one) => {
        const kept: Record<string, unknown> = { ...one };
        for (const name of ['seatName', 'sourceName', 'timeReference']) delete kept[name];
        return kept;
      }),
    };
    const before = openStudyText(JSON.stringify(old));
    expect(before.recordings[0]).toMatchObject({ timeReference: 'none', label: 'console, before' });
    expect(before.design).toBeNull();
    const refused = (value: unknown) => expect(() => openStudyText(JSON.stringify(value)));
    refused({ ...document, version: 99 }).toThrow(
      expect.objectContaining({ code: 'study-newer', params: { version: 99, known: 1 } }),
    );
    refused({ hello: 1 }).toThrow(expect.objectContaining({ code: 'study-not-ours' }));
    refused(null).toThrow(expect.objectContaining({ code: 'study-not-ours' }));
    refused([1]).toThrow(expect.objectContaining({ code: 'study-broken' }));
    expect(() => openStudyText('RIFF....')).toThrow(expect.objectContaining({ code: 'study-not-json' }));
  });

  it('goes through every step of a migration in order', () => {
    const steps = {
      0: (one: Record<string, unknown>) => ({ ...one, version: 1, a: 1 }),
      1: (one: Record<string, unknown>) => ({ ...one, version: 2, b: Number(one.a) + 1 }),
    };
    expect(migrated({ format: 'ringdown-study', version: 0 }, 2, steps)).toMatchObject({
      version: 2,
      a: 1,
      b: 2,
    });
    expect(() => migrated({ format: 'ringdown-study', version: 0 }, 1, { 0: (one) => one })).toThrow(
      expect.objectContaining({ code: 'study-broken' }),
    );
  });

  it('is refused whole where any field is damaged, and says which', () => {
    const speaker = createSpeaker('en');
    const damage: [string, (copy: Record<string, never>) => void][] = [
      ['recordings[1].low.samples', (d) => set(d, ['recordings', 0, 'low', 'samples'], 'AAA')],
      [
        'recordings[1].low.samples',
        (d) => set(d, ['recordings', 0, 'low', 'samples'], encodeSamples(Float64Array.of(NaN))),
      ],
      ['recordings[1].channel', (d) => set(d, ['recordings', 0, 'channel'], 0.5)],
      ['recordings[1].seat.y', (d) => set(d, ['recordings', 0, 'seat', 'y'], 'up')],
      ['recordings[1].timeReference', (d) => set(d, ['recordings', 0, 'timeReference'], 'mine')],
      ['recordings', (d) => set(d, ['recordings'], {})],
      ['choices', (d) => set(d, ['choices', 'fromHz'], 900)],
      ['choices.limit', (d) => set(d, ['choices', 'limit'], 'none')],
      ['choices.scale', (d) => set(d, ['choices', 'scale'], 'rainbow')],
      ['active', (d) => set(d, ['active'], 7)],
      ['design.bands', (d) => set(d, ['design', 'bands'], 'none')],
    ];
    for (const [where, harm] of damage) {
      const copy = JSON.parse(text) as Record<string, never>;
      harm(copy);
      try {
        openStudyText(JSON.stringify(copy));
        expect.unreachable(where);
      } catch (error) {
        expect(error).toMatchObject({ code: 'study-broken', params: { where } });
        expect(speaker.error(error as { code: string; params: Record<string, string> })).toContain(where);
      }
    }
  });
});

function set(target: unknown, path: (string | number)[], value: unknown): void {
  const last = path.at(-1)!;
  const holder = path.slice(0, -1).reduce((one, key) => (one as Record<string, unknown>)[key], target);
  (holder as Record<string, unknown>)[last] = value;
}

describe('samples as text', () => {
  it('come back to the precision of 32-bit floats, whatever their number', () => {
    for (let length = 0; length < 9; length++) {
      const samples = Float64Array.from({ length }, (_, n) => Math.fround(Math.sin(n * 1.7) * 10 ** -n));
      expect(decodeSamples(encodeSamples(samples))).toEqual(samples);
    }
    // RFC 4648: four zero bytes.
    expect(encodeSamples(Float64Array.of(0))).toBe('AAAAAA==');
    expect(encodeSamples(Float64Array.of(1))).toBe(
      Buffer.from(new Float32Array([1]).buffer).toString('base64'),
    );
  });

  it('are refused where they are not whole floats', () => {
    for (const wrong of ['A', 'AAAA', 'AA==', '====', 'AAA*AAA=', 'AAAAAA=A'])
      expect(decodeSamples(wrong)).toBeNull();
  });
});
