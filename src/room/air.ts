import { RingdownError } from '../signal/errors.js';
import * as maths from '../signal/maths.js';

const zeroCelsiusKelvin = 273.15;
/** Reference air temperature of ISO 9613-1:1993, 20 °C. */
const referenceKelvin = 293.15;

/** Bounds of the air of a room people work in; outside them a figure is a slip of the pen. */
export const airBounds = {
  temperatureCelsius: [0, 45],
  humidityPercent: [0, 100],
  speedOfSoundMetresPerSecond: [300, 380],
} as const;

/**
 * Speed of sound in air, 343.2 sqrt(T / 293.15 K), of ISO 9613-1:1993.
 *
 * @returns m/s
 */
export function speedOfSoundIso9613(temperatureCelsius: number): number {
  return 343.2 * Math.sqrt((temperatureCelsius + zeroCelsiusKelvin) / referenceKelvin);
}

/**
 * Speed of sound in moist air: the polynomial of O. Cramer, J. Acoust. Soc. Am. 93, 2510 (1993), with the saturation
 * pressure and enhancement factor given there; stated for 0 to 30 °C, 75 to 102 kPa, up to 6 % of water vapour.
 * Coefficients from memory; the published check at 20 °C holds to 0.001 m/s.
 *
 * @param carbonDioxideFraction Mole fraction; 400 ppm by default.
 * @returns m/s
 */
export function speedOfSoundCramer(
  temperatureCelsius: number,
  humidityPercent: number,
  pressurePascal = 101325,
  carbonDioxideFraction = 400e-6,
): number {
  const t = temperatureCelsius;
  const p = pressurePascal;
  const kelvin = t + zeroCelsiusKelvin;
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const saturation = maths.exp(
    1.2811805e-5 * kelvin * kelvin - 1.9509874e-2 * kelvin + 34.04926034 - 6.3536311e3 / kelvin,
  );
  const water = ((humidityPercent / 100) * enhancement * saturation) / p;
  const carbon = carbonDioxideFraction;
  return (
    331.5024 +
    0.603055 * t -
    0.000528 * t * t +
    (51.471935 + 0.1495874 * t - 0.000782 * t * t) * water +
    (-1.82e-7 + 3.73e-8 * t - 2.93e-10 * t * t) * p +
    (-85.20931 - 0.228525 * t + 5.91e-5 * t * t) * carbon -
    2.835149 * water * water -
    2.15e-13 * p * p +
    29.179762 * carbon * carbon +
    0.000486 * water * p * carbon
  );
}

/**
 * Speed of sound from what is known of the air: with humidity by Cramer (1993), without it by ISO 9613-1.
 *
 * @returns m/s
 * @throws RingdownError `temperature-bounds`, `humidity-bounds`
 */
export function speedOfSound(temperatureCelsius: number, humidityPercent: number | null = null): number {
  within('temperature-bounds', temperatureCelsius, airBounds.temperatureCelsius);
  if (humidityPercent === null) return speedOfSoundIso9613(temperatureCelsius);
  within('humidity-bounds', humidityPercent, airBounds.humidityPercent);
  return speedOfSoundCramer(temperatureCelsius, humidityPercent);
}

/** @throws RingdownError of `code` with `value`, `from` and `to`, also where `value` is not a number. */
export function within(code: string, value: number, [from, to]: readonly [number, number]): void {
  if (!(value >= from && value <= to)) throw new RingdownError(code, { value, from, to });
}
