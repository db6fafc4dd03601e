import { describe, it } from 'vitest';
import { expectSameInForms, forms } from '../support/forms.js';

describe('the ridges of more sounds', () => {
  for (const [name, changes] of Object.entries(forms))
    it(`are the same within their stated uncertainty ${name}`, { timeout: 600_000 }, () => {
      for (const seed of [2, 3, 4, 5, 6]) expectSameInForms(seed, changes);
    });
});
