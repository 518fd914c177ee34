using System.Collections.Immutable;

namespace Transport;

/// <summary>One blood sample of a test, as the laboratory reported it.</summary>
/// <param name="Time">Dwell time since the end of instillation; null where it was not written down.</param>
public sealed record PlasmaSample(TimeSpan? Time)
{
    /// <summary>Creatinine as measured; null where it was not.</summary>
    public Concentration? Creatinine { get; init; }

    /// <summary>Urea; null where not measured.</summary>
    public Concentration? Urea { get; init; }

    /// <summary>Glucose; null where not measured.</summary>
    public Concentration? Glucose { get; init; }

    /// <summary>Sodium; null where not measured.</summary>
    public Concentration? Sodium { get; init; }

    /// <summary>Proteins that were measured.</summary>
    public ImmutableDictionary<Protein, MassConcentration> Proteins { get; init; } = ImmutableDictionary<Protein, MassConcentration>.Empty;

    /// <summary>A protein; null where not measured.</summary>
    public MassConcentration? Of(Protein protein) => Proteins.TryGetValue(protein, out var value) ? value : null;
}
