import { describe, expect, it } from 'vitest';
import { fitRoom, type HeardResonance, type RoomFit } from '../../src/diagnosis/index.js';
import { boxModes, createRoom, type Room, type RoomSize } from '../../src/room/index.js';
import { RingdownError, Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const sizeOf = (rng: Rng): RoomSize => ({
  lengthMetres: 4.2 + 2.5 * rng.uniform(),
  widthMetres: 3.2 + 1.8 * rng.uniform(),
  heightMetres: 2.3 + 0.8 * rng.uniform(),
});

const scaled = ({ lengthMetres, widthMetres, heightMetres }: RoomSize, by: readonly number[]): RoomSize => ({
  lengthMetres: lengthMetres * by[0],
  widthMetres: widthMetres * by[1],
  heightMetres: heightMetres * by[2],
});

/** Modes up to 110 Hz of a room, one in seven unseen, each moved by 0.4 % (sd) of its own, one in eight of no mode. */
function heardIn(size: RoomSize, rng: Rng, speed = 343.2): HeardResonance[] {
  return boxModes(size, speed, 110)
    .filter(() => rng.uniform() > 1 / 7)
    .map(({ frequencyHz }) => ({
      frequencyHz:
        rng.uniform() < 1 / 8 ? 35 + 75 * rng.uniform() : frequencyHz * (1 + 0.004 * rng.gaussian()),
      frequencySdHz: 0.1,
    }));
}

const fit = (room: Room, heard: readonly HeardResonance[]): RoomFit => drain(fitRoom(room, heard));
const sidesOf = ({ sides }: RoomFit) => sides.map(({ metres }) => metres);

describe('sides fitted to resonances', () => {
  const cases = Array.from({ length: 16 }, (_, k) => {
    const rng = new Rng(900 + k);
    const typed = sizeOf(rng);
    const by = [0, 1, 2].map(() => 1 + 0.03 * (2 * rng.uniform() - 1));
    const true_ = scaled(typed, by);
    return { typed, true_, result: fit(createRoom({ size: typed }), heardIn(true_, rng)) };
  });

  it('are those of the room that rang, where the tape was off by up to 3 % on each', () => {
    const errors = cases.map(({ true_, result }) => {
      const [l, w, h] = sidesOf(result);
      return Math.max(
        Math.abs(l / true_.lengthMetres - 1),
        Math.abs(w / true_.widthMetres - 1),
        Math.abs(h / true_.heightMetres - 1),
      );
    });
    expect(errors.filter((error) => error < 0.01).length).toBeGreaterThanOrEqual(13);
    expect(Math.max(...errors)).toBeLessThan(0.05);
  });

  it('lie within three of their stated deviations of the true ones in 45 of 48', () => {
    const z = cases.flatMap(({ true_, result }) =>
      result.sides.map(({ metres, sdMetres }, axis) => {
        const side = [true_.lengthMetres, true_.widthMetres, true_.heightMetres][axis];
        return Math.abs(metres - side) / (sdMetres ?? 0.025 * side);
      }),
    );
    expect(z.filter((value) => value < 3).length).toBeGreaterThanOrEqual(45);
  });

  it('explain more than those typed, and no random resonances do as well', () => {
    for (const { result } of cases) {
      expect(result.explained).toBeGreaterThanOrEqual(result.explainedAsTyped);
      expect(result.chance).toBeLessThanOrEqual(0.05);
    }
    const sum = (of: (result: RoomFit) => number) => cases.reduce((all, { result }) => all + of(result), 0);
    expect(sum((one) => one.explained)).toBeGreaterThan(sum((one) => one.explainedAsTyped) + 10);
    expect(sum((one) => one.rmsShare!)).toBeLessThan(0.7 * sum((one) => one.rmsShareAsTyped!));
  });

  it('say what they leave: resonances of no mode have none', () => {
    const size = { lengthMetres: 5.2, widthMetres: 3.9, heightMetres: 2.6 };
    const heard = boxModes(size, 343.2, 75).map(({ frequencyHz }) => ({ frequencyHz, frequencySdHz: 0.1 }));
    const stranger = { frequencyHz: 48.5, frequencySdHz: 0.1 };
    const { resonances, explained } = fit(createRoom({ size }), [...heard, stranger]);
    expect(explained).toBe(heard.length);
    expect(resonances.filter(({ order }) => order === null).map(({ frequencyHz }) => frequencyHz)).toEqual([
      48.5,
    ]);
  });
});

describe('random resonances', () => {
  it('are told as chance: of 20 sets at most three look better than one in ten', () => {
    const chances = Array.from({ length: 20 }, (_, k) => {
      const rng = new Rng(300 + k);
      const heard = Array.from({ length: 11 }, () => ({
        frequencyHz: 34 + 70 * Math.sqrt(rng.uniform()),
        frequencySdHz: 0.1,
      }));
      return fit(createRoom({ size: sizeOf(rng) }), heard).chance;
    });
    expect(chances.filter((chance) => chance < 0.1).length).toBeLessThanOrEqual(3);
    expect(chances.reduce((sum, chance) => sum + chance, 0) / chances.length).toBeGreaterThan(0.3);
  });
});

describe('a common scale of all sides', () => {
  const size = { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.7 };

  it('is the same as warmer air: 24 °C instead of 20 is told as either', () => {
    const warm = 343.2 * Math.sqrt((24 + 273.15) / 293.15);
    const { commonShare, airCelsius, airWithin, sides } = fit(
      createRoom({ size }),
      heardIn(size, new Rng(5), warm),
    );
    expect(commonShare).toBeCloseTo(warm / 343.2 - 1, 2);
    expect(Math.abs(airCelsius - 24)).toBeLessThan(3);
    expect(airWithin).toBe(true);
    for (const { metres, typedMetres } of sides) expect(metres).toBeLessThan(typedMetres);
  });

  it('beyond what the air may differ by is not laid to it', () => {
    const { airWithin, airCelsius } = fit(
      createRoom({ size }),
      heardIn(scaled(size, [0.97, 0.97, 0.97]), new Rng(6)),
    );
    expect(airCelsius).toBeGreaterThan(30);
    expect(airWithin).toBe(false);
  });
});

describe('a fit that cannot be made', () => {
  it('is refused with too few resonances, and for a plan', () => {
    const room = createRoom({ size: { lengthMetres: 5, widthMetres: 4, heightMetres: 2.5 } });
    const three = [34, 43, 57].map((frequencyHz) => ({ frequencyHz, frequencySdHz: 0.1 }));
    expect(() => fit(room, three)).toThrowError(RingdownError);
    const corners = [
      { x: 0, y: 0 },
      { x: 5, y: 0 },
      { x: 5, y: 4 },
      { x: 0, y: 4 },
    ];
    const plan = { ...room, plan: { corners, heightMetres: 2.5 } };
    expect(() => fit(plan, three)).toThrowError(RingdownError);
  });

  it('says nothing on a side that no resonance depends on', () => {
    const size = { lengthMetres: 6, widthMetres: 4.6, heightMetres: 2.2 };
    // Below 75 Hz nothing stands between floor and ceiling, 78 Hz.
    const heard = boxModes(size, 343.2, 75).map(({ frequencyHz }) => ({ frequencyHz, frequencySdHz: 0.1 }));
    const { sides } = fit(createRoom({ size }), heard);
    expect(sides[2].sdMetres).toBeNull();
    expect(sides[0].sdMetres).not.toBeNull();
  });
});
