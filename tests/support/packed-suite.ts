import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { packPackage } from './packed.js';
import { launch } from './site.js';

/** Before all tests of a suite: the package packed, and Chromium started; after them, both let go. */
export function packedSuite(): { readonly tarball: string; readonly browser: Browser } {
  let browser: Browser | undefined;
  let packed: ReturnType<typeof packPackage> | undefined;
  beforeAll(async () => {
    packed = packPackage();
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    packed?.remove();
  });
  return {
    get tarball() {
      return packed!.tarball;
    },
    get browser() {
      return browser!;
    },
  };
}
