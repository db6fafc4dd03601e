/**
 * OKLab and OKLCH: a colour space in which equal distances look about equal. Matrices as in the W3C's CSS Color
 * Module Level 4, section 10 (sample code); components of sRGB run from 0 to 1, hue in degrees.
 */

export type Triple = readonly [number, number, number];

/** sRGB component to linear light (IEC 61966-2-1). */
export function toLinear(component: number): number {
  return component <= 0.04045 ? component / 12.92 : ((component + 0.055) / 1.055) ** 2.4;
}

/** Linear light to sRGB component (IEC 61966-2-1). */
export function fromLinear(light: number): number {
  return light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** OKLab of linear-light sRGB. */
export function oklabOfLinear([r, g, b]: Triple): Triple {
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

/** Linear-light sRGB of an OKLab colour; components outside 0 to 1 lie outside the gamut. */
export function linearOfOklab([L, a, b]: Triple): Triple {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
}

/** OKLab of sRGB bytes. */
export function oklabOfBytes(red: number, green: number, blue: number): Triple {
  return oklabOfLinear([toLinear(red / 255), toLinear(green / 255), toLinear(blue / 255)]);
}

/** sRGB bytes of an OKLab colour, clipped to the gamut. */
export function bytesOfOklab(colour: Triple): Triple {
  const byte = (light: number): number => Math.round(255 * Math.min(1, Math.max(0, fromLinear(light))));
  const [r, g, b] = linearOfOklab(colour);
  return [byte(Math.max(0, r)), byte(Math.max(0, g)), byte(Math.max(0, b))];
}

/** OKLab of lightness (0 to 1), chroma and hue. */
export function oklabOfLch(lightness: number, chroma: number, hueDegrees: number): Triple {
  const hue = (hueDegrees * Math.PI) / 180;
  return [lightness, chroma * Math.cos(hue), chroma * Math.sin(hue)];
}

/** Euclidean distance in OKLab, the colour difference Delta E OK of CSS Color 4. */
export function deltaE(first: Triple, second: Triple): number {
  return Math.hypot(first[0] - second[0], first[1] - second[1], first[2] - second[2]);
}
