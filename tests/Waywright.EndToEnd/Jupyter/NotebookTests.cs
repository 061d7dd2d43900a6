using Waywright.EndToEnd.Pages;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>A builder at a real Jupyter Notebook: opens a shipped notebook, runs it, sees its charts, presses the stop button.</summary>
public sealed class NotebookTests(InstalledKernel kernel)
{
    [Fact]
    public async Task A_notebook_is_run_its_charts_are_drawn_and_the_stop_button_stops_a_Monte_Carlo()
    {
        Needed.OfClient();
        Needed.OfNotebook();
        Required.OfChromium();
        await using var server = await NotebookServer.StartAsync(kernel);
        await using var browser = await Browser.StartAsync();
        await using var page = await browser.OpenAsync(server.AddressOf("tension-belts.ipynb"), new Reader());
        await page.WaitAsync("() => window.Jupyter?.notebook?.kernel?.info_reply?.implementation === 'waywright'");

        await page.AskAsync<bool>("() => { document.querySelector('#run_all_cells a, #run_all_cells').click(); return true; }");
        await page.WaitAsync("""
            () => {
              const code = Jupyter.notebook.get_cells().filter(cell => cell.cell_type === "code");
              return code.length > 3 && code.every(cell => cell.input_prompt_number > 0);
            }
            """);
        Assert.Equal(0, await page.AskAsync<int>("() => document.querySelectorAll('.output_error, .output_stderr').length"));
        // Every figure, folds opened, with a chart that has a size on the page.
        await page.WaitAsync("""
            () => {
              document.querySelectorAll("details").forEach(fold => fold.open = true);
              const charts = [...document.querySelectorAll("figure.ww-figure")];
              return charts.length >= 4 && charts.every(chart => {
                const box = chart.querySelector(".ww-live svg.main-svg")?.getBoundingClientRect();
                return box && box.width > 100 && box.height > 100;
              });
            }
            """);

        await page.AskAsync<bool>("""
            code => {
              const cell = Jupyter.notebook.insert_cell_at_bottom("code");
              cell.set_text(code);
              Jupyter.notebook.select(Jupyter.notebook.ncells() - 1);
              document.querySelector("button[data-jupyter-action='jupyter-notebook:run-cell-and-select-next']").click();
              return true;
            }
            """, """
            Console.WriteLine("begun");
            for (var seed = 1ul; ; seed++)
                MonteCarlo.Run(x => Math.Sin(x[0]), [("angle", Distribution.Gaussian(0, 1))], trials: 10_000_000, seed, cancel: Notebook.Stop);
            """);
        await page.WaitAsync("() => [...document.querySelectorAll('.output_stdout')].some(text => text.textContent.includes('begun'))");
        await page.AskAsync<bool>("() => { document.querySelector(\"button[data-jupyter-action='jupyter-notebook:interrupt-kernel']\").click(); return true; }");
        await page.WaitAsync("() => [...document.querySelectorAll('.output_error')].some(text => text.textContent.includes('The cell was stopped; variables keep what they held'))");
        await page.WaitAsync("() => !Jupyter.notebook.kernel_busy");
        Assert.All(page.Requests, address => Assert.Matches("^(http|ws)://127\\.0\\.0\\.1:|^(data|blob|about):", address));
    }
}
