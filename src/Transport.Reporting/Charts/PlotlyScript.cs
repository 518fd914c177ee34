using Plotly.NET;

namespace Transport.Reporting;

/// <summary>The plotly.js program that shows the interactive charts. A page carries it once, so that it needs no network.</summary>
public static class PlotlyScript
{
    /// <summary>The source as Plotly.NET ships it, about 3.6 MB, ready to stand in a script element.</summary>
    /// <exception cref="InvalidOperationException">This Plotly.NET carries no such source.</exception>
    public static string Read()
    {
        var assembly = typeof(GenericChart).Assembly;
        var name = assembly.GetManifestResourceNames().SingleOrDefault(n => n.EndsWith(".min.js", StringComparison.Ordinal))
            ?? throw new InvalidOperationException($"{assembly.GetName().Name} {assembly.GetName().Version} carries no plotly.js.");
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
