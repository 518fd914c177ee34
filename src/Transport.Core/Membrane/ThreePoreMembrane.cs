using System.Collections.Immutable;

namespace Transport;

/// <summary>A peritoneal membrane as three kinds of pores in parallel: what one patient's fluid and solutes meet.</summary>
/// <remarks>
/// Conductances, areas and flows are absolute, for one person; <see cref="ScaledTo"/> takes a membrane of 1.73 m² to a patient's size.
/// Structure: Rippe and Stelin, Kidney Int 1989;35:1234; Rippe, Stelin and Haraldsson, Kidney Int 1991;40:315 (memory).
/// </remarks>
public sealed record ThreePoreMembrane : IMembrane
{
    /// <summary>The pores.</summary>
    public PoreSystem Pores { get; init; } = PoreSystem.Textbook;

    /// <summary>Which formulas say how the pores hinder a solute.</summary>
    public HindranceForm HindranceForm { get; init; } = HindranceForm.ThreePore;

    /// <summary>LpS, the total ultrafiltration coefficient.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public required HydraulicConductance UltrafiltrationCoefficient
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UltrafiltrationCoefficient));
    }

    /// <summary>A0/Δx, the unrestricted pore area over diffusion distance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public required DiffusionArea DiffusionArea
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(DiffusionArea));
    }

    /// <summary>Factor on glucose's small-pore permeability: population data want 1.4 to 1.6 times what its radius says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GlucosePermeabilityScale
    {
        get;
        init => field = Require.Positive(value, "");
    }
    = 1;

    /// <summary>Urea's permeability as a multiple of creatinine's; null where its radius decides.</summary>
    /// <remarks>By its radius the 4-h D/P urea is 0.76 to 0.80, printed values are 0.90 and 0.91. The right ratio depends on the plasma level.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double? UreaToCreatininePermeability
    {
        get;
        init => field = value is { } ratio ? Require.Positive(ratio, "") : null;
    }

    /// <summary>Permeability of sodium and its anion over all pores; by the radius it would be far above observation.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance SodiumPermeability
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(SodiumPermeability));
    }
    = Clearance.FromMillilitersPerMinute(6);

    /// <summary>Permeabilities over all pores of other solutes, where the radius does not decide. What the large pores have by the radius is the least.</summary>
    /// <exception cref="ArgumentException">Creatinine, or one of the three that have properties of their own: urea, glucose, sodium.</exception>
    public ImmutableDictionary<Solute, SolutePermeability> Permeabilities
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            field = value.Keys.FirstOrDefault(OtherSolutes.IsAlwaysFollowed) is not { } own
                ? value
                : throw new ArgumentException($"The permeability of {own} has a place of its own.", nameof(value));
        }
    }
    = ImmutableDictionary<Solute, SolutePermeability>.Empty;

    /// <summary>L, bulk (lymphatic) removal from the cavity. Not the total fluid loss, of which capillary reabsorption is computed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public FlowRate LymphaticRemoval
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(LymphaticRemoval));
    }
    = FlowRate.FromMillilitersPerMinute(0.3);

    /// <summary>
    /// Osmotic efficiency of a glucose polymer: the share of its concentration difference that stands across the capillary wall. The rest
    /// would stand across the tissue, in which chains are held back too. Not of glucose or salt.
    /// </summary>
    /// <remarks>Calibrated with <see cref="PolymerTissueUptake"/> on published ultrafiltration (reference-data/icodextrin-calibration, computed).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double PolymerOsmoticEfficiency
    {
        get;
        init => field = Require.Positive(value, "");
    }
    = 0.5435;

    /// <summary>
    /// What the tissue takes up of a glucose polymer besides lymph: chains go with fluid into the tissue and stay, while its water returns to the
    /// blood. With lymph it is what a tracer of the cavity would show as total absorption.
    /// </summary>
    /// <remarks>Calibrated with <see cref="PolymerOsmoticEfficiency"/> (reference-data/icodextrin-calibration, computed).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance PolymerTissueUptake
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(PolymerTissueUptake));
    }
    = Clearance.FromMillilitersPerMinute(0.9422);

    /// <summary>Capillary minus intraperitoneal hydrostatic pressure at the reference volume.</summary>
    public Pressure HydrostaticPressureDifference { get; init; } = Pressure.FromMillimetersOfMercury(9);

    /// <summary>Plasma minus dialysate oncotic pressure of protein.</summary>
    public Pressure OncoticPressureDifference { get; init; } = Pressure.FromMillimetersOfMercury(22);

    /// <summary>The intraperitoneal volume at which pressure and area are what the membrane says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume ReferenceVolume
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(ReferenceVolume));
    }
    = Volume.FromMilliliters(2300);

    /// <summary>Intraperitoneal volume that raises the pressure by 1 mmHg; null keeps the pressure constant.</summary>
    /// <remarks>
    /// 490 mL is the value of the three-pore literature, between the 503 mL (upright) and 486 mL (sitting) computed from 2.7 and 2.8 cmH2O per
    /// litre; supine 680 mL from 2.0 cmH2O per litre (Twardowski et al., Kidney Int 1983;23:64-70, read): see <see cref="PressureSlopes"/>.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? VolumePerPressure
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(VolumePerPressure)) : null;
    }
    = Volume.FromMilliliters(490);

    /// <summary>A0/Δx, and every permeability with it, at night, lying, over that of a test done upright. 1, the default: the same.</summary>
    /// <remarks>In six children 29,400 ± 1,330 cm/1.73 m² lying and 21,900 ± 1,400 standing (read): 1.34. Single dwells do not know it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double LyingAreaFactor
    {
        get;
        init => field = Require.Positive(value, "");
    }
    = 1;

    /// <summary>LpS at night, lying, over that of a test done upright. 1, the default: the same; nobody has measured it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double LyingConductanceFactor
    {
        get;
        init => field = Require.Positive(value, "");
    }
    = 1;

    /// <summary>
    /// κ, fluid lost from the cavity into tissue for each mmHg above <see cref="TissueThreshold"/>, with all it holds. Zero, the default: none.
    /// </summary>
    /// <remarks>
    /// <para>Rats lose nothing more below 2 cmH2O and then in proportion to pressure, lymph unchanged (Flessner 1996, read): κ max(0, P − P0). The size in
    /// people is open. 0.2 mL/min/cmH2O would explain a loss of 62 mL in 2 h by 2.6 cmH2O (computed), about what one litre more fill cost 42 people
    /// (61 mL, read); all of the gap between that and the model would need 0.5 to 0.7.</para>
    /// <para>Pressure rises with volume by <see cref="VolumePerPressure"/>; where that is null it does not rise, and nothing is lost. LpS, A0/Δx and L of
    /// a membrane were found without this loss: with it they are no longer true together.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public HydraulicConductance TissueConductance
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(TissueConductance));
    }

    /// <summary>P0, the pressure above that of the empty cavity from which fluid is lost into tissue; 2 cmH2O, as in rats (read; in people a choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Pressure TissueThreshold
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(TissueThreshold));
    }
    = Pressure.FromCentimetersOfWater(2);

    /// <summary>F0 of the initial transient F(t) = 1 + F0 e^(−t/τ), by which diffusion is faster early in a dwell. Zero: none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double TransientAmplitude
    {
        get;
        init => field = Require.NotNegative(value, "");
    }
    = 0.6875;

    /// <summary>τ of the initial transient.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public TimeSpan TransientTime
    {
        get;
        init => field = value > TimeSpan.Zero ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected more than zero.");
    }
    = TimeSpan.FromMinutes(50);

    /// <summary>How the membrane in contact depends on the volume in the cavity.</summary>
    public AreaLaw AreaLaw { get; init; } = AreaLaw.Constant;

    /// <summary>What plasma concentrations are taken to be; the parameters are only true together with it.</summary>
    public PlasmaLevel PlasmaLevel { get; init; } = PlasmaLevel.AsMeasured;

    /// <summary>Osmotic conductance to glucose, LpS Σ α σ(glucose).</summary>
    public HydraulicConductance OsmoticConductanceToGlucose => UltrafiltrationCoefficient * ReflectionCoefficient(Solutes.Glucose);

    /// <summary>Reflection coefficient of a solute over all pores, Σ α σ.</summary>
    public double ReflectionCoefficient(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return Pores.UltrasmallFraction
            + Pores.SmallFraction * Hindrance.ReflectionCoefficient(solute.RadiusAngstrom / Pores.SmallRadiusAngstrom, HindranceForm)
            + Pores.LargeFraction * Hindrance.ReflectionCoefficient(solute.RadiusAngstrom / Pores.LargeRadiusAngstrom, HindranceForm);
    }

    /// <summary>This membrane at the size of another person: everything extensive times surface over 1.73 m².</summary>
    /// <remarks>Areas, conductances, permeabilities, lymph, and the volumes that pressure and contact area refer to.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The surface is not positive.</exception>
    public ThreePoreMembrane ScaledTo(Area bodySurface)
    {
        var factor = Require.Positive(bodySurface.SquareMeters, "m²", nameof(bodySurface)) / 1.73;
        return OfArea(factor, factor) with
        {
            LymphaticRemoval = LymphaticRemoval * factor,
            TissueConductance = TissueConductance * factor,
            PolymerTissueUptake = PolymerTissueUptake * factor,
            ReferenceVolume = ReferenceVolume * factor,
            VolumePerPressure = VolumePerPressure is { } volume ? volume * factor : null,
        };
    }

    /// <summary>This membrane at night: other areas and another slope of pressure.</summary>
    internal ThreePoreMembrane Lying(Volume? volumePerPressure)
    {
        var membrane = LyingAreaFactor == 1 && LyingConductanceFactor == 1 ? this : OfArea(LyingAreaFactor, LyingConductanceFactor);
        return VolumePerPressure is null || volumePerPressure is null ? membrane : membrane with { VolumePerPressure = volumePerPressure };
    }

    // So many times the area for solutes, and the conductance for water.
    private ThreePoreMembrane OfArea(double area, double conductance) => this with
    {
        UltrafiltrationCoefficient = UltrafiltrationCoefficient * conductance,
        DiffusionArea = DiffusionArea * area,
        SodiumPermeability = SodiumPermeability * area,
        Permeabilities = Permeabilities.IsEmpty
            ? Permeabilities
            : Permeabilities.ToImmutableDictionary(pair => pair.Key, pair => pair.Value.Scaled(area)),
    };

    DwellCourse IMembrane.Run(Patient patient, Dwell dwell, DwellOptions options)
    {
        var panel = options.Panel;
        var system = new ThreePoreSystem<Real>(this, FreeParameters<Real>.From(this), panel, CavityContents.Of(patient.Plasma, panel))
        {
            PolymerScission = options.PolymerScissionPerHour / 60,
        };
        CavityContents.Of(dwell.Solution, panel).CopyTo(system.Fresh);
        return DwellSimulation.Run(system, this, patient, dwell, options);
    }
}
