namespace Transport;

/// <summary>The three kinds of pores: their radii and their shares of the hydraulic conductance.</summary>
/// <remarks>Ultrasmall pores (aquaporin-1) carry water alone. Small pores carry nearly all small solute. Large pores carry protein.</remarks>
public sealed record PoreSystem
{
    /// <summary>Pores.</summary>
    /// <param name="smallRadiusAngstrom">Radius of the small pores, Å.</param>
    /// <param name="largeRadiusAngstrom">Radius of the large pores, Å.</param>
    /// <param name="ultrasmallFraction">Share of the ultrasmall pores in the hydraulic conductance, 0 to 1.</param>
    /// <param name="largeFraction">Share of the large pores in the hydraulic conductance; the small pores have the rest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius is not positive, or the fractions leave no small pores.</exception>
    public PoreSystem(double smallRadiusAngstrom, double largeRadiusAngstrom, double ultrasmallFraction, double largeFraction)
    {
        SmallRadiusAngstrom = Require.Positive(smallRadiusAngstrom, "Å");
        LargeRadiusAngstrom = Require.Positive(largeRadiusAngstrom, "Å");
        UltrasmallFraction = Require.InRange(ultrasmallFraction, 0, 1, "");
        LargeFraction = Require.InRange(largeFraction, 0, 1 - ultrasmallFraction, "");
    }

    /// <summary>Radius of the small pores, Å.</summary>
    public double SmallRadiusAngstrom { get; }

    /// <summary>Radius of the large pores, Å.</summary>
    public double LargeRadiusAngstrom { get; }

    /// <summary>αC, share of the ultrasmall pores in the hydraulic conductance.</summary>
    public double UltrasmallFraction { get; }

    /// <summary>αS, share of the small pores in the hydraulic conductance.</summary>
    public double SmallFraction => 1 - UltrasmallFraction - LargeFraction;

    /// <summary>αL, share of the large pores in the hydraulic conductance.</summary>
    public double LargeFraction { get; }

    /// <summary>The same radii with other shares.</summary>
    /// <param name="ultrasmallFraction">Share of the ultrasmall pores, 0 to 1.</param>
    /// <param name="largeFraction">Share of the large pores; the small ones have the rest.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fractions leave no small pores.</exception>
    public PoreSystem WithFractions(double ultrasmallFraction, double largeFraction) =>
        new(SmallRadiusAngstrom, LargeRadiusAngstrom, ultrasmallFraction, largeFraction);

    /// <summary>
    /// 43 and 250 Å, 2, 90 and 8 %. The fractions were read (Venturoli and Rippe, Am J Physiol Renal 2001;280:F599); the radii are
    /// memory of the later papers of that group (45 Å was read in the older one).
    /// </summary>
    public static PoreSystem Textbook { get; } = new(43, 250, 0.02, 0.08);
}
