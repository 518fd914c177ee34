"use strict";
for (const chart of document.querySelectorAll("figure.chart")) {
  const source = chart.querySelector('script[type="application/json"]');
  if (!source) continue;
  const { data, layout, config } = JSON.parse(source.textContent);
  // Shown first, because a chart takes its width from the page; taken back if it cannot be drawn.
  chart.classList.add("is-drawn");
  Plotly.newPlot(chart.querySelector(".drawn"), data, layout, { responsive: true, displaylogo: false, ...config })
    .catch(() => chart.classList.remove("is-drawn"));
}

// A click on a column's head sorts the table, a second click turns it round. The marked-up order is kept where nobody clicks.
for (const head of document.querySelectorAll("table thead th")) {
  const table = head.closest("table");
  if (table.tBodies.length !== 1 || table.tBodies[0].rows.length < 4 || table.querySelector("[rowspan],[colspan]")) continue;
  head.tabIndex = 0;
  head.title = "Sort by this column";
  head.style.cursor = "pointer";
  const sort = () => {
    const column = head.cellIndex;
    const falling = head.getAttribute("aria-sort") === "ascending";
    for (const other of head.parentElement.cells) other.removeAttribute("aria-sort");
    head.setAttribute("aria-sort", falling ? "descending" : "ascending");
    const words = (row) => row.cells[column]?.textContent.replace("\u2212", "-").trim() ?? "";
    const rows = [...table.tBodies[0].rows].sort((a, b) => {
      const [x, y] = [parseFloat(words(a)), parseFloat(words(b))];
      return Number.isNaN(x) || Number.isNaN(y) ? words(a).localeCompare(words(b)) : x - y;
    });
    table.tBodies[0].append(...(falling ? rows.reverse() : rows));
  };
  head.addEventListener("click", sort);
  head.addEventListener("keydown", (event) => { if (event.key === "Enter") sort(); });
}
