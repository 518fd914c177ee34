using System.Collections.Immutable;

namespace Transport;

/// <summary>
/// What no free parameter changes about the solutes of a panel: the powers of the hindrance formulas, permeabilities that are not by radius, the
/// plasma level. Computed once for any number of membranes.
/// </summary>
/// <remarks>It belongs to one thread, as the equations do that use it.</remarks>
internal sealed class PoreCoefficients
{
    private readonly PoreSystem pores;
    private readonly HindranceForm form;
    private readonly SolutePanel panel;
    private PlasmaLevel level;
    private ImmutableDictionary<Solute, SolutePermeability>? rules;

    public PoreCoefficients(ThreePoreMembrane membrane, SolutePanel panel)
    {
        pores = membrane.Pores;
        form = membrane.HindranceForm;
        this.panel = panel;
        Permeabilities = new SolutePermeability?[panel.Count];
        BloodSide = new double[panel.Count];
        Look(membrane);

        // Poiseuille: a pore class' share of the area is its share of the flow over its radius squared.
        var area_S = pores.SmallFraction / (pores.SmallRadiusAngstrom * pores.SmallRadiusAngstrom);
        var area_L = pores.LargeFraction / (pores.LargeRadiusAngstrom * pores.LargeRadiusAngstrom);
        var hasPores = area_S + area_L > 0;
        var share_S = hasPores ? area_S / (area_S + area_L) : 0;
        Small = PoreClass(pores.SmallRadiusAngstrom, share_S);
        Large = PoreClass(pores.LargeRadiusAngstrom, hasPores ? 1 - share_S : 0);
        var protein = Solutes.Albumin.RadiusAngstrom;
        ProteinReflection_S = Hindrance.ReflectionCoefficient(protein / pores.SmallRadiusAngstrom, form);
        ProteinReflection_L = Hindrance.ReflectionCoefficient(protein / pores.LargeRadiusAngstrom, form);
    }

    /// <summary>Small pores: σ of each solute, and its PS in mL/min for each cm of A0/Δx.</summary>
    public (double Reflection, double PerDiffusionArea)[] Small { get; }

    /// <summary>Large pores.</summary>
    public (double Reflection, double PerDiffusionArea)[] Large { get; }

    /// <summary>Permeability over all pores of each solute; null where the radius decides.</summary>
    public SolutePermeability?[] Permeabilities { get; }

    /// <summary>Concentration on the blood side of the membrane over that in plasma, of each solute.</summary>
    public double[] BloodSide { get; }

    /// <summary>σ of plasma protein in the small pores, by albumin's radius.</summary>
    public double ProteinReflection_S { get; }

    /// <summary>σ of plasma protein in the large pores.</summary>
    public double ProteinReflection_L { get; }

    /// <summary>These coefficients where they are a membrane's; otherwise new ones, with the same powers if its pores are the same.</summary>
    public static PoreCoefficients Of(ThreePoreMembrane membrane, SolutePanel panel, PoreCoefficients? known)
    {
        if (known is null || known.form != membrane.HindranceForm || !ReferenceEquals(known.panel, panel) || known.pores != membrane.Pores)
        {
            return new(membrane, panel);
        }

        known.Look(membrane);
        return known;
    }

    /// <summary>What a plasma concentration is on the blood side of the membrane. Proteins are followed relative to plasma.</summary>
    internal static double AtBloodSide(Solute solute, double plasma, PlasmaLevel level) => level switch
    {
        PlasmaLevel.PlasmaWater when solute.ChargeNumber == 0 && !Solutes.IsProtein(solute) => plasma / PhysicalConstants.PlasmaWaterFraction,
        PlasmaLevel.PlasmaWaterDonnan when !Solutes.IsProtein(solute) =>
            plasma * Math.Pow(PhysicalConstants.DonnanRatio, solute.ChargeNumber) / PhysicalConstants.PlasmaWaterFraction,
        _ => plasma,
    };

    // What costs no powers is looked up again, in the same memory, where it may have changed.
    private void Look(ThreePoreMembrane membrane)
    {
        if (level == membrane.PlasmaLevel && ReferenceEquals(rules, membrane.Permeabilities))
        {
            return;
        }

        (level, rules) = (membrane.PlasmaLevel, membrane.Permeabilities);
        for (var i = 0; i < panel.Count; i++)
        {
            Permeabilities[i] = rules.GetValueOrDefault(panel.Solutes[i]);
            BloodSide[i] = AtBloodSide(panel.Solutes[i], 1, level);
        }
    }

    private (double Reflection, double PerDiffusionArea)[] PoreClass(double radius, double share)
    {
        var each = new (double, double)[panel.Count];
        for (var i = 0; i < each.Length; i++)
        {
            var solute = panel.Solutes[i].RadiusAngstrom;
            var lambda = solute / radius;
            each[i] = (
                Hindrance.ReflectionCoefficient(lambda, form),
                share * Hindrance.DiffusionFactor(lambda, form) * (60 * PhysicalConstants.FreeDiffusion(solute)));
        }

        return each;
    }
}
