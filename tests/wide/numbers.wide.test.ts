import { expect, it } from 'vitest';
import { anyCase, complaintOf, everythingOf, type AnyCase } from '../support/any-room.js';

const cases = 200;

/** Null where what was made of a recording is silence, which is refused as such. */
function caseOr(seed: number): AnyCase | null {
  try {
    return anyCase(seed);
  } catch (error) {
    expect(error).toMatchObject({ code: 'silent' });
    return null;
  }
}

it(`are numbers in ${cases} more cases of any room, rate, length and scale`, () => {
  let [smallest, largest, silent] = [Infinity, 0, 0];
  for (let seed = 1000; seed < 1000 + cases; seed++) {
    const one = caseOr(seed);
    if (!one) {
      silent++;
      continue;
    }
    smallest = Math.min(smallest, one.scale);
    largest = Math.max(largest, one.scale);
    expect(complaintOf(everythingOf(one)), `case ${seed}`).toBeNull();
  }
  expect(silent).toBeLessThan(cases / 20);
  console.log(
    `numbers: ${cases} cases, scales from ${smallest.toExponential(0)} to ${largest.toExponential(0)}`,
  );
});
