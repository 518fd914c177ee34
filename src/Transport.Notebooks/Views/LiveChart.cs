namespace Transport.Notebooks;

/// <summary>
/// A chart on the page of a notebook server: the static picture, and a few lines of script that fetch the chart program once for each page
/// from beside the kernel. Where there is no such server or no script may run, the picture stays.
/// </summary>
internal static class LiveChart
{
    /// <summary>The chart program's file among the resources of the kernel.</summary>
    public const string ScriptFile = "charts.js";

    private const string BeforeAddress =
        "(function(){if(window.Plotly||window.transportCharts)return;" +
        "var lab=document.getElementById('jupyter-config-data')," +
        "base=document.body.dataset.baseUrl||lab&&JSON.parse(lab.textContent).baseUrl;if(!base)return;" +
        "var script=window.transportCharts=document.createElement('script');script.src=base+'kernelspecs/";

    /// <summary>The chart program, kept from a page's module loader, which would otherwise take it for its own.</summary>
    public static string Script() => $"(function(){{var define,module,exports;\n{PlotlyScript.Read()}\n}}).call(window);\n";

    public static string Of(Figure figure) =>
        $"{FigureHtml.Of(figure)}\n<script>{BeforeAddress}{KernelSpec.Name}/{ScriptFile}';" +
        $"script.onload=function(){{{FigureHtml.Drawing}}};script.onerror=function(){{window.transportCharts=null}};" +
        "document.head.appendChild(script)})()</script>";
}
