using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>One regimen for each class of the 4-h D/P of creatinine.</summary>
public sealed class CategoryStrategy : IDwellStrategy
{
    /// <summary>One regimen for each class.</summary>
    /// <param name="name">What rows and charts call it.</param>
    /// <param name="regimens">The regimen of each class.</param>
    /// <param name="otherwise">For classes that have none.</param>
    /// <exception cref="RegimenException">A regimen cannot be carried out.</exception>
    public CategoryStrategy(string name, IReadOnlyDictionary<TransportCategory, Regimen> regimens, Regimen otherwise)
    {
        ArgumentNullException.ThrowIfNull(otherwise);
        Name = name;
        Regimens = regimens.ToImmutableSortedDictionary(pair => pair.Key, pair => pair.Value.OrThrow());
        Otherwise = otherwise.OrThrow();
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>The regimen of each class.</summary>
    public ImmutableSortedDictionary<TransportCategory, Regimen> Regimens { get; }

    /// <summary>For classes that have none.</summary>
    public Regimen Otherwise { get; }

    /// <inheritdoc/>
    public string Description => string.Join("; ", Regimens.Select(pair => $"{pair.Key}: {pair.Value}")) + $"; otherwise {Otherwise}";

    /// <inheritdoc/>
    public Regimen Choose(TestedPatient patient, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return Regimens.GetValueOrDefault(patient.Category, Otherwise);
    }
}
