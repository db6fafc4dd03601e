import { placesOf } from '../../study/places.js';
import { rangeState } from '../../study/readings.js';
import { isOwnWall, roomVolume, wallsOfRoom } from '../../study/room-form.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { placeName } from '../place-name.js';
import { roomName } from '../room-name.js';
import { listOf, markup, tableOf, type Content, type Markup } from './markup.js';
import { planPicture } from './pictures.js';
import type { Subject } from './subject.js';
import { figureOf } from './figure.js';

type Room = NonNullable<StudySnapshot['room']>;

const fact = (name: string, value: Content): Markup => markup`<div><dt>${name}</dt><dd>${value}</dd></div>\n`;

function roomFacts(room: Room, speaker: Speaker): Markup {
  const walls = wallsOfRoom(room);
  const named = walls.every((wall) => wall !== '');
  const labels = room.plan
    ? [
        ...room.plan.corners.map((_, k) => speaker.view('wall-number', { number: k + 1 })),
        ...['wall-floor', 'wall-ceiling'].map((name) => speaker.view(name)),
      ]
    : ['wall-0', 'wall-1', 'wall-2', 'wall-3', 'wall-floor', 'wall-ceiling'].map((name) =>
        speaker.view(name),
      );
  const material = (wall: string): string =>
    isOwnWall(wall)
      ? speaker.view('wall-coefficient', { value: Number(wall) })
      : speaker.term('constructions', wall);
  const alike = new Set(walls).size === 1;
  return markup`<dl class="facts">
${
  room.plan
    ? fact(speaker.view('room-shape'), roomName(room, speaker))
    : fact(
        speaker.view('sheet-sides'),
        speaker.view('sheet-sides-of', {
          length: room.size.lengthMetres,
          width: room.size.widthMetres,
          height: room.size.heightMetres,
        }),
      )
}
${fact(speaker.view('sheet-volume'), speaker.view('sheet-cubic', { volume: roomVolume(room) }))}
${fact(
  speaker.view('sheet-speed'),
  speaker.view('sheet-speed-of', { speed: room.speedOfSoundMetresPerSecond }),
)}
${
  typeof room.temperatureCelsius === 'number' &&
  fact(
    speaker.view('sheet-air'),
    speaker.view('sheet-air-of', {
      temperature: room.temperatureCelsius,
      humidity: room.humidityPercent ?? null,
    }),
  )
}
${
  named &&
  fact(
    speaker.view('sheet-walls'),
    alike
      ? material(walls[0])
      : walls
          .map((wall, k) => speaker.view('sheet-wall-of', { wall: labels[k], material: material(wall) }))
          .join('; '),
  )
}</dl>\n`;
}

/** Room, plan, seats and sources. */
export function setupSection({ study }: Subject, speaker: Speaker): Content {
  const { room } = study;
  const places = placesOf(study);
  const plan = planPicture(study, speaker);
  if (!room && places.length === 0) return null;
  return markup`<section>
<h2>${speaker.view('sheet-room')}</h2>
${room && roomFacts(room, speaker)}
${plan && figureOf(plan, speaker.view('sheet-plan'))}
${
  places.length > 0 &&
  tableOf({
    caption: speaker.view('sheet-places'),
    whole: places.length <= 24,
    columns: [
      { head: speaker.view('place-name') },
      { head: speaker.view('place-kind') },
      ...['axis-x', 'axis-y', 'axis-z'].map((axis) => ({ head: speaker.view(axis), figure: true })),
    ],
    rows: places.map((place) => [
      placeName(place, places, speaker),
      speaker.view(`kind-${place.kind}`),
      ...[place.at.x, place.at.y, place.at.z].map((value) => speaker.n.number(value, 2)),
    ]),
  })
}</section>\n`;
}

/** Letters of a hash that are printed; the whole of it is in the saved study. */
const printedHash = 12;
/** More rows than this may break over a page; their heads are then repeated. */
const wholeRows = 16;

