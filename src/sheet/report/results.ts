import { orderText } from '../ridges.js';
import { afterSpreadOf, spreadsOf } from '../../study/system-readings.js';
import { gridCaption } from '../../words/index.js';
import type { Speaker } from '../../words/index.js';
import { stageName, stagesShown } from '../seats-chart.js';
import { figureOf } from './figure.js';
import { markup, tableOf, type Content, type Markup } from './markup.js';
import { decayCharts, levelCharts, responsePicture, waterfalls } from './pictures.js';
import { sideName, type SheetRidge, type Subject } from './subject.js';

/** The pictures: each kind of both sides under each other, so that the eye goes straight down. */
export function resultSection(subject: Subject, speaker: Speaker): Content {
  const { study, system, pair } = subject;
  const sides = [pair.before, pair.after].flatMap((side) => side ?? []);
  if (sides.length === 0) return null;
  const names = sides.map((side) => sideName(side, speaker));
  const titled = (sentence: string) => names.map((side) => speaker.view(sentence, { side }));
  const [falls, decays] = [titled('sheet-waterfall'), titled('sheet-decay')];
  const same = sides.length > 1;
  const stages = system.matrix && system.grid.seats.length > 1 ? stagesShown(system) : [];
  const response = stages.length === 0 ? responsePicture(study, speaker) : null;
  const { recordings, active } = study;
  const shown = recordings[active];
  const captioned = sides[0].grid && gridCaption(speaker, sides[0].grid, study.choices.rangeDb, shown);
  return markup`<section>
<h2>${speaker.view(same ? 'sheet-result' : 'sheet-shown')}</h2>
<div class="pair ${same && 'beside'}">${decayCharts(study, sides, decays, speaker).map((one, k) => figureOf(one, decays[k]))}</div>
${
  stages.length > 0 &&
  markup`<div class="pair ${stages.length > 1 && 'beside'}">${levelCharts(study, system, stages, speaker).map(
    (one, k) => figureOf(one, speaker.view('sheet-levels', { stage: stageName(system, stages[k], speaker) })),
  )}</div>\n${spreadFigures(subject, speaker)}`
}
${response && figureOf(response, speaker.view('sheet-response', { label: shown?.label ?? '' }))}
<div class="pair">${waterfalls(study, sides, falls, speaker).map((one, k) => one && figureOf(one, falls[k]))}
<p class="foot">${captioned}${same && ` ${speaker.view('sheet-same-scales')}`}</p></div>
</section>\n`;
}

function spreadFigures({ system }: Subject, speaker: Speaker): Markup | null {
  const spreads = spreadsOf(system);
  if (!spreads) return null;
  const { n } = speaker;
  const of = { ...spreads, after: afterSpreadOf(system) };
  const rows = stagesShown(system).flatMap((stage) => {
    const one = of[stage];
    return one
      ? [
          [
            stageName(system, stage, speaker),
            speaker.view('variance', { variance: one.meanSpatialVariance }),
            n.decibels(one.meanOutputLevelDb, 1),
            n.percent(one.within3Db),
            n.percent(one.within5Db),
          ],
        ]
      : [];
  });
  return markup`${tableOf({
    caption: speaker.view('spread-figures'),
    whole: true,
    columns: [
      { head: speaker.view('stage-column') },
      ...['variance-column', 'output-column', 'within-3', 'within-5'].map((head) => ({
        head: speaker.view(head),
        figure: true,
      })),
    ],
    rows,
  })}<p class="foot">${speaker.view('variance-meaning')}</p>\n`;
}

/** Candidates that stand in the cell. */
const candidatesShown = 2;
/** Ridges told in full: the worst, and all that something was decided about. The others follow in one sentence. */
const ridgesShown = 12;
/** A figure and its uncertainty may stand in two lines. */
const breakable = (text: string): string => text.replace('\u00a0±', ' ±');

function candidatesOf({ row }: SheetRidge, hasRoom: boolean, speaker: Speaker): Content {
  const { candidates, noneShare, ridge } = row;
  const cause = speaker.term('causes', ridge.cause);
  if (!hasRoom) return cause;
  const list = candidates
    .slice(0, candidatesShown)
    .map(({ order, weight }) => `${orderText(order)} ${speaker.n.percent(weight)}`);
  const rest = candidates.length - list.length;
  const words = [
    ...list,
    ...(rest > 0 ? [speaker.view('more-candidates', { count: rest })] : []),
    candidates.length > 0 ? speaker.view('none-share', { share: noneShare }) : speaker.view('no-candidates'),
  ];
  return markup`${cause}<br><small>${words.join(', ')}</small>`;
}

function seatsOf({ heard }: SheetRidge, names: readonly string[], speaker: Speaker): Content {
  if (!heard) return speaker.view('sheet-here');
  const where = speaker.view(`where-${heard.where}`);
  if (heard.where === 'everywhere') return where;
  const list = heard.ridge.seats.map((seat) => names[seat] ?? '').filter(Boolean);
  return markup`${where}${list.length > 0 && markup`<br><small>${list.join(', ')}</small>`}`;
}

