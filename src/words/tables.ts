/** Tables of a language whose entries are sentences made from parameters. */
export const sentenceTables: ReadonlySet<string> = new Set([
  'errors',
  'notes',
  'remedies',
  'captions',
  'views',
]);

/** Tables of terms: a name and what it means. */
export const termTables: ReadonlySet<string> = new Set([
  'resonanceKinds',
  'modeKinds',
  'constructions',
  'causes',
  'axes',
  'limits',
  'audible',
  'methods',
]);

/** Tables of plain text. */
export const textTables: ReadonlySet<string> = new Set(['stages', 'cautions', 'labels']);
