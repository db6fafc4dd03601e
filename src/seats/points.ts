import type { PositionMetres, Recording } from '../signal/types.js';

/** What is known of where and when a recording was made. */
export type PointRecording = Pick<
  Recording,
  'seat' | 'source' | 'seatName' | 'sourceName' | 'stage' | 'label' | 'timeReference' | 'nearFieldMetres'
>;

/** One seat or one source: what the recordings call it, or where it is. */
export interface NamedPoint {
  /** Tells it from the others. */
  readonly key: string;
  /** As given; empty where nobody named it. */
  readonly name: string;
  readonly at: PositionMetres | null;
}

/** Recordings as a grid of sources by seats, per stage. */
export interface Arrangement {
  /** In the order they first appear. */
  readonly sources: readonly NamedPoint[];
  readonly seats: readonly NamedPoint[];
  readonly stages: readonly string[];
  /** `cells[stage][source][seat]`: indices of the recordings of that point; the first counts, the others repeat it. */
  readonly cells: readonly (readonly (readonly (readonly number[])[])[])[];
}

const placeKey = ({ x, y, z }: PositionMetres): string =>
  `@${[x, y, z].map((value) => value.toFixed(2)).join(' ')}`;

function pointOf(name: string | undefined, at: PositionMetres | null, fallback: string): NamedPoint {
  if (name) return { key: name, name, at };
  if (at) return { key: placeKey(at), name: '', at };
  return { key: `?${fallback}`, name: fallback, at };
}

/**
 * Sorts recordings into points. A recording without a seat is a seat of its own, called by its label; those without a
 * source share one. Recordings close to a source are none of the points: no mean, spread or plan rests on them.
 */
export function arrangePoints(recordings: readonly PointRecording[]): Arrangement {
  const sources: NamedPoint[] = [];
  const seats: NamedPoint[] = [];
  const stages: string[] = [];
  const indexIn = (list: NamedPoint[], point: NamedPoint): number => {
    const known = list.findIndex(({ key }) => key === point.key);
    if (known >= 0) {
      if (!list[known].at && point.at) list[known] = point;
      return known;
    }
    return list.push(point) - 1;
  };
  const places = recordings.map((recording, index) => {
    const { seat, source, seatName, sourceName, stage, label } = recording;
    if (recording.nearFieldMetres !== undefined) return null;
    if (!stages.includes(stage)) stages.push(stage);
    return {
      stage: stages.indexOf(stage),
      source: indexIn(sources, pointOf(sourceName, source, '')),
      seat: indexIn(seats, pointOf(seatName, seat, label || String(index + 1))),
    };
  });
  const cells = stages.map(() => sources.map(() => seats.map((): number[] => [])));
  places.forEach((place, index) => {
    if (place) cells[place.stage][place.source][place.seat].push(index);
  });
  return { sources, seats, stages, cells };
}

/** One stage of an arrangement, without the sources that it does not have. */
export interface StageGrid {
  /** Indices into the arrangement's lists. */
  readonly sources: readonly number[];
  /** Those that have every source of this stage. */
  readonly seats: readonly number[];
  /** Seats that were measured at this stage but lack a source. */
  readonly incomplete: readonly number[];
  /** `recordings[source][seat]`, along the two lists above: index of the recording. */
  readonly recordings: readonly (readonly number[])[];
}

/** What can be summed at one stage: every source at every seat that has them all. */
export function stageGrid({ cells }: Arrangement, stage: number): StageGrid {
  const rows = cells[stage] ?? [];
  const sources = [...rows.keys()].filter((source) => rows[source].some((list) => list.length > 0));
  const measured = [...(rows[0] ?? []).keys()].filter((seat) => rows.some((row) => row[seat].length > 0));
  const complete = (seat: number): boolean => sources.every((source) => rows[source][seat].length > 0);
  const seats = measured.filter(complete);
  return {
    sources,
    seats,
    incomplete: measured.filter((seat) => !complete(seat)),
    recordings: sources.map((source) => seats.map((seat) => rows[source][seat][0])),
  };
}

export interface PointName {
  readonly source: string | null;
  readonly seat: string | null;
  readonly stage: string | null;
}

const sourceWord = /^(?:source|src|sub|s)[ ]?(\d+|[a-d])$/i;
const seatWord = /^(?:seat|mic|position|pos|receiver|rec|r|p)[ ]?(\d+|[a-z])$/i;
const stageWord = /^(before|after)$/i;

/**
 * Source, seat and stage from a file's name such as "sub2_seat7_before" or "s1-r4": common ways to write them. A guess to be
 * shown and corrected, never more; null for what the name does not say.
 */
export function readPointName(label: string): PointName {
  const found: { source: string | null; seat: string | null; stage: string | null } = {
    ...{ source: null, seat: null, stage: null },
  };
  // "seat 4" written with a blank, a dash or an underscore between word and number is one word here.
  const joined = label.replace(
    /(?<=^|[-_ .])(source|src|sub|seat|mic|position|pos|receiver|rec)[-_ ]+(\d+)(?=$|[-_ .])/gi,
    '$1$2',
  );
  for (const part of joined.split(/[-_ .]+/)) {
    const [source, seat, stage] = [sourceWord, seatWord, stageWord].map((word) => word.exec(part));
    if (source) found.source ??= `S${source[1].toUpperCase()}`;
    else if (seat) found.seat ??= seat[1].toUpperCase();
    else if (stage) found.stage ??= stage[1].toLowerCase();
  }
  return found;
}