/** Which files, and how far each can be read. */
export function recordingsSection({ study }: Subject, speaker: Speaker): Content {
  const { recordings, examinations, choices } = study;
  const { n } = speaker;
  if (recordings.length === 0) return null;
  const nameOf = (label: string): string => label || speaker.view('this-recording');
  const stages = recordings.some(({ stage }) => stage !== '');
  const points = recordings.some(({ sourceName, seatName }) => sourceName || seatName);
  const whole = recordings.length <= wholeRows;
  const files = tableOf({
    caption: speaker.view('sheet-recordings'),
    whole,
    columns: [
      { head: speaker.view('sheet-recording') },
      ...(points ? [{ head: speaker.view('kind-source') }, { head: speaker.view('kind-seat') }] : []),
      ...(stages ? [{ head: speaker.view('stage-column') }] : []),
      { head: speaker.view('sheet-rate'), figure: true },
      { head: speaker.view('sheet-length'), figure: true },
      { head: speaker.view('sheet-hash') },
    ],
    rows: recordings.map((one) => [
      nameOf(one.label),
      ...(points ? [one.sourceName ?? '', one.seatName ?? ''] : []),
      ...(stages ? [one.stage] : []),
      n.integer(one.reduced?.sampleRate ?? one.sampleRate),
      n.seconds(one.reduced?.seconds ?? one.samples.length / one.sampleRate),
      markup`<code>${one.hash.slice(0, printedHash)}</code>`,
    ]),
  });
  const bands = (examinations[0]?.ranges ?? []).filter(
    ({ fromHz, toHz, centreHz }) =>
      toHz > choices.fromHz && fromHz < choices.toHz && centreHz <= choices.toHz,
  );
  const rangeText = (rangeDb: number | undefined): string => {
    if (rangeDb === undefined) return '–';
    const state = rangeState(rangeDb);
    return state === 'unread' ? '–' : `${n.integer(rangeDb)}${state === 'doubtful' ? '*' : ''}`;
  };
  const ranges =
    bands.length > 0 &&
    tableOf({
      caption: speaker.view('sheet-ranges'),
      whole,
      className: 'close',
      columns: [
        { head: speaker.view('sheet-recording') },
        ...bands.map(({ centreHz }) => ({ head: n.significant(centreHz, 3), figure: true })),
      ],
      rows: recordings.map((one, k) => [
        nameOf(one.label),
        ...bands.map(({ centreHz }) =>
          rangeText(examinations[k]?.ranges.find((band) => band.centreHz === centreHz)?.rangeDb),
        ),
      ]),
    });
  const notes = recordings.flatMap((one, k) =>
    [...one.notes, ...(examinations[k]?.notes ?? [])].map((note) => ({
      code: note.code,
      label: nameOf(one.label),
      sentence: speaker.note(note),
    })),
  );
  return markup`<section>
<h2>${speaker.view('sheet-recordings')}</h2>
${files}${ranges}${ranges && markup`<p class="foot">${speaker.view('sheet-weak')}</p>\n`}
${listOf(shared(notes, speaker), 'notes')}</section>\n`;
}

/** One note of each kind in full, and which recordings have others of its kind. */
function shared(
  notes: readonly { code: string; label: string; sentence: string }[],
  speaker: Speaker,
): string[] {
  const kinds = new Map<string, { label: string; sentence: string; others: Set<string> }>();
  for (const { code, label, sentence } of notes) {
    const known = kinds.get(code);
    if (!known) kinds.set(code, { label, sentence, others: new Set() });
    else if (label !== known.label) known.others.add(label);
  }
  return [...kinds.values()].map(({ label, sentence, others }) => {
    const note = speaker.view('failure-of', { label, sentence });
    return others.size > 0 ? speaker.view('sheet-alike', { note, names: [...others].join(', ') }) : note;
  });
}
