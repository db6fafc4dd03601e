import { describe, it } from 'vitest';
import { expectSameInForms, forms } from '../support/forms.js';

describe('the ridges of a sound', () => {
  for (const [name, changes] of Object.entries(forms))
    it(`are the same within their stated uncertainty ${name}`, { timeout: 120_000 }, () => {
      expectSameInForms(1, changes);
    });
});
