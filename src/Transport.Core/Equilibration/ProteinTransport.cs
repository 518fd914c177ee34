using static System.FormattableString;

namespace Transport;

/// <summary>Clearances of proteins in one dwell, what was excreted, and how much the wall holds back with size.</summary>
public sealed record ProteinTransport
{
    /// <summary>Clearance of each protein, mL/min.</summary>
    public required IReadOnlyList<IndexValue> Clearances { get; init; }

    /// <summary>What the drain carried of each protein, g.</summary>
    public required IReadOnlyList<IndexValue> Losses { get; init; }

    /// <summary>Slope of ln clearance against ln diffusion coefficient; null with fewer than three proteins. 1 is free diffusion.</summary>
    public IndexValue? Restriction { get; init; }

    /// <summary>All indices, in the order of a report.</summary>
    public IReadOnlyList<IndexValue> All => [.. Clearances, .. Losses, .. Restriction is { } slope ? new[] { slope } : []];

    /// <summary>Clearance of a protein from its loss in a time and its plasma concentration.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The plasma concentration or the time is not positive.</exception>
    public static Clearance ClearanceOf(Mass loss, MassConcentration plasma, TimeSpan time)
    {
        Require.Positive(plasma.GramsPerLiter, "g/L", nameof(plasma));
        Require.Positive(time.TotalMinutes, "min", nameof(time));
        return Clearance.FromMillilitersPerMinute(1000 * (loss.Kilograms * 1000 / plasma.GramsPerLiter) / time.TotalMinutes);
    }

    /// <summary>Restriction coefficient: the slope of ln clearance against ln free diffusion coefficient, by least squares.</summary>
    /// <param name="proteins">Proteins with a diffusion coefficient and their clearances, three or more, each clearance above zero.</param>
    /// <exception cref="ArgumentException">Fewer than three, one without a diffusion coefficient, or a clearance that is not positive.</exception>
    public static double RestrictionCoefficient(IReadOnlyList<(Protein Protein, Clearance Clearance)> proteins)
    {
        ArgumentNullException.ThrowIfNull(proteins);
        return proteins.Count >= 3 && proteins.All(pair => pair.Protein.DiffusionCoefficient is not null && pair.Clearance > default(Clearance))
            ? Slope([.. proteins.Select(pair => Math.Log(pair.Protein.DiffusionCoefficient!.Value))], [.. proteins.Select(pair => pair.Clearance.MillilitersPerMinute)])
            : throw new ArgumentException("Expected three proteins or more with diffusion coefficients and clearances above zero.", nameof(proteins));
    }

    private static double Slope(double[] logDiffusion, double[] clearances)
    {
        var (x, y) = (logDiffusion.Average(), clearances.Average(Math.Log));
        return logDiffusion.Zip(clearances).Sum(pair => (pair.First - x) * (Math.Log(pair.Second) - y)) / logDiffusion.Sum(one => (one - x) * (one - x));
    }

    internal static ProteinTransport? Of(IndexInputs inputs)
    {
        var test = inputs.Test;
        var last = test.Dialysate.LastOrDefault(sample => !sample.Proteins.IsEmpty);
        if (last is null)
        {
            return null;
        }

        if (test.DrainedVolume is not { Milliliters: > 0 } drained || test.Dwell <= TimeSpan.Zero)
        {
            inputs.Missing("protein clearances", "drained volume not measured");
            return null;
        }

        var (minutes, variation) = (test.Dwell.TotalMinutes, inputs.Options.AssayVariation);
        var clearances = new List<(Protein Protein, IndexValue Index)>();
        var losses = new List<IndexValue>();
        foreach (var protein in Protein.All.Where(protein => last.Of(protein) is not null))
        {
            var dialysate = last.Of(protein)!.Value.GramsPerLiter;
            losses.Add(new($"{protein.Name} in the drain", drained.Liters * dialysate, "g",
                Invariant($"{drained.Milliliters:0} mL × {dialysate:0.###} g/L"), "mass balance",
                Math.Sqrt(IndexInputs.Square(drained.Liters * variation * dialysate) + IndexInputs.Square(inputs.Options.VolumeDeviation.Liters * dialysate))));
            if (test.PlasmaOf(protein) is not { GramsPerLiter: > 0 } plasma)
            {
                inputs.Missing($"clearance of {protein.Name}", $"plasma {protein.Name} not measured");
                continue;
            }

            var (value, deviation) = ErrorPropagation.Of(
                x => 1000 * x[0] * x[1] / x[2] / minutes,
                (drained.Liters, inputs.Options.VolumeDeviation.Liters), (dialysate, variation * dialysate), (plasma.GramsPerLiter, variation * plasma.GramsPerLiter));
            clearances.Add((protein, new($"clearance of {protein.Name}", value, "mL/min",
                Invariant($"{drained.Milliliters:0} mL × {dialysate:0.###} / {plasma.GramsPerLiter:0.###} g/L over {minutes:0} min"), "mass balance", deviation)));
        }

        return new() { Clearances = [.. clearances.Select(pair => pair.Index)], Losses = losses, Restriction = RestrictionOf(clearances, inputs) };
    }

    private static IndexValue? RestrictionOf(List<(Protein Protein, IndexValue Index)> clearances, IndexInputs inputs)
    {
        const string name = "restriction coefficient";
        var sized = clearances.Where(pair => pair.Protein.DiffusionCoefficient is not null && pair.Index.Value > 0).ToList();
        if (sized.Count < 3)
        {
            return inputs.Missing(name, "needs the clearances of three proteins of known diffusion coefficient");
        }

        double[] diffusion = [.. sized.Select(pair => Math.Log(pair.Protein.DiffusionCoefficient!.Value))];
        var (value, deviation) = ErrorPropagation.Of(x => Slope(diffusion, x), [.. sized.Select(pair => (pair.Index.Value, pair.Index.StandardDeviation ?? 0))]);
        return new(name, value, "", $"slope of ln clearance against ln diffusion coefficient over {string.Join(", ", sized.Select(pair => pair.Protein.Name))}",
            "regression; diffusion coefficients from memory", deviation);
    }
}
