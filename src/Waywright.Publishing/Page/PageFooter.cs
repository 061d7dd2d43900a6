namespace Waywright.Publishing;

/// <summary>Licences: of the build, of Waywright, and of the script that the page carries.</summary>
internal static class PageFooter
{
    private const string Mit = """
        Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

        The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

        THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
        """;

    public static string ToHtml(PageContent content, bool drawn)
    {
        var licence = content.Licence.Length == 0 ? "No licence is stated for this build." : $"This build is published under {Html.Encode(content.Licence)}.";
        return $"<footer id=\"licences\">\n<p>{licence} Made with Waywright {Html.Encode(Software.List[0].Version.Split('+')[0])} (MIT licence).</p>\n{(drawn ? Script() : "")}</footer>\n";
    }

    private static string Script()
        => $"""
            <p>The charts are drawn by plotly.js {PlotlyScript.Version}, which is part of this file: copyright 2012-2024, Plotly, Inc., MIT licence.</p>
            <details class="ww-details"><summary>Licence of plotly.js and of its parts</summary>
            {Html.Pre("Licence text", "licence", Mit + "\n\n" + PlotlyScript.Notices)}</details>

            """;
}
