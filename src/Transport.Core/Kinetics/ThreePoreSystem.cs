namespace Transport;

/// <summary>The three-pore equations of one dwell, over a lane.</summary>
/// <remarks>
/// <para>Units: mL, min, µmol, mmol/L (= µmol/mL), mmHg. Flow from blood to cavity is positive. Symbols as in the papers: C ultrasmall, S small,
/// L large pores; σ reflection, PS permeability-surface product, w = J(1 − σ) convective clearance, Pe = w/PS.</para>
/// <para>State: V; M of each solute; then ∫J of the three pores; then, while draining, what has been drained of each solute.</para>
/// <para>Fluid: J_k = α_k LpS g [ΔP(V) − σ_k ΔΠ − RT Σ φ σ_k,i (P_i − D_i)]; dV/dt = Σ J_k − L + Q_in − Q_out.
/// Solute: N = w (P − D e^−Pe) / (1 − e^−Pe) = w P + K (P − D) with K = PS b(Pe); dM/dt = N_S + N_L − L D + Q_in F − Q_out D.</para>
/// </remarks>
internal struct ThreePoreSystem<T> : IOdeSystem<T>
    where T : struct, ILane<T>
{
    private const double RT = PhysicalConstants.OsmoticPressurePerConcentration;

    private readonly ThreePoreMembrane membrane;
    private readonly int solutes;

    // Per solute: plasma and fresh-fluid concentration, PS, 1 − σ, and LpS α RT φ σ of the pore classes.
    private readonly double[] plasma;
    private readonly double[] fresh;
    private readonly T[] ps_S;
    private readonly T[] ps_L;
    private readonly double[] passed_S;
    private readonly double[] passed_L;
    private readonly T[] osmotic_C;
    private readonly T[] osmotic_S;
    private readonly T[] osmotic_L;

    // α_k LpS, and σ_k ΔΠ of protein.
    private readonly T lp_C;
    private readonly T lp_S;
    private readonly T lp_L;
    private readonly double oncotic_C;
    private readonly double oncotic_S;
    private readonly double oncotic_L;
    private readonly T lymph;
    private readonly T transientAmplitude;
    private readonly double referenceVolume;
    private readonly double volumePerPressure;
    private readonly double fullContactVolume;

    /// <summary>The equations of a membrane facing a plasma.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What may carry derivatives or differ between lanes.</param>
    /// <param name="panel">The solutes to follow.</param>
    /// <param name="plasma">Plasma of each solute, mmol/L (proteins: relative), before the membrane's plasma level is applied.</param>
    public ThreePoreSystem(ThreePoreMembrane membrane, in FreeParameters<T> free, SolutePanel panel, ReadOnlySpan<double> plasma)
    {
        this.membrane = membrane;
        solutes = panel.Count;
        var pores = membrane.Pores;
        lp_C = pores.UltrasmallFraction * free.UltrafiltrationCoefficient;
        lp_S = pores.SmallFraction * free.UltrafiltrationCoefficient;
        lp_L = pores.LargeFraction * free.UltrafiltrationCoefficient;
        lymph = free.LymphaticRemoval;
        transientAmplitude = free.TransientAmplitude;

        var protein = Solutes.Albumin.RadiusAngstrom;
        var oncotic = membrane.OncoticPressureDifference.MillimetersOfMercury;
        oncotic_C = oncotic;
        oncotic_S = oncotic * Hindrance.ReflectionCoefficient(protein / pores.SmallRadiusAngstrom);
        oncotic_L = oncotic * Hindrance.ReflectionCoefficient(protein / pores.LargeRadiusAngstrom);
        referenceVolume = membrane.ReferenceVolume.Milliliters;
        volumePerPressure = membrane.VolumePerPressure?.Milliliters ?? double.PositiveInfinity;
        fullContactVolume = referenceVolume * (1400.0 * 1.73 / 2300.0);

        this.plasma = new double[solutes];
        fresh = new double[solutes];
        ps_S = new T[solutes];
        ps_L = new T[solutes];
        passed_S = new double[solutes];
        passed_L = new double[solutes];
        osmotic_C = new T[solutes];
        osmotic_S = new T[solutes];
        osmotic_L = new T[solutes];

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
            var sigma_S = Hindrance.ReflectionCoefficient(lambda_S);
            var sigma_L = Hindrance.ReflectionCoefficient(lambda_L);
            passed_S[i] = 1 - sigma_S;
            passed_L[i] = 1 - sigma_L;
            var free_PS = 60 * PhysicalConstants.FreeDiffusion(radius) * free.DiffusionArea;
            ps_S[i] = share_S * Hindrance.DiffusionFactor(lambda_S) * free_PS;
            ps_L[i] = share_L * Hindrance.DiffusionFactor(lambda_L) * free_PS;
            var phi = SolutePanel.OsmoticWeight(i);
            osmotic_C[i] = RT * phi * lp_C;
            osmotic_S[i] = RT * phi * sigma_S * lp_S;
            osmotic_L[i] = RT * phi * sigma_L * lp_L;
            this.plasma[i] = AtBloodSide(i, plasma[i], membrane.PlasmaLevel);
        }

        ps_S[SolutePanel.Glucose] = free.GlucosePermeabilityScale * ps_S[SolutePanel.Glucose];
        if (membrane.UreaToCreatininePermeability is { } ratio)
        {
            var creatinine = ps_S[SolutePanel.Creatinine] + ps_L[SolutePanel.Creatinine];
            ps_S[SolutePanel.Urea] = T.PositivePart(ratio * creatinine - ps_L[SolutePanel.Urea]);
        }

        var sodium = T.Of(membrane.SodiumPermeability.MillilitersPerMinute);
        ps_S[SolutePanel.Sodium] = T.PositivePart(sodium - ps_L[SolutePanel.Sodium]);
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

        var flows = PoreFlows(state);
        var g = ContactArea(v);
        var diffusion = Transient(minutes) * g;
        var perVolume = T.Of(1) / v;
        var outflow = T.Of(Outflow);
        for (var i = 0; i < solutes; i++)
        {
            var d = state[1 + i] * perVolume;
            var n = Flux(flows.Small, passed_S[i], diffusion * ps_S[i], plasma[i], d)
                + Flux(flows.Large, passed_L[i], diffusion * ps_L[i], plasma[i], d);
            var drained = outflow * d;
            rates[1 + i] = n - lymph * d + T.Of(Inflow * fresh[i]) - drained;
            if (CollectsDrain)
            {
                rates[DrainSlot + i] = drained;
            }
        }

        rates[0] = flows.Ultrasmall + flows.Small + flows.Large - lymph + T.Of(Inflow) - outflow;
        rates[PoreSlot] = flows.Ultrasmall;
        rates[PoreSlot + 1] = flows.Small;
        rates[PoreSlot + 2] = flows.Large;
    }

    /// <summary>J of the three pore classes, mL/min.</summary>
    public readonly (T Ultrasmall, T Small, T Large) PoreFlows(ReadOnlySpan<T> state)
    {
        var v = state[0];
        var perVolume = T.Of(1) / v;
        var pressure = HydrostaticPressure(v);
        var j_C = (pressure - T.Of(oncotic_C)) * lp_C;
        var j_S = (pressure - T.Of(oncotic_S)) * lp_S;
        var j_L = (pressure - T.Of(oncotic_L)) * lp_L;
        for (var i = 0; i < solutes; i++)
        {
            if (SolutePanel.OsmoticWeight(i) == 0)
            {
                continue;
            }

            var gradient = T.Of(plasma[i]) - state[1 + i] * perVolume;
            j_C -= osmotic_C[i] * gradient;
            j_S -= osmotic_S[i] * gradient;
            j_L -= osmotic_L[i] * gradient;
        }

        var g = ContactArea(v);
        return (g * j_C, g * j_S, g * j_L);
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

    /// <summary>What a plasma concentration is on the blood side of the membrane.</summary>
    internal static double AtBloodSide(int solute, double plasma, PlasmaLevel level) =>
        level == PlasmaLevel.PlasmaWater && solute is SolutePanel.Urea or SolutePanel.Creatinine or SolutePanel.Glucose
            ? plasma / PhysicalConstants.PlasmaWaterFraction
            : plasma;

    /// <summary>Solute flux through one pore class, µmol/min: exact for either direction of flow, without diffusion, and for any Pe.</summary>
    internal static T Flux(T flow, double passed, T ps, double plasma, T dialysate)
    {
        var w = passed * flow;
        var magnitude = T.Abs(w);

        // PS b(Pe) for Pe of either sign, by b(−x) = b(x) + x. A vanishing PS meets the floor and leaves pure convection.
        var pe = T.AtMost(magnitude / (ps + T.Of(1e-30)), 700);
        var k = ps * T.Bernoulli(pe) + T.PositivePart(-1.0 * w);
        var p = T.Of(plasma);
        return w * p + k * (p - dialysate);
    }

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
