import { describe, expect, it } from 'vitest';
import { signalErrorParams } from '../../src/signal/index.js';
import { createSpeaker, english, parseNumber } from '../../src/words/index.js';

describe('the words', () => {
  it('have a sentence for every refusal of the readers, and it carries its numbers', () => {
    const speaker = createSpeaker('en');
    for (const [code, names] of Object.entries(signalErrorParams)) {
      expect(english.errors, code).toHaveProperty(code);
      const params = Object.fromEntries(
        names.map((name, i) => [name, /codec|found|encoding/.test(name) ? 'ABCD' : 7 + i]),
      );
      const sentence = speaker.error({ code, params });
      expect(sentence, code).toMatch(/[.!]$/);
      expect(sentence, code).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it('have a sentence for every note of the contract', () => {
    const codes =
      'short truncated noisy no-range clipped hum late-energy two-slopes bent-decay rumble aligned channel-chosen rate-suspect not-finite silent dc size-guessed node boundary other-room';
    for (const code of codes.split(' ')) {
      expect(english.notes, code).toHaveProperty(code);
      expect(createSpeaker('en').note({ code, params: {} }), code).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it('write numbers as the locale does', () => {
    expect(createSpeaker('de', { space: ' ' }).n.hertz(1234.5, 1)).toMatch(/^1\.?234,5 Hz$/);
    expect(createSpeaker('en', { space: ' ' }).n.seconds(0.456, 2)).toBe('0.46 s');
  });

  it('read a decimal comma as a decimal sign', () => {
    expect(parseNumber('4,50')).toBe(4.5);
  });

  it('are never cut where they stand within another, while a name from outside is', () => {
    for (const lang of ['en', 'de']) {
      const speaker = createSpeaker(lang);
      for (const limit of Object.keys(english.limits)) {
        const meaning = speaker.meaning('limits', limit);
        expect(speaker.view('decay-times-held', { limit, meaning })).toContain(meaning);
        expect(speaker.view('made-limit', { limit, meaning })).toContain(meaning);
      }
      const sentence = speaker.error({ code: 'ceiling-sloped', params: { text: 'a' } });
      expect(sentence.length).toBeGreaterThan(160);
      expect(speaker.view('failure-of', { label: 'a'.repeat(500), sentence })).toBe(
        `${'a'.repeat(160)}…: ${sentence}`,
      );
      const names = Object.keys(english.constructions).join(', ');
      expect(speaker.error({ code: 'wall-name', params: { text: 'x', names } })).toContain(names);
    }
  });
});
