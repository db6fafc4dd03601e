import { expect, it } from 'vitest';
import { anyCase, complaintOf, everythingOf } from '../support/any-room.js';

const cases = 200;

it(`are numbers in ${cases} more cases of any room, rate, length and scale`, () => {
  let [smallest, largest] = [Infinity, 0];
  for (let seed = 1000; seed < 1000 + cases; seed++) {
    const one = anyCase(seed);
    smallest = Math.min(smallest, one.scale);
    largest = Math.max(largest, one.scale);
    expect(complaintOf(everythingOf(one)), `case ${seed}`).toBeNull();
  }
  console.log(
    `numbers: ${cases} cases, scales from ${smallest.toExponential(0)} to ${largest.toExponential(0)}`,
  );
});
