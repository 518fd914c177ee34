namespace Transport;

/// <summary>The solutes that the model knows.</summary>
/// <remarks>
/// Radii are those of the three-pore literature (reference-data/three-pore-textbook). Those of urea, creatinine, sodium,
/// β2-microglobulin and IgG come from memory of it; albumin's was read. Molar masses are physics.
/// </remarks>
public static class Solutes
{
    /// <summary>Urea. Radius 2.6 Å by the convention of the three-pore papers, not its true Stokes-Einstein radius of 1.8 Å.</summary>
    public static Solute Urea { get; } = new("urea", 60.06, 2.6);

    /// <summary>Creatinine, the index solute of small-solute transfer.</summary>
    public static Solute Creatinine { get; } = new("creatinine", 113.12, 3.0);

    /// <summary>Glucose, anhydrous.</summary>
    public static Solute Glucose { get; } = new("glucose", 180.16, 3.7);

    /// <summary>Sodium.</summary>
    public static Solute Sodium { get; } = new("sodium", 22.990, 2.3);

    /// <summary>
    /// The anion that goes with sodium. In the plain model it has sodium's concentrations, reflection and permeability, so
    /// its course is sodium's and the sodium gradient counts twice osmotically.
    /// </summary>
    public static Solute SodiumAnion { get; } = new("anion", 35.453, 2.3);

    /// <summary>β2-microglobulin.</summary>
    public static Solute Beta2Microglobulin { get; } = new("beta2-microglobulin", 11_800, 16.2);

    /// <summary>Albumin.</summary>
    public static Solute Albumin { get; } = new("albumin", 66_500, 35.5);

    /// <summary>Immunoglobulin G.</summary>
    public static Solute ImmunoglobulinG { get; } = new("immunoglobulin G", 150_000, 54.0);
}
