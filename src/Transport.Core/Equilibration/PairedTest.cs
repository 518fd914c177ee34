using static System.FormattableString;

namespace Transport;

/// <summary>Two first hours of one person with two glucose strengths, and the osmotic conductance to glucose between them.</summary>
/// <remarks>
/// Absorption, pressure and plasma glucose cancel in the difference: conductance = ΔUF / (RT ΔG t). Either hour may be a 1-h test or a longer one
/// with a temporary drain. The form of the expression is that of La Milia et al., Kidney Int 2007;72:643-650; its own constant was not seen
/// (memory), so that only values computed in one way may be compared. Medians read: 3.0 with normal ultrafiltration, 2.1 with failure.
/// </remarks>
public sealed record PairedTest
{
    internal const string Name = "osmotic conductance to glucose";
    internal const string NeedsTwo = "no single test gives it: it needs two hours with two strengths, or is that of a fitted membrane";
    private const double LongestApartDays = 14;

    /// <summary>The hour with less glucose.</summary>
    public required EquilibrationIndices Weak { get; init; }

    /// <summary>The hour with more glucose.</summary>
    public required EquilibrationIndices Strong { get; init; }

    /// <summary>The conductance, µL/min/mmHg; null where it cannot be given.</summary>
    public IndexValue? OsmoticConductance { get; init; }

    /// <summary>What could not be computed, and why.</summary>
    public required IReadOnlyList<MissingIndex> NotAvailable { get; init; }

    /// <summary>What to read with care.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Pairs two tests, in either order.</summary>
    public static PairedTest Of(EquilibrationTest first, EquilibrationTest second) => Of(first, second, PairedTestOptions.Default);

    /// <summary>Pairs two tests, in either order.</summary>
    public static PairedTest Of(EquilibrationTest first, EquilibrationTest second, PairedTestOptions options)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(options);
        var (weak, strong) = first.Solution.Glucose <= second.Solution.Glucose ? (first, second) : (second, first);
        var findings = Concerns(weak, strong).ToList();
        var missing = new List<MissingIndex>();
        var (one, other) = (FirstHour.Of(weak, options), FirstHour.Of(strong, options));
        var reason = findings.Find(finding => finding.Severity == Severity.Error)?.Message
            ?? (weak.Solution.Agent != OsmoticAgent.Glucose || strong.Solution.Agent != OsmoticAgent.Glucose ? "needs two glucose solutions"
                : weak.IsStrengthInDoubt || strong.IsStrengthInDoubt ? "the strength of a bag is in doubt"
                : strong.Solution.Glucose > weak.Solution.Glucose * 1.2 ? null : "needs two strengths that differ")
            ?? one.Reason ?? other.Reason
            ?? (MeanGlucose(other, options) > MeanGlucose(one, options) ? null : "dialysate glucose of the stronger hour is not above that of the weaker: swapped samples or bags?");
        if (reason is not null)
        {
            missing.Add(new(Name, reason));
        }

