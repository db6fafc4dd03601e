import { describe, expect, it } from 'vitest';
import { buildProject } from '../../scripts/build.mjs';
import { documentedSizes, measureSizes } from '../../scripts/sizes.mjs';

/** Growth that may go unnoticed until the table is written again. */
const slack = 1.1;

describe('the bytes that a page loads', () => {
  it('are those of the table for developers: no file has grown by more than a tenth, none shrunk by a fifth', async () => {
    await buildProject();
    const documented = documentedSizes();
    for (const { name, kilobytes } of await measureSizes()) {
      const known = documented.get(name);
      expect(
        known,
        `${name} stands in the table; node scripts/sizes.mjs --write puts it there`,
      ).toBeDefined();
      expect(kilobytes, name).toBeLessThanOrEqual(known! * slack);
      expect(kilobytes, name).toBeGreaterThan(known! * 0.8);
    }
  });
});
