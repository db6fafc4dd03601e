import { describe, expect, it } from 'vitest';
import { createSpeaker, english } from '../../src/words/index.js';
import { everyNote } from '../support/telling.js';

const speaker = createSpeaker('en', { space: ' ' });
const notes = everyNote();

/** Codes that no single recording gives rise to. */
const elsewhere = ['silent', 'other-room', 'aligned'];

describe('what is said of a recording', () => {
  it('is tried here for every note there is', () => {
    const given = new Set<string>(notes.map(({ code }) => code));
    expect([...given, ...elsewhere].sort()).toEqual(Object.keys(english.notes).sort());
  });

  it('tells every number and name that comes with it: another value makes another sentence', () => {
    for (const { code, params } of notes) {
      const sentence = speaker.note({ code, params });
      for (const [name, value] of Object.entries(params)) {
        if (value === null || (value === '' && name === 'loopbacks')) continue;
        // Which loopbacks there are is told where none of them is read.
        if (name === 'loopbacks' && params.loopbackChosen) continue;
        const other =
          typeof value === 'number'
            ? value * 3 + 7
            : typeof value === 'boolean'
              ? !value
              : (({ seat: 'source', file: 'corner' } as Record<string, string>)[value] ?? '77 88');
        const changed = speaker.note({ code, params: { ...params, [name]: other } });
        // How many are live is told where it is why the first was taken.
        // The strongest of one line is that line.
        if (code === 'hum' && name === 'frequencyHz' && !String(params.linesHz).includes(' ')) continue;
        if (code === 'channel-chosen' && name === 'live' && params.reason !== 'first') continue;
        expect(changed, `${code}: ${name} = ${value}`).not.toBe(sentence);
      }
    }
  });

  it('is one or more whole sentences that end with what to do, without holes', () => {
    for (const note of notes) {
      const sentence = speaker.note(note);
      expect(sentence, note.code).not.toMatch(/undefined|NaN|\[object|null| {2}|–| ,|Infinity/);
      expect(sentence.length, note.code).toBeGreaterThan(60);
      expect(sentence, note.code).toMatch(/\.$/);
      expect(sentence.split('. ').length, note.code).toBeGreaterThan(1);
    }
  });

  it('never says of a loopback that it is silent, nor of hum that it is alone where it is a family', () => {
    const said = (code: string) =>
      notes.filter((note) => note.code === code).map((note) => speaker.note(note));
    const channels = said('channel-chosen');
    expect(channels.some((text) => text.includes('Channel 1 looks like a loopback'))).toBe(true);
    expect(channels.some((text) => text.includes('Channels 1 3 look like loopbacks'))).toBe(true);
    for (const text of channels) expect(/loopback/.test(text) && /others are silent/.test(text)).toBe(false);
    const [fifty, sixty] = said('hum');
    expect(fifty).toContain('at 50.0 Hz, 100.0 Hz and 150.0 Hz, strongest at');
    expect(fifty).toContain('mains of 50 Hz');
    expect(sixty).toContain('hum at 60.0 Hz (');
    expect(sixty).toContain('mains of 60 Hz');
  });
});
