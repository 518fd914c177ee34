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
