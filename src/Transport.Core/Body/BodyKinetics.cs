using System.Collections.Immutable;

namespace Transport;

/// <summary>Which solutes have a body behind the membrane; plasma of all others stays constant.</summary>
public sealed record BodyKinetics
{
    /// <summary>Pools.</summary>
    /// <exception cref="ArgumentException">A solute has two pools.</exception>
    public BodyKinetics(params IEnumerable<SolutePool> pools) => Pools = [.. pools];

    /// <summary>The pools.</summary>
    /// <exception cref="ArgumentException">A solute has two.</exception>
    public ImmutableArray<SolutePool> Pools
    {
        get;
        init => field = value.GroupBy(pool => pool.Solute).FirstOrDefault(group => group.Count() > 1) is { } twice
            ? throw new ArgumentException($"{twice.Key} has two pools.", nameof(value))
            : value;
    }

    /// <summary>Urea and creatinine, each about the patient's plasma as the mean.</summary>
    public static BodyKinetics Default { get; } = new(SolutePool.Urea, SolutePool.Creatinine);

    /// <summary>The same pools with the generation that an outcome has found: the same person on another regimen.</summary>
    /// <exception cref="ArgumentException">The outcome has no level of one of the pools.</exception>
    public BodyKinetics WithGenerationOf(PlasmaRhythm found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return new(Pools.Select(pool => pool with { GenerationPerDay = found.GenerationPerDay(pool.Solute), Measured = null }));
    }

    /// <summary>Equal if the pools are.</summary>
    public bool Equals(BodyKinetics? other) => other is not null && Pools.SequenceEqual(other.Pools);

    /// <inheritdoc/>
    public override int GetHashCode() => Pools.IsEmpty ? 0 : HashCode.Combine(Pools.Length, Pools[0]);
}
