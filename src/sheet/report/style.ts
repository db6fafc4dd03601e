/** Look of the sheet, the same on the page, on paper and in the saved file. */
import type { Paper } from '../../study/sheet-texts.js';
import { cssString } from './markup.js';

/** Letters that every system has: a file of its own brings none along. */
const faces = 'system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", Arial, sans-serif';

export const sheetCss = `
.sheet {
  --ink: #16191b;
  --quiet: #545b5f;
  --rule: #c9cbc8;
  --fine: #e4e5e2;
  --mark: #005c73;
  box-sizing: border-box;
  color: var(--ink);
  background: #fff;
  color-scheme: light;
  font: 400 9.5pt/1.42 ${faces};
  font-variant-numeric: tabular-nums lining-nums;
  text-align: start;
  hyphens: manual;
  overflow-wrap: break-word;
}
.sheet *, .sheet *::before, .sheet *::after { box-sizing: border-box; }
.sheet header { padding-block-end: 3.5mm; border-block-end: 0.6mm solid var(--ink); }
.sheet h1 { margin: 0; font-size: 19pt; font-weight: 600; line-height: 1.15; letter-spacing: -0.012em; text-wrap: balance; }
.sheet .typed { display: flex; flex-wrap: wrap; gap: 0.5mm 8mm; margin: 2.5mm 0 0; }
.sheet .typed div { display: flex; gap: 1.6mm; }
.sheet :is(.typed, .facts) dt { color: var(--quiet); }
.sheet :is(.typed, .facts) dd { margin: 0; font-weight: 500; }
.sheet h2 {
  margin: 8mm 0 2.2mm;
  font-size: 12pt;
  font-weight: 600;
  line-height: 1.2;
  color: var(--mark);
  break-after: avoid;
}
.sheet p { margin: 0 0 1.6mm; max-inline-size: 82ch; text-wrap: pretty; orphans: 3; widows: 3; }
.sheet .summary p { font-size: 10.5pt; line-height: 1.5; }
.sheet .facts { display: flex; flex-wrap: wrap; gap: 1.2mm 9mm; margin: 0 0 3mm; break-inside: avoid; break-after: avoid; }
.sheet .facts div { display: flex; gap: 2mm; align-items: baseline; }
.sheet .facts dt { flex: none; }
.sheet figure { margin: 0 0 4mm; break-inside: avoid; }
.sheet figure svg { display: block; inline-size: 100%; block-size: auto; }
.sheet figcaption { margin-block-start: 1mm; font-weight: 500; }
.sheet .pair { break-inside: avoid; }
.sheet .pair figure { margin-block-end: 3mm; }
.sheet .beside { display: grid; grid-template-columns: 1fr 1fr; gap: 0 4.2mm; align-items: start; }
.sheet .beside figcaption { font-size: 8.6pt; }
.sheet .foot, .sheet .notes, .sheet small { color: var(--quiet); font-size: 8pt; line-height: 1.36; }
.sheet .foot { max-inline-size: none; margin-block: 1.4mm 4mm; }
.sheet small { font-size: 7.6pt; }
.sheet .wide { overflow-x: auto; }
.sheet .wide:focus-visible { outline: 2px solid var(--mark); outline-offset: 2px; }
.sheet figure .wide { overflow-x: auto; }
.sheet table { inline-size: 100%; border-collapse: collapse; font-size: 8.4pt; line-height: 1.32; margin: 0 0 1mm; }
.sheet caption { padding: 1.5mm 0 1mm; font-weight: 600; text-align: start; font-size: 9pt; }
.sheet h2 + .wide caption { position: absolute; inline-size: 1px; block-size: 1px; padding: 0; overflow: hidden; clip-path: inset(50%); }
.sheet thead { display: table-header-group; }
.sheet thead th { border-block-end: 0.3mm solid var(--ink); vertical-align: bottom; font-weight: 600; font-size: 8pt; line-height: 1.2; }
.sheet :is(th, td) { padding: 0.9mm 2.2mm 0.9mm 0; text-align: start; vertical-align: top; font-weight: 400; }
.sheet tbody th { font-weight: 500; }
.sheet :is(th, td):last-child { padding-inline-end: 0; }
.sheet tbody tr { border-block-end: 0.2mm solid var(--fine); break-inside: avoid; }
.sheet :is(th, td).figure { text-align: end; }
.sheet .figure { white-space: nowrap; }
.sheet thead .figure { white-space: normal; }
.sheet .ridges { table-layout: fixed; font-size: 8.1pt; }
.sheet .ridges :is(th, td) { padding-inline-end: 1.8mm; }
.sheet .ridges thead th:nth-child(1) { inline-size: 14%; }
.sheet .ridges thead th:nth-child(2) { inline-size: 14%; }
.sheet .ridges thead th:nth-child(3) { inline-size: 9%; }
.sheet .ridges thead th:nth-child(4) { inline-size: 9%; }
.sheet .ridges thead th:nth-child(5) { inline-size: 17%; }
.sheet .ridges thead th:nth-child(6) { inline-size: 9.5%; }
.sheet .ridges thead th:nth-child(7) { inline-size: 14.5%; }
.sheet .figure + .words { padding-inline-start: 4mm; }
.sheet .close { font-size: 7.8pt; }
.sheet code { font: 7.6pt/1 ui-monospace, "DejaVu Sans Mono", Consolas, monospace; }
.sheet ul { margin: 0; padding-inline-start: 4.2mm; }
.sheet li { margin: 0 0 1mm; max-inline-size: 86ch; break-inside: avoid; text-wrap: pretty; }
.sheet li::marker { color: var(--mark); }
.sheet .typed-notes { white-space: pre-wrap; }
.sheet .whole { break-inside: avoid; }
@media screen {
  .sheet { padding: clamp(1rem, 5vw, 16mm); }
  .sheet figure svg { min-inline-size: 34rem; }
  .sheet .beside { grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr)); }
  .sheet .beside svg { min-inline-size: 18rem; }
  .sheet .ridges { min-inline-size: 44rem; }
  .sheet .close { min-inline-size: 34rem; }
}
@media print {
  .sheet { padding: 0; background: none; }
  .sheet .wide { overflow: visible; }
  .sheet header { break-after: avoid; }
}
`;

/** Whole documents only: the paper, its margins, and what stands in them on every page. */
export const pageCss = (paper: Paper, title: string, pageWords: readonly [string, string]): string => `
@page {
  size: ${paper};
  margin: 15mm 16mm 17mm;
  @bottom-left { content: ${cssString(title)}; font: 7.5pt ${faces}; color: #545b5f; }
  @bottom-right {
    content: ${cssString(pageWords[0])} counter(page) ${cssString(pageWords[1])} counter(pages);
    font: 7.5pt ${faces};
    color: #545b5f;
  }
}
html { background: #fff; }
body { margin: 0; }
@media screen {
  html { background: #e9e8e3; }
  .sheet { max-inline-size: 210mm; margin: 0 auto; }
}
`;
