/** Files of a picture that is drawn by a pen, for elements that are no charts. */
import type { TemplateResult } from 'lit';
import { figurePng } from '../../draw/figure-png.js';
import { figureSvg } from '../../draw/figure.js';
import type { FigureSize, FigureWords } from '../../draw/figure.js';
import { canvasPen } from '../../draw/pen.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawTheme } from '../../draw/types.js';
import { fileNameOf } from '../../sheet/figure-words.js';
import type { Speaker } from '../../words/index.js';
import type { Scope } from '../scope.js';
import { handOver, saveControls } from './save.js';

export interface Drawing {
  readonly name: string;
  readonly words: FigureWords;
  readonly theme: DrawTheme;
  readonly size: FigureSize;
  readonly paint: (pen: Pen) => void;
}

export const drawingSvg = ({ name, words, theme, size, paint }: Drawing): string =>
  figureSvg(paint, theme, size, words, name);

/** Rejects with a RangeError where the browser makes no picture that large. */
export const drawingPng = ({ words, theme, size, paint }: Drawing, widthPixels: number): Promise<Blob> =>
  figurePng(
    (context) => paint(canvasPen(context, theme.fontFamily)),
    theme,
    { ...size, pixelRatio: widthPixels / size.cssWidth },
    words,
  );

export interface Saving {
  readonly speaker: Speaker;
  readonly scope: () => Scope | null;
  /** What is saved when somebody asks; null where there is nothing any more. */
  readonly drawing: () => Drawing | null;
  /** Of the file, before the name of the picture. */
  readonly label: string;
  /** Whether the last try failed, and who is told. */
  readonly hasFailed: boolean;
  readonly failed: (failed: boolean) => void;
  /** Where `save` is something else of the element's. */
  readonly part?: string;
}

/** The controls that save a drawing. */
export function renderSave(saving: Saving): TemplateResult {
  const { speaker, scope, drawing, label, hasFailed, failed, part } = saving;
  const save = (kind: 'png' | 'svg', widthPixels: number): void => {
    failed(false);
    const drawn = drawing();
    if (!drawn) return;
    const made =
      kind === 'png'
        ? drawingPng(drawn, widthPixels)
        : Promise.resolve(new Blob([drawingSvg(drawn)], { type: 'image/svg+xml' }));
    handOver(made, fileNameOf(label, drawn.name, kind), scope, () => failed(true));
  };
  return saveControls(speaker, hasFailed, save, part);
}
