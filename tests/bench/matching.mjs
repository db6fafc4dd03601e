/**
 * How far the weights of candidates can be trusted, over invented rooms that are not ideal (tests/benchmark/rooms.mjs).
 *   npm run bench -- matching [rooms=200]
 */
import { calibrate } from '../benchmark/rooms.mjs';

/** @param {string[]} args */
export async function run(args, engine) {
  const ringdown = engine ?? (await import('../../dist/engine.js'));
  const seeds = Number(args.find((arg) => arg.startsWith('rooms='))?.slice(6) ?? 200);
  const cases = [
    ['one seat, no places known', { placesKnown: false }],
    ['one seat', {}],
    ['one seat, modes within 1.5 Hz joined', { apartHz: 1.5 }],
    ['eight seats', { seats: 8 }],
    ['eight seats, joined', { seats: 8, apartHz: 1.5 }],
    ['eight seats, no strangers', { seats: 8, strangers: 0 }],
    ['wrong sides, one seat, no places', { wrong: true, placesKnown: false }],
    ['wrong sides, one seat', { wrong: true }],
    ['wrong sides, eight seats', { wrong: true, seats: 8 }],
    ['wrong sides, eight seats, joined', { wrong: true, seats: 8, apartHz: 1.5 }],
  ];
  console.log(
    `${seeds} rooms a line; per fifth of weight: mean weight, share that is right, number of candidates`,
  );
  console.log(`${''.padEnd(37)} ridges >=0.7 right | none wins, above a half |`);
  const rows = [];
  for (const [name, params] of cases) {
    const row = calibrate(ringdown, { seeds, .../** @type {object} */ (params) });
    rows.push({ name, ...row });
    const bins = row.bins.map(({ count, weight, right }) =>
      count === 0 ? '-' : `${weight.toFixed(2)} ${right.toFixed(2)} ${count}`,
    );
    const share = (value) => value.toFixed(2);
    console.log(
      `${String(name).padEnd(37)} ${String(row.ridges).padStart(6)} ${share(row.sure)}  ${share(row.sureAndRight)} | ${share(row.none)} ${share(row.mostlyNone)} | ${bins.join(' | ')}`,
    );
  }
  return rows;
}
