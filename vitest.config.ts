import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.node.test.ts'],
    exclude: ['**/node_modules/**', 'tests/wide/**'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
