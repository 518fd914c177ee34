using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>Figures of invented data, in the kinds that reports are made of.</summary>
internal static class ExampleFigures
{
    private static readonly double[] Hours = [.. Enumerable.Range(0, 121).Select(i => i / 12.0)];

    /// <summary>Three strengths with bands, the strongest not tested, one measured value, three marks.</summary>
    public static Figure Ultrafiltration { get; } = new(
        "Net ultrafiltration against dwell",
        "Invented data. Bands hold parameter doubt only.",
        "Three curves rise to a peak between three and five hours and fall.",
        DwellPanel());

    /// <summary>Five rows against a population.</summary>
    public static Figure Strips { get; } = new(
        "Five indices beside a reference population",
        "Invented data.",
        "Sodium dip and free water lie below the population.",
        StripPanel.Of(Rows(), "population, mean ± SD", "observed, 90 % interval"));

    /// <summary>A scatter with one point picked out; its texts hold what markup would misread.</summary>
    public static Figure Regimens { get; } = new(
        "Regimens: ultrafiltration & glucose <24 h>",
        "Invented data.",
        "Ultrafiltration rises with glucose; </script> one regimen is picked out.",
        new Panel(new Axis("glucose absorbed in 24 h", "g"), new Axis("ultrafiltration in 24 h", "mL"))
        {
            Series =
            [
                new Series("other regimens", [45, 70, 100, 140, 175], [640, 780, 910, 1010, 1060])
                {
                    Pattern = LinePattern.None, Marker = MarkerShape.Ring, Tone = Tone.Neutral,
                    Notes = ["a < b", "b & c", "c", "d", "e"],
                },
            ],
            Marks = [Mark.AtPoint(100, 910, "option B") with { Tone = Tone.Attention }, Mark.AtY(750, "750 mL")],
        });

    /// <summary>Two panels in a row, the second with a logarithmic axis.</summary>
    public static Figure TwoPanels { get; } = new(
        "Ultrafiltration and dialysate to plasma ratio",
        "Invented data.",
        "Left ultrafiltration, right the ratio of two solutes.",
        DwellPanel() with { Title = "Ultrafiltration" },
        new Panel(new Axis("dwell", "h"), new Axis("D/P", "") { IsLogarithmic = true })
        {
            Title = "Dialysate to plasma",
            Series = [new Series("urea", Hours[1..], [.. Hours[1..].Select(t => 1 - Math.Exp(-0.6 * t))])],
        });

    public static TheoryData<string> Names { get; } = [nameof(Ultrafiltration), nameof(Strips), nameof(Regimens), nameof(TwoPanels)];

    public static Figure Of(string name) => name switch
    {
        nameof(Ultrafiltration) => Ultrafiltration,
        nameof(Strips) => Strips,
        nameof(Regimens) => Regimens,
        nameof(TwoPanels) => TwoPanels,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such figure."),
    };

    private static Panel DwellPanel()
    {
        var strengths = new[] { (Name: "76 mmol/L", Rise: 420.0, Tone.Light), ("126 mmol/L", 820, Tone.Middle), ("214 mmol/L, not tested", 1480, Tone.Strong) };
        double[] Curve(double rise, double shift) => [.. Hours.Select(t => rise * (1 - Math.Exp(-0.7 * t)) - 65 * t + shift * (1 + t))];
        return new Panel(new Axis("dwell", "h"), new Axis("net ultrafiltration", "mL"))
        {
            Bands = [.. strengths.Select(s => new ShadedBand("90 % band", Hours, Curve(s.Rise, -20), Curve(s.Rise, 20)) { Tone = s.Item3 })],
            Series =
            [
                .. strengths.Select(s => new Series(s.Name, Hours, Curve(s.Rise, 0))
                {
                    Tone = s.Item3, Pattern = s.Item3 == Tone.Strong ? LinePattern.Dash : LinePattern.Solid,
                }),
                new Series("measured", [4], [530]) { Pattern = LinePattern.None, Marker = MarkerShape.Circle, YWhiskers = [new Extent(430, 630)] },
            ],
            Marks = [Mark.OverX(new Extent(2.9, 5.4), "within 5 % of the peak"), Mark.AtX(8, "night")],
        };
    }

    private static StripRow[] Rows() =>
    [
        new("D/P creatinine, 4 h", "", 0.72, new Extent(0.68, 0.76), new Extent(0.55, 0.77), 0.66),
        new("D/D0 glucose, 4 h", "", 0.31, new Extent(0.27, 0.35), new Extent(0.29, 0.47), 0.38),
        new("net ultrafiltration, 4 h", "mL", 412, new Extent(310, 514), new Extent(400, 800), 600) { Decimals = 0 },
        new("sodium dip, 1 h", "mmol/L", 3.1, new Extent(1.9, 4.3), new Extent(6, 11), 8.7) { Decimals = 1 },
        new("free water, 1 h", "mL", 96, new Extent(40, 152), new Extent(140, 320), 225) { Decimals = 0 },
    ];
}
