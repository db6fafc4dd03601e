import type { Diagnosis, FileFacts, Ridge } from '../diagnosis/index.js';
import type { DecayReading } from '../decay/index.js';
import { expectedPrecision, type Resonance } from '../resonance/index.js';
import type { CommandSpeaker } from '../words/command.js';
import { modeKindMarks } from './say-room.js';
import { table, wrap } from './table.js';

/** More rows than this are for a program: `--json`. */
const mostCandidates = 4;

/** One diagnosis for a reader at a terminal: the file, its notes, the ridges, every resonance, the room. */
export function diagnosisText(diagnosis: Diagnosis, speaker: CommandSpeaker): string {
  const parts = [
    ...diagnosis.files.map((file) => fileText(file, speaker)),
    ridgesText(diagnosis, speaker),
    resonancesText(diagnosis.resonances, speaker),
    qualityText(diagnosis, speaker),
    roomText(diagnosis, speaker),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function fileText(file: FileFacts, speaker: CommandSpeaker): string {
  const { label, sampleRate, channel, channelCount: channels, durationSeconds: seconds, onsetSeconds } = file;
  return [
    label,
    `  ${speaker.command('file', { sampleRate, channel, channels, seconds, onsetSeconds })}`,
    ...file.notes.map((note) => wrap(`  ! ${speaker.note(note)}`)),
    ...bandsText(file, speaker),
    ...expectedText(file, speaker),
  ].join('\n');
}

/** What a fit can tell at best, known from the samples alone. */
function expectedText({ bands }: FileFacts, speaker: CommandSpeaker): string[] {
  if (bands.length === 0) return [];
  const { leastSpacingHz: spacingHz, decayShare } = expectedPrecision(bands);
  return ['', wrap(speaker.caption('expected', { spacingHz, decayShare }))];
}

/** Range and decay times per third-octave, or why there are none. */
function bandsText({ bands }: FileFacts, speaker: CommandSpeaker): string[] {
  if (bands.length === 0) return [];
  const { n } = speaker;
  const cell = ({ seconds, refused }: DecayReading): string =>
    seconds !== null
      ? n.number(seconds, 2)
      : speaker.view(
          refused === 'filter' ? 'decay-shorter' : refused === 'end' ? 'decay-cut' : 'decay-no-range',
        );
  const rows = bands.map((band) => [
    n.number(band.centreHz, band.centreHz < 40 ? 1 : 0),
    n.number(band.rangeDb, 0),
    cell(band.edt),
    cell(band.t20),
    cell(band.t30),
    n.number(band.shortestSeconds, 2),
  ]);
  const heads = [
    { head: 'Hz', right: true },
    { head: speaker.command('head-range'), right: true },
    ...['edt', 't20', 't30'].map((name) => ({ head: `${speaker.label(name)}, s`, right: true })),
    { head: `${speaker.view('shortest-column')}, s`, right: true },
  ];
  return ['', speaker.view('bands-heading'), table(heads, rows)];
}

/** How much of the samples the fit accounts for. */
function qualityText({ fit, resonances }: Diagnosis, speaker: CommandSpeaker): string {
  if (resonances.length === 0) return '';
  const { explainedEnergy: explained, residualWhiteness: whiteness } = fit;
  return wrap(speaker.view('fit-quality', { explained, whiteness }));
}

function ridgesText({ ridges, resonances, limit, fit }: Diagnosis, speaker: CommandSpeaker): string {
  const name = speaker.term('limits', limit);
  if (resonances.length === 0 && ridges.length === 0)
    return fit.notes.some(({ code }) => code === 'no-range') ? '' : speaker.command('no-resonance');
  if (ridges.length === 0) return wrap(speaker.command('no-ridge', { limit: name }));
  const { n } = speaker;
  const rows = ridges.map((ridge, index) => [
    String(index + 1),
    // A band without a resonance is as wide as the picture shows it.
    ridge.resonance === null
      ? n.number(ridge.frequencyHz, 0)
      : n.plusMinus(ridge.frequencyHz, resonances[ridge.resonance].frequencySdHz),
    n.plusMinus(ridge.decayTimeSeconds, ridge.decayTimeSdSeconds),
    n.number(resonances[ridge.resonance ?? -1]?.q, 1),
    n.seconds(ridge.limitSeconds),
    n.number(ridge.excess, 2),
    speaker.term('audible', ridge.audible),
    speaker.term('causes', ridge.cause),
    // Where the chosen limit is not published, another decides.
    ridge.limitName === limit ? '' : `(${speaker.term('limits', ridge.limitName)})`,
  ]);
  const heads = [
    { head: '', right: true },
    { head: 'Hz', right: true },
    { head: speaker.command('head-decay'), right: true },
    { head: 'Q', right: true },
    { head: speaker.label('limit'), right: true },
    { head: speaker.label('excess'), right: true },
    { head: speaker.label('audible') },
    { head: speaker.label('cause') },
    { head: '' },
  ];
  return [
    speaker.command('ridges', { limit: name }),
    table(heads, rows),
    '',
    ...ridges.flatMap((ridge, index) => candidatesText(ridge, index, speaker)),
    ...ridges.flatMap((ridge, index) => whyText(ridge, index, speaker)),
    '',
    speaker.command('remedies'),
    ...remediesText(ridges, speaker),
    wrap(speaker.caution('licensed')),
  ].join('\n');
}

function candidatesText(
  { frequencyHz, candidates }: Ridge,
  index: number,
  speaker: CommandSpeaker,
): string[] {
  if (candidates.length === 0) return [];
  const named = candidates.slice(0, mostCandidates).map(({ order, kind, frequencyHz: predicted, weight }) =>
    speaker.command('candidate', {
      ...{ order: order.join(','), kind: speaker.term('modeKinds', kind) },
      ...{ frequencyHz: predicted, weight },
    }),
  );
  const rest = candidates.length - named.length;
  if (rest > 0) named.push(speaker.view('more-candidates', { count: rest }));
  const none = Math.max(0, 1 - candidates.reduce((sum, { weight }) => sum + weight, 0));
  named.push(speaker.command('none', { share: none }));
  const list = named.join('; ');
  return [wrap(speaker.command('may-be', { number: index + 1, frequencyHz, list }), 100, '   ')];
}

/** What a cause rests on; for a room mode its candidates say it. */
function whyText({ frequencyHz, evidence }: Ridge, index: number, speaker: CommandSpeaker): string[] {
  if (!evidence || evidence.kind === 'modes') return [];
  const why = speaker.view(`why-${evidence.kind}`, evidence.params);
  return [wrap(`${index + 1}. ${speaker.n.hertz(frequencyHz)}: ${why}`, 100, '   ')];
}

/** Each remedy once, behind the ridges it is for; a cut has figures of its own for each. */
function remediesText(ridges: readonly Ridge[], speaker: CommandSpeaker): string[] {
  const groups = new Map<string, { sentence: string; numbers: number[] }>();
  ridges.forEach(({ remedies }, index) => {
    for (const { kind, params } of remedies) {
      const own = kind === 'cut' ? params : { reason: params.reason, axis: params.axis };
      const sentence = speaker.remedy({ kind, params: own });
      const group = groups.get(sentence) ?? { sentence, numbers: [] };
      group.numbers.push(index + 1);
      groups.set(sentence, group);
    }
  });
  return [...groups.values()].map(({ sentence, numbers }) =>
    wrap(`- ${listOf(numbers, speaker)}: ${sentence}`),
  );
}

/** 1, 2, 3, 5 as "1 to 3, 5". */
function listOf(numbers: readonly number[], speaker: CommandSpeaker): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) =>
      from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : speaker.command('run', { from, to }),
    )
    .join(', ');
}

