using System.Net;

namespace Transport.Reporting;

/// <summary>A figure as a piece of a page: the static picture, which the interactive chart replaces where its program is at hand.</summary>
public static class FigureHtml
{
    /// <summary>Below this width in pixels the interactive chart is crowded; the static picture shrinks as a whole and stays.</summary>
    private const string NarrowestLive = "520";

    private const string Showing =
        ".transport-chart{margin:0 0 1.5em;max-width:60em}.transport-chart figcaption{font:13px/1.45 Arial,Helvetica,sans-serif;" +
        "padding:0 8px;color:var(--figure-ink," + ChartColors.Ink + ")}.transport-chart .live{display:none}" +
        "@media screen{.transport-chart[data-live] .live{display:block}.transport-chart[data-live] .still{display:none}}";

    /// <summary>
    /// Rules for the head of a page that follows the reader's light or dark screen; without them a figure is dark ink on white.
    /// A page with a theme of its own sets the same custom properties, each as #rrggbb.
    /// </summary>
    public static string ScreenStyle { get; } =
        "@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark;" +
        string.Concat(ChartColors.All.Select(color => $"--figure-{color.Name}:{color.Dark};")) + "}}";

    /// <summary>
    /// The figure element: static picture, specification, caption, and a few lines of script that draw every figure of the page
    /// not yet drawn, if <see cref="PlotlyScript"/> stands before it; if not, and on paper or a narrow screen, the static picture stays.
    /// </summary>
    public static string Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var caption = figure.Caption.Length == 0 ? "" : $"<figcaption>{WebUtility.HtmlEncode(figure.Caption)}</figcaption>";
        return $"""
            <figure class="transport-chart"><style>{Showing}</style>
            <div class="still">{SvgRenderer.ToSvg(figure)}</div>
            <div class="live" role="img" aria-label="{WebUtility.HtmlEncode($"{figure.Title}. {figure.AltText}")}"></div>
            {caption}
            <script type="application/json">{PlotlyRenderer.ToSpec(figure)}</script>
            <script>{Drawing}</script>
            </figure>
            """;
    }

    /// <summary>
    /// The script in each figure element: draws what is not yet drawn, in the colors that the page has set. For a page that gets
    /// <see cref="PlotlyScript"/> only after its figures.
    /// </summary>
    public static string Drawing { get; } =
        "(function(){if(!window.Plotly)return;var names={" +
        string.Join(',', ChartColors.All.Select(color => $"'{color.Light}':'{color.Name}'")) +
        "};document.querySelectorAll('.transport-chart:not([data-live])').forEach(function(figure){" +
        "var source=figure.querySelector('script[type=\"application/json\"]');if(!source||figure.clientWidth<" + NarrowestLive + ")return;" +
        "var style=getComputedStyle(figure),spec=JSON.parse(source.textContent.replace(/#[0-9a-f]{6}/g,function(hex){" +
        "return names[hex]&&style.getPropertyValue('--figure-'+names[hex]).trim()||hex}));" +
        "figure.dataset.live='';Plotly.newPlot(figure.querySelector('.live'),spec.data,spec.layout,spec.config)})})();";
}
