/**
 * Numbers as people type them. Point and comma are both the decimal sign and neither is ever a thousand: "4,50" is 4.5.
 * Text with both, or with two of one, is refused rather than guessed at.
 */
const plainNumber = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/** @returns null where the text is not one plain number */
export function parseNumber(text: string): number | null {
  const plain = text.trim().replace(/^[−–]/, '-');
  const value = plainNumber.test(plain) ? Number(plain.replace(',', '.')) : Infinity;
  // Three hundred digits and more are no double.
  return Number.isFinite(value) ? value : null;
}

/**
 * A list of numbers: "0.1, 0.2" or "0,1 0,2" or "0,1; 0,2". A comma parts numbers only where nothing else does.
 *
 * @returns null where any part is not a number, or the text could be read in two ways
 */
export function parseNumberList(text: string): number[] | null {
  const plain = text.trim();
  const spaced = plain.replace(/,\s+/g, ',');
  const parts = /[;\s]/.test(spaced)
    ? spaced.split(/\s*;\s*|\s+/)
    : // "0,5" alone is one number; "0.1,0.2" and "1,2,3" are lists.
      parseNumber(plain) !== null
      ? [plain]
      : plain.split(',');
  const numbers: number[] = [];
  for (const part of parts) {
    const value = parseNumber(part);
    if (value === null) return null;
    numbers.push(value);
  }
  return numbers;
}
