using static System.FormattableString;

namespace Transport;

/// <summary>One test beside one published series: what can be compared, and why the rest cannot.</summary>
public sealed record PopulationComparison
{
    /// <summary>The series.</summary>
    public required ReferencePopulation Population { get; init; }

    /// <summary>Indices that the series was measured as this test was.</summary>
    public required IReadOnlyList<ComparedIndex> Rows { get; init; }

    /// <summary>Indices of the series that cannot be compared, and why.</summary>
    public required IReadOnlyList<MissingIndex> NotComparable { get; init; }

    /// <summary>Compares a test with a series.</summary>
    /// <remarks>
    /// D/P creatinine may be compared across strengths. D/D0, ultrafiltration and the dip may not; ultrafiltration asks for the same fill within
    /// 5 % and a known overfill besides. High plasma glucose keeps these three from being compared at any strength, a large residual volume D/D0 and
    /// ultrafiltration; a creatinine in doubt (<see cref="TransportClassification.CreatinineInDoubt"/>) has no place among people.
    /// </remarks>
    public static PopulationComparison Of(EquilibrationIndices indices, ReferencePopulation population)
    {
        ArgumentNullException.ThrowIfNull(indices);
        ArgumentNullException.ThrowIfNull(population);
        var rows = new List<ComparedIndex>();
        var not = new List<MissingIndex>();
        var (test, limits) = (indices.Test, indices.Options.Thresholds);
        var isChild = test.Patient.AgeYears < limits.AdultAge.Value;
        var group = isChild == population.IsOfChildren ? null : $"{population.Name} is of {(population.IsOfChildren ? "children" : "adults")}";
        group ??= test.Solution.Agent == OsmoticAgent.Glucose ? null : $"{population.Name} was not tested with {test.Solution.Name}";
        var dwell = indices.IsFourHourSample ? null : "not a 4-h sample";
        var strength = test.IsStrengthInDoubt ? "the strength of the bag is in doubt" : population.IsOfStrength(test.Solution) ? null : $"{population.Name} was not tested with {test.Solution.Name}";
        var gradient = indices.IsPlasmaGlucoseHigh ? Invariant($"plasma glucose {test.PlasmaGlucose!.Value.MillimolesPerLiter:0.0} mmol/L takes away gradient") : null;
        var drain = indices.IsResidualVolumeLarge ? "much fluid was left in the cavity before" : null;
        Add(indices.DialysateToPlasmaCreatinine, population.DialysateToPlasmaCreatinine, group ?? dwell ?? Doubt());
        Add(indices.DialysateToInitialGlucose, population.DialysateToInitialGlucose,
            group ?? dwell ?? strength ?? gradient ?? drain ?? (indices.IsInitialGlucoseEstimated ? "D0 was not measured" : null));
        Add(indices.NetUltrafiltration, population.NetUltrafiltrationMilliliters, group ?? Dwell() ?? strength ?? gradient ?? drain ?? Fill());
        Add(indices.SodiumDip, population.SodiumDipMillimolesPerLiter, group ?? strength ?? gradient);
        return new() { Population = population, Rows = rows, NotComparable = not };

        void Add(IndexValue? index, ReferenceDistribution? reference, string? reason)
        {
            if (index is null || reference is null)
            {
                return;
            }

            if (reason is null)
            {
                rows.Add(new(index, reference));
            }
            else
            {
                not.Add(new(index.Name, reason));
            }
        }

        // Above plasma also without a class, which far above is not given.
        string? Doubt() => indices.Classification is { CreatinineInDoubt: not null } || indices.DialysateToPlasmaCreatinine?.Value > limits.DialysateToPlasmaHigh.Value
            ? "in doubt: look for a mix-up of samples, columns or units first" : null;

        string? Dwell() => Math.Abs(test.Dwell.TotalMinutes - 240) <= limits.FourHourTolerance.Value ? null : "not a dwell of 4 h";

        string? Fill() => population.Fill is not { } fill ? $"{population.Name} does not state its fill"
            : Math.Abs((test.EnteredVolume - fill).Milliliters) > 0.05 * fill.Milliliters ? Invariant($"filled with {test.EnteredVolume.Milliliters:0} mL, the series with {fill.Milliliters:0} mL")
            : test is { FillBasis: FillBasis.Label, Overfill: null } ? "overfill and flush are not known"
            : null;
    }
}