function resonancesText(resonances: readonly Resonance[], speaker: CommandSpeaker): string {
  if (resonances.length === 0) return '';
  const { n } = speaker;
  const rows = resonances.map((r) => [
    n.plusMinus(r.frequencyHz, r.frequencySdHz),
    r.decayTimeSeconds === null
      ? speaker.label('never')
      : n.plusMinus(r.decayTimeSeconds, r.decayTimeSdSeconds),
    n.number(r.q, 1),
    n.number(r.levelDb, 0),
    speaker.term('resonanceKinds', r.kind),
  ]);
  const heads = [
    { head: 'Hz', right: true },
    { head: speaker.command('head-decay'), right: true },
    { head: 'Q', right: true },
    { head: 'dB', right: true },
    { head: speaker.label('kind') },
  ];
  const { fitFromSeconds: fromSeconds, fitToSeconds: toSeconds } = resonances[0];
  return [
    speaker.command('resonances'),
    wrap(
      `${speaker.caption('fit-window', { fromSeconds, toSeconds })}; ${speaker.caption('uncertainty', {})}.`,
    ),
    table(heads, rows),
  ].join('\n');
}

function roomText({ room }: Diagnosis, speaker: CommandSpeaker): string {
  if (!room) return '';
  const { n } = speaker;
  const { lengthMetres: l, widthMetres: w, heightMetres: h } = room.room.size;
  const list = room.modes
    .slice(0, 24)
    .map(
      ({ order, kind, frequencyHz }) =>
        `${n.number(frequencyHz, 1)} (${order.join(',')})${modeKindMarks[kind].trim()}`,
    );
  const more = room.modes.length - list.length;
  return wrap(
    speaker.command('room-modes', {
      sides: [l, w, h].map((side) => n.significant(side, 4)).join(' x '),
      speed: room.room.speedOfSoundMetresPerSecond,
      list: list.join(', '),
      more,
    }),
  );
}
