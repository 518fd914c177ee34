namespace Transport.Reporting;

/// <summary>One entry of the legend: a name with the series, the band, or both, that carry it.</summary>
internal sealed record ChartKey(string Name, Series? Series, ShadedBand? Band)
{
    /// <summary>What the legend holds: every name once, in drawing order, without those that stand at line ends.</summary>
    public static IReadOnlyList<ChartKey> Of(Figure figure)
    {
        if (figure.Key == KeyPlacement.None)
        {
            return [];
        }

        var atEnds = figure.Panels.SelectMany(p => ChartLabels.NamedAtEnd(figure, p)).Select(s => s.Name).ToHashSet();
        var series = figure.Panels.SelectMany(p => p.Series).ToArray();
        var bands = figure.Panels.SelectMany(p => p.Bands).ToArray();
        return
        [
            .. series.Select(s => s.Name).Concat(bands.Select(b => b.Name))
                .Distinct()
                .Where(name => !atEnds.Contains(name))
                .Select(name => new ChartKey(name, series.FirstOrDefault(s => s.Name == name), bands.FirstOrDefault(b => b.Name == name))),
        ];
    }
}
