/** What of a study can be heard, and the rendering of it. */
import {
  heardKinds,
  proposeCuts,
  type Band,
  type Heard,
  type HeardKind,
  type Listened,
  type ModeAlone,
} from '../seats/index.js';
import {
  bassRootHz,
  encodeWav,
  listenLevels,
  materialKinds,
  type MaterialKind,
  type PositionMetres,
  type Recording,
} from '../signal/index.js';
import type { Mode } from '../room/index.js';
import { placesOf } from './places.js';
import { sharedPool, type RunOptions } from './pool.js';
import { recordingKey } from './choices.js';
import { sameOrder } from './room-part.js';
import { ridgeTarget } from './requests.js';
import { ridgesToCut } from './system-readings.js';
import type { SystemSnapshot } from './system-types.js';
import type { StudySnapshot } from './types.js';

export { bassRootHz, heardKinds, listenLevels, materialKinds };
export type { Heard, HeardKind, Listened, MaterialKind };

/** Whose response is listened through. */
export type ResponseKind = 'measured' | 'predicted';
export const responseKinds: readonly ResponseKind[] = ['measured', 'predicted'];

export interface ListenChoice {
  readonly material: MaterialKind;
  readonly response: ResponseKind;
}

/** Filters behind the room: those of the study's design, or matched cuts that the ridges propose. */
export interface Treatment {
  readonly origin: 'design' | 'proposed';
  readonly bands: readonly Band[];
}

/** Everything that a rendering depends on. */
export interface ListenPlan {
  /** Tells it from every other. */
  readonly key: string;
  readonly material: MaterialKind;
  readonly centreHz: number;
  readonly response: ResponseKind | null;
  readonly recording: Recording | null;
  readonly untilSeconds: number | null;
  readonly places: Places | null;
  readonly treatment: Treatment | null;
  readonly mode: ModeAlone | null;
}

interface Places {
  readonly seat: PositionMetres;
  readonly source: PositionMetres;
}

/** Where the material goes about while no resonance is in view: the open A string of a bass is near. Hz. */
const defaultCentreHz = 50;
/** Absorption that a predicted room without walls is given. */
export const assumedAbsorption = 0.1;

/** Where a predicted response runs from and to: the places of the recording in view, else the first that are known. */
function placesHeard(snapshot: StudySnapshot): Places | null {
  const { recordings, active, room } = snapshot;
  if (!room) return null;
  const places = placesOf(snapshot).filter(({ inside }) => inside);
  const first = (kind: 'seat' | 'source'): PositionMetres | undefined =>
    places.find((place) => place.kind === kind)?.at;
  const inside = (at: PositionMetres | null | undefined): PositionMetres | undefined =>
    at && places.some((place) => JSON.stringify(place.at) === JSON.stringify(at)) ? at : undefined;
  const seat = inside(recordings[active]?.seat) ?? first('seat');
  const source = inside(recordings[active]?.source) ?? first('source');
  return seat && source ? { seat, source } : null;
}

/** What is there to listen through. */
export function responsesAt(snapshot: StudySnapshot): ResponseKind[] {
  return responseKinds.filter((kind) =>
    kind === 'measured' ? snapshot.recordings.length > 0 : placesHeard(snapshot) !== null,
  );
}

/** The study's own filters, else matched cuts for the ridges of the recording in view; null where nothing is to be cut. */
export function treatmentOf(snapshot: StudySnapshot, system: SystemSnapshot | null): Treatment | null {
  const own = system?.design.bands ?? [];
  if (own.length > 0) return { origin: 'design', bands: own };
  const { diagnosis, choices } = snapshot;
  if (!diagnosis) return null;
  const ridges = ridgesToCut(diagnosis, choices);
  const { cuts } = proposeCuts(ridges, { seatCount: 1, levels: null });
  return cuts.length > 0 ? { origin: 'proposed', bands: cuts.map(({ band }) => band) } : null;
}

/** The resonance in view; of a predicted room the mode in view. */
function modeHeard(snapshot: StudySnapshot, response: ResponseKind | null): ModeAlone | null {
  const { diagnosis, selectedRidge, selectedResonance, prediction, selectedMode } = snapshot;
  const of = (frequencyHz: number, decayTimeSeconds: number | null): ModeAlone | null =>
    decayTimeSeconds === null ? null : { frequencyHz, decayTimeSeconds };
  if (response !== 'predicted' && diagnosis) {
    const target = ridgeTarget(diagnosis, selectedRidge, selectedResonance);
    return target && of(target.frequencyHz, target.decayTimeSeconds);
  }
  const chosen: Mode | undefined =
    prediction?.modes.find(({ order }) => sameOrder(order, selectedMode)) ?? prediction?.modes[0];
  return chosen ? of(chosen.frequencyHz, chosen.decayTimeSeconds) : null;
}

export function listenPlan(
  snapshot: StudySnapshot,
  system: SystemSnapshot | null,
  choice: ListenChoice,
): ListenPlan {
  const there = responsesAt(snapshot);
  const response = there.includes(choice.response) ? choice.response : (there[0] ?? null);
  const measured = response === 'measured';
  const recording = measured ? snapshot.recordings[snapshot.active] : null;
  const usable = measured ? (snapshot.examinations[snapshot.active]?.usableSeconds ?? 0) : 0;
  const untilSeconds = usable > 0 ? usable : null;
  const places = response === 'predicted' ? placesHeard(snapshot) : null;
  const mode = modeHeard(snapshot, response);
  const treatment = response === null ? null : treatmentOf(snapshot, system);
  const { material } = choice;
  const centreHz = mode?.frequencyHz ?? defaultCentreHz;
  const parts = [material, centreHz, response, untilSeconds, places, treatment?.bands ?? null, mode];
  const of = recording ? recordingKey(recording) : response && snapshot.room;
  const key = JSON.stringify([...parts, of]);
  return { key, material, centreHz, response, recording, untilSeconds, places, treatment, mode };
}

/** Renders a plan in the page's workers. Not kept: some seconds of sound are megabytes. */
export function renderListen(
  { room }: StudySnapshot,
  plan: ListenPlan,
  options: Omit<RunOptions, 'key'>,
): Promise<Listened> {
  const { material, centreHz, recording, untilSeconds, places, treatment, mode } = plan;
  return sharedPool().run(
    'listen',
    {
      listen: {
        ...{ material, centreHz, untilSeconds, mode },
        bands: treatment?.bands ?? [],
        response: recording,
      },
      predicted:
        room && places && !recording
          ? { room, ...places, seconds: 3, absorption: room.absorption ? null : assumedAbsorption }
          : null,
    },
    options,
  );
}

/** One sound as a WAV file, as it is played at full level. */
export const heardWav = ({ samples }: Heard, sampleRate: number): Uint8Array<ArrayBuffer> =>
  encodeWav({ channels: [samples], sampleRate, encoding: 'pcm-24' });
