/**
 * The page as an eta template: every `<%=` escapes its value. Kept as text in a module so that a compiled
 * package has it.
 */
export const PAGE_TEMPLATE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title><%= it.scenario %>: results</title>
<style>
:root { color-scheme: light; }
* { box-sizing: border-box; }
body {
  margin: 0 auto; max-width: 1120px; padding: 24px 20px 48px; background: #fff; color: #1a1a1a;
  font: 16px/1.5 system-ui, sans-serif;
}
h1 { font-size: 1.65rem; line-height: 1.25; margin: 4px 0 16px; text-wrap: balance; }
h2 { font-size: 1.2rem; margin: 26px 0 8px; padding-top: 10px; border-top: 2px solid #1a1a1a; }
h3 { font-size: 1.05rem; margin: 28px 0 2px; }
p, ul, dl { margin: 6px 0 10px; max-width: 75ch; }
.kicker, .note { color: #565656; }
.note { font-size: .9rem; }
.headline { display: flex; flex-wrap: wrap; gap: 4px 36px; margin: 0; max-width: none; }
.headline div { border-left: 4px solid #0072b2; padding-left: 12px; margin-bottom: 10px; }
.headline dt { color: #565656; font-size: .9rem; }
.headline dd { margin: 0; font-size: .95rem; }
.headline strong { display: block; font-size: 1.7rem; line-height: 1.2; font-variant-numeric: tabular-nums; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: 2px 16px; font-size: .9rem; }
.facts dt { color: #565656; }
.facts dd { margin: 0; overflow-wrap: anywhere; }
.caution { border: 2px solid #1a1a1a; padding: 10px 14px; max-width: none; }
figure { margin: 14px 0; }
.columns {
  display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 420px), 1fr)); gap: 0 44px;
}
nav { margin-top: 26px; }
.detail { margin-top: 36px; }
ul { padding-left: 20px; }
.scroll { overflow-x: auto; }
.scroll:focus-visible { outline: 3px solid #0072b2; }
img { display: block; width: 100%; height: auto; min-width: 720px; }
table { border-collapse: collapse; font-size: .875rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: #565656; padding: 0 0 6px; }
th, td { padding: 4px 14px 4px 0; border-bottom: 1px solid #dcdcdc; text-align: left; vertical-align: top; }
thead th { border-bottom: 2px solid #1a1a1a; vertical-align: bottom; }
tbody th { font-weight: 400; min-width: 12em; }
td { white-space: nowrap; }
a { color: #00558a; }
nav ul { display: flex; flex-wrap: wrap; gap: 4px 18px; padding: 0; list-style: none; max-width: none; }
@media print {
  @page { margin: 11mm; }
  body { padding: 0; max-width: none; font-size: 8.5pt; line-height: 1.35; }
  .headline strong { font-size: 15pt; }
  .headline dt, .headline dd, .facts, .note { font-size: 8.5pt; }
  .caution { padding: 5px 8px; }
  figure { margin: 4px 0; }
  h1 + .headline + figure img { max-height: 86mm; }
  h3 { font-size: 10pt; margin-top: 14px; }
  nav { display: none; }
  img { min-width: 0; max-height: 250mm; object-fit: contain; object-position: left top; }
  figure, tr, .caution { break-inside: avoid; }
  .columns { grid-template-columns: 1fr 1fr; gap: 0 24px; }
  h1 { font-size: 14pt; margin-bottom: 8px; }
  h2 { font-size: 11pt; margin-top: 10px; padding-top: 4px; }
  ul, p, dl { margin: 3px 0; }
  .detail { break-before: page; }
  .scroll { overflow: visible; }
  table { font-size: 7pt; }
  td { white-space: normal; }
  th, td { padding-right: 6px; }
  tbody th { min-width: 0; }
}
</style>
</head>
<body>
<main>
<section aria-labelledby="answer">
<p class="kicker"><%= it.scenario %></p>
<h1 id="answer"><%= it.answer %></h1>
<dl class="headline">
<% it.headline.forEach((each) => { %>
<div><dt><%= each.what %></dt><dd><strong><%= each.value %></strong><%= each.interval %></dd></div>
<% }) %>
</dl>
<% if (it.pictures.length > 0) { %>
<figure><div class="scroll" role="region" tabindex="0" aria-label="picture">
<img src="<%= it.pictures[0].source %>" alt="<%= it.pictures[0].alt %>"
width="<%= it.pictures[0].width %>" height="<%= it.pictures[0].height %>">
</div></figure>
<% } %>
<div class="columns">
<div>
<h2>Findings</h2>
<ul>
<% it.findings.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
<h2>Cost and date</h2>
<ul>
<% it.costsAndDates.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
<h2>Origin</h2>
<dl class="facts">
<% it.facts.forEach((each) => { %>
<dt><%= each[0] %></dt><dd><%= each[1] %></dd>
<% }) %>
</dl>
</div>
<div>
<h2>What the answer rests on</h2>
<ul>
<% it.assumptions.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
</div>
</div>
<p class="caution"><strong>Safety.</strong> <%= it.caution %></p>
</section>
<nav aria-label="contents"><ul>
<li><a href="#pictures">Pictures</a></li>
<% it.tables.forEach((table) => { %>
<li><a href="#<%= table.id %>"><%= table.title %></a></li>
<% }) %>
</ul></nav>
<section class="detail" aria-labelledby="pictures">
<h2 id="pictures">Pictures</h2>
<% it.pictures.slice(1).forEach((picture) => { %>
<figure><div class="scroll" role="region" tabindex="0" aria-label="picture">
<img src="<%= picture.source %>" alt="<%= picture.alt %>"
width="<%= picture.width %>" height="<%= picture.height %>" loading="lazy">
</div></figure>
<% }) %>
</section>
<section class="detail" aria-labelledby="tables">
<h2 id="tables">Tables</h2>
<p class="note"><%= it.more %></p>
<% it.tables.forEach((table) => { %>
<h3 id="<%= table.id %>"><%= table.title %></h3>
<div class="scroll" role="region" tabindex="0" aria-label="<%= table.title %>">
<table>
<caption><%= table.note %></caption>
<thead><tr><% table.head.forEach((head) => { %><th scope="col"><%= head %></th><% }) %></tr></thead>
<tbody>
<% table.rows.forEach((row) => { %>
<tr><th scope="row"><%= row[0] %></th><% row.slice(1).forEach((cell) => { %><td><%= cell %></td><% }) %></tr>
<% }) %>
</tbody>
</table>
</div>
<% }) %>
</section>
</main>
</body>
</html>
`;
