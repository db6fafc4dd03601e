import type { Page } from 'playwright-core';

/** Two pictures held against each other, each as the base64 of a PNG file. */
export interface Difference {
  /** Share of pixels that differ by more than the eye forgives in one channel. */
  readonly share: number;
  /** Mean difference over all pixels and channels, of 255. */
  readonly mean: number;
  /** Where they differ, over a faint picture of the first. */
  readonly picture: string;
}

/** A channel that differs by more than this, of 255, makes a pixel another. */
const forgiven = 32;

/**
 * A picture at half its size, each pixel the mean of four, in steps of eight: what is compared is what is drawn and not
 * how a browser's next version smooths an edge, and a file of it is small.
 */
export const halved = (page: Page, png: string): Promise<string> => page.evaluate(halve, png);

/** The same in a page of any engine. */
export async function halve(base64: string): Promise<string> {
  const image = new Image();
  image.src = `data:image/png;base64,${base64}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [image.width, image.height];
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const [width, height] = [image.width >> 1, image.height >> 1];
  const half = context.createImageData(width, height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 4; c++) {
        const at = (dx: number, dy: number): number =>
          data[4 * ((2 * y + dy) * image.width + 2 * x + dx) + c];
        const mean = (at(0, 0) + at(1, 0) + at(0, 1) + at(1, 1)) / 4;
        half.data[4 * (y * width + x) + c] = Math.min(255, 8 * Math.round(mean / 8));
      }
  [canvas.width, canvas.height] = [width, height];
  context.putImageData(half, 0, 0);
  return canvas.toDataURL('image/png').split(',')[1];
}

/** A document of its own as a PNG, drawn by the page's browser at its own size. */
export const drawnSvg = (page: Page, svg: string, scale: number): Promise<string> =>
  page.evaluate(
    async ([text, factor]) => {
      const image = new Image();
      image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width * factor, image.height * factor];
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0, canvas.width, canvas.height);
      return canvas.toDataURL('image/png').split(',')[1];
    },
    [svg, scale] as const,
  );

export const difference = (page: Page, first: string, second: string): Promise<Difference> =>
  page.evaluate(differ, [first, second, forgiven] as const);

/** The same in a page of any engine, with what is forgiven of 255. */
export async function differ([a, b, most]: readonly [string, string, number]): Promise<Difference> {
  const pixels = async (base64: string): Promise<ImageData> => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d', { willReadFrequently: true })!;
    context.drawImage(image, 0, 0);
    return context.getImageData(0, 0, image.width, image.height);
  };
  const [one, other] = [await pixels(a), await pixels(b)];
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [one.width, one.height];
  const context = canvas.getContext('2d')!;
  const shown = context.createImageData(one.width, one.height);
  let [count, sum] = [0, 0];
  for (let y = 0; y < one.height; y++)
    for (let x = 0; x < one.width; x++) {
      const at = 4 * (y * one.width + x);
      const there = 4 * (y * other.width + x);
      let worst = 0;
      for (let c = 0; c < 3; c++) {
        const inside = x < other.width && y < other.height;
        const apart = inside ? Math.abs(one.data[at + c] - other.data[there + c]) : 255;
        worst = Math.max(worst, apart);
        sum += apart;
        shown.data[at + c] = 200 + one.data[at + c] / 6;
      }
      shown.data[at + 3] = 255;
      if (worst <= most) continue;
      count++;
      shown.data.set([220, 0, 40], at);
    }
  context.putImageData(shown, 0, 0);
  const sameSize = one.width === other.width && one.height === other.height;
  const area = one.width * one.height;
  return {
    share: sameSize ? count / area : 1,
    mean: sum / (3 * area),
    picture: canvas.toDataURL('image/png').split(',')[1],
  };
}
