/** HTML from a template in which every value is escaped, whoever typed it: what is safe already says so by its type. */
import { escapeXml } from '../../draw/svg.js';

/** Text that is markup already: from the tag below, or from our own pen. */
export class Markup {
  constructor(readonly text: string) {}
}

export type Content = Markup | string | number | null | undefined | false | readonly Content[];

function textOf(value: Content): string {
  if (value === null || value === undefined || value === false) return '';
  if (value instanceof Markup) return value.text;
  if (typeof value === 'string') return escapeXml(value);
  if (typeof value === 'number') return String(value);
  return value.map(textOf).join('');
}

/** Values stand in text or in quoted attributes, never elsewhere. */
export const markup = (parts: TemplateStringsArray, ...values: readonly Content[]): Markup =>
  new Markup(parts.reduce((made, part, k) => made + textOf(values[k - 1]) + part));

/**
 * Text as a string of CSS: everything but plain letters, digits and blanks as an escape, so that no text that somebody
 * typed can end the string, the rule or the style element.
 */
export const cssString = (text: string): string =>
  `"${[...text.replace(/[\r\n\t\f\0]+/g, ' ')].map((c) => (/[A-Za-z0-9 ]/.test(c) ? c : `\\${c.codePointAt(0)!.toString(16)} `)).join('')}"`;

export interface Column {
  readonly head: Content;
  /** Figures stand to the right. */
  readonly figure?: boolean;
}

export interface TableParts {
  readonly caption: string;
  readonly columns: readonly Column[];
  /** The first cell of each names its row. */
  readonly rows: readonly (readonly Content[])[];
  readonly className?: string;
  /** Kept on one page; tables longer than a page repeat their heads instead. */
  readonly whole?: boolean;
}

/** A table in a frame that scrolls by itself where the page is narrower. */
export function tableOf({ caption, columns, rows, className = '', whole }: TableParts): Markup {
  const kind = (k: number): string => (columns[k].figure ? 'figure' : 'words');
  return markup`<div class="wide ${whole ? 'whole' : 'long'}" tabindex="0" role="group" aria-label="${caption}"><table class="${className}">
<caption>${caption}</caption>
<thead><tr>${columns.map(({ head }, k) => markup`<th scope="col" class="${kind(k)}">${head}</th>`)}</tr></thead>
<tbody>
${rows.map((row) => markup`<tr>${row.map((cell, k) => (k === 0 ? markup`<th scope="row" class="${kind(k)}">${cell}</th>` : markup`<td class="${kind(k)}">${cell}</td>`))}</tr>\n`)}</tbody></table></div>\n`;
}

export const listOf = (items: readonly Content[], className = ''): Markup | null =>
  items.length === 0
    ? null
    : markup`<ul class="${className}">${items.map((item) => markup`<li>${item}</li>`)}</ul>\n`;
