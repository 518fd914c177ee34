namespace Transport;

/// <summary>The 4-h D/P creatinine as a class, with how sure the class is.</summary>
/// <remarks>A class alone is no reason for a regimen: the continuous value and the class probabilities belong beside it.</remarks>
public sealed record TransportClassification
{
    /// <summary>D/P creatinine that was classed, unrounded.</summary>
    public required double Value { get; init; }

    /// <summary>Its class. If creatinine and glucose disagree, creatinine decides.</summary>
    public required TransportCategory Category { get; init; }

    /// <summary>The borders used.</summary>
    public required CategoryCuts Cuts { get; init; }

    /// <summary>The series that <see cref="ZScore"/> and <see cref="Percentile"/> refer to.</summary>
    public required ReferencePopulation Population { get; init; }

    /// <summary>Distance from the population's mean, in its standard deviations.</summary>
    public required double ZScore { get; init; }

    /// <summary>Percentage of the population below the value, 0 to 100.</summary>
    public required double Percentile { get; init; }

    /// <summary>Standard deviation of the value within one person that the probabilities assume.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>How probable each class is.</summary>
    public required CategoryProbabilities Probabilities { get; init; }

    /// <summary>Whether a border lies within one <see cref="StandardDeviation"/>.</summary>
    public required bool IsBorderline { get; init; }

    /// <summary>Class of D/D0 glucose, as a cross-check; null unless the fluid was 2.27 % and D0 was measured.</summary>
    public TransportCategory? GlucoseCategory { get; init; }

    /// <summary>
    /// Why the creatinine may be another sample's or misread, in a clause: the dialysate holds more than plasma (<see cref="MembraneThresholds.DialysateToPlasmaHigh"/>), or creatinine is ahead
    /// of urea, which crosses faster. Null where nothing speaks for it. A class in doubt comes after the doubt, without percentile and probability, and no finding is made of it.
    /// </summary>
    public string? CreatinineInDoubt { get; init; }

    /// <summary>Why the class is not comparable with the published ones, one sentence each; empty where it is.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The same but for the doubt about creatinine, which stands first and is told with its own words.</summary>
    public IEnumerable<string> CautionsBesideDoubt => Cautions.Skip(CreatinineInDoubt is null ? 0 : 1);

    /// <summary>Whether the test was done as the classes ask for.</summary>
    public bool IsComparable => Cautions.Count == 0;

    /// <summary>The class of a D/P creatinine.</summary>
    /// <param name="dialysateToPlasmaCreatinine">4-h D/P creatinine, corrected, unrounded.</param>
    /// <param name="cuts">The borders.</param>
    /// <param name="population">The series to compare with.</param>
    /// <param name="standardDeviation">Standard deviation of D/P creatinine within one person, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value cannot be classed, or the standard deviation is not positive.</exception>
    public static TransportClassification Of(
        double dialysateToPlasmaCreatinine, CategoryCuts cuts, ReferencePopulation population, double standardDeviation)
    {
        ArgumentNullException.ThrowIfNull(cuts);
        ArgumentNullException.ThrowIfNull(population);
        return new()
        {
            Value = dialysateToPlasmaCreatinine,
            Category = cuts.Of(dialysateToPlasmaCreatinine),
            Cuts = cuts,
            Population = population,
            ZScore = population.DialysateToPlasmaCreatinine.ZScore(dialysateToPlasmaCreatinine),
            Percentile = population.DialysateToPlasmaCreatinine.Percentile(dialysateToPlasmaCreatinine),
            StandardDeviation = standardDeviation,
            Probabilities = cuts.ProbabilitiesOf(dialysateToPlasmaCreatinine, standardDeviation),
            IsBorderline = cuts.DistanceToBorder(dialysateToPlasmaCreatinine) <= standardDeviation,
        };
    }
}
