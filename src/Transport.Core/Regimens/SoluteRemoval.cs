namespace Transport;

/// <summary>What the bags say of one solute in 24 h, or in a week.</summary>
/// <param name="Solute">The solute.</param>
/// <param name="Infused">In the fresh bags; null for a protein that was followed relative to plasma.</param>
/// <param name="Drained">In the drains; null for a protein that was followed relative to plasma.</param>
/// <param name="Clearance">Drained less infused over the mean plasma level; null where plasma holds none.</param>
public sealed record SoluteRemoval(Solute Solute, AmountOfSubstance? Infused, AmountOfSubstance? Drained, Clearance? Clearance)
{
    /// <summary>Drained less infused: positive where the body lost it.</summary>
    public AmountOfSubstance? Removed => Drained - Infused;

    /// <summary>The same per period, of several.</summary>
    internal SoluteRemoval Over(int periods) => this with { Infused = Infused * (1.0 / periods), Drained = Drained * (1.0 / periods) };
}
