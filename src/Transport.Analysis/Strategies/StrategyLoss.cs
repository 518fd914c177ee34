using System.Globalization;

namespace Transport.Analysis;

/// <summary>One number for how much a regimen costs a patient, in g of absorbed glucose, so that strategies can be told apart. Its weights are choices; it says nothing about a patient.</summary>
public sealed record StrategyLoss
{
    /// <summary>A loss around a fluid range.</summary>
    public StrategyLoss(FluidTarget fluid)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        Fluid = fluid;
    }

    /// <summary>The range of 24-h ultrafiltration.</summary>
    public FluidTarget Fluid { get; init; }

    /// <summary>For each mL outside the range, to either side.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double GramsPerMilliliterOutside { get; init => field = Require.NotNegative(value, "g/mL", nameof(GramsPerMilliliterOutside)); } = 0.1;

    /// <summary>Weekly Kt/V below which it costs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double LeastUreaDose { get; init => field = Require.NotNegative(value, "", nameof(LeastUreaDose)); } = 1.5;

    /// <summary>For each 1.0 of weekly Kt/V that is missing.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double GramsPerUreaDose { get; init => field = Require.NotNegative(value, "g", nameof(GramsPerUreaDose)); } = 100;

    /// <summary>For each litre infused: litres always cost.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GramsPerLiter { get; init => field = Require.Positive(value, "g/L", nameof(GramsPerLiter)); } = 2;

    /// <summary>For each cycle of the night: disturbance always costs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GramsPerCycle { get; init => field = Require.Positive(value, "g", nameof(GramsPerCycle)); } = 2;

    /// <summary>"glucose in g, 0.1 g per mL of ultrafiltration outside 700 to 1100 mL, …".</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"glucose in g, {GramsPerMilliliterOutside:0.###} g per mL of ultrafiltration outside {Fluid}, {GramsPerUreaDose:0.###} g per 1.0 of weekly Kt/V below {LeastUreaDose:0.##}, {GramsPerLiter:0.###} g a litre, {GramsPerCycle:0.###} g a cycle");

    /// <summary>The loss of a day with these measures, g.</summary>
    internal double Of(ReadOnlySpan<double> figures)
    {
        var fluid = figures[(int)RegimenMeasure.Ultrafiltration];
        var outside = Math.Max(0, Math.Max(Fluid.Floor.Milliliters - fluid, fluid - Fluid.Ceiling.Milliliters));
        var missing = Math.Max(0, LeastUreaDose - figures[(int)RegimenMeasure.UreaDose]);
        return figures[(int)RegimenMeasure.GlucoseAbsorbed]
            + GramsPerMilliliterOutside * outside
            + GramsPerUreaDose * missing
            + GramsPerLiter * figures[(int)RegimenMeasure.FluidUsed]
            + GramsPerCycle * figures[(int)RegimenMeasure.Cycles];
    }
}
