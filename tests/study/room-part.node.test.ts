import { describe, expect, it } from 'vitest';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { crowdingOf, modeLinks, shownMode, transitionOf } from '../../src/study/mode-readings.js';
import { placesOf } from '../../src/study/places.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';

const room = createRoom({
  size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.6 },
  absorption: 0.1,
});
const madeStudy = () => createStudy({ pool: createPool({ routes: [] }) });
const seat = { x: 3.7, y: 1.4, z: 1.2 };
const source = { x: 0.3, y: 0.3, z: 0.3 };

describe('a study of a room without a recording', () => {
  it('knows the modes while somebody needs them, and the pressure of the lowest or the chosen one', async () => {
    const study = madeStudy();
    study.setRoom(room);
    study.setPlaces([{ kind: 'seat', name: 'console', at: seat }]);
    expect((await study.settled()).prediction).toBeNull();
    const letGo = study.need('pressure');
    const first = await study.settled();
    expect(first.prediction!.modes.length).toBeGreaterThan(60);
    expect(first.pressure!.mode.order).toEqual([1, 0, 0]);
    expect(first.pressure!.atSeats).toHaveLength(1);
    study.selectMode([0, 2, 0]);
    const second = await study.settled();
    expect(second.pressure!.mode.order).toEqual([0, 2, 0]);
    expect(shownMode(second)!.order).toEqual([0, 2, 0]);
    expect(crowdingOf(second).length).toBeGreaterThan(7);
    expect(transitionOf(second)).toMatchObject({ measured: false });
    letGo();
    expect(study.snapshot.prediction).toBeNull();
    study.dispose();
  });

  it('says what it cannot compute', async () => {
    const study = madeStudy();
    study.need('prediction');
    study.setRoom(createRoom({ size: { lengthMetres: 60, widthMetres: 60, heightMetres: 60 } }));
    const { failures, prediction } = await study.settled();
    expect(prediction).toBeNull();
    expect(failures).toMatchObject([{ code: 'mode-count', label: null }]);
    study.dispose();
  });

  it('leaves out places beyond the walls, and tells which', async () => {
    const study = madeStudy();
    study.setRoom(room);
    study.setPlaces([
      { kind: 'seat', name: 'console', at: seat },
      { kind: 'seat', name: 'hall', at: { x: 9, y: 1, z: 1 } },
    ]);
    study.need('pressure');
    const snapshot = await study.settled();
    expect(snapshot.pressure!.atSeats).toHaveLength(1);
    expect(placesOf(snapshot).map(({ inside }) => inside)).toEqual([true, false]);
    study.dispose();
  });
});

describe('places of recordings', () => {
  it('are shown once, move with their recordings, and give the likeliest mode of the ridge in view', async () => {
    const study = madeStudy();
    study.setRoom(room);
    study.setPlaces([{ kind: 'seat', name: 'console', at: seat }]);
    study.need('pressure');
    const { samples } = synthesise({ room, seat, source, seconds: 1.6, noiseDb: -55 });
    const { buffer } = encodeWav({ channels: [samples], sampleRate: 48000, encoding: 'float-32' });
    await study.addRecording(buffer, { label: 'one', seat, source, seatName: 'console' });
    const snapshot = await study.settled();
    expect(placesOf(snapshot)).toMatchObject([
      { kind: 'seat', name: 'console', own: true },
      { kind: 'source', name: '', own: false, at: source },
    ]);
    expect(snapshot.pressure!.levels).toHaveLength(1);
    const links = modeLinks(snapshot);
    expect(links.length).toBeGreaterThan(5);
    const best = links.filter(({ ridge }) => ridge === 0).sort((a, b) => b.weight - a.weight)[0];
    expect(snapshot.pressure!.mode).toEqual(snapshot.prediction!.modes[best.mode]);
    const [named, only] = placesOf(snapshot);
    study.movePlace(named, { ...seat, x: 2 });
    study.movePlace(only, { ...source, y: 1 });
    const moved = await study.settled();
    expect(moved.recordings[0]).toMatchObject({ seat: { x: 2 }, source: { y: 1 } });
    expect(moved.places[0].at.x).toBe(2);
    expect(placesOf(moved)).toHaveLength(2);
    study.dispose();
  });
});
