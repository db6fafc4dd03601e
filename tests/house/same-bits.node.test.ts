import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { sameBits } from '../../scripts/lint/same-bits.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: true,
  overrideConfig: [{ files: ['**/*.ts'], languageOptions: { parser: tseslint.parser } }, ...sameBits],
});

async function complaints(file: string, text: string): Promise<number> {
  const [{ messages }] = await eslint.lintText(text, { filePath: `${root}src/${file}` });
  return messages.filter(({ ruleId }) => ruleId === 'same-bits/maths').length;
}

describe('what computes results', () => {
  it.each(['Math.sin(x);', 'x ** 2;', 'x **= y;', '10 ** 0.3;', 'list.map(Math.exp);', '2 ** k;'])(
    'may not: %s',
    async (text) => {
      for (const folder of ['signal', 'decay', 'resonance', 'room', 'diagnosis', 'seats', 'study'])
        expect(await complaints(`${folder}/virtual.ts`, text), folder).toBe(1);
    },
  );

  it.each(['Math.sqrt(x);', 'Math.round(x);', '2 ** 32;', 'maths.sin(x);'])('may: %s', async (text) => {
    expect(await complaints('signal/virtual.ts', text)).toBe(0);
  });

  it('takes the functions from one place, which alone may name those of the engine', async () => {
    expect(await complaints('signal/maths/virtual.ts', 'Math.pow(x, y);')).toBe(0);
    expect(await complaints('draw/virtual.ts', 'Math.sin(x);')).toBe(0);
  });
});
