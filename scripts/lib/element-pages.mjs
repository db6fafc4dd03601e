/** One page of the documentation per element, from custom-elements.json: what it is, a live figure, its interface in tables. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { root } from './project.mjs';

/** @typedef {{ name: string, description?: string, summary?: string, default?: string, kind?: string, privacy?: string, attribute?: string, readonly?: boolean, type?: { text: string }, parameters?: { name: string, type?: { text: string } }[], return?: { type?: { text: string } } }} Item */
/** @typedef {{ name: string, tagName: string, summary?: string, description?: string, attributes?: Item[], members?: Item[], events?: Item[], slots?: Item[], cssParts?: Item[], cssProperties?: Item[], cssStates?: Item[] }} Element */

const desk = 'src="/recordings/live-room-desk.wav" room="5.6x3.9x2.7" label="Live room, desk"';
const sofa = 'src="/recordings/live-room-sofa.wav" label="Live room, sofa" seat="4.6 2.05 1.1"';
const room = 'room="5.6x3.9x2.7" walls="plasterboard-on-studs" no-files';
const places =
  '<ringdown-place kind="seat" name="desk" at="3.7 3 1.2"></ringdown-place>\n  <ringdown-place kind="source" name="left" at="0.5 0.45 0.3"></ringdown-place>';
/** @param {string} tag */
const twoSeats = (tag) =>
  `<ringdown-study room="5.6x3.9x2.7" no-files>\n  <ringdown-recording src="/recordings/live-room-desk.wav" label="Live room, desk" seat="3.7 3 1.2" source="0.5 0.45 0.3" clock="common"></ringdown-recording>\n  <ringdown-recording ${sofa} source="0.5 0.45 0.3" clock="common"></ringdown-recording>\n  <${tag}></${tag}>\n</ringdown-study>`;
/** @param {string} tag */
const inRoom = (tag) => `<ringdown-study ${room}>\n  ${places}\n  <${tag}></${tag}>\n</ringdown-study>`;

/** Where one recording on the element itself shows less than the element can. @type {Record<string, string>} */
const figures = {
  'ringdown-study': `<ringdown-study ${desk} no-files>\n  <ringdown-spectrogram></ringdown-spectrogram>\n  <ringdown-ridges></ringdown-ridges>\n</ringdown-study>`,
  'ringdown-recording': twoSeats('ringdown-recordings'),
  'ringdown-recordings': twoSeats('ringdown-recordings'),
  'ringdown-comparison': twoSeats('ringdown-comparison'),
  'ringdown-seats': twoSeats('ringdown-seats'),
  'ringdown-sources': twoSeats('ringdown-sources'),
  'ringdown-place': inRoom('ringdown-pressure-map'),
  'ringdown-room': inRoom('ringdown-room'),
  'ringdown-pressure-map': inRoom('ringdown-pressure-map'),
  'ringdown-modes': `<ringdown-study ${desk} no-files>\n  <ringdown-modes></ringdown-modes>\n</ringdown-study>`,
};

const cell = (/** @type {string} */ text) =>
  text
    .replaceAll('|', '\\|')
    .replaceAll('<', '&lt;')
    .replaceAll('{{', '&#123;&#123;')
    .replace(/\s+/g, ' ')
    .trim();
const code = (/** @type {string | undefined} */ text) => (text ? `<code v-pre>${cell(text)}</code>` : '');

/**
 * @param {string} title
 * @param {string[]} heads
 * @param {string[][]} rows
 */
const table = (title, heads, rows) =>
  rows.length === 0
    ? ''
    : `\n## ${title}\n\n| ${heads.join(' | ')} |\n|${heads.map(() => ' --- |').join('')}\n${rows.map((row) => `| ${row.join(' | ')} |`).join('\n')}\n`;

/** @param {Item} item */
const told = ({ description, summary }) => cell(description ?? summary ?? '');
const plain = (/** @type {Item[] | undefined} */ items = []) =>
  items.map((item) => [code(item.name), told(item)]);

/** @param {Element} element */
function page({ tagName, name, summary = '', description = '', ...about }) {
  const figure = figures[tagName] ?? `<${tagName} ${desk}></${tagName}>`;
  const members = about.members ?? [];
  const fields = members.filter(({ kind, attribute }) => kind === 'field' && !attribute);
  const methods = members.filter(({ kind }) => kind === 'method');
  return [
    `# ${tagName}\n\n${summary}\n\n${description === summary ? '' : description}\n\n## At work\n\n${figure.replace(/\n\s*/g, '\n')}\n`,
    `\n\`\`\`html\n${figure.replaceAll('"/recordings/', '"')}\n\`\`\`\n`,
    `\nClass \`${name}\`; registered by \`ringdown/define/${tagName.replace('ringdown-', '')}\`.\n`,
    table(
      'Attributes',
      ['attribute', 'type', 'what it is'],
      (about.attributes ?? []).map((item) => [code(item.name), code(item.type?.text), told(item)]),
    ),
    table(
      'Properties without an attribute',
      ['property', 'type', 'what it is'],
      fields.map((item) => [code(item.name), code(item.type?.text), told(item)]),
    ),
    table(
      'Methods',
      ['method', 'gives', 'what it does'],
      methods.map((item) => [
        code(`${item.name}(${(item.parameters ?? []).map((parameter) => parameter.name).join(', ')})`),
        code(item.return?.type?.text),
        told(item),
      ]),
    ),
    table(
      'Events',
      ['event', 'type', 'fired when'],
      (about.events ?? []).map((item) => [code(item.name), code(item.type?.text), told(item)]),
    ),
    table(
      'Slots',
      ['slot', 'what it holds'],
      (about.slots ?? []).map((item) => [item.name ? code(item.name) : 'default', told(item)]),
    ),
    table('Parts', ['part', 'what it is'], plain(about.cssParts)),
    table(
      'Custom properties',
      ['property', 'default', 'what it sets'],
      (about.cssProperties ?? []).map((item) => [code(item.name), code(item.default), told(item)]),
    ),
    table('States', ['state', 'holds while'], plain(about.cssStates)),
  ].join('');
}

/** @param {string} folder absolute */
export function elementPages(folder) {
  const manifest = JSON.parse(readFileSync(`${root}custom-elements.json`, 'utf8'));
  /** @type {Element[]} */
  const elements = manifest.modules
    .flatMap((/** @type {{ declarations?: Element[] }} */ { declarations = [] }) => declarations)
    .filter((/** @type {Element} */ { tagName }) => tagName);
  mkdirSync(folder, { recursive: true });
  for (const element of elements) writeFileSync(`${folder}/${element.tagName}.md`, page(element));
  const rows = elements.map(
    ({ tagName, summary = '' }) => `| [${tagName}](./${tagName}.md) | ${cell(summary)} |`,
  );
  writeFileSync(
    `${folder}/index.md`,
    `# Elements\n\nEach works alone (\`src\` and \`room\` on itself), inside a \`ringdown-study\`, or beside one by \`for\`.\n\n| element | shows |\n| --- | --- |\n${rows.join('\n')}\n`,
  );
}
