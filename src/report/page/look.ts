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
main { max-width: 1000px; margin: 0 auto; padding: 20px 16px 56px; }
h1, h2, h3 { line-height: 1.25; text-wrap: balance; overflow-wrap: anywhere; }
h1 { font-size: 2.1rem; font-weight: 700; margin: 2px 0 8px; max-width: 32ch; }
h2 {
  font-size: 1.3rem; font-weight: 600; margin: 44px 0 8px; padding-top: 10px;
  border-top: 2px solid var(--ink);
}
h3 { font-size: 1rem; font-weight: 600; margin: 26px 0 2px; max-width: 36rem; }
p, ul, ol, dl { margin: 6px 0 10px; max-width: 36rem; overflow-wrap: anywhere; }
ul { padding-left: 20px; }
.soft, .note { color: var(--soft); }
.note, table, .keys, figcaption p { font-size: .875rem; }
.first .about, .first .besides { font-size: .875rem; }
.first .question, .first .about { margin: 0; }
.first dl { max-width: 50rem; }
.first dl > div { display: grid; grid-template-columns: 7.5rem 1fr; gap: 0 18px; padding: 5px 0; }
.first dl > div { border-top: 1px solid var(--line); }
.first dt { color: var(--soft); }
.first dd { margin: 0; overflow-wrap: anywhere; }
a { color: var(--accent); }
.source { color: var(--soft); }
code {
  font-family: ui-monospace, Consolas, monospace; font-size: .92em; color: var(--ink);
  display: inline-block; max-width: 100%;
}
.source { display: none; font-size: .875rem; }
nav ol { padding: 0; margin: 0; list-style: none; max-width: none; font-size: .875rem; }
nav a { display: block; padding: 5px 0; }
.side { display: none; }
.folded { border-bottom: 1px solid var(--line); }
.tools { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; margin: 4px 0 8px; }
.tools span { color: var(--soft); font-size: .875rem; }
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
caption { text-align: left; color: var(--soft); padding: 0 0 6px; max-width: 36rem; }
th, td {
  padding: 4px 14px 4px 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top;
}
thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
tbody th { font-weight: 400; min-width: 10em; }
td, th.time { white-space: nowrap; }
.facts {
  display: grid; grid-template-columns: 10rem 1fr; gap: 4px 16px; font-size: .875rem; max-width: 46rem;
}
.facts dt { color: var(--soft); }
.facts dd { margin: 0; overflow-wrap: anywhere; }
.map { position: relative; background: #fff; border: 1px solid var(--line); }
.map svg { display: block; width: 100%; height: auto; }
.map.narrow, .map.paper { display: none; }
.map.narrow { max-width: 520px; }
.map:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.map .ring { position: absolute; border: 2px solid #00558a; pointer-events: none; }
.map .told {
  position: absolute; z-index: 1; width: max-content; max-width: min(380px, 100%); padding: 8px 12px;
  background: var(--ground); border: 2px solid var(--accent); font-size: .875rem;
}
.told p { margin: 0; }
.told p:first-child { font-weight: 600; }
.told p + p::first-letter { text-transform: uppercase; }
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
@media (min-width: 1200px) {
  main {
    max-width: 1264px; display: grid; grid-template-columns: 190px minmax(0, 1fr); column-gap: 44px;
    align-items: start;
  }
  main > * { grid-column: 2; min-width: 0; }
  main > .side {
    display: block; grid-column: 1; grid-row: 1 / span 99; position: sticky; top: 20px;
    max-height: calc(100vh - 40px); overflow-y: auto;
  }
  .folded { display: none; }
}
@media (max-width: 640px) {
  body { line-height: 1.42; }
  main { padding: 12px 16px 40px; }
  h1 { font-size: 1.6rem; }
  .first dl > div, .facts { grid-template-columns: 1fr; gap: 0; }
  .facts dd { margin-bottom: 6px; }
  .ground { border: 0; padding: 0; }
  .map { border: 0; }
  .lever { grid-template-columns: auto auto auto 1fr; }
  .lever .soft { grid-column: 1 / -1; }
  #try-it thead { display: none; }
  #try-it :is(tbody, tr, th, td) { display: block; border: 0; padding: 1px 0; white-space: normal; }
  #try-it tr { border-bottom: 1px solid var(--line); padding: 6px 0; }
  #try-it td[data-head]:not(:empty)::before { content: attr(data-head) ": "; color: var(--soft); }
}
@media (max-width: 1000px) {
  .map.wide { display: none; }
  .map.narrow { display: block; }
}
@media print {
  @page { margin: 13mm; }
  :root { --ground: #fff; --ink: #000; --soft: #444; --line: #bbb; --accent: #000; }
  body { font-size: 9.5pt; line-height: 1.35; }
  .note, .facts, figcaption p, .first :is(.about, .besides) { font-size: 8.5pt; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 17pt; } h2 { font-size: 12pt; margin-top: 18px; } h3 { font-size: 10pt; }
  nav, main > .side, .keys, .more, .numbers, .tools, noscript, #try-it { display: none; }
  main { display: block; }
  p, ul, ol, dl, h1, h3, caption, .first dl, .facts { max-width: none; }
  .first { break-after: page; }
  .first a { color: inherit; text-decoration: none; }
  .besides a::after { content: ": on the next page."; }
  .source { display: block; font-size: 8pt; border-top: 1px solid var(--line); padding-top: 4px; }
  figure, tr, .caution, dl { break-inside: avoid; }
  h2, h3, summary, caption { break-after: avoid; }
  figure { margin: 8px 0 14px; }
  .ground { border: 0; padding: 0; min-height: 0; }
  .ground canvas { max-width: 100%; max-height: 235mm; width: auto !important; height: auto !important; }
  .first .ground canvas { max-height: 130mm; }
  .map.wide, .map.narrow, .walk { display: none; }
  .map.paper { display: block; border: 0; }
  .route { break-before: page; }
  .route p { margin: 0; }
  .map svg { max-height: 236mm; }
  .scroll { overflow: visible; }
  table { font-size: 7.5pt; }
  td { white-space: normal; }
  th, td { padding-right: 6px; }
  tbody th { min-width: 0; }
}
`;
