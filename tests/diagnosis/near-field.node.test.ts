import { describe, expect, it } from 'vitest';
import {
  concerns,
  diagnose,
  nearFieldEvidence,
  partNearField,
  readNearField,
} from '../../src/diagnosis/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { createRoom, nearFieldModesDb, roomVolume, synthesise } from '../../src/room/index.js';
import { drain } from '../../src/signal/drain.js';
import { Rng } from '../../src/signal/index.js';
import { nearFieldScene, type OwnTail } from '../support/near-field.js';

/** How often the near field names the source: of its own tail, and of the modes of the room. */
function count(seeds: number, metres: number, peakDb: number | null, said = metres) {
  let [right, rung, wrong, modes] = [0, 0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const rng = new Rng(seed);
    const tail: OwnTail | null =
      peakDb === null
        ? null
        : { frequencyHz: 30 + 50 * rng.uniform(), decayTimeSeconds: 0.5 + 0.5 * rng.uniform(), peakDb };
    const { room, seats, near } = nearFieldScene(seed, metres, tail, { said });
    const params = { fromHz: 20, toHz: 200, volumeCubicMetres: roomVolume(room) };
    const { resonances } = drain(fitResonances(seats, params));
    const beside = drain(readNearField(near, params));
    for (const resonance of resonances) {
      const told = nearFieldEvidence(resonance, [beside], room)?.kind === 'near-field';
      if (tail && Math.abs(resonance.frequencyHz - tail.frequencyHz) < 1) {
        rung++;
        if (told) right++;
      } else {
        modes++;
        if (told) wrong++;
      }
    }
  }
  return { right, rung, wrong, modes };
}

describe('a recording close to a source', () => {
  it('names the source’s own tail of +6 dB in at least 7 of 10 rooms at 3 cm, and no mode of them', () => {
    const { right, wrong, modes } = count(10, 0.03, 6);
    console.log(`near field, 3 cm, tail +6 dB: ${right} of 10 named, ${wrong} of ${modes} modes named`);
    expect(right).toBeGreaterThanOrEqual(7);
    expect(modes).toBeGreaterThan(200);
    expect(wrong).toBe(0);
  });

  it('names less the further it is: at 10 cm modes of the room are as loud as the source', () => {
    const [close, far] = [count(12, 0.03, 0), count(12, 0.1, 0)];
    console.log(`near field, tail 0 dB: ${close.right} of 12 named at 3 cm, ${far.right} at 10 cm`);
    expect(far.right).toBeLessThan(close.right);
    expect(close.wrong + far.wrong).toBe(0);
  });

  it('names nothing where the source has no tail, and next to nothing where its distance is told six times too small', () => {
    const [told, mistaken] = [count(6, 0.05, null), count(6, 0.3, null, 0.05)];
    console.log(
      `near field without a tail: ${told.wrong} of ${told.modes}, mistaken ${mistaken.wrong} of ${mistaken.modes}`,
    );
    expect(told.modes).toBeGreaterThan(120);
    expect(told.wrong).toBe(0);
    expect(mistaken.wrong / mistaken.modes).toBeLessThan(0.01);
  });
});

describe('the most that modes add close to a source', () => {
  it('is what the modal sum gives there', () => {
    // 5.4 x 4.1 x 2.7 m: (1,1,0) at 52.5 Hz has no other within 6 %.
    const room = createRoom({
      size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 },
      absorption: 0.15,
    });
    const source = { x: 0, y: 0, z: 0 };
    const { modes, sampleRate } = synthesise({
      ...{ room, source, seat: source, seconds: 0.5 },
      rollOff: { highPassHz: null },
    });
    const mode = modes.find(({ order }) => String(order) === '1,1,0')!;
    const damping = 6.9078 / mode.decayTimeSeconds;
    const expected = 20 * Math.log10(((mode.amplitude * sampleRate) / (2 * damping)) * 0.04);
    const most = nearFieldModesDb(room, { source, distanceMetres: 0.04 }, mode, 0.03);
    expect(Math.abs(most - expected)).toBeLessThan(0.05);
  });
});

describe('recordings close to sources and at seats', () => {
  const tail: OwnTail = { frequencyHz: 47, decayTimeSeconds: 0.9, peakDb: 6 };
  const { room, seats, near } = nearFieldScene(3, 0.03, tail, { seatCount: 2 });
  const params = { fromHz: 20, toHz: 200, limit: 'audibility', room } as const;
  const found = drain(diagnose([near, ...seats], params));

  it('are told apart: the fit and the files are those of the seats alone', () => {
    expect(found.files.map(({ label }) => label)).toEqual(['seat 1', 'seat 2']);
    expect(found.resonances.every(({ amplitudes }) => amplitudes.length === 2)).toBe(true);
    expect(found.nearFields?.map(({ label }) => label)).toEqual(['near']);
    expect(found.resonances).toEqual(drain(diagnose(seats, params)).resonances);
  });

  it('make the source the cause of its ridge, with the figures that this rests on', () => {
    const ridge = found.ridges.find(({ frequencyHz }) => Math.abs(frequencyHz - 47) < 0.5);
    expect(ridge?.cause).toBe('source');
    expect(ridge?.evidence?.kind).toBe('near-field');
    expect(ridge?.evidence?.params.metres).toBe(0.03);
    expect(Math.abs(ridge!.evidence!.params.aboveDirectDb! - 6)).toBeLessThan(3);
    expect(ridge!.evidence!.params.mostDb!).toBeLessThan(ridge!.evidence!.params.aboveDirectDb! - 3);
    expect(found.ridges.filter(({ evidence }) => evidence?.kind === 'near-field')).toHaveLength(1);
  });

  it('leave the cause open without a room, whose size the level of its modes depends on', () => {
    const without = drain(diagnose([near, ...seats], { ...params, room: null }));
    expect(without.ridges.some(({ cause }) => cause === 'source')).toBe(false);
  });

  it('say nothing of another source', () => {
    const other = { ...near, source: { x: 3, y: 1, z: 0.3 } };
    const apart = drain(diagnose([other, ...seats], params));
    expect(apart.nearFields).toBeUndefined();
    expect(apart.ridges.some(({ cause }) => cause === 'source')).toBe(false);
    expect(concerns({ source: null, sourceName: 'left' }, [{ source: null, sourceName: 'left' }])).toBe(true);
    expect(concerns({ source: null, sourceName: 'left' }, [{ source: null, sourceName: 'right' }])).toBe(
      false,
    );
    expect(concerns({ source: null, sourceName: 'left' }, [{ source: null, sourceName: '' }])).toBe(true);
  });

  it('are looked at as they are where there is no seat, and say that they are none', () => {
    expect(partNearField([near])).toEqual({ seats: [near], near: [] });
    const alone = drain(diagnose([near], params));
    expect(alone.files[0].notes.find(({ code }) => code === 'near-field')?.params).toEqual({ metres: 0.03 });
  });
});
