/**
 * The sheet of the page: a report on paper. One column of text in four sizes, black on near-white, one
 * accent; dark where the reader's setting asks for it, with the pictures on white as they are drawn; its own
 * form for paper, A4 and Letter.
 */
export const LOOK = `
:root {
  color-scheme: light dark;
  --ground: #fdfdfb; --ink: #1a1a1a; --soft: #565656; --line: #d9d9d4; --accent: #00558a; --sheet: #ffffff;
}
@media (prefers-color-scheme: dark) {
  :root { --ground: #1b1c1e; --ink: #ececea; --soft: #b4b4b0; --line: #45474a; --accent: #8cc4ee; }
}
* { box-sizing: border-box; }
html { scroll-behavior: auto; }
body {
  margin: 0; background: var(--ground); color: var(--ink); font: 1rem/1.5 system-ui, "Segoe UI", sans-serif;
}
main { max-width: 1080px; margin: 0 auto; padding: 20px 16px 56px; }
h1, h2, h3 { line-height: 1.25; text-wrap: balance; overflow-wrap: anywhere; }
h1 { font-size: 2.1rem; font-weight: 700; margin: 2px 0 8px; max-width: 24ch; }
h2 {
  font-size: 1.3rem; font-weight: 600; margin: 44px 0 8px; padding-top: 10px;
  border-top: 2px solid var(--ink);
}
h3 { font-size: 1rem; font-weight: 600; margin: 26px 0 2px; max-width: 70ch; }
p, ul, ol, dl { margin: 6px 0 10px; max-width: 70ch; overflow-wrap: anywhere; }
ul { padding-left: 20px; }
.soft, .note { color: var(--soft); }
.note, table, .keys, figcaption p { font-size: .875rem; }
.first dl { display: grid; grid-template-columns: max-content 1fr; gap: 4px 18px; max-width: 80ch; }
.first dt { color: var(--soft); }
.first dd { margin: 0; overflow-wrap: anywhere; }
.first dd p { margin: 0; }
a { color: var(--accent); }
nav ol {
  display: flex; flex-wrap: wrap; gap: 0 20px; padding: 0; margin: 22px 0 0; list-style: none;
  max-width: none;
}
nav a { display: inline-block; padding: 10px 0; }
figure { margin: 14px 0 30px; }
figcaption h3 { margin-top: 0; }
.ground {
  background: var(--sheet); color: #1a1a1a; border: 1px solid var(--line); padding: 6px; min-height: 120px;
}
.ground:focus-visible, summary:focus-visible, button:focus-visible, a:focus-visible,
.scroll:focus-visible {
  outline: 3px solid var(--accent); outline-offset: 2px;
}
.ground canvas { display: block; }
.keys { display: flex; flex-wrap: wrap; gap: 4px; margin-top: 4px; }
button {
  font: inherit; color: inherit; background: none; border: 1px solid var(--line); border-radius: 0;
  padding: 6px 10px; min-height: 36px; display: inline-flex; gap: 8px; align-items: center; cursor: pointer;
}
button[hidden] { display: none; }
button[aria-pressed="false"] { text-decoration: line-through; color: var(--soft); }
button canvas { background: #fff; }
summary { cursor: pointer; padding: 8px 0; min-height: 36px; }
details.table { border-bottom: 1px solid var(--line); }
details.table > summary { font-weight: 600; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--soft); padding: 0 0 6px; max-width: 70ch; }
th, td {
  padding: 4px 14px 4px 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top;
}
thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 400; min-width: 10em; }
td { white-space: nowrap; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: 2px 16px; font-size: .875rem; }
.facts dt { color: var(--soft); }
.facts dd { margin: 0; overflow-wrap: anywhere; }
.map { background: #fff; border: 1px solid var(--line); overflow-x: auto; }
.map svg { display: block; width: 100%; height: auto; }
.map.narrow { display: none; }
.caution { border: 2px solid var(--ink); padding: 10px 14px; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.lever {
  display: grid; grid-template-columns: auto auto auto 17em 1fr; align-items: center; gap: 2px 6px;
  padding: 4px 0; border-bottom: 1px solid var(--line);
}
.lever label { padding-left: 6px; }
.lever input {
  font: inherit; width: 4.5em; min-height: 36px; padding: 4px 8px; color: inherit; background: none;
  border: 1px solid var(--soft); border-radius: 0; font-variant-numeric: tabular-nums; text-align: center;
  appearance: textfield;
}
.lever input::-webkit-inner-spin-button { appearance: none; }
.lever input[aria-invalid="true"] { border: 3px double var(--ink); }
.lever button { min-width: 36px; justify-content: center; }
.lever .soft { font-size: .875rem; }
.outcome { min-height: 1.5em; font-weight: 600; margin-top: 18px; }
pre { overflow-x: auto; border: 1px solid var(--line); padding: 8px 12px; font-size: .875rem; }
@media (pointer: coarse) { button, summary, nav a, .lever input { min-height: 44px; } }
@media (max-width: 640px) {
  main { padding: 12px 16px 40px; }
  h1 { font-size: 1.6rem; }
  .first dl, .facts { grid-template-columns: 1fr; gap: 0; }
  .first dd, .facts dd { margin-bottom: 8px; }
  .ground { border: 0; padding: 0; }
  .map { border: 0; }
  .map.wide { display: none; }
  .map.narrow { display: block; }
  .lever { grid-template-columns: auto auto auto 1fr; }
  .lever .soft { grid-column: 1 / -1; }
  #try-it thead { display: none; }
  #try-it :is(tbody, tr, th, td) { display: block; border: 0; padding: 1px 0; white-space: normal; }
  #try-it tr { border-bottom: 1px solid var(--line); padding: 6px 0; }
  #try-it td[data-head]:not(:empty)::before { content: attr(data-head) ": "; color: var(--soft); }
}
@media print {
  @page { margin: 13mm; }
  :root { --ground: #fff; --ink: #000; --soft: #444; --line: #bbb; --accent: #000; }
  body { font-size: 9.5pt; line-height: 1.35; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 17pt; } h2 { font-size: 12pt; margin-top: 18px; } h3 { font-size: 10pt; }
  nav, .keys, .more, .numbers, #try-it { display: none; }
  figure, tr, .caution, dl { break-inside: avoid; }
  h2, h3, summary, caption { break-after: avoid; }
  figure { margin: 8px 0 14px; }
  .ground { border: 0; padding: 0; min-height: 0; }
  .ground canvas { max-width: 100%; max-height: 235mm; width: auto !important; height: auto !important; }
  .first .ground canvas { max-height: 82mm; }
  .after { break-before: page; }
  .map.wide { display: block; border: 0; }
  .map.narrow { display: none; }
  .map svg { max-height: 235mm; }
  .scroll { overflow: visible; }
  table { font-size: 7.5pt; }
  td { white-space: normal; }
  th, td { padding-right: 6px; }
  tbody th { min-width: 0; }
}
`;
