import { defineConfig } from 'vitest/config';

/** Suites that take minutes: packing, documentation pages, browsers. One after the other: they measure and they share ports. */
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/wide/**/*.wide.test.ts'],
    fileParallelism: false,
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // These drive whole browsers and generators on machines that others use too. vitest counts and names what was run again.
    retry: 1,
  },
});
