import { describe, expect, it } from 'vitest';
import { constructions, type ConstructionName } from '../../src/room/index.js';

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const square = c * c + d * d;
  return [(a * c + b * d) / square, (b * c - a * d) / square];
};

const speed = 343;

/** Impedance and propagation in porous material, re those of air (Miki 1990, J. Acoust. Soc. Jpn (E) 11:19, from memory). */
function surfaceImpedance(frequencyHz: number, depthMetres: number, resistivity: number): Complex {
  const x = frequencyHz / resistivity;
  const impedance: Complex = [1 + 0.07 * x ** -0.632, -0.107 * x ** -0.632];
  const k = ((2 * Math.PI * frequencyHz) / speed) * depthMetres;
  const [loss, phase] = [k * 0.16 * x ** -0.618, k * (1 + 0.109 * x ** -0.618)];
  const back: Complex = [
    Math.exp(-2 * loss) * Math.cos(2 * phase),
    -Math.exp(-2 * loss) * Math.sin(2 * phase),
  ];
  return times(impedance, over([1 + back[0], back[1]], [1 - back[0], -back[1]]));
}

/** Random incidence on a surface that reacts locally: the integral of absorption over all directions (Kuttruff, ch. 2). */
function randomIncidence(frequencyHz: number, depthMetres: number, resistivity: number): number {
  const [re, im] = surfaceImpedance(frequencyHz, depthMetres, resistivity);
  const steps = 2000;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const angle = ((k + 0.5) / steps) * (Math.PI / 2);
    const [a, b] = [re * Math.cos(angle), im * Math.cos(angle)];
    const reflected = over([a - 1, b], [a + 1, b]);
    sum += (1 - reflected[0] ** 2 - reflected[1] ** 2) * Math.sin(2 * angle);
  }
  return (sum / steps) * (Math.PI / 2);
}

const row = (name: ConstructionName) => constructions.find((one) => one.name === name)!;

describe('the constructions', () => {
  it('absorb between nothing and all, within a spread that is told, and each has its source', () => {
    for (const { octaves, spread, source, name } of constructions) {
      for (const value of octaves) expect(value > 0 && value <= 1, name).toBe(true);
      expect(spread[0] <= octaves[0] && octaves[0] <= spread[1] && spread[1] > spread[0], name).toBe(true);
      expect(['handbook', 'porous']).toContain(source);
    }
  });

  it.each([
    ['mineral-wool-50', 0.05],
    ['mineral-wool-100', 0.1],
  ] as const)('of %s are what the model of Miki 1990 gives for 20 kPa s/m2', (name, depthMetres) => {
    const { octaves, spread } = row(name);
    for (const [k, hertz] of [125, 250, 500].entries())
      expect(Math.abs(octaves[k] - randomIncidence(hertz, depthMetres, 20_000)), `${hertz} Hz`).toBeLessThan(
        0.006,
      );
    const ends = [10_000, 40_000].map((resistivity) => randomIncidence(125, depthMetres, resistivity));
    for (const [k, end] of ends.entries()) expect(Math.abs(spread[k] - end)).toBeLessThan(0.011);
  });

  // M. D. Egan, Architectural Acoustics, 1988, table of common building materials, 125, 250 and 500 Hz; from memory.
  it.each([
    ['plasterboard-on-studs', [0.29, 0.1, 0.05]],
    ['wood-panelling', [0.28, 0.22, 0.17]],
    ['wood-floor-on-joists', [0.15, 0.11, 0.1]],
    ['parquet-on-concrete', [0.04, 0.04, 0.07]],
    ['carpet', [0.02, 0.06, 0.14]],
    ['carpet-on-underlay', [0.08, 0.24, 0.57]],
    ['window', [0.35, 0.25, 0.18]],
    ['large-pane', [0.18, 0.06, 0.04]],
    ['heavy-curtain', [0.14, 0.35, 0.55]],
  ] as const)('of %s are those of the handbook', (name, octaves) => {
    expect(row(name).octaves).toEqual(octaves);
  });
});
