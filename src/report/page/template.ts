import { LOOK } from './look.js';

/** A figure of which the page draws the picture. */
const FIGURE = `
<figure data-picture="<%= picture.name %>">
<figcaption><h3><%= picture.finding %></h3><p class="soft"><%= picture.how %></p></figcaption>
<div class="ground" role="img" tabindex="0" aria-label="<%= picture.alt %>" aria-describedby="walk"></div>
<p class="said unseen" aria-live="polite"></p>
<div class="keys" role="group" aria-label="series"></div>
<button class="more" type="button" hidden></button>
<details class="numbers"><summary>Its numbers</summary>
<div class="scroll" role="region" tabindex="0" aria-label="numbers of the picture"></div></details>
</figure>
`;

/**
 * The page as an eta template: every `<%=` escapes its value. Kept as text in a module so that a compiled
 * package has it.
 */
export const PAGE_TEMPLATE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy"
content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; worker-src blob:">
<title><%= it.first.answer %> <%= it.scenario %></title>
<style>${LOOK}</style>
</head>
<body>
<main>
<section class="first" aria-labelledby="answer">
<p class="soft"><%= it.first.question %></p>
<h1 id="answer"><%= it.first.answer %></h1>
<dl>
<dt>How sure</dt><dd><%= it.first.sure %></dd>
<% if (it.first.why !== null) { %>
<dt>What stops it</dt><dd><%= it.first.why %></dd>
<% } %>
<dt>What to do</dt><dd><%= it.first.toDo %></dd>
<dt>When, and what it costs</dt>
<dd><% it.first.whenAndCost.forEach((each) => { %><p><%= each %></p><% }) %></dd>
<dt>What it rests on</dt><dd><a href="#rests"><%= it.first.rests %></a></dd>
</dl>
<% it.pictures.slice(0, 1).forEach((picture) => { %>
${FIGURE}
<% }) %>
</section>
<!-- levers -->
<nav aria-label="contents"><ol>
<li><a href="#found">All that was found</a></li>
<li><a href="#rests">What it rests on</a></li>
<li><a href="#pictures">Pictures</a></li>
<li><a href="#tables">Tables</a></li>
<li><a href="#made">How it was done</a></li>
</ol></nav>
<p id="walk" class="unseen">Arrow keys go from place to place in a picture.</p>
<noscript><p>The pictures are drawn by a script, which does not run here; the PNG files beside this
page hold them.</p></noscript>
<section class="after" aria-labelledby="found">
<h2 id="found">All that was found</h2>
<p><%= it.inFull %></p>
<ul>
<% it.findings.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
<ul>
<% it.costsAndDates.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
</section>
<section aria-labelledby="rests">
<h2 id="rests">What it rests on</h2>
<ul>
<% it.assumptions.forEach((each) => { %>
<li><%= each %></li>
<% }) %>
</ul>
<p class="caution">A model informs a decision; it does not make it. <%= it.caution %></p>
</section>
<!-- map -->
<section aria-labelledby="pictures">
<h2 id="pictures">Pictures</h2>
<% it.pictures.slice(1).forEach((picture) => { %>
${FIGURE}
<% }) %>
</section>
<section aria-labelledby="tables">
<h2 id="tables">Tables</h2>
<p class="note"><%= it.more %></p>
<% it.tables.forEach((table) => { %>
<details class="table" id="<%= table.id %>"><summary><%= table.title %></summary>
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
</details>
<% }) %>
</section>
<section aria-labelledby="made">
<h2 id="made">How it was done</h2>
<dl class="facts">
<% it.facts.forEach((each) => { %>
<dt><%= each[0] %></dt><dd><%= each[1] %></dd>
<% }) %>
</dl>
</section>
</main>
<script type="application/octet-stream" id="results"><!-- results --></script>
<script><!-- script --></script>
</body>
</html>
`;
