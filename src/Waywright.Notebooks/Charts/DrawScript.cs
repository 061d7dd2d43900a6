namespace Waywright.Notebooks;

/// <summary>
/// The one script that draws figures in place of their static pictures; it needs nothing but Plotly.
/// Ink becomes the text colour around the figure, small multiples get as many columns as the width has room for,
/// and paper gets the static picture. Without it, or when it fails, the static picture stays.
/// </summary>
internal static class DrawScript
{
    /// <summary>
    /// Defines <c>window.waywright</c>: <c>start(load)</c> calls <c>load</c>, which promises Plotly, once, and then draws every figure of the page;
    /// <c>show(id)</c> draws the figures of that id that came later.
    /// </summary>
    public const string Text = """
        window.waywright = window.waywright || (() => {
          let plotly = null, loading = null;
          const boxes = new Map();
          const still = figure => figure.querySelector(":scope > svg, :scope > .ww-still");

          function arrange(layout, width) {
            const m = layout.meta || {};
            layout.width = Math.min(width, m.widest || layout.width || 760);
            if (!m.panels) return;
            const inner = layout.width - layout.margin.l - layout.margin.r;
            const columns = Math.max(1, Math.min(m.panels, Math.floor((inner + m.gap) / (m.least + m.gap))));
            const rows = Math.ceil(m.panels / columns), high = rows * m.row, each = (inner - (columns - 1) * m.gap) / columns;
            layout.height = layout.margin.t + high + layout.margin.b;
            if (layout.legend) layout.legend.y = 1 + m.above / high;
            if (m.panels === 1) return;
            layout.grid = { rows, columns, pattern: "independent", xgap: m.gap / (each + m.gap), ygap: 1 - m.plot / m.row,
              domain: { y: [(m.row - m.head - m.plot) / high, 1 - m.head / high] } };
            for (let i = 0; i < m.panels; i++)
              layout["yaxis" + (i ? i + 1 : "")] = { showticklabels: i % columns === 0 };
          }

          function draw(figure) {
            const box = boxes.get(figure), width = Math.floor(box.clientWidth);
            if (!plotly || !width) return;
            const ink = getComputedStyle(figure).color;
            const data = figure.querySelector(":scope > script.ww-plot").textContent;
            const chart = JSON.parse(data.split('"#000000"').join(JSON.stringify(ink)));
            arrange(chart.layout, width);
            plotly.react(box, chart.data, chart.layout, chart.config)
              .then(() => makeRoom(box, chart.layout))
              .then(() => print(false, figure), why => { console.warn("Waywright: a chart stays static,", why); plotly.purge(box); });
          }

          // A key of more lines than planned pushes the plots down; words that leave a lone plot on the right push the scale in.
          function makeRoom(box, layout) {
            const m = layout.meta || {}, key = box.querySelector(".legend .bg"), change = {};
            if (!m.panels) return box;
            const more = key ? Math.ceil(key.getBBox().height + m.above - layout.margin.t) : 0;
            if (more > 0) Object.assign(change, { "margin.t": layout.margin.t + more, height: layout.height + more });
            const frame = box.getBoundingClientRect(), start = frame.left + layout.margin.l, end = frame.left + layout.width - 2;
            const shrink = Math.min(...[...box.querySelectorAll(".textpoint text")].map(t => t.getBoundingClientRect())
              .map(r => r.right > end ? (end - r.width - start) / (r.left - start) : 1), 1);
            if (m.panels === 1 && shrink > 0 && shrink < 1) {
              const [low, high] = layout.template.layout.xaxis.range;
              change["xaxis.range"] = [low, low + (high - low) / shrink];
            }
            return Object.keys(change).length ? plotly.relayout(box, change) : box;
          }

          function print(paper, figure) {
            const box = boxes.get(figure), picture = still(figure), drawn = box.childElementCount > 0;
            box.style.display = paper ? "none" : "";
            if (picture) picture.style.display = drawn && !paper ? "none" : "";
          }

          const sizes = new ResizeObserver(entries => entries.forEach(entry => {
            const figure = entry.target.parentElement, width = Math.floor(entry.contentRect.width);
            if (!figure || !width || Math.abs(width - entry.target.wwWidth) < 2) return;
            entry.target.wwWidth = width;
            draw(figure);
          }));

          function watch(figure) {
            if (boxes.has(figure) || !figure.querySelector(":scope > script.ww-plot")) return;
            const box = document.createElement("div"), title = figure.querySelector(":scope > svg > title");
            box.className = "ww-live";
            box.wwWidth = 0;
            box.setAttribute("role", "img");
            box.setAttribute("aria-label", title ? title.textContent : "chart");
            figure.prepend(box);
            boxes.set(figure, box);
            sizes.observe(box);
          }

          const each = act => boxes.forEach((box, figure) => figure.isConnected ? act(figure) : (sizes.unobserve(box), boxes.delete(figure)));
          matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => each(draw));
          addEventListener("beforeprint", () => each(figure => print(true, figure)));
          addEventListener("afterprint", () => each(figure => print(false, figure)));

          return {
            start(load) {
              loading = loading || load().then(p => {
                plotly = p;
                document.querySelectorAll("figure.ww-figure").forEach(watch);
                each(draw);
              }, why => console.warn("Waywright: charts stay static,", why));
            },
            show(id) {
              document.querySelectorAll(`figure.ww-figure[id="${id}"]`).forEach(watch);
            },
          };
        })();
        """;
}
