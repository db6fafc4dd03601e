import type { DrawTheme } from '../draw/types.js';
import type { ColourScale } from '../study/types.js';

/** Looks of a picture that stands in no page: on white paper, on a light page, on a dark one. */
export type Look = 'paper' | 'light' | 'dark';

const fontFamily = 'system-ui, "DejaVu Sans", sans-serif';

export const looks: Readonly<Record<Look, DrawTheme>> = {
  paper: {
    dark: false,
    background: 'rgb(255, 255, 255)',
    text: 'rgb(17, 17, 17)',
    faint: 'rgb(85, 85, 85)',
    line: 'rgb(200, 200, 200)',
    accent: 'rgb(0, 92, 115)',
    scale: 'dawn',
    fontFamily,
  },
  light: {
    dark: false,
    background: 'rgb(251, 250, 247)',
    text: 'rgb(35, 33, 29)',
    faint: 'rgb(96, 92, 84)',
    line: 'rgb(217, 213, 202)',
    accent: 'rgb(0, 99, 124)',
    scale: 'dawn',
    fontFamily,
  },
  dark: {
    dark: true,
    background: 'rgb(21, 25, 28)',
    text: 'rgb(221, 226, 225)',
    faint: 'rgb(168, 174, 174)',
    line: 'rgb(61, 66, 69)',
    accent: 'rgb(124, 201, 220)',
    scale: 'dusk',
    fontFamily,
  },
};

/** A look with the colours of level that are asked for, which go before those that it brings. */
export const chosenLook = (look: DrawTheme, scale: ColourScale = 'auto'): DrawTheme =>
  scale === 'auto' ? look : { ...look, scale };
