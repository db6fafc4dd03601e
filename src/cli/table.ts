/** Plain text in columns, for a terminal. */
export interface Column {
  readonly head: string;
  /** Numbers stand right, words left. */
  readonly right?: boolean;
}

/** Characters that take no column of their own, as a combining accent does, are not met in our words. */
const width = (text: string): number => [...text].length;

/** A table without lines: heads, then rows, two blanks between columns, none at the end of a line. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ head }, i) =>
    Math.max(width(head), ...rows.map((row) => width(row[i] ?? ''))),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ right }, i) => {
        const cell = cells[i] ?? '';
        const blanks = ' '.repeat(widths[i] - width(cell));
        return right ? blanks + cell : cell + blanks;
      })
      .join('  ')
      .trimEnd();
  return [columns.map(({ head }) => head), ...rows].map(line).join('\n');
}

/** A sentence broken into lines of at most `columns`; those after the first stand `indent` further in. */
export function wrap(text: string, columns = 100, indent = '  '): string {
  const lead = /^ */.exec(text)![0];
  const lines: string[] = [];
  let line = lead;
  // A number and its unit stay together.
  const held = text.trim().replace(/(\d) (?=%|(?:Hz|dB|ms|s|m|m3|m\/s|MB)\b)/g, '$1\u00a0');
  for (const word of held.split(' ')) {
    if (line.trim() && width(line) + 1 + width(word) > columns) {
      lines.push(line);
      line = lead + indent + word;
    } else line += line.trim() ? ` ${word}` : word;
  }
  return [...lines, line].join('\n').replaceAll('\u00a0', ' ');
}