        return new()
        {
            Weak = EquilibrationIndices.Of(weak, options.Indices),
            Strong = EquilibrationIndices.Of(strong, options.Indices),
            OsmoticConductance = reason is null ? Conductance(one, other, options) : null,
            NotAvailable = missing,
            Findings = findings,
        };
    }

    private static IndexValue Conductance(FirstHour weak, FirstHour strong, PairedTestOptions options)
    {
        var RT = options.PressurePerMillimolePerLiter.MillimetersOfMercury;
        var minutes = (weak.Minutes + strong.Minutes) / 2;
        double Mean(double d0, double d60) => MeanOf(d0, d60, options);

        // In: the two ultrafiltrations (mL), then D0 and D60 of the weak and of the strong hour.
        var (value, deviation) = ErrorPropagation.Of(
            x => 1000 * (x[1] - x[0]) / (RT * (Mean(x[4], x[5]) - Mean(x[2], x[3])) * minutes),
            weak.Ultrafiltration, strong.Ultrafiltration, weak.Initial, weak.Final, strong.Initial, strong.Final);
        return new(Name, value, "µL/min/mmHg",
            Invariant($"({strong.Ultrafiltration.Value:0} − {weak.Ultrafiltration.Value:0} mL) / ({RT:0.##} mmHg per mmol/L × ({Mean(strong.Initial.Value, strong.Final.Value):0.0} − {Mean(weak.Initial.Value, weak.Final.Value):0.0} mmol/L, {options.GlucoseMean.ToString().ToLowerInvariant()} means) × {minutes:0} min)"),
            "difference of two first hours (computed; form of La Milia et al. 2007, constant from memory)", deviation);
    }

    private static double MeanGlucose(FirstHour hour, PairedTestOptions options) => MeanOf(hour.Initial.Value, hour.Final.Value, options);

    private static double MeanOf(double d0, double d60, PairedTestOptions options) => options.GlucoseMean switch
    {
        GlucoseMean.Initial => d0,
        GlucoseMean.Logarithmic when Math.Abs(d0 / d60 - 1) > 1e-9 => (d0 - d60) / Math.Log(d0 / d60),
        _ => (d0 + d60) / 2,
    };

    private static IEnumerable<Finding> Concerns(EquilibrationTest weak, EquilibrationTest strong)
    {
        if (weak.Patient.Code != strong.Patient.Code)
        {
            yield return new(Severity.Error, "pair-of-different-patients", "The two tests carry different patient codes, so nothing is computed between them.");
        }

        if (weak.Date is { } a && strong.Date is { } b && Math.Abs(a.DayNumber - b.DayNumber) is > (int)LongestApartDays and var apart)
        {
            yield return new(Severity.Warning, "pair-dates-apart", Invariant($"The two tests are {apart} days apart; the membrane may have changed between them."))
            {
                Expected = Invariant($"at most {LongestApartDays:0} days (choice)"),
            };
        }

        if (Math.Abs((weak.EnteredVolume - strong.EnteredVolume).Milliliters) > 0.05 * strong.EnteredVolume.Milliliters)
        {
            yield return new(Severity.Warning, "pair-fills-differ", "The two fills differ by more than 5 %, so area and pressure were not the same in both.")
            {
                Found = Invariant($"{weak.EnteredVolume.Milliliters:0} and {strong.EnteredVolume.Milliliters:0} mL"),
                Expected = "fills within 5 % (choice)",
            };
        }
    }

    /// <summary>What one hour contributes, with standard deviations.</summary>
    private sealed record FirstHour(
        (double Value, double Deviation) Ultrafiltration, (double Value, double Deviation) Initial, (double Value, double Deviation) Final, double Minutes, string? Reason)
    {
        public static FirstHour Of(EquilibrationTest test, PairedTestOptions options)
        {
            var inputs = new IndexInputs(test, options.Indices);
            var drained = test.DrainedAt(IndexInputs.OneHour, inputs.EarlyTolerance);
            var (start, hour) = (inputs.Initial(sample => sample.Glucose), inputs.AtOneHour(sample => sample.Glucose));
            var reason = drained is null ? $"volume at 60 min of {test.Solution.Name} not measured"
                : start?.Glucose is not { MillimolesPerLiter: > 0 } || hour?.Glucose is not { MillimolesPerLiter: > 0 } ? $"dialysate glucose at 0 and 60 min of {test.Solution.Name} not measured"
                : null;
            return reason is not null
                ? new(default, default, default, 0, reason)
                : new(
                    ((drained!.Value - test.EnteredVolume).Milliliters, double.Hypot(options.Indices.VolumeDeviation.Milliliters, inputs.EnteredDeviation)),
                    (start!.Glucose!.Value.MillimolesPerLiter, inputs.AssayDeviation(start.Glucose.Value)),
                    (hour!.Glucose!.Value.MillimolesPerLiter, inputs.AssayDeviation(hour.Glucose.Value)),
                    (hour.Time - start.Time).TotalMinutes, null);
        }
    }
}
