import { LOOK } from './look.js';
import { CONTENTS, FIGURE, FIRST, MORE, TABLE } from './parts.js';

const list = (name: string): string =>
  `<ul><% it.${name}.forEach((each) => { %><li><%= it.prose(each) %></li><% }) %></ul>`;

/**
 * The page as an eta template: every `<%=` escapes its value. Kept as text in a module so that a compiled
 * package has it. Marks in comments are where levers and the map are put in.
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
${FIRST}
<nav class="side" aria-label="contents">${CONTENTS}</nav>
<nav class="folded" aria-label="contents"><details><summary>Contents</summary>${CONTENTS}</details></nav>
<p id="walk" class="unseen">Arrow keys go from place to place in a picture.</p>
<noscript><p>The pictures are drawn by a script, which does not run here; the PNG files beside this
page hold them.</p></noscript>
${MORE}
<!-- levers -->
<% if (it.hasLosses) { %>
<section aria-labelledby="ladder">
<h2 id="ladder">Where the capacity goes</h2>
${list('losses')}
<% it.lossPictures.forEach((picture) => { %>
${FIGURE}
<% }) %>
</section>
<% } %>
<section aria-labelledby="rests">
<h2 id="rests">What it rests on</h2>
<% if (it.values.length > 0) { %>
${list('values')}
<% } %>
<% it.restPictures.forEach((picture) => { %>
${FIGURE}
<% }) %>
${list('assumptions')}
</section>
<!-- map -->
<% it.groups.forEach((group) => { %>
<section aria-labelledby="<%= group.id %>">
<h2 id="<%= group.id %>"><%= group.title %></h2>
<% group.pictures.forEach((picture) => { %>
${FIGURE}
<% }) %>
</section>
<% }) %>
<section aria-labelledby="found">
<h2 id="found">All that was found</h2>
<p><%= it.prose(it.inFull) %></p>
${list('findings')}
${list('costsAndDates')}
</section>
<section aria-labelledby="tables">
<h2 id="tables">Tables</h2>
<p class="note"><%= it.more %></p>
<% it.tables.forEach((table) => { %>
${TABLE}
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
<section aria-labelledby="words">
<h2 id="words">Words</h2>
<dl class="facts">
<% it.definitions.forEach((each) => { %>
<dt><%= each.word %></dt><dd><%= each.meaning %></dd>
<% }) %>
</dl>
</section>
<section aria-labelledby="caution">
<h2 id="caution">Caution</h2>
<p class="caution">A model informs a decision; it does not make it. <%= it.caution %></p>
</section>
</main>
<script type="application/octet-stream" id="results"><!-- results --></script>
<script type="application/octet-stream" id="cells"><!-- cells --></script>
<script><!-- script --></script>
</body>
</html>
`;
