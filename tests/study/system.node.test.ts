import { describe, expect, it } from 'vitest';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { createSystem } from '../../src/study/system.js';
import { ridgeHangs } from '../../src/study/remedy-readings.js';
import { pairRidges, ridgesThrough, seatRidges, spreadsOf } from '../../src/study/system-readings.js';
import {
  comparisonTable,
  csvText,
  levelsTable,
  recordingsTable,
  ridgesTable,
  seatsTable,
  sourcesTable,
  spreadTable,
} from '../../src/study/tables.js';

const room = createRoom({
  size: { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 },
  absorption: 0.09,
});
const sources = { A: { x: 0.3, y: 0.3, z: 0.3 }, B: { x: 5.3, y: 3.8, z: 0.3 } };
const seats = { 1: { x: 3.6, y: 1.5, z: 1.2 }, 2: { x: 3.9, y: 2.5, z: 1.2 }, 3: { x: 4.6, y: 1.2, z: 1.2 } };
type Source = keyof typeof sources;
type Seat = keyof typeof seats;

function file(source: Source, seat: Seat, stage: string): ArrayBuffer {
  const { samples } = synthesise({
    ...{ room, source: sources[source], seat: seats[seat], sampleRate: 4000, seconds: 1.5, noiseDb: -60 },
    absorption: stage === 'after' ? 0.16 : 0.09,
    seed: Number(seat) + (source === 'A' ? 10 : 20),
  });
  return encodeWav({ channels: [samples], sampleRate: 4000, encoding: 'float-64' }).buffer;
}

async function made(points: [Source, Seat, string][], timeReference: 'common' | 'none' = 'common') {
  const pool = createPool({ routes: [], cacheLimit: 200 });
  const study = createStudy({ pool });
  study.setRoom(room);
  for (const [source, seat, stage] of points)
    await study.addRecording(file(source, seat, stage), {
      label: `${source}${seat} ${stage}`,
      ...{ stage, timeReference, seat: seats[seat], source: sources[source] },
      ...{ seatName: `seat ${seat}`, sourceName: source },
    });
  await study.settled();
  return { study, system: createSystem(study, { pool }) };
}

const all = (stage: string): [Source, Seat, string][] =>
  (['A', 'B'] as const).flatMap((source) =>
    ([1, 2, 3] as const).map((seat): [Source, Seat, string] => [source, seat, stage]),
  );

