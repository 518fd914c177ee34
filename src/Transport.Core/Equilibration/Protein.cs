namespace Transport;

/// <summary>A plasma protein whose passage into dialysate is measured.</summary>
/// <remarks>Diffusion coefficients are memory of low confidence, in 1e-7 cm²/s in water at 20 °C; only their ratios matter.</remarks>
public sealed record Protein
{
    private Protein(string name, double? diffusionCoefficient) => (Name, DiffusionCoefficient) = (name, diffusionCoefficient);

    /// <summary>What tables call it.</summary>
    public string Name { get; }

    /// <summary>Free diffusion coefficient, 1e-7 cm²/s; null for a mixture.</summary>
    public double? DiffusionCoefficient { get; }

    /// <summary>All protein together.</summary>
    public static Protein Total { get; } = new("total protein", null);

    /// <summary>β2-microglobulin.</summary>
    public static Protein Beta2Microglobulin { get; } = new("beta2-microglobulin", 13.0);

    /// <summary>Albumin.</summary>
    public static Protein Albumin { get; } = new("albumin", 6.1);

    /// <summary>Immunoglobulin G.</summary>
    public static Protein ImmunoglobulinG { get; } = new("immunoglobulin G", 4.0);

    /// <summary>α2-macroglobulin.</summary>
    public static Protein Alpha2Macroglobulin { get; } = new("alpha2-macroglobulin", 2.4);

    /// <summary>All of them, smallest first, the mixture before.</summary>
    public static IReadOnlyList<Protein> All { get; } = [Total, Beta2Microglobulin, Albumin, ImmunoglobulinG, Alpha2Macroglobulin];

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
