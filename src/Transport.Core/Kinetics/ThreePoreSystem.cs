using System.Runtime.CompilerServices;

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
internal partial struct ThreePoreSystem<T> : IDwellSystem<T>
    where T : struct, ILane<T>
{
    private const double RT = PhysicalConstants.OsmoticPressurePerConcentration;

    // A turn as sharp as this is a kink for all purposes.
    private const double SharpestOfTurns = 1e3;

    private readonly int solutes;
    private readonly int polymer;
    private readonly double[] molarMass;

    // Per solute: plasma and the ways through small and large pores; the fresh fluid; RT φ σ of the three pore classes, one after the other.
    private readonly SoluteTable<T> ways;
    private readonly double[] fresh;
    private readonly LaneMemory<T> osmotic;
    private FluidTerms<T> fluid;
    private AreaLaw areaLaw;

    // 1/τ where it is the same for all patients, as it nearly always is: then one exponential serves them all. Otherwise NaN.
    private double transientRate;

    /// <summary>Room for the equations; a membrane and a plasma are to be set.</summary>
    public ThreePoreSystem(SolutePanel panel)
    {
        solutes = panel.Count;
        polymer = panel.PolymerStart;
        molarMass = polymer < solutes ? [.. panel.Solutes.Select(solute => solute.MolarMassGramsPerMole)] : [];
        ways = new(solutes);
        fresh = new double[solutes];
        osmotic = new(3 * solutes);
    }

    /// <summary>The equations of a membrane facing a plasma.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What may carry derivatives or differ between lanes.</param>
    /// <param name="panel">The solutes to follow.</param>
    /// <param name="plasma">Plasma of each solute, mmol/L (proteins: relative), before the membrane's plasma level is applied.</param>
    public ThreePoreSystem(ThreePoreMembrane membrane, in FreeParameters<T> free, SolutePanel panel, ReadOnlySpan<double> plasma)
        : this(panel) => Set(membrane, free, new(membrane, panel), panel, plasma);

    /// <summary>Another membrane or plasma, in the same memory.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What may carry derivatives or differ between lanes.</param>
    /// <param name="pores">What its pores decide.</param>
    /// <param name="panel">The solutes to follow: as many as there is room for.</param>
    /// <param name="plasma">Plasma of each solute, as above.</param>
    public void Set(
        ThreePoreMembrane membrane, in FreeParameters<T> free, PoreCoefficients pores, SolutePanel panel, ReadOnlySpan<double> plasma)
    {
        areaLaw = membrane.AreaLaw;
        transientRate = 1 / membrane.TransientTime.TotalMinutes;
        var oncotic = membrane.OncoticPressureDifference.MillimetersOfMercury;
        var reference = membrane.ReferenceVolume.Milliliters;
        var pressurePerVolume = membrane.VolumePerPressure is { } slope ? 1 / slope.Milliliters : 0;
        var lossPerVolume = membrane.TissueConductance.MillilitersPerMinutePerMillimeterOfMercury * pressurePerVolume;
        var smallFraction = T.PositivePart(T.Of(1) - free.UltrasmallFraction - free.LargeFraction);
        fluid = new()
        {
            Lp_C = free.UltrasmallFraction * free.UltrafiltrationCoefficient,
            Lp_S = smallFraction * free.UltrafiltrationCoefficient,
            Lp_L = free.LargeFraction * free.UltrafiltrationCoefficient,
            Oncotic_C = T.Of(oncotic),
            Oncotic_S = T.Of(oncotic * pores.ProteinReflection_S),
            Oncotic_L = T.Of(oncotic * pores.ProteinReflection_L),
            Lymph = free.LymphaticRemoval,
            LossPerVolume = T.Of(lossPerVolume),
            LossVolume = T.Of(lossPerVolume > 0 ? membrane.TissueThreshold.MillimetersOfMercury / pressurePerVolume : double.PositiveInfinity),
            TissueUptake = T.Of(membrane.PolymerTissueUptake.MillilitersPerMinute),
            PressureEmpty = T.Of(membrane.HydrostaticPressureDifference.MillimetersOfMercury + reference * pressurePerVolume),
            PressurePerVolume = T.Of(pressurePerVolume),
            ReferenceVolume = T.Of(reference),
            FullContactVolume = T.Of(reference * (1400.0 * 1.73 / 2300.0)),
            TransientAmplitude = free.TransientAmplitude,
            TransientRate = T.Of(transientRate),
        };

        var sharpest = T.Of(0);
        var sodium = free.SodiumPermeability;

        // Without pores there is no diffusion.
        var area_S = pores.SmallShareOfArea(smallFraction, free.LargeFraction) * free.DiffusionArea;
        var area_L = T.WhereAbove(smallFraction + free.LargeFraction, 0, free.DiffusionArea - area_S, T.Of(0));
        var creatinine = pores.Small[SolutePanel.Creatinine].PerDiffusionArea * area_S + pores.Large[SolutePanel.Creatinine].PerDiffusionArea * area_L;
        for (var i = 0; i < solutes; i++)
        {
            var (sigma_S, perArea_S) = pores.Small[i];
            var (sigma_L, perArea_L) = pores.Large[i];
            var ps_L = perArea_L * area_L;
            var ps_S = Whole(i) is { } whole ? T.PositivePart(whole - ps_L) : perArea_S * area_S;
            var small = PorePassage<T>.Of(T.Of(1 - sigma_S), i == SolutePanel.Glucose ? free.GlucosePermeabilityScale * ps_S : ps_S);
            ways[i] = new(T.Of(pores.BloodSide[i] * plasma[i]), small, PorePassage<T>.Of(T.Of(1 - sigma_L), ps_L));
            sharpest = T.Max(sharpest, T.AtMost(small.HalfPeclet, T.Of(SharpestOfTurns)));
            var pull = RT * (i < polymer ? SolutePanel.OsmoticWeight(i) : membrane.PolymerOsmoticEfficiency);
            (osmotic[3 * i], osmotic[3 * i + 1], osmotic[3 * i + 2]) = (T.Of(pull), T.Of(pull * sigma_S), T.Of(pull * sigma_L));
        }

        fluid.SharpestTurn = sharpest;

        // PS over all pores where the radius does not decide; the large pores keep what they have by the radius.
        T? Whole(int i) => i switch
        {
            SolutePanel.Urea => membrane.UreaToCreatininePermeability is { } ratio ? ratio * creatinine : null,
            SolutePanel.Sodium => sodium,
            > SolutePanel.Sodium when pores.Permeabilities[i] is { } rule =>
                rule.ToCreatinineRatio is { } multiple ? multiple * creatinine : T.Of(rule.Given!.Value.MillilitersPerMinute),
            _ => null,
        };
    }

    /// <summary>Writes the equations of one patient into his lane, but for the fresh fluid. The patients of a lane have one area law.</summary>
    public void WriteLane(int lane, in ThreePoreSystem<Real> one)
    {
        areaLaw = one.areaLaw;
        transientRate = lane == 0 || transientRate == one.transientRate ? one.transientRate : double.NaN;
        fluid.WriteLane(lane, one.fluid);
        ways.WriteLane(lane, one.ways);
        LaneOf.Write(osmotic.Span, lane, one.osmotic.Span);
    }

    /// <summary>Of the fresh fluids of a lane's patients the largest concentrations count.</summary>
    public readonly void Bathe(int lane, ReadOnlySpan<double> ofOne)
    {
        for (var i = 0; i < solutes; i++)
        {
            fresh[i] = lane == 0 ? ofOne[i] : Math.Max(fresh[i], ofOne[i]);
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

    /// <summary>Concentration of a solute on the blood side, mmol/L; the body behind the membrane may write those that it does not hold constant.</summary>
    public readonly ref T Plasma(int solute) => ref ways.Plasma(solute);

    public readonly T PlasmaOf(int solute) => ways.Plasma(solute);

    public readonly int Dimension => 4 + solutes + (CollectsDrain ? solutes : 0);

    /// <summary>Slot of ∫J of the ultrasmall pores; the small and large pores' follow.</summary>
    public readonly int PoreSlot => 1 + solutes;

    /// <summary>Slot of the first drained amount.</summary>
    public readonly int DrainSlot => 4 + solutes;

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public readonly void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        var v = state[0];
        if (!T.AllPositive(v))
        {
            // The equations end with an empty cavity: without rates there, no step can cross it.
            rates.Fill(T.Of(double.NaN));
            return;
        }

        var perVolume = T.Of(1) / v;
        var outward = T.Of(Outflow) + BulkRemoval(state);
        var g = ContactArea(v);
        var (flow_C, flow_S, flow_L) = PoreFlows(state, perVolume, g);
        var diffusion = Transient(minutes) * g;
        if (SoluteTable<T>.FourAtOnce)
        {
            SoluteRates<Lanes4>(perVolume, outward, flow_S, flow_L, diffusion, state, rates);
        }
        else
        {
            SoluteRates<T>(perVolume, outward, flow_S, flow_L, diffusion, state, rates);
        }

        if (polymer < solutes)
        {
            LosePolymer(state, perVolume, rates);
        }

        if (Inflow > 0)
        {
            for (var i = 0; i < solutes; i++)
            {
                rates[1 + i] += T.Of(Inflow * fresh[i]);
            }
        }

        rates[0] = flow_C + flow_S + flow_L + T.Of(Inflow) - outward;
        rates[PoreSlot] = flow_C;
        rates[PoreSlot + 1] = flow_S;
        rates[PoreSlot + 2] = flow_L;
        if (CollectsDrain)
        {
            for (var i = 0; i < solutes; i++)
            {
                rates[DrainSlot + i] = Outflow * (state[1 + i] * perVolume);
            }
        }
    }

    // dM/dt without the inflow. A step may write into the slots behind the solutes, the pores', which are written afterwards. Arguments by value: a struct of
    // them would be cleared at each call.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private readonly void SoluteRates<TStep>(T perVolumeOfAll, T outwardOfAll, T flow_S, T flow_L, T diffusionOfAll, ReadOnlySpan<T> state, Span<T> rates)
        where TStep : struct, ILane<TStep>
    {
        var perDiffusion = T.Of(1) / diffusionOfAll;
        var perVolume = SoluteTable<T>.Spread<TStep>(perVolumeOfAll);
        var outward = SoluteTable<T>.Spread<TStep>(outwardOfAll);
        var flow = (SoluteTable<T>.Spread<TStep>(flow_S), SoluteTable<T>.Spread<TStep>(flow_L));
        var flowPerArea = (SoluteTable<T>.Spread<TStep>(perDiffusion * flow_S), SoluteTable<T>.Spread<TStep>(perDiffusion * flow_L));
        var diffusion = SoluteTable<T>.Spread<TStep>(diffusionOfAll);
        ref var way = ref ways.First<TStep>();
        ref var amount = ref SoluteTable<T>.First<TStep>(state.Slice(1, solutes + 3));
        ref var rate = ref SoluteTable<T>.First<TStep>(rates.Slice(1, solutes + 3));
        var steps = SoluteTable<T>.StepCount(solutes);
        for (var i = 0; i < steps; i++)
        {
            var d = Unsafe.Add(ref amount, i) * perVolume;
            var flux = Unsafe.Add(ref way, i).Flux(flow, flowPerArea, diffusion, d);
            Unsafe.Add(ref rate, i) = flux - outward * d;
        }
    }

    public readonly int PathCount => 3;

    public readonly void PathFlows(ReadOnlySpan<T> state, Span<T> flows) => (flows[0], flows[1], flows[2]) = PoreFlows(state);

    public readonly double Passed(int path, int solute) => path switch
    {
        0 => 0,
        1 => T.Largest(ways[solute].Small.Passed),
        _ => T.Largest(ways[solute].Large.Passed),
    };

    // L + κ max(0, V/C − P0)
    public readonly T BulkRemoval(ReadOnlySpan<T> state) =>
        LosesFluid ? fluid.Lymph + fluid.LossPerVolume * T.PositivePart(state[0] - fluid.LossVolume) : fluid.Lymph;

    /// <summary>
    /// y of the protein that hardly passes the small pores: where their flow turns it takes plasma's concentration one way and the dialysate's the
    /// other, and what diffuses rounds the corner off over a few minutes.
    /// </summary>
    public readonly T Bend(ReadOnlySpan<T> rates) => fluid.SharpestTurn * rates[PoreSlot + 1];

    public readonly int KinkCount => (areaLaw == AreaLaw.TwoThirds ? 1 : 0) + (LosesFluid ? 1 : 0);

    public readonly T Kink(int index, ReadOnlySpan<T> state) =>
        state[0] / (index == 0 && areaLaw == AreaLaw.TwoThirds ? fluid.FullContactVolume : fluid.LossVolume) - T.Of(1);

    public readonly T ContactArea(ReadOnlySpan<T> state) => ContactArea(state[0]);

    private readonly bool LosesFluid => T.AnyAbove(fluid.LossPerVolume, 0);

    // Beyond flux and lymph: chains go with fluid into the tissue, whose water returns to the blood through the small pores, so no volume with them; and
    // scission moves them into the next lighter fraction, so that the mass stays and their number grows.
    private readonly void LosePolymer(ReadOnlySpan<T> state, T perVolume, Span<T> rates)
    {
        for (var i = polymer; i < solutes; i++)
        {
            rates[1 + i] -= fluid.TissueUptake * (state[1 + i] * perVolume);
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
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly (T Ultrasmall, T Small, T Large) PoreFlows(ReadOnlySpan<T> state, T perVolume, T g)
    {
        var (drive_C, drive_S, drive_L) = Drives(state, perVolume);
        return (g * fluid.Lp_C * drive_C, g * fluid.Lp_S * drive_S, g * fluid.Lp_L * drive_L);
    }

    // What is in the brackets, mmHg.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly (T Ultrasmall, T Small, T Large) Drives(ReadOnlySpan<T> state, T perVolume)
    {
        var pressure = fluid.PressureEmpty - fluid.PressurePerVolume * state[0];
        var drives = (C: pressure - fluid.Oncotic_C, S: pressure - fluid.Oncotic_S, L: pressure - fluid.Oncotic_L);
        foreach (var i in SolutePanel.Osmotic)
        {
            drives = Pull(drives, i, state[1 + i] * perVolume);
        }

        for (var i = polymer; i < solutes; i++)
        {
            drives = Pull(drives, i, state[1 + i] * perVolume);
        }

        return drives;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly (T C, T S, T L) Pull((T C, T S, T L) drives, int solute, T dialysate)
    {
        var gradient = dialysate - ways.Plasma(solute);
        ref var pull = ref osmotic[3 * solute];
        return (
            T.MultiplyAdd(pull, gradient, drives.C),
            T.MultiplyAdd(Unsafe.Add(ref pull, 1), gradient, drives.S),
            T.MultiplyAdd(Unsafe.Add(ref pull, 2), gradient, drives.L));
    }

    public readonly void AbsoluteScale(Span<double> scale)
    {
        var reference = T.Largest(fluid.ReferenceVolume);
        scale[0] = 0.01 * reference;
        for (var i = 0; i < solutes; i++)
        {
            // A solute that is nowhere has no size of its own.
            var amount = 1e-3 * reference * Math.Max(1e-6, Math.Max(T.Largest(PlasmaOf(i)), fresh[i]));
            scale[1 + i] = amount;
            if (CollectsDrain)
            {
                scale[DrainSlot + i] = amount;
            }
        }

        scale[PoreSlot] = scale[PoreSlot + 1] = 1e-3 * reference;
        scale[PoreSlot + 2] = 1e-5 * reference;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly T ContactArea(T v) => areaLaw == AreaLaw.Constant ? T.Of(1) : ContactAreaByLaw(v);

    private readonly T ContactAreaByLaw(T v)
    {
        switch (areaLaw)
        {
            case AreaLaw.TwoThirds:
                var full = fluid.FullContactVolume;
                return T.Exp(2.0 / 3.0 * T.Log(T.AtMost(v, full) / T.AtMost(fluid.ReferenceVolume, full)));
            case AreaLaw.Exponential:
                // 0.00077 per mL belongs to 1.73 m²; the reference volume carries the size of the person.
                const double atReference = 0.00077 * 2300;
                return 1 / (1 - Math.Exp(-atReference)) * (T.Of(1) - T.Exp(-atReference * (v / fluid.ReferenceVolume)));
            default:
                return T.Of(1);
        }
    }

    // F(t) = 1 + F0 e^(−t/τ)
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private readonly T Transient(double minutes)
    {
        if (!HasTransient)
        {
            return T.Of(1);
        }

        var left = double.IsNaN(transientRate)
            ? T.Exp((Instilled - minutes) * fluid.TransientRate)
            : T.Of(Math.Exp((Instilled - minutes) * transientRate));
        return T.MultiplyAdd(left, fluid.TransientAmplitude, T.Of(1));
    }
}
