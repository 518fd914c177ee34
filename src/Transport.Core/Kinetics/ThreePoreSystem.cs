namespace Transport;

/// <summary>The three-pore equations of one dwell, over a lane.</summary>
/// <remarks>
/// <para>Units: mL, min, µmol, mmol/L (= µmol/mL), mmHg. Flow from blood to cavity is positive. Symbols as in the papers: C ultrasmall, S small,
/// L large pores; σ reflection, PS permeability-surface product, w = J(1 − σ) convective clearance, Pe = w/PS.</para>
/// <para>State: V; M of each solute; then ∫J of the three pores; then, while draining, what has been drained of each solute.</para>
/// <para>Fluid: J_k = α_k LpS g [ΔP(V) − σ_k ΔΠ − RT Σ φ σ_k,i (P_i − D_i)]; dV/dt = Σ J_k − L(V) + Q_in − Q_out.
/// Solute: N = w (P − D e^−Pe) / (1 − e^−Pe) = w (P + D)/2 + PS y coth y (P − D) with y = Pe/2; dM/dt = N_S + N_L − L D + Q_in F − Q_out D.</para>
/// <para>A polymer's fractions stand last; φ is their osmotic efficiency, and they lose K D to the tissue as well.</para>
/// </remarks>
internal struct ThreePoreSystem<T> : IDwellSystem<T>
    where T : struct, ILane<T>
{
    private const double RT = PhysicalConstants.OsmoticPressurePerConcentration;

    private readonly ThreePoreMembrane membrane;
    private readonly int solutes;
    private readonly int polymer;

    // Per solute: plasma and fresh-fluid concentration, its way through small and large pores, and RT φ σ of the pore classes.
    private readonly double[] plasma;
    private readonly double[] fresh;
    private readonly PorePassage<T>[] passage_S;
    private readonly PorePassage<T>[] passage_L;
    private readonly double[] osmotic_C;
    private readonly double[] osmotic_S;
    private readonly double[] osmotic_L;

    // α_k LpS, and σ_k ΔΠ of protein.
    private readonly T lp_C;
    private readonly T lp_S;
    private readonly T lp_L;
    private readonly double oncotic_C;
    private readonly double oncotic_S;
    private readonly double oncotic_L;
    private readonly T lymph;
    private readonly double tissueUptake;
    private readonly double[] molarMass;
    private readonly T transientAmplitude;
    private readonly double referenceVolume;
    private readonly double volumePerPressure;
    private readonly double fullContactVolume;

    // Fluid lost into tissue: per mL above the volume at which it begins.
    private readonly double lossPerMilliliter;
    private readonly double lossVolume;

    /// <summary>The equations of a membrane facing a plasma.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What may carry derivatives or differ between lanes.</param>
    /// <param name="panel">The solutes to follow.</param>
    /// <param name="plasma">Plasma of each solute, mmol/L (proteins: relative), before the membrane's plasma level is applied.</param>
    public ThreePoreSystem(ThreePoreMembrane membrane, in FreeParameters<T> free, SolutePanel panel, ReadOnlySpan<double> plasma)
    {
        this.membrane = membrane;
        solutes = panel.Count;
        polymer = panel.PolymerStart;
        tissueUptake = membrane.PolymerTissueUptake.MillilitersPerMinute;
        molarMass = polymer < solutes ? [.. panel.Solutes.Select(solute => solute.MolarMassGramsPerMole)] : [];
        var pores = membrane.Pores;
        var form = membrane.HindranceForm;
        lp_C = pores.UltrasmallFraction * free.UltrafiltrationCoefficient;
        lp_S = pores.SmallFraction * free.UltrafiltrationCoefficient;
        lp_L = pores.LargeFraction * free.UltrafiltrationCoefficient;
        lymph = free.LymphaticRemoval;
        transientAmplitude = free.TransientAmplitude;

        var protein = Solutes.Albumin.RadiusAngstrom;
        var oncotic = membrane.OncoticPressureDifference.MillimetersOfMercury;
        oncotic_C = oncotic;
        oncotic_S = oncotic * Hindrance.ReflectionCoefficient(protein / pores.SmallRadiusAngstrom, form);
        oncotic_L = oncotic * Hindrance.ReflectionCoefficient(protein / pores.LargeRadiusAngstrom, form);
        referenceVolume = membrane.ReferenceVolume.Milliliters;
        volumePerPressure = membrane.VolumePerPressure?.Milliliters ?? double.PositiveInfinity;
        fullContactVolume = referenceVolume * (1400.0 * 1.73 / 2300.0);
        lossPerMilliliter = membrane.TissueConductance.MillilitersPerMinutePerMillimeterOfMercury / volumePerPressure;
        lossVolume = membrane.TissueThreshold.MillimetersOfMercury * volumePerPressure;

        this.plasma = new double[solutes];
        fresh = new double[solutes];
        passage_S = new PorePassage<T>[solutes];
        passage_L = new PorePassage<T>[solutes];
        osmotic_C = new double[solutes];
        osmotic_S = new double[solutes];
        osmotic_L = new double[solutes];

        var ps_S = new T[solutes];
        var ps_L = new T[solutes];

        // Poiseuille: a pore class' share of the area is its share of the flow over its radius squared.
        var area_S = pores.SmallFraction / (pores.SmallRadiusAngstrom * pores.SmallRadiusAngstrom);
        var area_L = pores.LargeFraction / (pores.LargeRadiusAngstrom * pores.LargeRadiusAngstrom);
        var hasPores = area_S + area_L > 0;
        var share_S = hasPores ? area_S / (area_S + area_L) : 0;
        var share_L = hasPores ? 1 - share_S : 0;
        for (var i = 0; i < solutes; i++)
        {
            var radius = panel.Solutes[i].RadiusAngstrom;
            var lambda_S = radius / pores.SmallRadiusAngstrom;
            var lambda_L = radius / pores.LargeRadiusAngstrom;
            var sigma_S = Hindrance.ReflectionCoefficient(lambda_S, form);
            var sigma_L = Hindrance.ReflectionCoefficient(lambda_L, form);
            var free_PS = 60 * PhysicalConstants.FreeDiffusion(radius) * free.DiffusionArea;
            ps_S[i] = share_S * Hindrance.DiffusionFactor(lambda_S, form) * free_PS;
            ps_L[i] = share_L * Hindrance.DiffusionFactor(lambda_L, form) * free_PS;
            var phi = i < polymer ? SolutePanel.OsmoticWeight(i) : membrane.PolymerOsmoticEfficiency;
            osmotic_C[i] = RT * phi;
            osmotic_S[i] = RT * phi * sigma_S;
            osmotic_L[i] = RT * phi * sigma_L;
            this.plasma[i] = AtBloodSide(panel.Solutes[i], plasma[i], membrane.PlasmaLevel);
        }

        ps_S[SolutePanel.Glucose] = free.GlucosePermeabilityScale * ps_S[SolutePanel.Glucose];
        if (membrane.UreaToCreatininePermeability is { } ratio)
        {
            var creatinine = ps_S[SolutePanel.Creatinine] + ps_L[SolutePanel.Creatinine];
            ps_S[SolutePanel.Urea] = T.PositivePart(ratio * creatinine - ps_L[SolutePanel.Urea]);
        }

        var sodium = T.Of(membrane.SodiumPermeability.MillilitersPerMinute);
        ps_S[SolutePanel.Sodium] = T.PositivePart(sodium - ps_L[SolutePanel.Sodium]);
        for (var i = SolutePanel.Sodium + 1; i < solutes; i++)
        {
            if (membrane.Permeabilities.TryGetValue(panel.Solutes[i], out var rule))
            {
                var whole = rule.ToCreatinineRatio is { } multiple
                    ? multiple * (ps_S[SolutePanel.Creatinine] + ps_L[SolutePanel.Creatinine])
                    : T.Of(rule.Given!.Value.MillilitersPerMinute);
                ps_S[i] = T.PositivePart(whole - ps_L[i]);
            }
        }

        for (var i = 0; i < solutes; i++)
        {
            var radius = panel.Solutes[i].RadiusAngstrom;
            passage_S[i] = new(1 - Hindrance.ReflectionCoefficient(radius / pores.SmallRadiusAngstrom, form), ps_S[i]);
            passage_L[i] = new(1 - Hindrance.ReflectionCoefficient(radius / pores.LargeRadiusAngstrom, form), ps_L[i]);
        }
    }

    /// <summary>Flow of fresh fluid into the cavity, mL/min.</summary>
    public double Inflow { readonly get; set; }

    /// <summary>Flow out of the cavity, mL/min.</summary>
    public double Outflow { readonly get; set; }

    /// <summary>Whether the state keeps account of what is drained of each solute.</summary>
    public bool CollectsDrain { readonly get; set; }

    /// <summary>Whether diffusion is faster early in the dwell.</summary>
    public bool HasTransient { readonly get; set; } = true;

    /// <summary>When fresh fluid was instilled, min on the integration's clock: the transient's zero.</summary>
    public double Instilled { readonly get; set; }

    /// <summary>How often a chain of a polymer's mean mass is cut, per minute; longer chains in proportion to their mass. Zero: never.</summary>
    public double PolymerScission { readonly get; set; }

    /// <summary>Composition of the inflow, mmol/L, to be written before a fill.</summary>
    public readonly Span<double> Fresh => fresh;

    /// <summary>Concentrations on the blood side, mmol/L.</summary>
    public readonly ReadOnlySpan<double> Plasma => plasma;

    public readonly int Dimension => 4 + solutes + (CollectsDrain ? solutes : 0);

    /// <summary>Slot of ∫J of the ultrasmall pores; the small and large pores' follow.</summary>
    public readonly int PoreSlot => 1 + solutes;

    /// <summary>Slot of the first drained amount.</summary>
    public readonly int DrainSlot => 4 + solutes;

    public readonly void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        var v = state[0];
        if (!(T.Largest(-1.0 * v) < 0))
        {
            // The equations end with an empty cavity: without rates there, no step can cross it.
            rates.Fill(T.Of(double.NaN));
            return;
        }

        var perVolume = T.Of(1) / v;
        var g = ContactArea(v);
        var (j_C, j_S, j_L) = PoreFlows(state, perVolume, g);
        var diffusion = Transient(minutes) * g;
        var perDiffusion = T.Of(1) / diffusion;
        var outward = T.Of(Outflow) + BulkRemoval(state);
        for (var i = 0; i < solutes; i++)
        {
            var d = state[1 + i] * perVolume;
            var p = T.Of(plasma[i]);
            var flux = passage_S[i].Flux(j_S, diffusion, perDiffusion, p, d) + passage_L[i].Flux(j_L, diffusion, perDiffusion, p, d);
            rates[1 + i] = flux - outward * d + T.Of(Inflow * fresh[i]);
        }

        if (polymer < solutes)
        {
            LosePolymer(state, perVolume, rates);
        }

        rates[0] = j_C + j_S + j_L + T.Of(Inflow) - outward;
        rates[PoreSlot] = j_C;
        rates[PoreSlot + 1] = j_S;
        rates[PoreSlot + 2] = j_L;
        if (CollectsDrain)
        {
            for (var i = 0; i < solutes; i++)
            {
                rates[DrainSlot + i] = Outflow * (state[1 + i] * perVolume);
            }
        }
    }

    public readonly int PathCount => 3;

    public readonly void PathFlows(ReadOnlySpan<T> state, Span<T> flows) => (flows[0], flows[1], flows[2]) = PoreFlows(state);

    public readonly double Passed(int path, int solute) => path switch
    {
        0 => 0,
        1 => passage_S[solute].Passed,
        _ => passage_L[solute].Passed,
    };

    // L + κ max(0, V/C − P0)
    public readonly T BulkRemoval(ReadOnlySpan<T> state) =>
        lossPerMilliliter > 0 ? lymph + lossPerMilliliter * T.PositivePart(state[0] - T.Of(lossVolume)) : lymph;

    public readonly int KinkCount => (membrane.AreaLaw == AreaLaw.TwoThirds ? 1 : 0) + (lossPerMilliliter > 0 ? 1 : 0);

    public readonly T Kink(int index, ReadOnlySpan<T> state) =>
        (1 / (index == 0 && membrane.AreaLaw == AreaLaw.TwoThirds ? fullContactVolume : lossVolume)) * state[0] - T.Of(1);

    public readonly T ContactArea(ReadOnlySpan<T> state) => ContactArea(state[0]);

    // Beyond flux and lymph: chains go with fluid into the tissue, whose water returns to the blood through the small pores, so no volume with them; and
    // scission moves them into the next lighter fraction, so that the mass stays and their number grows.
    private readonly void LosePolymer(ReadOnlySpan<T> state, T perVolume, Span<T> rates)
    {
        for (var i = polymer; i < solutes; i++)
        {
            rates[1 + i] -= tissueUptake * (state[1 + i] * perVolume);
            if (i > polymer && PolymerScission > 0)
            {
                var cut = PolymerScission * molarMass[i] / PolymerDistribution.MeanChain * state[1 + i];
                rates[1 + i] -= cut;
                rates[i] += molarMass[i] / molarMass[i - 1] * cut;
            }
        }
    }

    /// <summary>J of the three pore classes, mL/min.</summary>
    public readonly (T Ultrasmall, T Small, T Large) PoreFlows(ReadOnlySpan<T> state) =>
        PoreFlows(state, T.Of(1) / state[0], ContactArea(state[0]));

    // J_k = g α_k LpS [ΔP(V) − σ_k ΔΠ − RT Σ φ σ_k,i (P_i − D_i)]
    private readonly (T Ultrasmall, T Small, T Large) PoreFlows(ReadOnlySpan<T> state, T perVolume, T g)
    {
        var pressure = HydrostaticPressure(state[0]);
        var drive_C = pressure - T.Of(oncotic_C);
        var drive_S = pressure - T.Of(oncotic_S);
        var drive_L = pressure - T.Of(oncotic_L);
        foreach (var i in SolutePanel.Osmotic)
        {
            var gradient = T.Of(plasma[i]) - state[1 + i] * perVolume;
            drive_C -= osmotic_C[i] * gradient;
            drive_S -= osmotic_S[i] * gradient;
            drive_L -= osmotic_L[i] * gradient;
        }

        for (var i = polymer; i < solutes; i++)
        {
            var gradient = T.Of(plasma[i]) - state[1 + i] * perVolume;
            drive_C -= osmotic_C[i] * gradient;
            drive_S -= osmotic_S[i] * gradient;
            drive_L -= osmotic_L[i] * gradient;
        }

        return (g * lp_C * drive_C, g * lp_S * drive_S, g * lp_L * drive_L);
    }

    public readonly void AbsoluteScale(Span<double> scale)
    {
        scale[0] = 0.01 * referenceVolume;
        for (var i = 0; i < solutes; i++)
        {
            // A solute that is nowhere has no size of its own.
            var amount = 1e-3 * referenceVolume * Math.Max(1e-6, Math.Max(plasma[i], fresh[i]));
            scale[1 + i] = amount;
            if (CollectsDrain)
            {
                scale[DrainSlot + i] = amount;
            }
        }

        scale[PoreSlot] = scale[PoreSlot + 1] = 1e-3 * referenceVolume;
        scale[PoreSlot + 2] = 1e-5 * referenceVolume;
    }

    /// <summary>What a plasma concentration is on the blood side of the membrane. Proteins are followed relative to plasma.</summary>
    internal static double AtBloodSide(Solute solute, double plasma, PlasmaLevel level) => level switch
    {
        PlasmaLevel.PlasmaWater when solute.ChargeNumber == 0 && !Solutes.IsProtein(solute) => plasma / PhysicalConstants.PlasmaWaterFraction,
        PlasmaLevel.PlasmaWaterDonnan when !Solutes.IsProtein(solute) =>
            plasma * Math.Pow(PhysicalConstants.DonnanRatio, solute.ChargeNumber) / PhysicalConstants.PlasmaWaterFraction,
        _ => plasma,
    };

    private readonly T HydrostaticPressure(T v) =>
        T.Of(membrane.HydrostaticPressureDifference.MillimetersOfMercury + referenceVolume / volumePerPressure) - (1 / volumePerPressure) * v;

    private readonly T ContactArea(T v)
    {
        switch (membrane.AreaLaw)
        {
            case AreaLaw.TwoThirds:
                return T.Exp(2.0 / 3.0 * T.Log((1 / Math.Min(referenceVolume, fullContactVolume)) * T.AtMost(v, fullContactVolume)));
            case AreaLaw.Exponential:
                // 0.00077 per mL belongs to 1.73 m²; the reference volume carries the size of the person.
                var perMilliliter = 0.00077 * 2300 / referenceVolume;
                return 1 / (1 - Math.Exp(-perMilliliter * referenceVolume)) * (T.Of(1) - T.Exp(-perMilliliter * v));
            default:
                return T.Of(1);
        }
    }

    // F(t) = 1 + F0 e^(−t/τ)
    private readonly T Transient(double minutes) => HasTransient
        ? T.Of(1) + Math.Exp(-(minutes - Instilled) / membrane.TransientTime.TotalMinutes) * transientAmplitude
        : T.Of(1);
}
