using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What one solution does to one patient, against dwell time.</summary>
public sealed record DwellCurve
{
    /// <summary>The solution.</summary>
    public required DialysisSolution Solution { get; init; }

    /// <summary>Whether the patient's test used this strength. Where it did not, the curve is an extrapolation and holds the model's doubt.</summary>
    public required bool IsTested { get; init; }

    /// <summary>Whether the curve is a population's and not this patient's: icodextrin's, of which no glucose test tells.</summary>
    public required bool IsOfPopulation { get; init; }

    /// <summary>Volume instilled.</summary>
    public required Volume Fill { get; init; }

    /// <summary>Dwell times, minutes, from 0.</summary>
    public required ImmutableArray<double> Minutes { get; init; }

    /// <summary>Net ultrafiltration, mL.</summary>
    public required CurveBand NetUltrafiltration { get; init; }

    /// <summary>Sodium removed, mmol, as the model has it: its band holds the doubt of the parameters alone, and nothing of what the model misses of sodium.</summary>
    public required CurveBand SodiumRemoved { get; init; }

    /// <summary>Glucose absorbed, g.</summary>
    public required CurveBand GlucoseAbsorbed { get; init; }

    /// <summary>Glucose polymer absorbed, g, apart from glucose; null where the solution holds none.</summary>
    public CurveBand? PolymerAbsorbed { get; init; }

    /// <summary>When the median ultrafiltration is within 5 % of its largest: the peak is flat, and one time would say too much.</summary>
    public required (TimeSpan From, TimeSpan To) PeakWindow { get; init; }

    /// <summary>The largest median ultrafiltration.</summary>
    public required Volume PeakUltrafiltration { get; init; }

    /// <summary>When the median ultrafiltration is back at zero; null where that is not reached by the last time.</summary>
    public required TimeSpan? ReturnToZero { get; init; }
}
