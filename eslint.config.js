import js from '@eslint/js';
import { configs as litConfigs } from 'eslint-plugin-lit';
import { configs as wcConfigs } from 'eslint-plugin-wc';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';
import { arrows } from './scripts/lint/arrows.mjs';
import { sameBits } from './scripts/lint/same-bits.mjs';
import { strict } from './scripts/lint/strict.mjs';

const templates = ['src/elements/**/*.ts', 'src/define/**/*.ts', 'stories/**/*.ts'];

export default defineConfig(
  {
    ignores: [
      ...[
        'dist/',
        '.dist-*/',
        'node_modules/',
        'storybook-static/',
        'demo/recordings/',
        'coverage/',
        '.cache/',
      ],
      ...['docs/.vitepress/dist/', 'docs/.vitepress/cache/', 'docs/public/'],
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    name: 'typed',
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // Numbers in sentences are formatted by words; in template literals of codes and paths they are plain integers.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'no-restricted-syntax': 'off',
    },
  },
  {
    name: 'library',
    files: ['src/**/*.ts'],
    ignores: ['src/cli/**'],
    rules: { 'no-console': ['error', { allow: ['warn', 'error'] }] },
  },
  { ...litConfigs['flat/recommended'], files: templates },
  { ...wcConfigs['flat/recommended'], files: templates },
  ...strict,
  ...sameBits,
  ...arrows,
  {
    name: 'tests',
    files: ['tests/**/*.ts', 'stories/**/*.ts'],
    rules: {
      // Chai's property assertions (`to.be.true`) are expressions.
      '@typescript-eslint/no-unused-expressions': 'off',
    },
  },
  {
    name: 'tests in a browser',
    files: ['tests/**/*.browser.test.ts'],
    // The accessibility assertion types every assertion of chai as a promise; only its own is one.
    rules: { '@typescript-eslint/no-floating-promises': 'off' },
  },
  {
    name: 'Node',
    files: ['**/*.mjs', '**/*.js'],
    languageOptions: {
      globals: Object.fromEntries(
        [
          ...[
            'process',
            'console',
            'Buffer',
            'URL',
            'URLSearchParams',
            'setTimeout',
            'clearTimeout',
            'setInterval',
          ],
          ...['clearInterval', 'setImmediate', 'performance', 'fetch', 'AbortController', 'structuredClone'],
          ...['TextEncoder', 'TextDecoder', 'globalThis', 'NodeJS'],
        ].map((name) => [name, 'readonly']),
      ),
    },
  },
);
