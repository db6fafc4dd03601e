import { afterSpreadOf, spreadsOf } from '../../study/system-readings.js';
import type { Speaker } from '../../words/index.js';
import { roomName } from '../room-name.js';
import type { Subject } from './subject.js';

/** What was found, for who pays: short sentences, no term that needs a book. */
export function summaryOf(subject: Subject, speaker: Speaker): string[] {
  const { study, diagnosis, sourceCount, seatCount, system } = subject;
  const { fromHz, toHz, limit } = study.choices;
  const stages = system.arrangement.stages.length;
  return [
    speaker.view('sum-measured', {
      ...{ fromHz, toHz, sources: sourceCount, seats: seatCount },
      room: study.room && roomName(study.room, speaker),
      stages: stages > 1 ? stages : null,
    }),
    ...(diagnosis === null
      ? []
      : diagnosis.ridges.length > 0
        ? hanging(subject, speaker)
        : [
            diagnosis.resonances.length === 0 && diagnosis.fit.notes.length > 0
              ? speaker.view('sum-refused')
              : speaker.view('sum-none', { limit: speaker.term('limits', limit) }),
          ]),
    ...spread(subject, speaker),
    ...result(subject, speaker),
  ];
}

/** A decay less certain than this share of itself is not held up to the client as the worst. */
const certainShare = 0.25;

function worstOf(ridges: Subject['ridges']): Subject['ridges'][number] {
  const sure = ridges.find(({ row: { ridge } }) => {
    const { decayTimeSeconds: decay, decayTimeSdSeconds: sd } = ridge;
    return decay !== null && sd !== null && sd < certainShare * decay;
  });
  return sure ?? ridges[0];
}

function hanging({ ridges, study, seatNames }: Subject, speaker: Speaker): string[] {
  const { row, heard } = worstOf(ridges);
  const { frequencyHz, decayTimeSeconds, limitSeconds } = row.ridge;
  return [
    speaker.view('sum-hangs', {
      ...{ frequencyHz, decayTimeSeconds, limitSeconds, count: ridges.length },
      limit: speaker.term('limits', study.choices.limit),
    }),
    ...(heard?.where === 'everywhere' ? [speaker.view('sum-everywhere')] : []),
    ...(heard && heard.where !== 'everywhere'
      ? [speaker.view('sum-most', { heard: row.ridge.seats.length, seats: seatNames.length })]
      : []),
  ];
}

function spread({ system, seatNames }: Subject, speaker: Speaker): string[] {
  const spreads = seatNames.length > 1 ? spreadsOf(system) : null;
  if (!spreads) return [];
  return [speaker.view('sum-spread', { deviationDb: Math.sqrt(spreads.before.meanSpatialVariance) })];
}

function result({ pair, ridges, after, fresh, system, seatNames }: Subject, speaker: Speaker): string[] {
  if (!pair.after) return [speaker.view('sum-no-after')];
  if (pair.after.kind === 'designed') return [speaker.view('sum-designed')];
  if (!after) return [];
  const sure = [...ridges].filter(({ change }) => change?.sure === true);
  const shorter = sure.filter(({ change }) => change!.changeSeconds! < 0).length;
  const worst = ridges.length > 0 ? worstOf(ridges).change : null;
  const spreads = seatNames.length > 1 ? spreadsOf(system) : null;
  const later = spreads && afterSpreadOf(system);
  return [
    ...(ridges.length + fresh.length > 0
      ? [
          speaker.view('sum-after', {
            ...{ left: after.ridges.length, count: ridges.length, shorter },
            longer: sure.length - shorter,
          }),
        ]
      : []),
    ...(worst?.afterSeconds && worst.before?.decayTimeSeconds
      ? [
          speaker.view('sum-worst-after', {
            frequencyHz: worst.before.frequencyHz,
            ...{ beforeSeconds: worst.before.decayTimeSeconds, afterSeconds: worst.afterSeconds },
          }),
        ]
      : []),
    ...(later
      ? [
          speaker.view('sum-spread-after', {
            beforeDb: Math.sqrt(spreads.before.meanSpatialVariance),
            afterDb: Math.sqrt(later.meanSpatialVariance),
          }),
        ]
      : []),
  ];
}
