/** The sheet that stays with the client, as one document of its own: no script, nothing that is fetched, vector pictures. */
import { engineVersion } from '../../study/version.js';
import type { Speaker } from '../../words/index.js';
import { roomName } from '../room-name.js';
import { markup, Markup, type Content } from './markup.js';
import { cautionsSection, madeSection, notDoneSection, settingsSection } from './reasons.js';
import { resultSection, ridgesSection } from './results.js';
import { recordingsSection, setupSection } from './setup.js';
import { pageCss, sheetCss } from './style.js';
import { subjectOf, type SheetInput, type Subject } from './subject.js';
import { summaryOf } from './summary.js';

export type { SheetInput } from './subject.js';

/** What the sheet is called: as it was typed, else by its room. */
export const sheetTitle = ({ study: { sheet, room } }: SheetInput, speaker: Speaker): string =>
  sheet.title.trim() || speaker.view('sheet-untitled', { room: room && roomName(room, speaker) });

/** Title, and who and when, where somebody typed it. */
function headOf(subject: Subject, speaker: Speaker): Markup {
  const typed = (['client', 'author', 'date'] as const).filter((name) => subject.study.sheet[name].trim());
  return markup`<header><h1>${sheetTitle(subject, speaker)}</h1>
${
  typed.length > 0 &&
  markup`<dl class="typed">${typed.map(
    (name) =>
      markup`<div><dt>${speaker.view(`sheet-${name}`)}</dt><dd>${subject.study.sheet[name].trim()}</dd></div>`,
  )}</dl>\n`
}</header>\n`;
}

/** The sheet without the document around it. */
export function sheetBody(input: SheetInput, speaker: Speaker): string {
  const subject = subjectOf(input, speaker);
  const notes = input.study.sheet.notes.trim();
  const sections: Content[] = [
    headOf(subject, speaker),
    markup`<section class="summary"><h2>${speaker.view('sheet-summary')}</h2>
${summaryOf(subject, speaker).map((sentence) => markup`<p>${sentence}</p>\n`)}</section>\n`,
    ridgesSection(subject, speaker),
    resultSection(subject, speaker),
    settingsSection(subject, speaker),
    notDoneSection(subject, speaker),
    notes !== '' &&
      markup`<section><h2>${speaker.view('sheet-notes')}</h2><p class="typed-notes">${notes}</p></section>\n`,
    setupSection(subject, speaker),
    recordingsSection(subject, speaker),
    cautionsSection(subject, speaker),
    madeSection(subject, speaker),
  ];
  return markup`<article class="sheet">\n${sections}</article>\n`.text;
}

/** What stands before and between the two numbers of “Page 1 of 3”. */
function pageWords(speaker: Speaker): [string, string] {
  const [before, between] = speaker.view('sheet-page', { page: '#', pages: '#' }).split('#');
  return [before, between];
}

/** The styles of the whole document: for who must hand them over apart from its text. */
export const documentCss = (input: SheetInput, speaker: Speaker): string =>
  `${pageCss(input.study.sheet.paper, sheetTitle(input, speaker), pageWords(speaker))}${sheetCss}`;

/** The sheet as a file of its own. */
export function sheetDocument(input: SheetInput, speaker: Speaker): string {
  const style = new Markup(documentCss(input, speaker));
  return markup`<!doctype html>
<html lang="${speaker.words.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="ringdown ${engineVersion}">
<title>${sheetTitle(input, speaker)}</title>
<style>${style}</style>
</head>
<body>
<main>
${new Markup(sheetBody(input, speaker))}</main>
</body>
</html>
`.text;
}
