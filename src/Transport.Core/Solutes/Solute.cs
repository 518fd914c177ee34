namespace Transport;

/// <summary>A dissolved substance, as the pores see it.</summary>
/// <param name="Name">Its name in lower case, as it appears in tables and sheets.</param>
/// <param name="MolarMassGramsPerMole">Molar mass, g/mol.</param>
/// <param name="RadiusAngstrom">Solute (Stokes-Einstein) radius, Å.</param>
public sealed record Solute(string Name, double MolarMassGramsPerMole, double RadiusAngstrom)
{
    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
