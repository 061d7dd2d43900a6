
// Draws the page's charts from their inert JSON, in place of the still pictures. Without it, or when it fails, the pictures stay.
(() => {
  "use strict";
  const Ink = "#000000";
  const InkOnDark = "#E6E6E6";
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const touch = matchMedia("(pointer: coarse)");
  const drawn = new Map();
  let script = null;

  // The chart script: packed in the page, unpacked once, run from a blob because the page allows no other source.
  const load = () => script ??= (async () => {
    const packed = Uint8Array.from(atob(document.getElementById("ww-plotly").textContent.trim()), c => c.charCodeAt(0));
    const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
    const url = URL.createObjectURL(new Blob([await new Response(stream).blob()], { type: "text/javascript" }));
    await new Promise((done, fail) => {
      const element = document.createElement("script");
      element.onload = done;
      element.onerror = () => fail(new Error("the chart script did not load"));
      element.src = url;
      document.head.append(element);
    });
    URL.revokeObjectURL(url);
    return window.Plotly;
  })();

  const inked = value => {
    if (typeof value === "string")
      return dark.matches && value.toLowerCase() === Ink ? InkOnDark : value;
    if (Array.isArray(value))
      return value.map(inked);
    if (value && typeof value === "object")
      return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, inked(part)]));
    return value;
  };

  // What a figure does not say itself comes from here, so that it looks like the rest of the page.
  const template = () => {
    const ink = dark.matches ? InkOnDark : Ink;
    const line = dark.matches ? "#3a3f45" : "#dcdcd8";
    const axis = {
      automargin: true, gridcolor: line, linecolor: line, zerolinecolor: dark.matches ? "#5a6067" : "#b9b9b4",
      tickcolor: line, ticks: "outside", ticklen: 4, title: { standoff: 8, font: { size: 13 } }
    };
    return {
      layout: {
        colorway: [ink, "#0072B2", "#D55E00", "#009E73", "#E69F00", "#56B4E9"],
        font: { family: getComputedStyle(document.body).fontFamily, size: 13, color: ink },
        paper_bgcolor: "rgba(0,0,0,0)", plot_bgcolor: "rgba(0,0,0,0)", xaxis: axis, yaxis: axis,
        hoverlabel: { bgcolor: dark.matches ? "#23272b" : "#ffffff", bordercolor: line, font: { color: ink } }
      }
    };
  };

  const layoutOf = (figure, width) => {
    const layout = inked(figure.layout ?? {});
    delete layout.width;
    wwArrange.columns(layout, width);
    return {
      ...layout,
      width: layout.meta?.panels ? layout.width : width,
      template: layout.template ?? template(),
      // On a touch screen a finger over the chart must move the page.
      dragmode: touch.matches ? false : layout.dragmode ?? "zoom"
    };
  };

  const configOf = figure => ({ ...figure.config, responsive: false, displayModeBar: false, displaylogo: false });

  // Follows the room that a chart has, not the window: a fold that opens changes one and not the other.
  const sized = new ResizeObserver(entries => {
    for (const { target, contentRect } of entries) {
      if (drawn.has(target) && contentRect.width > 0 && Math.abs(contentRect.width - target.drawnWidth) > 1)
        render(window.Plotly, target, drawn.get(target));
    }
  });

  // Small multiples get as many columns as the width has room for; words and key that do not fit are given room.
  const render = async (plotly, live, figure) => {
    live.drawnWidth = live.clientWidth;
    const layout = layoutOf(figure, live.drawnWidth);
    await plotly.react(live, inked(wwArrange.stepped(figure, live)), layout, configOf(figure));
    await wwArrange.makeRoom(plotly, live, layout);
    wwArrange.slider(live, figure, () => render(plotly, live, figure));
  };

  // The still picture's own title and description, in the words of who drew it; without one the caption.
  const nameOf = frame => {
    const still = frame.querySelector("svg");
    const told = [...still?.querySelectorAll(":scope > title, :scope > desc") ?? []].map(part => part.textContent.trim().replace(/\.$/, ""));
    return told.filter(Boolean).join(". ") || frame.querySelector("figcaption")?.textContent.trim().slice(0, 300) || "Chart";
  };

  const say = (frame, text) => {
    const note = document.createElement("p");
    note.className = "ww-note";
    note.textContent = text;
    (frame.querySelector("figcaption") ?? frame).append(note);
  };

  const draw = async (source, frame) => {
    const live = document.createElement("div");
    try {
      const figure = JSON.parse(source.textContent);
      const still = frame.querySelector("svg");
      const plotly = await load();
      live.className = "live";
      live.setAttribute("role", "img");
      live.setAttribute("aria-label", nameOf(frame));
      figure.layout ??= {};
      figure.layout.height ??= Math.round(still?.getBoundingClientRect().height || 420);
      source.before(live);
      still?.classList.add("still");
      await render(plotly, live, figure);
      frame.classList.add("drawn");
      drawn.set(live, figure);
      sized.observe(live);
      if (!touch.matches && figure.layout.dragmode !== false)
        live.title = "Drag to enlarge a part, double-click for the whole";
    } catch (error) {
      live.remove();
      say(frame, `Shown as a still picture: this browser could not draw the chart (${error.message}).`);
    }
  };

  dark.addEventListener("change", async () => {
    const plotly = await load();
    for (const [live, figure] of drawn)
      render(plotly, live, figure);
  });

  // Charts are drawn as a reader comes near them: the first screen must not wait for the last.
  const near = new IntersectionObserver(entries => {
    for (const entry of entries.filter(e => e.isIntersecting)) {
      near.unobserve(entry.target);
      draw(entry.target.querySelector("script.ww-plot"), entry.target);
    }
  }, { rootMargin: "600px" });

  for (const source of document.querySelectorAll("script.ww-plot"))
    near.observe(source.closest("figure") ?? source.parentElement);
})();
