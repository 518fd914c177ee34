namespace Transport.Analysis;

/// <summary>One regimen for everybody.</summary>
/// <param name="name">What rows and charts call it.</param>
/// <param name="regimen">The regimen.</param>
/// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
public sealed class FixedStrategy(string name, Regimen regimen) : IDwellStrategy
{
    /// <inheritdoc/>
    public string Name { get; } = name;

    /// <summary>The regimen.</summary>
    public Regimen Regimen { get; } = regimen.OrThrow();

    /// <inheritdoc/>
    public string Description => $"for everybody {Regimen}";

    /// <inheritdoc/>
    public Regimen Choose(TestedPatient patient, RunControl control) => Regimen;
}
