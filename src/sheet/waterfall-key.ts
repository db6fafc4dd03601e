import type { LegendItem, Sign } from '../draw/legend.js';
import type { FieldView } from '../draw/types.js';
import type { Speaker } from '../words/index.js';

/** What is in the picture beside the surface itself, each sign with its word; only what this picture has. */
export function waterfallLegend(view: FieldView, speaker: Speaker): LegendItem[] {
  const { field, curtain, flags, marks, rowRange } = view;
  const present: Record<Sign, boolean> = {
    ridge: flags.some(({ sinks }) => sinks === true),
    noise: field.columnFloor?.some((level) => level > -Infinity) === true,
    fast: field.aboveWindow?.some((above) => above <= 0) === true,
    'past-end': field.rowEnd < rowRange[1],
    curtain: Boolean(curtain),
    axial: marks.length > 0,
    tangential: marks.length > 0,
    oblique: marks.length > 0,
  };
  return (Object.keys(present) as Sign[])
    .filter((sign) => present[sign])
    .map((sign) => ({ sign, text: speaker.view(`key-${sign}`, { limit: curtain?.label }) }));
}
