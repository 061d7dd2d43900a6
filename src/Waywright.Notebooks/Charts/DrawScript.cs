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
    public const string Text = $$"""
        window.waywright = window.waywright || (() => {
          {{ArrangeScript.Text}}
          let plotly = null, loading = null;
          const boxes = new Map();
          const still = figure => figure.querySelector(":scope > svg, :scope > .ww-still");

          function draw(figure) {
            const box = boxes.get(figure), width = Math.floor(box.clientWidth);
            if (!plotly || !width) return;
            box.wwWidth = width;
            const ink = getComputedStyle(figure).color;
            const data = figure.querySelector(":scope > script.ww-plot").textContent;
            const chart = JSON.parse(data.split('"#000000"').join(JSON.stringify(ink)));
            wwArrange.columns(chart.layout, width);
            plotly.react(box, wwArrange.stepped(chart, box), chart.layout, chart.config)
              .then(() => wwArrange.makeRoom(plotly, box, chart.layout))
              .then(() => wwArrange.slider(box, chart, () => draw(figure)))
              .then(() => print(false, figure), why => { console.warn("Waywright: a chart stays static,", why); plotly.purge(box); });
          }

          function print(paper, figure) {
            const box = boxes.get(figure), picture = still(figure), drawn = box.childElementCount > 0;
            box.style.display = paper ? "none" : "";
            if (box.wwSlider) box.wwSlider.style.display = paper ? "none" : "flex";
            if (picture) picture.style.display = drawn && !paper ? "none" : "";
          }

          const sizes = new ResizeObserver(entries => entries.forEach(entry => {
            const figure = entry.target.parentElement, width = Math.floor(entry.contentRect.width);
            if (figure && Math.abs(width - entry.target.wwWidth) > 1) draw(figure);
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
