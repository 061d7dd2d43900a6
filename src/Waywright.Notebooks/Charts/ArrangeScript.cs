namespace Waywright.Notebooks;

/// <summary>
/// The part of drawing that fits a figure to the width it has; a published page, which brings its own loader, needs it too.
/// It reads what <see cref="PlotlyPicture"/> left in the layout's <c>meta</c> and lets figures of other makers be.
/// </summary>
internal static class ArrangeScript
{
    /// <summary>
    /// Defines <c>wwArrange</c>: <c>columns(layout, width)</c> sets width and height and as many small multiples beside each other as there is room for;
    /// <c>makeRoom(plotly, box, layout)</c> looks at the drawn figure and moves what does not fit; <c>stepped(chart, box)</c> gives the traces at the slider's present value,
    /// and <c>slider(box, chart, redraw)</c> puts the slider under the figure, an input of the page that keyboards and screen readers know.
    /// </summary>
    public const string Text = """
        const wwArrange = {
          columns(layout, width) {
            const m = layout.meta || {};
            layout.width = Math.min(width, m.widest || layout.width || 760);
            if (!m.panels) return;
            const inner = layout.width - layout.margin.l - layout.margin.r;
            const columns = Math.max(1, Math.min(m.panels, Math.floor((inner + m.gap) / (m.least + m.gap))));
            const rows = Math.ceil(m.panels / columns), high = rows * m.row, each = (inner - (columns - 1) * m.gap) / columns;
            layout.height = layout.margin.t + high + layout.margin.b;
            layout.legend.y = 1 + m.above / high;
            if (m.panels === 1) return;
            layout.grid = { rows, columns, pattern: "independent", xgap: m.gap / (each + m.gap), ygap: 1 - m.plot / m.row,
              domain: { y: [(m.row - m.head - m.plot) / high, 1 - m.head / high] } };
            for (let i = 0; i < m.panels; i++)
              layout["yaxis" + (i ? i + 1 : "")] = { showticklabels: i % columns === 0 };
          },

          // A key of more lines than planned pushes the plots down; words that leave a lone plot on the right push the scale in.
          makeRoom(plotly, box, layout) {
            const m = layout.meta || {}, key = box.querySelector(".legend .bg"), change = {};
            if (!m.panels) return box;
            const more = key ? Math.ceil(key.getBBox().height + m.above - layout.margin.t) : 0;
            if (more > 0) Object.assign(change, { "margin.t": layout.margin.t + more, height: layout.height + more });
            const frame = box.getBoundingClientRect(), start = frame.left + layout.margin.l, end = frame.left + layout.width - 2;
            const shrink = Math.min(1, ...[...box.querySelectorAll(".textpoint text")].map(t => t.getBoundingClientRect())
              .map(r => r.right > end ? (end - r.width - start) / (r.left - start) : 1));
            if (m.panels === 1 && shrink > 0 && shrink < 1) {
              const [low, high] = layout.template.layout.xaxis.range;
              change["xaxis.range"] = [low, low + (high - low) / shrink];
            }
            return Object.keys(change).length ? plotly.relayout(box, change) : box;
          },

          stepped(chart, box) {
            const step = chart.slider?.steps[box.wwStep ?? chart.slider.start];
            if (!step) return chart.data ?? [];
            return chart.data.map((trace, i) => Object.fromEntries(Object.entries({ ...trace, ...step[i] }).filter(([, value]) => value !== null)));
          },

          slider(box, chart, redraw) {
            if (!chart.slider || box.wwSlider) return;
            const { label, values, start } = chart.slider, row = document.createElement("label"), input = document.createElement("input"), output = document.createElement("output");
            row.className = "ww-slider";
            row.style.cssText = "display:flex;flex-wrap:wrap;gap:.25em .75em;align-items:center;max-width:42rem;margin:.25em 0 .5em";
            input.style.cssText = "flex:1 1 12rem;min-height:2rem;accent-color:#0072B2";
            output.style.cssText = "min-width:6em;font-variant-numeric:tabular-nums";
            Object.assign(input, { type: "range", min: 0, max: values.length - 1, step: 1, value: start });
            const show = () => { output.textContent = values[input.value]; input.setAttribute("aria-valuetext", values[input.value]); };
            input.addEventListener("input", () => { box.wwStep = +input.value; show(); redraw(); });
            show();
            row.append(label, input, output);
            box.after(row);
            box.wwSlider = row;
          },
        };
        """;
}
