using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>A regimen of a file, with its name and the bags that were stated for it.</summary>
/// <param name="Name">Its name; empty where the file has one regimen without a name.</param>
/// <param name="Regimen">The regimen.</param>
public sealed record NamedRegimen(string Name, Regimen Regimen)
{
    /// <summary>The bags that are hung; none: not stated.</summary>
    /// <exception cref="ArgumentException">The list was never made.</exception>
    public ImmutableArray<FluidBag> Bags { get; init => field = Require.Made(value, nameof(Bags)); } = [];

    /// <summary>Equal if name, regimen and bags are.</summary>
    public bool Equals(NamedRegimen? other) =>
        other is not null && Name == other.Name && Regimen.Equals(other.Regimen) && Bags.SequenceEqual(other.Bags);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Regimen);
}
