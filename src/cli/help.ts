import type { CommandSpeaker } from '../words/command.js';
import { commandLanguages } from '../words/command.js';
import { wrap } from './table.js';

export const commandNames = Object.keys(commandLanguages.en.help);

const columns = (rows: readonly (readonly [string, string])[]): string => {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join('\n');
};

export function commandHelp(name: string, speaker: CommandSpeaker): string {
  const { usage, does, options, more } = speaker.help[name];
  return [
    speaker.command('help-usage', { usage }),
    '',
    wrap(does, 96, ''),
    '',
    columns(options),
    ...(more.length ? ['', ...more] : []),
    '',
  ].join('\n');
}

export function generalHelp(speaker: CommandSpeaker): string {
  const rows = commandNames.map((name) => [name, speaker.help[name].brief] as const);
  return [
    speaker.command('help-usage', { usage: `ringdown ${speaker.command('help-command')} ...` }),
    '',
    columns(rows),
    '',
    speaker.command('help-more'),
    speaker.command('help-status'),
    '',
  ].join('\n');
}
