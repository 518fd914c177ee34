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
    public static Solute Sodium { get; } = new("sodium", 22.990, 2.3) { ChargeNumber = 1 };

    /// <summary>
    /// The anion that goes with sodium. In the plain model it has sodium's concentrations, reflection and permeability, so
    /// its course is sodium's and the sodium gradient counts twice osmotically.
    /// </summary>
    public static Solute SodiumAnion { get; } = new("anion", 35.453, 2.3) { ChargeNumber = -1 };

    /// <summary>β2-microglobulin.</summary>
    public static Solute Beta2Microglobulin { get; } = new("beta2-microglobulin", 11_800, 16.2);

    /// <summary>Albumin.</summary>
    public static Solute Albumin { get; } = new("albumin", 66_500, 35.5);

    /// <summary>Immunoglobulin G.</summary>
    public static Solute ImmunoglobulinG { get; } = new("immunoglobulin G", 150_000, 54.0);

    /// <summary>Potassium. Radius 1.3 Å was read (Sci Rep 2020, s41598-020-75687-1, Table 1); 2.0 to 2.8 Å stand elsewhere (memory).</summary>
    /// <remarks>By its radius it would pass more than twice as fast as remembered: see <see cref="ReferenceMembranes.MinorSolutes"/>.</remarks>
    public static Solute Potassium { get; } = new("potassium", 39.098, 1.3) { ChargeNumber = 1 };

    /// <summary>
    /// Phosphate, as phosphorus: the molar mass is that by which laboratories convert mg/dL. Effective radius 2.8 to 4 Å (memory), here 3.4 Å
    /// (choice). Charge −1.8: four parts HPO4²⁻ to one of H2PO4⁻ at pH 7.4 (computed).
    /// </summary>
    public static Solute Phosphate { get; } = new("phosphate", 30.974, 3.4) { ChargeNumber = -1.8 };

    /// <summary>Bicarbonate. Radius read in the table that potassium's was read in. Its buffering is not modelled.</summary>
    public static Solute Bicarbonate { get; } = new("bicarbonate", 61.017, 2.2) { ChargeNumber = -1 };

    /// <summary>Lactate. Radius about 3.0 Å (memory).</summary>
    public static Solute Lactate { get; } = new("lactate", 89.07, 3.0) { ChargeNumber = -1 };

    /// <summary>Calcium. Radius 3.1 Å, read in that table for "other cations". Plasma has to be stated without what protein binds.</summary>
    public static Solute Calcium { get; } = new("calcium", 40.078, 3.1) { ChargeNumber = 2 };

    /// <summary>Magnesium. Radius as calcium's. Plasma has to be stated without what protein binds.</summary>
    public static Solute Magnesium { get; } = new("magnesium", 24.305, 3.1) { ChargeNumber = 2 };

    /// <summary>Proteins are followed relative to plasma, and no solution has any.</summary>
    internal static bool IsProtein(Solute solute) => solute == Beta2Microglobulin || solute == Albumin || solute == ImmunoglobulinG;
}
