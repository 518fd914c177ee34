namespace Transport.Studies;

/// <summary>One virtual patient under four strategies, judged by the membrane that nobody saw.</summary>
/// <remarks>Loss: see <see cref="DwellStrategiesStudy"/>; regret is the loss less that of the regimen that a search with the true membrane finds.</remarks>
public sealed record DwellStrategiesRow
{
    /// <summary>Number of the patient.</summary>
    public required int Patient { get; init; }

    /// <summary>The class of the 4-h D/P of creatinine.</summary>
    public required TransportCategory Category { get; init; }

    /// <summary>Loss of the best for this membrane.</summary>
    public required double BestLoss { get; init; }

    /// <summary>Loss under the usual regimen.</summary>
    public required double UsualLoss { get; init; }

    /// <summary>Loss under the one regimen that does best on average.</summary>
    public required double FixedLoss { get; init; }

    /// <summary>Loss under the regimen that does best on average in the class.</summary>
    public required double CategoryLoss { get; init; }

    /// <summary>Loss under the regimen that a search finds for the fitted membrane.</summary>
    public required double IndividualLoss { get; init; }

    /// <summary>Ultrafiltration of the usual regimen, mL.</summary>
    public required double UsualUltrafiltration { get; init; }

    /// <summary>Ultrafiltration of the fixed regimen, mL.</summary>
    public required double FixedUltrafiltration { get; init; }

    /// <summary>Ultrafiltration of the class's regimen, mL.</summary>
    public required double CategoryUltrafiltration { get; init; }

    /// <summary>Ultrafiltration of the individual regimen, mL.</summary>
    public required double IndividualUltrafiltration { get; init; }

    /// <summary>Glucose absorbed with the usual regimen, g.</summary>
    public required double UsualGlucose { get; init; }

    /// <summary>Glucose absorbed with the fixed regimen, g.</summary>
    public required double FixedGlucose { get; init; }

    /// <summary>Glucose absorbed with the class's regimen, g.</summary>
    public required double CategoryGlucose { get; init; }

    /// <summary>Glucose absorbed with the individual regimen, g.</summary>
    public required double IndividualGlucose { get; init; }
}
