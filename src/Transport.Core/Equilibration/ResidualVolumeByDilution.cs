using static System.FormattableString;

namespace Transport;

/// <summary>The volume left before instillation, from how far fresh fluid diluted what was drained before: several solutes, weighted by precision.</summary>
/// <remarks>
/// V_res = V_in C_after / (C_before − C_after) for solutes that fresh fluid has none of. Transfer during instillation raises urea and creatinine,
/// protein least, so that the mean is rather too high than too low.
/// </remarks>
public sealed record ResidualVolumeByDilution
{
    private static readonly (string Name, Func<EquilibrationTest, DialysateSample, double?> Read)[] Solutes =
    [
        ("creatinine", (test, sample) => test.CorrectedDialysateCreatinine(sample)?.MillimolesPerLiter),
        ("urea", (_, sample) => sample.Urea?.MillimolesPerLiter),
        ("potassium", (_, sample) => sample.Potassium?.MillimolesPerLiter),
        .. new[] { Protein.Total, Protein.Albumin }.Select(protein =>
            (protein.Name, (Func<EquilibrationTest, DialysateSample, double?>)((_, sample) => sample.Of(protein)?.GramsPerLiter))),
    ];

    /// <summary>The mean, weighted by precision.</summary>
    public required Volume Volume { get; init; }

    /// <summary>
    /// Standard deviation of the mean: from the assays, and wider by the root of <see cref="DisagreementRatio"/> where the solutes differ by more than these explain. With
    /// <see cref="Volume"/> what a fit needs of a measured residual.
    /// </summary>
    public Volume Deviation => Volume.FromMilliliters(Index.StandardDeviation!.Value);

    /// <summary>The mean as an index, mL.</summary>
    public required IndexValue Index { get; init; }

    /// <summary>One for each solute, mL.</summary>
    public required IReadOnlyList<IndexValue> EachSolute { get; init; }

    /// <summary>
    /// Sum over the solutes of ((single − mean) / its standard deviation)² over their number less one: about 1 where they agree; 0 for one solute.
    /// </summary>
    public required double DisagreementRatio { get; init; }

    /// <summary>From the drain before a test and its sample at 0 min; null where no solute was measured in both and diluted.</summary>
    public static ResidualVolumeByDilution? Of(EquilibrationTest test, EquilibrationIndicesOptions options)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(options);
        if (test.PrecedingDrain is not { } before
            || test.SampleAt(TimeSpan.Zero, TimeSpan.FromMinutes(options.Thresholds.EarlyTolerance.Value)) is not { } after
            || test.EnteredVolume.Milliliters <= 0)
        {
            return null;
        }

        var single = Solutes.Select(solute => OfSolute(solute.Name, solute.Read(test, before), solute.Read(test, after))).OfType<IndexValue>().ToList();
        if (single.Count == 0)
        {
            return null;
        }

        double Weight(IndexValue one) => 1 / (one.StandardDeviation!.Value * one.StandardDeviation.Value);
        var weights = single.Sum(Weight);
        var mean = single.Sum(one => one.Value * Weight(one)) / weights;
        var disagreement = single.Count == 1 ? 0 : single.Sum(one => Math.Pow((one.Value - mean) / one.StandardDeviation!.Value, 2)) / (single.Count - 1);
        return new()
        {
            Volume = Volume.FromMilliliters(mean),
            Index = new("residual volume", mean, "mL", Invariant($"dilution of {string.Join(", ", single.Select(one => one.Name))}, weighted by precision"),
                "mass balance (computed)", Math.Sqrt(Math.Max(1, disagreement) / weights)),
            EachSolute = single,
            DisagreementRatio = disagreement,
        };

        IndexValue? OfSolute(string name, double? drained, double? mixed)
        {
            if (drained is not { } b || mixed is not { } a || a <= 0 || a >= b || options.AssayVariation <= 0)
            {
                return null;
            }

            var (value, deviation) = ErrorPropagation.Of(
                x => x[2] * x[1] / (x[0] - x[1]),
                (b, options.AssayVariation * b), (a, options.AssayVariation * a), (test.EnteredVolume.Milliliters, options.VolumeDeviation.Milliliters));
            return deviation is > 0
                ? new(name, value, "mL", Invariant($"{test.EnteredVolume.Milliliters:0} mL × {a:0.###} / ({b:0.###} − {a:0.###})"), "mass balance (computed)", deviation)
                : null;
        }
    }
}
