/** Pictures of the sheet: vector, on white, and the two sides of a comparison on the same scales. */
import { drawDecayChart } from '../../draw/decay-chart.js';
import type { DecayChart } from '../../draw/decay-chart.js';
import type { LegendItem } from '../../draw/legend.js';
import { layoutLegend, drawSign, SIGN_HEIGHT, SIGN_WIDTH } from '../../draw/legend.js';
import type { FigureSize } from '../../draw/figure.js';
import { viewpoints } from '../../draw/orbit.js';
import type { Pen } from '../../draw/pen.js';
import { drawPlan } from '../../draw/plan.js';
import { drawResponseChart } from '../../draw/response-chart.js';
import { drawSurfaceLines } from '../../draw/surface2d.js';
import { svgDocument, svgPen } from '../../draw/svg.js';
import type { FieldView } from '../../draw/types.js';
import { placesOf } from '../../study/places.js';
import { cornersOf } from '../../study/room-form.js';
import type { PairSide } from '../../study/sheet-pair.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { decayChart, decayKey } from '../decay-chart.js';
import { fieldViewOf } from '../field-view.js';
import { chosenLook, looks } from '../looks.js';
import { placeName } from '../place-name.js';
import { heldResponse, responseKey } from '../response-chart.js';
import { seatsChart, stageName, type Shown } from '../seats-chart.js';
import { waterfallLegend } from '../waterfall-key.js';
import { Markup } from './markup.js';

const theme = looks.paper;
/** Width of the text on A4, CSS pixels, and of one of two pictures beside each other; letters keep their size on paper. */
const widths = { whole: 672, half: 328 } as const;
const heights = { waterfall: 356, chart: 250, plan: 270 } as const;
/** Ridges that have a label on the surface: the worst, so that letters leave room for it. */
const flagsShown = 8;
const labelRoom = { rows: 2, lines: 3 } as const;
const legendLine = 18;

/** A picture with its signs below it, as an SVG element that scales with the page. */
function picture(
  id: string,
  name: string,
  { cssWidth, cssHeight }: FigureSize,
  draw: (pen: Pen, size: FigureSize) => void,
  legend: readonly LegendItem[] = [],
): Markup {
  const pen = svgPen(id);
  draw(pen, { cssWidth, cssHeight });
  const small = { colour: theme.faint, size: 11 };
  const { placed, lines } = layoutLegend(pen, legend, cssWidth - 20, small);
  for (const { sign, text, x, line } of placed) {
    const y = cssHeight + 6 + line * legendLine;
    drawSign(pen, theme, sign, 10 + x, y);
    pen.text(text, 16 + x + SIGN_WIDTH, y + SIGN_HEIGHT / 2, { ...small, vertical: 'middle' });
  }
  const size = { cssWidth, cssHeight: cssHeight + (lines > 0 ? 8 + lines * legendLine : 0) };
  return new Markup(svgDocument(pen.content(), size, theme, { title: name }));
}

/** The study as if one side of the comparison were its shown recording. */
const sideSnapshot = (study: StudySnapshot, { grid, diagnosis, recording }: PairSide): StudySnapshot => {
  const active = study.recordings.indexOf(recording);
  return {
    ...study,
    ...{ grid, diagnosis, cursor: null, selectedRidge: null, selectedResonance: null },
    // What is read per third-octave is known of the study's own recordings; sums have none.
    examinations: active < 0 ? [] : study.examinations,
    active: Math.max(0, active),
  };
};

