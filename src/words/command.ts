import { commandHelp as germanHelp } from './de/command-help.js';
import { commandSentences as germanSentences } from './de/command.js';
import { german } from './de/index.js';
import { commandHelp as englishHelp } from './en/command-help.js';
import { commandSentences as englishSentences } from './en/command.js';
import { addLanguage, hasLanguage, tagsOf } from './registry.js';
import { createSpeaker, type Speaker } from './speaker.js';
import type { Sentence, WordParams } from './types.js';

/** What one command does and takes. */
export interface CommandHelp {
  readonly usage: string;
  readonly brief: string;
  readonly does: string;
  readonly options: readonly (readonly [string, string])[];
  readonly more: readonly string[];
}

interface CommandWords {
  readonly sentences: Readonly<Record<string, Sentence>>;
  readonly help: Readonly<Record<string, CommandHelp>>;
}

/** The languages of the command, which has them all at hand. */
export const commandLanguages: Readonly<Record<string, CommandWords>> = {
  en: { sentences: englishSentences, help: englishHelp },
  de: { sentences: germanSentences, help: germanHelp },
};

/** A speaker that also says what only the command says. */
export interface CommandSpeaker extends Speaker {
  readonly help: Readonly<Record<string, CommandHelp>>;
  command(code: string, params?: WordParams): string;
}

/**
 * @param locale BCP 47; words are English where the command does not have its language, numbers follow it anyhow.
 * @param space Between number and unit: plain, since output of a command is read by programs too.
 */
export function createCommandSpeaker(locale = 'en', space = ' '): CommandSpeaker {
  if (!hasLanguage(german.language)) addLanguage(german);
  const speaker = createSpeaker(locale, { space });
  const { sentences, help } = commandLanguages[tagsOf(locale)[0]] ?? commandLanguages.en;
  return { ...speaker, help, command: (code, params = {}) => sentences[code](params, speaker.n) };
}
