import { expect } from '@open-wc/testing';
import { makeAxis } from '../../src/draw/axes.js';
import { sampleField } from '../../src/draw/field.js';
import { drawHeatMap } from '../../src/draw/heatmap.js';
import { sliceColumn } from '../../src/draw/heatmap-slice.js';
import { inventedView, lightTheme } from './fields.js';

const size = { cssWidth: 900, cssHeight: 420, pixelRatio: 1 };
const draw = (view: Parameters<typeof drawHeatMap>[1], cssWidth = size.cssWidth) => {
  const context = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
  return { context, layout: drawHeatMap(context, view, lightTheme, { ...size, cssWidth }) };
};

describe('the slice beside the heat map', () => {
  it('is of the cursor, else of the selected flag, else of the first, else of nothing', () => {
    const view = inventedView({ cursor: { column: 61, row: 0.2 } });
    expect(sliceColumn(view)).to.equal(61);
    const selected = view.flags.map((flag, k) => ({ ...flag, selected: k === 1 }));
    expect(sliceColumn({ ...view, cursor: null, flags: selected })).to.equal(view.flags[1].position);
    const plain = view.flags.map((flag) => ({ ...flag, selected: false }));
    expect(sliceColumn({ ...view, cursor: null, flags: plain })).to.equal(view.flags[0].position);
    expect(sliceColumn({ ...view, cursor: null, flags: [] })).to.equal(null);
  });

  it('has its line where the field has its level, on the time axis of the map', () => {
    const view = inventedView({ cursor: null, marks: [] });
    const { context, layout } = draw(view);
    const column = sliceColumn(view)!;
    const [left, width] = [layout.plot.right + 12, 96];
    const axis = makeAxis('linear', view.valueRange, left, left + width);
    const row = 0.12;
    const x = axis.pixel(sampleField(view.field, column, row));
    const y = Math.round(layout.toPixel(column, row).y);
    const dark = (at: number): number => {
      const { data } = context.getImageData(Math.round(at), y, 1, 1);
      return data[0] + data[1] + data[2];
    };
    const along = Array.from({ length: width - 4 }, (_, k) => left + 2 + k);
    const darkest = along.reduce((best, at) => (dark(at) < dark(best) ? at : best));
    expect(Math.abs(darkest - x)).to.be.at.most(1.5);
  });

  it('leaves its room to the map where the picture is narrow', () => {
    const view = inventedView();
    const [wide, narrow] = [draw(view, 640).layout, draw(view, 600).layout];
    expect(640 - wide.plot.right - (600 - narrow.plot.right)).to.be.closeTo(108, 1);
  });
});
