namespace Transport;

/// <summary>What the radii of the pores alone decide about the solutes of a panel: the powers of the hindrance formulas, computed once for any number of membranes.</summary>
internal sealed class PoreCoefficients
{
    private readonly PoreSystem pores;
    private readonly HindranceForm form;
    private readonly SolutePanel panel;

    public PoreCoefficients(ThreePoreMembrane membrane, SolutePanel panel)
    {
        pores = membrane.Pores;
        form = membrane.HindranceForm;
        this.panel = panel;

        Small = PoreClass(pores.SmallRadiusAngstrom);
        Large = PoreClass(pores.LargeRadiusAngstrom);
        var protein = Solutes.Albumin.RadiusAngstrom;
        ProteinReflection_S = Hindrance.ReflectionCoefficient(protein / pores.SmallRadiusAngstrom, form);
        ProteinReflection_L = Hindrance.ReflectionCoefficient(protein / pores.LargeRadiusAngstrom, form);
    }

    /// <summary>Small pores: σ of each solute, and its PS in mL/min for each cm of A0/Δx that is theirs.</summary>
    public (double Reflection, double PerDiffusionArea)[] Small { get; }

    /// <summary>Large pores.</summary>
    public (double Reflection, double PerDiffusionArea)[] Large { get; }

    /// <summary>σ of plasma protein in the small pores, by albumin's radius.</summary>
    public double ProteinReflection_S { get; }

    /// <summary>σ of plasma protein in the large pores.</summary>
    public double ProteinReflection_L { get; }

    /// <summary>These coefficients where they are a membrane's; otherwise new ones.</summary>
    public static PoreCoefficients Of(ThreePoreMembrane membrane, SolutePanel panel, PoreCoefficients? known) =>
        known is not null && known.form == membrane.HindranceForm && ReferenceEquals(known.panel, panel) && known.HasRadiiOf(membrane.Pores)
            ? known
            : new(membrane, panel);

    /// <summary>The small pores' share of A0/Δx. Poiseuille: a class' share of the area is its share of the flow over its radius squared.</summary>
    public T SmallShareOfArea<T>(T smallFraction, T largeFraction)
        where T : struct, ILane<T>
    {
        var area_S = 1 / (pores.SmallRadiusAngstrom * pores.SmallRadiusAngstrom) * smallFraction;
        var area = area_S + 1 / (pores.LargeRadiusAngstrom * pores.LargeRadiusAngstrom) * largeFraction;
        return T.WhereAbove(area, 0, area_S / area, T.Of(0));
    }

    private bool HasRadiiOf(PoreSystem other) =>
        other.SmallRadiusAngstrom == pores.SmallRadiusAngstrom && other.LargeRadiusAngstrom == pores.LargeRadiusAngstrom;

    private (double Reflection, double PerDiffusionArea)[] PoreClass(double radius)
    {
        var each = new (double, double)[panel.Count];
        for (var i = 0; i < each.Length; i++)
        {
            var solute = panel.Solutes[i].RadiusAngstrom;
            var lambda = solute / radius;
            each[i] = (
                Hindrance.ReflectionCoefficient(lambda, form),
                Hindrance.DiffusionFactor(lambda, form) * (60 * PhysicalConstants.FreeDiffusion(solute)));
        }

        return each;
    }
}
