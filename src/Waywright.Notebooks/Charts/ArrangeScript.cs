namespace Waywright.Notebooks;

/// <summary>
/// The part of drawing that fits a figure to the width it has; a published page, which brings its own loader, needs it too.
/// It reads what <see cref="PlotlyPicture"/> left in the layout's <c>meta</c> and lets figures of other makers be.
/// </summary>
internal static class ArrangeScript
{
    /// <summary>
    /// Defines <c>wwArrange</c>: <c>columns(layout, width)</c> sets width and height and as many small multiples beside each other as there is room for;
    /// <c>wrap(layout, width)</c> breaks the words below panels anew; <c>makeRoom(plotly, box, layout)</c> looks at the drawn figure and moves what does not fit; <c>stepped(chart, box)</c> gives the traces at the slider's present value,
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
            const rows = Math.ceil(m.panels / columns), each = (inner - (columns - 1) * m.gap) / columns;
            const more = this.wrap(layout, each), row = m.row + more, high = rows * row;
            layout.height = layout.margin.t + high + layout.margin.b;
            layout.legend.y = 1 + m.above / high;
            const domain = [(row - m.head - m.plot) / high, 1 - m.head / high];
            if (m.panels === 1) {
              if (more) layout.yaxis = { ...layout.yaxis, domain };
              return;
            }
            layout.grid = { rows, columns, pattern: "independent", xgap: m.gap / (each + m.gap), ygap: 1 - m.plot / row, domain: { y: domain } };
            for (let i = 0; i < m.panels; i++)
              layout["yaxis" + (i ? i + 1 : "")] = { showticklabels: i % columns === 0 };
          },

          // Words below a panel are wrapped anew where it is narrower than planned; gives the room that they need beyond what is left for them.
          wrap(layout, width) {
            const notes = (layout.annotations || []).filter(a => a.yanchor === "top" && a.font?.size);
            if (!notes.length) return 0;
            const ink = document.createElement("canvas").getContext("2d"), lines = a => a.text.split("<br>").length;
            layout.meta.lines ??= Math.max(...notes.map(lines));
            for (const note of notes) {
              ink.font = `${note.font.size}px ${layout.font?.family || "sans-serif"}`;
              const wrapped = [""];
              for (const word of note.text.replaceAll("<br>", " ").split(" ")) {
                const longer = wrapped.at(-1) ? `${wrapped.at(-1)} ${word}` : word;
                if (wrapped.at(-1) && ink.measureText(longer).width > width) wrapped.push(word);
                else wrapped[wrapped.length - 1] = longer;
              }
              note.text = wrapped.join("<br>");
            }
            return Math.max(0, Math.max(...notes.map(lines)) - layout.meta.lines) * Math.ceil(1.3 * notes[0].font.size);
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
