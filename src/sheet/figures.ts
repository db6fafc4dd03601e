/** A picture of a study as a document of its own: for files, for pages without script, for the printed sheet. */
import { drawDecayChart } from '../draw/decay-chart.js';
import { figureSvg, type FigureSize } from '../draw/figure.js';
import { drawHeatMapWith } from '../draw/heatmap.js';
import type { LegendItem } from '../draw/legend.js';
import { drawModeChart } from '../draw/mode-chart.js';
import { viewpoints, type ViewpointName } from '../draw/orbit.js';
import type { Pen } from '../draw/pen.js';
import { drawResponseChart } from '../draw/response-chart.js';
import { drawSurfaceLines } from '../draw/surface2d.js';
import type { DrawTheme } from '../draw/types.js';
import type { Part, StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';
import { decayCaption, decayChart, decayKey } from './decay-chart.js';
import { fieldViewOf } from './field-view.js';
import { fieldCaption, figureWords } from './figure-words.js';
import { chosenLook } from './looks.js';
import { modeChart, modesCaption, modesKey } from './mode-chart.js';
import { heldResponse, responseCaption, responseKey } from './response-chart.js';
import { waterfallLegend } from './waterfall-key.js';

export const figureNames = ['waterfall', 'spectrogram', 'decay-times', 'response', 'modes'] as const;
export type FigureName = (typeof figureNames)[number];

/** Size of the picture itself where none is asked for, CSS pixels; title, signs and caption add to it. */
export const figureSizes: Readonly<Record<FigureName, FigureSize>> = {
  waterfall: { cssWidth: 900, cssHeight: 520 },
  spectrogram: { cssWidth: 900, cssHeight: 440 },
  'decay-times': { cssWidth: 900, cssHeight: 380 },
  response: { cssWidth: 900, cssHeight: 380 },
  modes: { cssWidth: 900, cssHeight: 440 },
};

/** What a study must compute for a picture, beyond its grid and diagnosis. */
export const figureNeeds: Readonly<Record<FigureName, readonly Part[]>> = {
  waterfall: [],
  spectrogram: [],
  'decay-times': [],
  response: ['responses'],
  modes: ['prediction'],
};

/** Pixels of the map for one of the page, so that it stands print. */
const mapFineness = 2;

export interface FigureParams {
  readonly name: FigureName;
  /** Of the recording or room. */
  readonly label: string;
  /** Its colours of level give way to those that the study's choices name. */
  readonly theme: DrawTheme;
  readonly size?: FigureSize;
  readonly viewpoint?: ViewpointName;
}

interface Picture {
  readonly draw: (pen: Pen, size: FigureSize) => void;
  readonly legend: readonly LegendItem[];
  readonly caption: string;
}

function fieldPicture(snapshot: StudySnapshot, speaker: Speaker, params: FigureParams): Picture | null {
  const { name, theme, viewpoint = 'corner' } = params;
  const view = fieldViewOf({ ...snapshot, cursor: null }, speaker);
  const caption = fieldCaption(snapshot, speaker);
  if (!view || caption === null) return null;
  if (name === 'waterfall')
    return {
      draw: (pen, size) =>
        drawSurfaceLines(pen, view, viewpoints[viewpoint], theme, { ...size, pixelRatio: 1 }),
      legend: waterfallLegend(view, speaker),
      caption,
    };
  return {
    draw: (pen, size) => drawHeatMapWith(pen, view, theme, { ...size, pixelRatio: mapFineness }),
    legend: [],
    caption: `${speaker.view('key-line')} ${caption}`,
  };
}

function decayPicture(snapshot: StudySnapshot, speaker: Speaker, { theme }: FigureParams): Picture | null {
  if (!snapshot.diagnosis) return null;
  const chart = decayChart(snapshot, 't20', speaker);
  return {
    draw: (pen, size) => drawDecayChart(pen, chart, theme, size),
    legend: decayKey(snapshot, 't20', speaker),
    caption: decayCaption(snapshot, speaker),
  };
}

function responsePicture(snapshot: StudySnapshot, speaker: Speaker, { theme }: FigureParams): Picture | null {
  const held = heldResponse(snapshot, speaker);
  if (!held) return null;
  const { seats, main, chart } = held;
  return {
    draw: (pen, size) => drawResponseChart(pen, chart, theme, size),
    legend: responseKey(seats, main, speaker),
    caption: responseCaption(seats, main, speaker),
  };
}

function modesPicture(snapshot: StudySnapshot, speaker: Speaker, { theme }: FigureParams): Picture | null {
  if (!snapshot.prediction) return null;
  const chart = modeChart(snapshot, speaker);
  return {
    draw: (pen, size) => drawModeChart(pen, chart, theme, size),
    legend: modesKey(snapshot, speaker),
    caption: modesCaption(snapshot, speaker),
  };
}

const makers: Readonly<Record<FigureName, typeof fieldPicture>> = {
  waterfall: fieldPicture,
  spectrogram: fieldPicture,
  'decay-times': decayPicture,
  response: responsePicture,
  modes: modesPicture,
};

/**
 * The picture as an SVG document with its title, signs, caption and what made it.
 *
 * @returns null where the study does not hold what the picture shows
 */
export function studyFigure(snapshot: StudySnapshot, speaker: Speaker, params: FigureParams): string | null {
  const { name, label, size = figureSizes[name] } = params;
  const theme = chosenLook(params.theme, snapshot.choices.scale);
  const picture = makers[name](snapshot, speaker, { ...params, theme });
  if (!picture) return null;
  const { draw, legend, caption } = picture;
  const words = figureWords(snapshot, speaker, name, { label, legend, caption });
  return figureSvg((pen) => draw(pen, size), theme, size, words, name);
}