function actionOf({ decision, row }: SheetRidge, speaker: Speaker): Content {
  const { action = '', note = '' } = decision ?? {};
  if (action === '' && note === '') {
    const kinds = [...new Set(row.ridge.remedies.map(({ kind }) => kind))];
    const list = kinds.map((kind) => speaker.view(`action-${kind}`)).join(', ');
    return markup`<small>${list ? speaker.view('sheet-may-help', { list }) : speaker.view('action-')}</small>`;
  }
  return markup`${action && speaker.view(`action-${action}`)}${note && markup`${action && markup`<br>`}<small>${note}</small>`}`;
}

function outcomeOf({ change }: SheetRidge, subject: Subject, speaker: Speaker): Content {
  if (!subject.pair.after || !subject.after)
    return markup`<small>${speaker.view('sheet-not-measured')}</small>`;
  if (!change) return '–';
  const { afterSeconds, afterSdSeconds, changeSeconds, sure, after } = change;
  const said =
    afterSeconds === null
      ? speaker.view('sheet-gone')
      : breakable(speaker.view('sheet-change', { afterSeconds, afterSdSeconds, changeSeconds, sure }));
  const text =
    subject.pair.after.kind === 'designed' ? speaker.view('sheet-predicted', { change: said }) : said;
  return markup`${text}${after && markup`<br><small>${speaker.view('sheet-still-above')}</small>`}`;
}

/** The table that everything comes down to. */
export function ridgesSection(subject: Subject, speaker: Speaker): Content {
  const { diagnosis, ridges, fresh, study, seatNames } = subject;
  if (!diagnosis) return null;
  const { n } = speaker;
  const { limit, fromHz, toHz } = study.choices;
  const named = speaker.term('limits', limit);
  const hasRoom = diagnosis.room !== null;
  const head = markup`<h2>${speaker.view('sheet-ridges')}</h2>\n`;
  if (ridges.length === 0 && fresh.length === 0) {
    const count = diagnosis.resonances.length;
    const notes = diagnosis.fit.notes;
    return markup`<section>${head}${
      count === 0 && notes.length > 0
        ? notes.map((note) => markup`<p>${speaker.note(note)}</p>`)
        : markup`<p>${speaker.view('no-ridges', { limit: named, fromHz, toHz, count })} ${speaker.view('no-ridges-node')}</p>`
    }</section>\n`;
  }
  const shown = ridges.filter(({ decision }, k) => k < ridgesShown || decision !== null);
  const others = ridges.filter((one) => !shown.includes(one));
  const rows = shown.map((one): Content[] => {
    const { ridge, frequencySdHz, q, qSd, kind } = one.row;
    const resonance = ridge.resonance === null ? null : diagnosis.resonances[ridge.resonance];
    return [
      markup`${breakable(n.plusMinus(ridge.frequencyHz, frequencySdHz, 'Hz'))}${kind !== null && kind !== 'resolved' && markup`<br><small>${speaker.term('resonanceKinds', kind)}</small>`}`,
      markup`${
        ridge.decayTimeSeconds === null
          ? speaker.label('never')
          : breakable(n.plusMinus(ridge.decayTimeSeconds, ridge.decayTimeSdSeconds, 's'))
      }<br><small>${speaker.view('sheet-limit-of', { excess: ridge.excess, limitSeconds: ridge.limitSeconds })}</small>`,
      q === null ? '–' : breakable(n.plusMinus(q, qSd)),
      resonance
        ? speaker.view('sheet-fit-range', {
            fromSeconds: resonance.fitFromSeconds,
            toSeconds: resonance.fitToSeconds,
          })
        : '–',
      candidatesOf(one, hasRoom, speaker),
      seatsOf(one, seatNames, speaker),
      actionOf(one, speaker),
      outcomeOf(one, subject, speaker),
    ];
  });
  const later = fresh.map((one): Content[] => [
    n.hertz(one.after!.frequencyHz),
    n.plusMinus(one.after!.decayTimeSeconds, one.after!.decayTimeSdSeconds, 's'),
    ...['–', '–', speaker.term('causes', one.after!.cause), '–', '–', speaker.view('sheet-new')],
  ]);
  return markup`<section>${head}${tableOf({
    caption: speaker.view('sheet-ridges'),
    className: 'ridges',
    whole: rows.length + later.length <= 8,
    columns: [
      { head: speaker.label('frequency') },
      { head: speaker.view('sheet-decay-limit') },
      { head: speaker.label('q') },
      { head: speaker.view('sheet-fitted') },
      { head: speaker.view('sheet-cause') },
      { head: speaker.view('sheet-seats') },
      { head: speaker.view('sheet-action') },
      { head: speaker.view('sheet-outcome') },
    ],
    rows: [...rows, ...later],
  })}${
    others.length > 0 &&
    markup`<p>${speaker.view('sheet-ridges-more', { count: others.length, list: others.map(({ row }) => speaker.view('ridge-flag', { frequencyHz: row.ridge.frequencyHz, decayTimeSeconds: row.ridge.decayTimeSeconds })).join(', ') })}</p>\n`
  }<p class="foot">${speaker.view('sheet-ridges-foot', { limit: named })} ${hasRoom ? null : speaker.view('not-room')}</p></section>\n`;
}
