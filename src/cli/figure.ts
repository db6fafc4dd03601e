import { openFile, RingdownError } from '../signal/index.js';
import { looks, type Look } from '../sheet/looks.js';
import { figureNames, figureNeeds, figureSizes, studyFigure, type FigureName } from '../sheet/figures.js';
import { isStudyFile, openStudyText } from '../study/document.js';
import { choiceWords } from '../study/choices.js';
import { createPool } from '../study/pool.js';
import { createStudy } from '../study/study.js';
import type { Study, StudyChoices } from '../study/types.js';
import type { CommandSpeaker } from '../words/command.js';
import { createSpeaker } from '../words/index.js';
import { readBand } from './band.js';
import { oneFile, refuse } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';
import { filesBeside, readingOptions, readingSpecs } from './reading.js';
import { readRoom, roomOptions } from './room-words.js';

export const figureOptions: OptionSpecs = {
  ...roomOptions,
  ...readingSpecs,
  ...{ view: {}, out: {}, look: {}, label: {}, width: {}, pixels: {} },
  ...{ method: {}, window: {}, step: {}, span: {}, range: {}, from: {}, to: {}, limit: {} },
  scale: {},
};

const lookNames = Object.keys(looks) as Look[];
/** Device pixels across a PNG; a page on paper at 300 dots per inch has 2480. */
const defaultPixels = 1800;

/** Only what the call names: a saved study keeps its own. */
function readChoices(words: Words): Partial<StudyChoices> {
  const given: Partial<Record<keyof StudyChoices, unknown>> = {
    method: words.choice('method', ['sliding', 'cumulative', 'constant-q']),
    windowSeconds: words.number('window', 0.005, 10),
    stepSeconds: words.number('step', 0.0005, 1),
    spanSeconds: words.number('span', 0.01, 20),
    rangeDb: words.number('range', 10, 120),
    limit: words.choice('limit', ['audibility', 'target', 'neighbours']),
    scale: words.choice('scale', choiceWords.scale),
    ...(words.has('from') || words.has('to') ? readBand(words) : {}),
  };
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null));
}

/** Fills a study from a recording or a saved study; returns what it is called. */
async function fill(study: Study, file: string, words: Words, io: CommandIo): Promise<string> {
  const bytes = await io.readFile(file);
  const label = file.split(/[\\/]/).pop() ?? file;
  if (!isStudyFile(bytes)) {
    const options = { label, ...readingOptions(words), ...(await filesBeside(words, 0, io)) };
    await study.addCopy(await openFile(bytes, options));
    return label;
  }
  const saved = openStudyText(new TextDecoder().decode(bytes));
  study.setChoices(saved.choices);
  study.setRoom(saved.room);
  for (const recording of saved.recordings) await study.addCopy(recording);
  study.setActive(saved.active);
  return saved.recordings[saved.active]?.label ?? label;
}

/** `ringdown figure`: a picture of a recording, a saved study or a room, as SVG or PNG. */
export async function figure(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  const name: FigureName = words.choice('view', figureNames) ?? 'waterfall';
  const out = words.required('out');
  if (!/\.(svg|png)$/i.test(out)) throw new RingdownError('figure-kind', { path: out });
  const room = readRoom(words);
  const file = name === 'modes' && room && words.files.length === 0 ? null : oneFile(words);
  const choices = readChoices(words);
  const theme = looks[words.choice('look', lookNames) ?? 'paper'];
  const cssWidth = words.number('width', 320, 4000) ?? figureSizes[name].cssWidth;
  const pixels = words.integer('pixels', 320, 10_000) ?? defaultPixels;
  const sayer = createSpeaker(speaker.n.locale);

  // No worker: one picture is computed where it is asked for.
  const study = createStudy({ pool: createPool({ routes: [] }) });
  try {
    for (const part of figureNeeds[name]) study.need(part);
    const called = file === null ? words.text('room') : await fill(study, file, words, io);
    if (room) study.setRoom(room);
    study.setChoices(choices);
    const snapshot = await study.settled();
    const [failure] = snapshot.failures;
    if (failure) {
      io.err(`${file ?? out}: ${speaker.error(failure)}
`);
      return exitStatus.refused;
    }
    const svg = studyFigure(snapshot, sayer, {
      name,
      label: words.text('label') ?? called ?? '',
      theme,
      size: { ...figureSizes[name], cssWidth },
    });
    if (svg === null) throw new RingdownError('figure-empty', { view: name });
    const bytes = /\.png$/i.test(out) ? await rasterised(svg, pixels) : new TextEncoder().encode(`${svg}\n`);
    await io.writeFile(out, bytes);
    io.out(`${out}\n`);
    return exitStatus.done;
  } catch (thrown) {
    refuse(file ?? out, thrown, io, speaker);
    return exitStatus.refused;
  } finally {
    study.dispose();
  }
}

/**
 * By a renderer that is no dependency of ours, since most who install the package never ask for a PNG from the command.
 *
 * @throws RingdownError `figure-renderer` where it is not installed
 */
async function rasterised(svg: string, widthPixels: number): Promise<Uint8Array> {
  let renderer: typeof import('@resvg/resvg-js');
  try {
    renderer = await import('@resvg/resvg-js');
  } catch {
    throw new RingdownError('figure-renderer', { name: '@resvg/resvg-js' });
  }
  const made = new renderer.Resvg(svg, { fitTo: { mode: 'width', value: widthPixels } });
  return new Uint8Array(made.render().asPng());
}
