/** A figure of which the page draws the picture; `picture` with its `title` in words of the page. */
export const FIGURE = `
<figure data-picture="<%= picture.name %>">
<figcaption><h3><%= picture.title %></h3>
<% if (picture.more !== '') { %><p class="soft"><%= picture.more %></p><% } %></figcaption>
<div class="ground" role="img" tabindex="0" aria-label="<%= picture.alt %>" aria-describedby="walk"></div>
<p class="said unseen" aria-live="polite"></p>
<div class="keys" role="group" aria-label="series"></div>
<button class="more" type="button" hidden></button>
<details class="numbers"><summary>How it is drawn, and its numbers</summary>
<p class="soft how"><%= picture.how %></p>
<div class="scroll" role="region" tabindex="0" aria-label="numbers of the picture"></div></details>
</figure>
`;

/** Links to the sections; what is put into the page later has a mark to put its link at. */
export const CONTENTS = `<ol>
<li><a href="#answer">The answer</a></li>
<li><a href="#more">In more words</a></li>
<!-- levers link -->
<% if (it.hasLosses) { %><li><a href="#ladder">Where the capacity goes</a></li><% } %>
<li><a href="#rests">What it rests on</a></li>
<!-- map link -->
<% it.groups.forEach((group) => { %>
<li><a href="#<%= group.id %>"><%= group.title %></a></li>
<% }) %>
<li><a href="#found">All that was found</a></li>
<li><a href="#tables">Tables</a></li>
<li><a href="#made">How it was done</a></li>
<li><a href="#words">Words</a></li>
<li><a href="#caution">Caution</a></li>
</ol>`;

/** The first screen: each line complete in itself, in the same order on every page, and one picture. */
export const FIRST = `
<section class="first" aria-labelledby="answer">
<p class="soft about"><%= it.first.about %></p>
<p class="question"><%= it.first.question %></p>
<h1 id="answer"><%= it.first.answer %></h1>
<dl>
<% it.lines.forEach((line) => { %>
<div><dt><% if (line.key === 'rests') { %><a href="#rests"><%= line.name %></a>
<% } else { %><%= line.name %><% } %></dt>
<dd><%= line.lead %><span class="soft"><%= line.basis %></span></dd></div>
<% }) %>
</dl>
<% it.firstPictures.forEach((picture) => { %>
${FIGURE}
<% }) %>
<p class="soft besides"><%= it.first.besides %> <a href="#more">The same in more words</a></p>
<p class="source"><%= it.source %></p>
</section>
`;

/** The same lines with all that is told behind them, and the command that would find out more. */
export const MORE = `
<section aria-labelledby="more">
<h2 id="more">The same in more words</h2>
<dl class="facts">
<% it.lines.forEach((line) => { %>
<dt><%= line.name %></dt><dd><%= line.brief %> <%= line.more %></dd>
<% }) %>
<dt><%= it.first.next.what %></dt><dd><code><%= it.first.next.command %></code></dd>
</dl>
</section>
`;

/** A table behind a fold; the script puts its buttons ahead of it. */
export const TABLE = `
<details class="table" id="<%= table.id %>"><summary><%= table.title %></summary>
<div class="scroll" role="region" tabindex="0" aria-label="<%= table.title %>">
<table>
<caption><%= it.prose(table.note) %></caption>
<thead><tr><% table.head.forEach((head) => { %><th scope="col"><%= head %></th><% }) %></tr></thead>
<tbody>
<% table.rows.forEach((row) => { %>
<tr><th scope="row"<% if (it.isTime(row[0])) { %> class="time"<% } %>><%= row[0] %></th><%
row.slice(1).forEach((cell) => { %><td><%= cell %></td><% }) %></tr>
<% }) %>
</tbody>
</table>
</div>
</details>
`;
