namespace Transport;

/// <summary>A dissolved substance, as the pores see it.</summary>
/// <param name="Name">Its name in lower case, as it appears in tables and sheets.</param>
/// <param name="MolarMassGramsPerMole">Molar mass, g/mol.</param>
/// <param name="RadiusAngstrom">Solute (Stokes-Einstein) radius, Å.</param>
/// <remarks>
/// Make one for what <see cref="Solutes"/> does not have. Its radius decides how it passes the pores, unless a membrane's
/// <see cref="ThreePoreMembrane.Permeabilities"/> say otherwise.
/// </remarks>
public sealed record Solute(string Name, double MolarMassGramsPerMole, double RadiusAngstrom)
{
    /// <summary>Molar mass, g/mol.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public double MolarMassGramsPerMole
    {
        get;
        init => field = Require.Positive(value, "g/mol", nameof(MolarMassGramsPerMole));
    }
    = Require.Positive(MolarMassGramsPerMole, "g/mol");

    /// <summary>Radius, Å.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public double RadiusAngstrom
    {
        get;
        init => field = Require.Positive(value, "Å");
    }
    = Require.Positive(RadiusAngstrom, "Å");

    /// <summary>
    /// Charge at the pH of plasma, in elementary charges; zero unless said. It has an effect only at <see cref="PlasmaLevel.PlasmaWaterDonnan"/>.
    /// </summary>
    public double ChargeNumber
    {
        get;
        init => field = Require.Finite(value, "");
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
