using static System.FormattableString;

namespace Transport;

/// <summary>A laboratory's own glucose factor, from readings of unused fluid, whose true creatinine is zero.</summary>
/// <remarks>
/// Slope through the origin by least squares. An intercept beyond two of its standard deviations means an assay with an offset, for which one
/// factor is not valid. Repeat after any change of analyzer or reagent, and apart for neutral-pH fluids.
/// </remarks>
public sealed record CreatinineCalibration
{
    /// <summary>The factor, mg/dL per mg/dL, as <see cref="CreatinineAssay"/> takes it.</summary>
    public required IndexValue Factor { get; init; }

    /// <summary>Mean of the single ratios, a second published way.</summary>
    public required IndexValue MeanRatio { get; init; }

    /// <summary>Intercept of a straight line not forced through the origin, µmol/L; null with fewer than three readings.</summary>
    public IndexValue? Intercept { get; init; }

    /// <summary>What to read with care.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The assay with this factor; a factor below zero counts as none.</summary>
    public CreatinineAssay Assay => new(CreatinineMethod.Jaffe, Math.Max(0, Factor.Value));

    /// <summary>From readings of unused fluid and its dilutions.</summary>
    /// <param name="readings">Glucose and the creatinine that the assay read in it, two or more; each glucose above zero.</param>
    /// <exception cref="ArgumentException">Fewer than two readings, or one without glucose.</exception>
    public static CreatinineCalibration Of(IReadOnlyList<(Concentration Glucose, Concentration Creatinine)> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count < 2 || readings.Any(reading => reading.Glucose <= default(Concentration)))
        {
            throw new ArgumentException("Expected two readings or more, each with glucose.", nameof(readings));
        }

        const string source = "Perit Dial Int, doi 10.3747/pdi.2009.00213 (read)";
        double[] g = [.. readings.Select(reading => reading.Glucose.GramsPerLiter(Solutes.Glucose))];
        double[] c = [.. readings.Select(reading => reading.Creatinine.GramsPerLiter(Solutes.Creatinine))];
        var (n, gg) = (g.Length, g.Sum(x => x * x));
        var slope = g.Zip(c).Sum(pair => pair.First * pair.Second) / gg;
        var scatter = Math.Sqrt(g.Zip(c).Sum(pair => Math.Pow(pair.Second - slope * pair.First, 2)) / (n - 1));
        double[] ratios = [.. g.Zip(c).Select(pair => pair.Second / pair.First)];
        var mean = ratios.Average();
        var intercept = Line(g, c);
        var findings = new List<Finding>();
        if (intercept is { StandardDeviation: { } deviation } && Math.Abs(intercept.Value) > 2 * deviation)
        {
            findings.Add(new(Severity.Warning, "creatinine-assay-offset",
                "Readings of unused fluid do not run through the origin: the assay has an offset, and one factor does not correct it.")
            {
                Found = Invariant($"intercept {intercept.Value:0.0} ± {deviation:0.0} µmol/L"),
                Expected = "an intercept within two of its standard deviations (choice)",
            });
        }

        return new()
        {
            Factor = new("creatinine glucose factor", slope, "mg/dL per mg/dL", Invariant($"Σ(creatinine × glucose) / Σ(glucose²) over {n} readings"), source, scatter / Math.Sqrt(gg)),
            MeanRatio = new("mean of creatinine over glucose", mean, "mg/dL per mg/dL", Invariant($"mean of {n} ratios"), source,
                Math.Sqrt(ratios.Sum(ratio => Math.Pow(ratio - mean, 2)) / (n - 1) / n)),
            Intercept = intercept,
            Findings = findings,
        };
    }

    // Ordinary straight line; the intercept with its standard error, in µmol/L.
    private static IndexValue? Line(double[] g, double[] c)
    {
        var (n, x, y) = (g.Length, g.Average(), c.Average());
        var spread = g.Sum(one => (one - x) * (one - x));
        if (n < 3 || spread <= 0)
        {
            return null;
        }

        var slope = g.Zip(c).Sum(pair => (pair.First - x) * (pair.Second - y)) / spread;
        var intercept = y - slope * x;
        var scatter = g.Zip(c).Sum(pair => Math.Pow(pair.Second - intercept - slope * pair.First, 2)) / (n - 2);
        double Micromolar(double gramsPerLiter) => Concentration.FromGramsPerLiter(gramsPerLiter, Solutes.Creatinine).MicromolesPerLiter;
        return new("creatinine read without glucose", Micromolar(intercept), "µmol/L", "intercept of a straight line", "least squares",
            Micromolar(Math.Sqrt(scatter * (1.0 / n + x * x / spread))));
    }
}
