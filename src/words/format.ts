import type { NumberWords, WordValue } from './types.js';

const nothing = '–';
const usable = (value: WordValue): value is number => typeof value === 'number' && Number.isFinite(value);

/** Decimals that show a standard deviation with two significant digits, between 0 and 4. */
export function decimalsFor(sd: number): number {
  if (!(sd > 0) || !Number.isFinite(sd)) return 2;
  return Math.max(0, Math.min(4, 1 - Math.floor(Math.log10(sd))));
}

/**
 * Numbers of one locale by Intl.NumberFormat, without grouping: "1.000" beside "1,000" is read as a thousand by one
 * and as one by another.
 *
 * @param locale BCP 47; one that Intl does not know falls back to English.
 * @param space Between number and unit; a no-break space unless the output is plain text.
 */
export function createNumberWords(locale = 'en', space = '\u00a0'): NumberWords {
  let known = 'en';
  try {
    known = Intl.NumberFormat.supportedLocalesOf(locale)[0] ?? 'en';
  } catch {
    // A malformed tag, as a page may carry in its lang attribute.
  }
  const formats = new Map<string, Intl.NumberFormat>();
  const format = (key: string, options: Intl.NumberFormatOptions): Intl.NumberFormat => {
    let made = formats.get(key);
    if (!made) {
      made = new Intl.NumberFormat(known, { useGrouping: false, signDisplay: 'negative', ...options });
      formats.set(key, made);
    }
    return made;
  };
  const number = (value: WordValue, decimals = 1): string =>
    usable(value)
      ? format(`d${decimals}`, { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(
          value,
        )
      : nothing;
  const significant = (value: WordValue, digits = 3): string =>
    usable(value) ? format(`s${digits}`, { maximumSignificantDigits: digits }).format(value) : nothing;
  const united = (text: string, unit: string): string => (text === nothing ? text : `${text}${space}${unit}`);
  return {
    locale: known,
    number,
    significant,
    hertz: (value, decimals = 1) => united(number(value, decimals), 'Hz'),
    seconds(value, decimals) {
      if (!usable(value)) return nothing;
      if (decimals === undefined && Math.abs(value) < 0.1) return united(number(value * 1000, 0), 'ms');
      return united(number(value, decimals ?? 2), 's');
    },
    decibels: (value, decimals = 0) => united(number(value, decimals), 'dB'),
    metres: (value, decimals = 2) => united(number(value, decimals), 'm'),
    percent: (value, decimals = 0) => united(number(usable(value) ? value * 100 : null, decimals), '%'),
    plusMinus(value, sd, unit = '') {
      if (!usable(value)) return nothing;
      const decimals = usable(sd) ? decimalsFor(sd) : 2;
      const spread = usable(sd) ? `${space}±${space}${number(sd, decimals)}` : '';
      return `${number(value, decimals)}${spread}${unit && space + unit}`;
    },
    integer: (value) => number(value, 0),
    text: (value) => (typeof value === 'number' ? significant(value, 6) : String(value ?? nothing)),
  };
}
