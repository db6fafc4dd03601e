import { expect, it } from 'vitest';
import { played, shrunk, stepsOf } from '../support/study-model.js';

const sequences = 20;
const steps = 250;

it(
  `is what a simple model says of it, through ${sequences * steps} random steps`,
  { timeout: 120_000 },
  async () => {
    for (let seed = 1; seed <= sequences; seed++) {
      const all = stepsOf(seed, steps);
      const found = await played(all);
      if (!found) continue;
      const few = await shrunk(all.slice(0, found.at + 1));
      const told = await played(few);
      expect.fail(
        `seed ${seed}: ${told?.what ?? found.what}\n${few.map((step) => step.join(' ')).join('\n')}`,
      );
    }
    console.log(`model: ${sequences * steps} steps in ${sequences} sequences, none differed from the model`);
  },
);
