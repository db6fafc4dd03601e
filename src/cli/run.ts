import { RingdownError } from '../signal/index.js';
import { failureOf } from '../study/failure.js';
import { engineVersion } from '../study/version.js';
import { createCommandSpeaker, type CommandSpeaker } from '../words/command.js';
import { diagnose, diagnoseOptions } from './diagnose.js';
import { figure, figureOptions } from './figure.js';
import { grid, gridOptions } from './grid.js';
import { commandHelp, commandNames, generalHelp } from './help.js';
import { exitStatus, type CommandIo } from './io.js';
import { modes, modesOptions } from './modes.js';
import { response, responseOptions } from './response.js';
import { sweep, sweepOptions } from './sweep.js';
import { synth, synthOptions } from './synth.js';
import { readWords, type OptionSpecs, type Words } from './options.js';

interface Command {
  readonly options: OptionSpecs;
  run(words: Words, io: CommandIo, speaker: CommandSpeaker): number | Promise<number>;
}

const commands: Readonly<Record<string, Command>> = {
  diagnose: { options: diagnoseOptions, run: diagnose },
  grid: { options: gridOptions, run: grid },
  modes: { options: modesOptions, run: modes },
  figure: { options: figureOptions, run: figure },
  sweep: { options: sweepOptions, run: sweep },
  response: { options: responseOptions, run: response },
  synth: { options: synthOptions, run: synth },
};

/**
 * The command `ringdown`.
 *
 * @param argv Words of the call behind the program's name.
 * @returns Exit status: 0 done, 1 a file was refused, 2 the call's words are off
 */
export async function run(argv: readonly string[], io: CommandIo): Promise<number> {
  const { lang, others } = withoutLang(argv);
  // English unless asked otherwise, whatever the system speaks: output of a command is read by programs too.
  const speaker = createCommandSpeaker(lang ?? 'en');
  try {
    if (lang !== null) checkLang(lang);
    const [name, ...rest] = others;
    if (name === '--help' || name === '-h' || name === 'help') {
      io.out(
        rest[0] && commandNames.includes(rest[0]) ? commandHelp(rest[0], speaker) : generalHelp(speaker),
      );
      return exitStatus.done;
    }
    if (name === '--version') {
      io.out(`${engineVersion}\n`);
      return exitStatus.done;
    }
    if (name === undefined || name.startsWith('-'))
      throw new RingdownError('command-none', { commands: commandNames.join(', ') });
    if (!Object.hasOwn(commands, name))
      throw new RingdownError('command-unknown', { name, commands: commandNames.join(', ') });
    if (asksForHelp(rest)) {
      io.out(commandHelp(name, speaker));
      return exitStatus.done;
    }
    const command = commands[name];
    return await command.run(readWords(name, rest, command.options), io, speaker);
  } catch (thrown) {
    io.err(`${speaker.error(failureOf(thrown))}\n`);
    return exitStatus.misused;
  }
}

const asksForHelp = (args: readonly string[]): boolean => {
  const end = args.indexOf('--');
  return args.slice(0, end < 0 ? args.length : end).some((word) => word === '--help' || word === '-h');
};

/** Takes `--lang TAG` out of a call, wherever it stands, so that also what is wrong with the call is said in it. */
function withoutLang(argv: readonly string[]): { lang: string | null; others: readonly string[] } {
  const others: string[] = [];
  const given: string[] = [];
  for (let i = 0; i < argv.length; i += 1) {
    if (argv[i] === '--') return { lang: given.at(-1) ?? null, others: [...others, ...argv.slice(i)] };
    const joined = /^--lang=(.*)$/s.exec(argv[i]);
    if (joined) given.push(joined[1]);
    else if (argv[i] !== '--lang') others.push(argv[i]);
    else given.push(argv[(i += 1)] ?? '');
  }
  return { lang: given.at(-1) ?? null, others };
}

/** @throws RingdownError `option-value`, `option-lang` */
function checkLang(lang: string): void {
  if (lang === '' || lang.startsWith('-')) throw new RingdownError('option-value', { name: 'lang' });
  try {
    Intl.getCanonicalLocales(lang);
  } catch {
    throw new RingdownError('option-lang', { text: lang });
  }
}