describe('sources and seats of a study', () => {
  it('are computed only while somebody needs them', async () => {
    const { system } = await made(all('before'));
    expect((await system.settled()).matrix).toBeNull();
    const letGo = system.need('sums');
    const sums = await system.settled();
    expect(sums.matrix).toMatchObject({ sourceCount: 2, seatCount: 3 });
    expect(sums.before).toBeNull();
    letGo();
    expect(system.snapshot.matrix).toBeNull();
  });

  it('show before, the design and a later stage, each diagnosed over all seats', async () => {
    const { study, system } = await made([...all('before'), ...all('after')]);
    system.need('decays');
    const { before, designed, after, arrangement, stage, afterStage } = await system.settled();
    expect(arrangement.stages).toEqual(['before', 'after']);
    expect([stage, afterStage]).toEqual([0, 1]);
    expect(before!.recordings).toHaveLength(3);
    expect(designed).toBe(before);
    expect(before!.diagnosis.ridges.length).toBeGreaterThan(2);
    // The later stage absorbs more: its ridges are surely shorter.
    const pairs = pairRidges(before!.diagnosis, after!.diagnosis).filter(
      ({ before: ridge, sure }) => ridge && ridge.frequencyHz < 80 && sure !== null,
    );
    expect(pairs.length).toBeGreaterThan(2);
    for (const { changeSeconds, sure } of pairs) {
      expect(changeSeconds).toBeLessThan(0);
      expect(sure).toBe(true);
    }
    const ridges = seatRidges(before!.diagnosis);
    expect(ridges.some(({ where }) => where === 'everywhere')).toBe(true);
    for (const { levelsDb, heard } of ridges) expect(levelsDb.length).toBe(heard.length);

    const tables = [
      ridgesTable(before!.diagnosis),
      recordingsTable(study.snapshot),
      comparisonTable(before!.diagnosis, after!.diagnosis),
      levelsTable(system.snapshot)!,
      seatsTable(system.snapshot)!,
      sourcesTable(system.snapshot),
      spreadTable(system.snapshot)!,
    ];
    for (const table of tables) {
      expect(table.rows.length, table.name).toBeGreaterThan(0);
      for (const row of table.rows) expect(row.length, table.name).toBe(table.columns.length);
      expect(csvText(table).split('\n')[0]).toBe(table.columns.join(','));
    }
    expect(spreadTable(system.snapshot)!.rows.map(([name]) => name)).toEqual(['before', 'designed', 'after']);
  });

  it('take settings of a source at once, and fit the decay anew', async () => {
    const { system } = await made(all('before'));
    system.need('decays');
    await system.settled();
    const before = spreadsOf(system.snapshot)!;
    expect(before.designed.meanSpatialVariance).toBe(before.before.meanSpatialVariance);
    system.setSource('B', { inverted: true, delaySeconds: 0.004 });
    const now = spreadsOf(system.snapshot)!;
    expect(now.designed.meanSpatialVariance).not.toBe(before.designed.meanSpatialVariance);
    const { designed, before: plain } = await system.settled();
    expect(designed).not.toBe(plain);
    system.reset();
    expect((await system.settled()).designed).toBe(system.snapshot.before);
  });

  it('propose settings that make the seats more alike, with progress, and can be cancelled', async () => {
    const { system } = await made(all('before'));
    system.need('decays');
    await system.settled();
    const fractions: number[] = [];
    system.subscribe(({ proposing }) => proposing && fractions.push(proposing.fraction));
    await system.propose(3);
    const { proposal } = system.snapshot;
    expect(proposal!.score.meanSpatialVariance).toBeLessThan(proposal!.alike.meanSpatialVariance);
    expect(proposal!.alike.worstHangSeconds).toBeGreaterThan(0);
    expect(Math.max(...fractions)).toBeGreaterThan(0.5);
    fractions.forEach((value, k) => expect(value).toBeGreaterThanOrEqual(fractions[k - 1] ?? 0));
    system.applyProposal();
    expect(spreadsOf(system.snapshot)!.designed.meanSpatialVariance).toBeCloseTo(
      proposal!.score.meanSpatialVariance,
      3,
    );
    const search = system.propose(4);
    expect(system.snapshot.proposing).not.toBeNull();
    system.cancelProposal();
    await search;
    expect(system.snapshot.proposing).toBeNull();
  });

  it('propose cuts for shared ridges; the decay after them is fitted and shorter', async () => {
    const { system } = await made(all('before'));
    system.need('decays');
    await system.settled();
    system.setDesign({ limits: { mostBands: 2, lowestSeatDb: -6, deepestDb: -12 } });
    const shelf = { kind: 'low-shelf', frequencyHz: 25, gainDb: -1, q: 0.7 } as const;
    system.setBands([shelf]);
    system.proposeBands();
    expect(system.snapshot.design.bands[0], 'what was set freely stays').toEqual(shelf);
    system.setBands(system.snapshot.design.bands.slice(1));
    const { design, equaliser } = system.snapshot;
    expect(design.bands.length).toBeGreaterThan(0);
    expect(design.bands.length).toBeLessThanOrEqual(2);
    for (const { gainDb } of design.bands) expect(gainDb).toBeLessThan(0);
    expect(equaliser!.skipped.length + equaliser!.cuts.length).toBeGreaterThan(2);
    const { before, designed } = await system.settled();
    const expected = ridgesThrough(before!.diagnosis, design.bands);
    const cut = equaliser!.cuts[0];
    const through = expected.find(({ ridge }) => Math.abs(ridge.frequencyHz - cut.band.frequencyHz) < 0.1)!;
    expect(through.expectedSeconds! / cut.band.targetSeconds).toBeCloseTo(1, 1);
    const hangs = ridgeHangs(system.snapshot)!.find(({ ridge }) => ridge === through.ridge)!;
    expect(hangs.seats.length).toBe(3);
    for (const seat of hangs.seats)
      if (seat.before !== null) expect(seat.after!).toBeLessThan(0.8 * seat.before);
    const near = designed!.diagnosis.resonances.filter(
      ({ frequencyHz }) => Math.abs(frequencyHz - cut.band.frequencyHz) < 0.7,
    );
    expect(Math.min(...near.map(({ decayTimeSeconds }) => decayTimeSeconds!))).toBeLessThan(
      1.15 * cut.band.targetSeconds,
    );
  });

  it('leave out seats that lack a source, and say what is missing where none is whole', async () => {
    const { system } = await made([
      ['A', 1, ''],
      ['B', 1, ''],
      ['A', 2, ''],
    ]);
    system.need('sums');
    const partial = await system.settled();
    expect(partial.grid).toMatchObject({ seats: [0], incomplete: [1] });
    expect(partial.matrix!.seatCount).toBe(1);
    const { system: none } = await made([
      ['A', 1, ''],
      ['B', 2, ''],
    ]);
    none.need('sums');
    expect((await none.settled()).failures).toEqual([
      { code: 'points-missing', params: { missing: 2, points: 4 } },
    ]);
  });

  it('refuse to add up recordings without a common clock, but compare the seats of one source', async () => {
    const { system } = await made(all('before'), 'none');
    system.need('sums');
    expect((await system.settled()).failures[0].code).toBe('time-reference');
    const { system: one } = await made(all('before').slice(0, 3), 'none');
    one.need('sums');
    const snapshot = await one.settled();
    expect(snapshot.failures).toEqual([]);
    expect(snapshot.matrix).toMatchObject({ sourceCount: 1, seatCount: 3 });
  });

  it('follow names given later, and repeats of a point', async () => {
    const { study, system } = await made([
      ['A', 1, ''],
      ['A', 2, ''],
    ]);
    system.need('sums');
    await system.settled();
    study.setRecording(1, { seatName: 'seat 1', seat: seats[1] });
    const { arrangement, repeats } = await system.settled();
    expect(arrangement.cells[0][0][0]).toEqual([0, 1]);
    expect(repeats!.levelDb).toBeGreaterThan(0.5);
    study.setRecording(1, { seatName: 'seat 2', timeReference: 'none' });
    expect((await system.settled()).repeats).toBeNull();
  });

  it('end with their study', async () => {
    const { system } = await made(all('before').slice(0, 2));
    system.need('decays');
    const waiting = system.settled();
    system.dispose();
    await waiting;
    expect(system.snapshot.before).toBeNull();
  });
});

describe('tables as text', () => {
  it('quote what needs it, leave empty what is not there, and give no spreadsheet a formula to run', () => {
    const table = {
      name: 't',
      columns: ['a', 'b'],
      rows: [
        ['x,"y"', null],
        ['=1+1', 0.123456789],
        [NaN, true],
      ],
    };
    expect(csvText(table)).toBe(`a,b\n"x,""y""",\n"'=1+1",0.123457\n,true\n`);
  });
});
