import { expect } from '@open-wc/testing';
import { scaleEntry, scaleTable } from '../../src/draw/colours.js';
import { sampleField } from '../../src/draw/field.js';
import { drawHeatMap } from '../../src/draw/heatmap.js';
import { tonesOf } from '../../src/draw/tones.js';
import { darkTheme, inventedField, inventedView, lightTheme } from './fields.js';

const bare = inventedView({ flags: [], marks: [], cursor: null });

function context2d(): CanvasRenderingContext2D {
  return document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
}

describe('the heat map on a canvas', () => {
  it('shows at every pixel ratio the colour of the field where the layout says it is', () => {
    for (const pixelRatio of [1, 1.5, 2])
      for (const theme of [lightTheme, darkTheme]) {
        const context = context2d();
        const layout = drawHeatMap(context, bare, theme, { cssWidth: 640, cssHeight: 400, pixelRatio });
        expect(context.canvas.width).to.equal(Math.round(640 * pixelRatio));
        for (const [column, row] of [
          [24.3, 0.1],
          [48.2, 0.3],
          [72.8, 0.2],
          [100, 0.05],
          [180, 0.02],
        ]) {
          const { x, y } = layout.toPixel(column, row);
          const pixel = context.getImageData(
            Math.floor(x * pixelRatio),
            Math.floor(y * pixelRatio),
            1,
            1,
          ).data;
          const inside = layout.toField(
            (Math.floor(x * pixelRatio) + 0.5) / pixelRatio,
            (Math.floor(y * pixelRatio) + 0.5) / pixelRatio,
          )!;
          const at = scaleEntry(inside.value, bare.valueRange);
          const table = scaleTable(theme.scale);
          const away = Math.min(
            ...[-2, -1, 0, 1, 2].map((step) => {
              const k = Math.min(255, Math.max(0, at + step)) * 4;
              return Math.max(...[0, 1, 2].map((c) => Math.abs(pixel[c] - table[k + c])));
            }),
          );
          expect(away, `${column} Hz at ratio ${pixelRatio}`).to.be.at.most(3);
        }
      }
  });

  it('answers what is under a point, and nothing outside its plot', () => {
    const layout = drawHeatMap(context2d(), bare, lightTheme, {
      cssWidth: 640,
      cssHeight: 400,
      pixelRatio: 1,
    });
    const { x, y } = layout.toPixel(48.2, 0.25);
    const under = layout.toField(x, y)!;
    expect(under.column).to.be.closeTo(48.2, 1e-9);
    expect(under.row).to.be.closeTo(0.25, 1e-9);
    expect(under.value).to.be.closeTo(sampleField(bare.field, 48.2, 0.25), 1e-6);
    expect(layout.toField(layout.plot.left - 1, y)).to.equal(null);
    expect(layout.toField(x, layout.plot.bottom + 1)).to.equal(null);
  });

  it('greys what is below the noise floor', () => {
    const view = { ...bare, field: { ...inventedField(), columnFloor: new Float32Array(120).fill(20) } };
    const context = context2d();
    const layout = drawHeatMap(context, view, lightTheme, { cssWidth: 640, cssHeight: 400, pixelRatio: 1 });
    const { x, y } = layout.toPixel(60, 0.4);
    expect([...context.getImageData(x, y, 1, 1).data.slice(0, 3)]).to.deep.equal([
      ...tonesOf(lightTheme).noise,
    ]);
  });

  it('knows the flag under its label and beside its line, down to where it sinks', () => {
    const view = inventedView();
    const layout = drawHeatMap(context2d(), view, lightTheme, {
      cssWidth: 900,
      cssHeight: 420,
      pixelRatio: 1,
    });
    view.flags.forEach((flag, k) => {
      const on = layout.toPixel(flag.position, flag.until - 0.05);
      expect(layout.flagAt(on.x + 3, on.y)).to.equal(k);
      const past = layout.toPixel(flag.position, flag.until + 0.1);
      expect(layout.flagAt(past.x, past.y)).to.equal(null);
      expect(layout.flagAt(layout.toPixel(flag.position, 0).x, layout.plot.top - 20)).to.equal(k);
    });
  });

  it('draws at sizes from very small to very wide without failing', () => {
    for (const [cssWidth, cssHeight] of [
      [8, 8],
      [60, 40],
      [320, 240],
      [1600, 300],
    ])
      for (const view of [bare, inventedView({ cursor: { column: 50, row: 0.5 } })])
        expect(() =>
          drawHeatMap(context2d(), view, darkTheme, { cssWidth, cssHeight, pixelRatio: 1 }),
        ).not.to.throw();
  });
});
