/**
 * What runs in the reader's page, as text: unpacks plotly.js and draws the figures that wait for it, and from
 * then on each new one as it comes. Plain script for any browser of the last years; it is sent once a page.
 *
 * The figures wait in the array window.journalboxFigures. Once the library is there the array's push draws at
 * once. A figure finds its place by name; some viewers run an output's script before they show the output, so
 * it looks again for up to 4 s. A plot is drawn when it first has a width, and drawn again when that changes,
 * for panels are dragged and folded parts opened. Another plotly.js in the page is left as it was. plotly's
 * button that would send the figure away is off: nothing leaves the page.
 */
export const pageScript = `
  if (window.journalboxPlotly) return;
  window.journalboxPlotly = true;
  var plotly;
  var config = {
    displaylogo: false,
    showSendToCloud: false,
    modeBarButtons: [["zoom2d", "pan2d", "resetScale2d", "toImage"]]
  };
  var waiting = (window.journalboxFigures = window.journalboxFigures || []);

  function draw(figure, tries) {
    var places = document.querySelectorAll('[data-journalbox-figure="' + figure.name + '"]:not([data-live])');
    if (places.length === 0 && tries > 0) setTimeout(function () { draw(figure, tries - 1); }, 200);
    places.forEach(function (place) { drawIn(place, figure); });
  }

  function drawIn(place, figure) {
    place.setAttribute("data-live", "");
    var picture = place.querySelector("img");
    var plot = document.createElement("div");
    plot.className = "jb-live";
    plot.style.maxWidth = figure.layout.width + "px";
    plot.style.height = figure.layout.height + "px";
    var layout = Object.assign({}, figure.layout, { autosize: true });
    delete layout.width;
    var drawn = false;
    function fit() {
      if (plot.offsetWidth === 0) return;
      if (drawn) return plotly.Plots.resize(plot);
      drawn = true;
      plotly.newPlot(plot, figure.data, layout, config).catch(function () {
        plot.remove();
        picture.style.display = "";
      });
    }
    picture.style.display = "none";
    place.appendChild(plot);
    new ResizeObserver(fit).observe(plot);
  }

  var bytes = Uint8Array.from(atob(packed), function (character) { return character.charCodeAt(0); });
  new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text().then(function (source) {
    var script = document.createElement("script");
    script.textContent = source;
    var others = window.Plotly;
    document.head.appendChild(script);
    plotly = window.Plotly;
    if (others) window.Plotly = others;
    waiting.push = function (figure) { draw(figure, 20); };
    waiting.splice(0).forEach(waiting.push);
  });
`;
