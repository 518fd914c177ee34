namespace Transport;

/// <summary>The chains of a polymer between two molar masses, as one solute.</summary>
/// <param name="Solute">Their mean molar mass and the radius that goes with it.</param>
/// <param name="Concentration">In the fresh solution; of chains, not of glucose units.</param>
public sealed record PolymerFraction(Solute Solute, Concentration Concentration)
{
    /// <summary>In the fresh solution, g/L.</summary>
    public double GramsPerLiter => Concentration.GramsPerLiter(Solute);
}