/** The same picture of each side; the range of levels is that of the louder. */
export function waterfalls(
  study: StudySnapshot,
  sides: readonly PairSide[],
  names: readonly string[],
  speaker: Speaker,
): (Markup | null)[] {
  const views = sides.map((side): FieldView | null => fieldViewOf(sideSnapshot(study, side), speaker));
  const top = Math.max(...views.map((view) => view?.valueRange[1] ?? -Infinity));
  const { rangeDb: range, scale } = study.choices;
  return views.map((view, k) => {
    if (!view) return null;
    const flags = [...view.flags].sort((a, b) => b.weight - a.weight).slice(0, flagsShown);
    const same: FieldView = { ...view, flags, labelRoom, valueRange: [top - range, top] };
    return picture(
      `waterfall-${k}`,
      names[k],
      { cssWidth: widths.whole, cssHeight: heights.waterfall },
      (pen, size) =>
        drawSurfaceLines(pen, same, viewpoints.corner, chosenLook(theme, scale), { ...size, pixelRatio: 1 }),
      waterfallLegend(same, speaker),
    );
  });
}

/** Beside each other where there are two, so that the eye goes straight across. */
const chartSize = (count: number): FigureSize => ({
  cssWidth: count > 1 ? widths.half : widths.whole,
  cssHeight: heights.chart,
});

/** What is read per third-octave has no sign where nothing was. */
const bandSigns: readonly string[] = ['bar', 'grey'];

export function decayCharts(
  study: StudySnapshot,
  sides: readonly PairSide[],
  names: readonly string[],
  speaker: Speaker,
): Markup[] {
  const snapshots = sides.map((side) => sideSnapshot(study, side));
  const charts = snapshots.map((one): DecayChart => decayChart(one, 't20', speaker));
  const top = Math.max(...charts.map(({ valueRange }) => valueRange[1]));
  return charts.map((chart, k) =>
    picture(
      `decay-${k}`,
      names[k],
      chartSize(sides.length),
      (pen, size) => drawDecayChart(pen, { ...chart, valueRange: [0, top] }, theme, size),
      decayKey(snapshots[k], 't20', speaker).filter(
        ({ sign }) => snapshots[k].examinations.length > 0 || !bandSigns.includes(sign),
      ),
    ),
  );
}

/** Every seat with mean and spread, per stage; their scale is one already. */
export function levelCharts(
  study: StudySnapshot,
  system: SystemSnapshot,
  stages: readonly Shown[],
  speaker: Speaker,
): Markup[] {
  const key: readonly LegendItem[] = [
    { sign: 'accent-line', text: speaker.view('key-mean') },
    { sign: 'text-line', text: speaker.view('key-seat') },
    { sign: 'grey', text: speaker.view('key-lowest-highest') },
  ];
  return stages.map((stage) => {
    const chart = seatsChart({ ...study, cursor: null }, system, stage, speaker);
    const name = speaker.view('sheet-levels', { stage: stageName(system, stage, speaker) });
    return picture(
      `levels-${stage}`,
      name,
      chartSize(stages.length),
      (pen, size) => drawResponseChart(pen, chart, theme, size),
      key,
    );
  });
}

/** Level over frequency of the shown recording among those of its stage; null while it is not known. */
export function responsePicture(study: StudySnapshot, speaker: Speaker): Markup | null {
  const held = heldResponse({ ...study, cursor: null }, speaker);
  if (!held) return null;
  const { seats, main, chart } = held;
  return picture(
    'response',
    speaker.view('sheet-response', { label: main.label }),
    chartSize(1),
    (pen, size) => drawResponseChart(pen, chart, theme, size),
    responseKey(seats, main, speaker),
  );
}

/** The plan to scale with every seat and source; null without a room. */
export function planPicture(study: StudySnapshot, speaker: Speaker): Markup | null {
  const { room } = study;
  if (!room) return null;
  const places = placesOf(study);
  const size = { cssWidth: widths.whole, cssHeight: heights.plan };
  return picture('plan', speaker.view('sheet-plan'), size, (pen) =>
    drawPlan(
      pen,
      {
        corners: cornersOf(room),
        sound: true,
        places: places.map((place) => ({
          kind: place.kind,
          ...{ x: place.at.x, y: place.at.y, selected: false, sound: place.inside },
          label: placeName(place, places, speaker),
        })),
        lengthText: (metres) => speaker.n.metres(metres, 2),
        rulerMetres: 1,
      },
      theme,
      size,
    ),
  );
}
