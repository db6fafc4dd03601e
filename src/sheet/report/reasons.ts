import { givenCaptions, type Speaker } from '../../words/index.js';
import { engineVersion } from '../../study/version.js';
import type { SystemDesignBand, SystemSettings } from './design.js';
import { settingsShown } from './design.js';
import { listOf, markup, tableOf, type Content } from './markup.js';
import type { Subject } from './subject.js';

/** Undecided ridges that are named. */
const openShown = 6;

/** What was not done, and why: decisions to leave, what was never measured, what is refused on principle. */
export function notDoneSection(subject: Subject, speaker: Speaker): Content {
  const { study, system, pair, ridges, seatCount, sourceCount } = subject;
  const { fromHz, toHz } = study.choices;
  const leftAlone = ridges.filter(({ decision }) => decision?.action === 'leave');
  const open = ridges.filter(({ decision }) => !decision || (decision.action === '' && decision.note === ''));
  const stages = system.arrangement.stages.length;
  const boosted = settingsShown(subject, speaker).some(({ boosts }) => boosts);
  const missing = system.grid.incomplete.length;
  const dips = study.recordings.some((_, k) =>
    (study.examinations[k]?.notes ?? []).some(({ code }) => code === 'boundary'),
  );
  const items: Content[] = [
    ...leftAlone.map(({ row, decision }) =>
      speaker.view('not-left', { frequencyHz: row.ridge.frequencyHz, note: decision!.note }),
    ),
    open.length > 0 &&
      speaker.view('not-decided', {
        list: open
          .slice(0, openShown)
          .map(({ row }) => speaker.n.hertz(row.ridge.frequencyHz))
          .join(', '),
        more: open.length - openShown,
      }),
    pair.after?.kind === 'designed' ? speaker.view('not-predicted') : stages < 2 && speaker.view('not-after'),
    seatCount === 1 && speaker.view('not-one-seat'),
    missing > 0 && speaker.view('not-seats', { count: missing }),
    sourceCount > 1 &&
      study.recordings.some(({ timeReference }) => timeReference === 'none') &&
      speaker.view('not-clock'),
    study.recordings.length > 1 && system.repeats === null && speaker.view('not-repeated'),
    study.recordings.some(({ fullScaleDb }) => fullScaleDb === undefined) && speaker.view('not-calibrated'),
    study.room === null && speaker.view('not-room'),
    !boosted && (dips || sourceCount > 1) && speaker.view('not-boosted'),
    ...study.failures.map((failure) => {
      const sentence = speaker.error(failure);
      return speaker.view('not-read', {
        sentence: failure.label ? speaker.view('failure-of', { label: failure.label, sentence }) : sentence,
      });
    }),
    speaker.view('not-band', { fromHz, toHz }),
  ];
  return markup`<section><h2>${speaker.view('sheet-not-done')}</h2>\n${listOf(items.filter(Boolean))}</section>\n`;
}

const bandText = ({ kind, frequencyHz, gainDb, q }: SystemDesignBand, speaker: Speaker): string =>
  speaker.view('sheet-band', { kind: speaker.view(`band-${kind}`), frequencyHz, gainDb, q });

/** Gain, delay, polarity and filters of each source; null where everything is as it was measured. */
export function settingsSection(subject: Subject, speaker: Speaker): Content {
  const { system } = subject;
  const rows: SystemSettings[] = settingsShown(subject, speaker);
  const { bands } = system.design;
  if (rows.every(({ plain }) => plain) && bands.length === 0) return null;
  const { n } = speaker;
  return markup`<section><h2>${speaker.view('sheet-settings')}</h2>
${tableOf({
  caption: speaker.view('sheet-settings'),
  whole: true,
  columns: [
    { head: speaker.view('kind-source') },
    { head: speaker.view('gain-column'), figure: true },
    { head: speaker.view('delay-column'), figure: true },
    { head: speaker.view('inverted-column') },
    { head: speaker.view('sheet-filters') },
  ],
  rows: rows.map(({ name, setting }) => [
    name,
    setting.muted ? speaker.view('muted-column') : n.number(setting.gainDb, 1),
    n.number(1000 * setting.delaySeconds, 2),
    speaker.view(setting.inverted ? 'sheet-inverted' : 'sheet-normal'),
    setting.bands.map((band) => bandText(band, speaker)).join('; ') || '–',
  ]),
})}
${bands.length > 0 && markup`<p>${speaker.view('sheet-filters-all')}: ${bands.map((band) => bandText(band, speaker)).join('; ')}.</p>`}
</section>\n`;
}

/** The usual cautions: those that always hold, and those of what this sheet proposes. */
export function cautionsSection(subject: Subject, speaker: Speaker): Content {
  const { ridges } = subject;
  const kinds = new Set(
    ridges.flatMap(({ row, decision }) => [
      ...row.ridge.remedies.map(({ kind }) => String(kind)),
      decision?.action ?? '',
    ]),
  );
  const filters = settingsShown(subject, speaker).some(({ plain }) => !plain) || kinds.has('cut');
  const names = [
    'licensed',
    'levels',
    ...(filters ? ['boost'] : []),
    ...(kinds.has('absorb') ? ['fire', 'panels'] : []),
  ];
  return markup`<section class="whole"><h2>${speaker.view('sheet-cautions')}</h2>\n${listOf(names.map((name) => speaker.caution(name)))}</section>\n`;
}

/** Version, parameters, definitions. */
export function madeSection({ study, diagnosis }: Subject, speaker: Speaker): Content {
  const { choices, recordings } = study;
  const { limit, fromHz, toHz } = choices;
  const name = speaker.term('limits', limit);
  const given = [...new Set(recordings.flatMap((one) => givenCaptions(speaker, one)))];
  const items: Content[] = [
    speaker.view('made-by', { version: engineVersion, count: recordings.length }),
    speaker.view('made-band', { fromHz, toHz }),
    speaker.view('made-limit', { limit: name, meaning: speaker.meaning('limits', limit) }),
    diagnosis?.room ? speaker.caption('candidates', {}) : null,
    ...given,
  ];
  return markup`<section class="whole"><h2>${speaker.view('sheet-made')}</h2>\n${listOf(items.filter(Boolean))}</section>\n`;
}
