using System.Collections.Immutable;

namespace Transport;

/// <summary>
/// A peritoneal membrane in the classical manner: one barrier, with a mass transfer area coefficient for each solute, one sieving coefficient, and
/// one loss of fluid. A second opinion beside <see cref="ThreePoreMembrane"/>, not a replacement.
/// </summary>
/// <remarks>
/// Structure: Pyle, Popovich and Moncrief; Waniewski and co-workers (memory). Values are absolute, for one person. Plasma is taken as measured.
/// </remarks>
public sealed record LumpedMembrane : IMembrane
{
    /// <summary>Mass transfer area coefficients; a simulation refuses a solute that has none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">One is negative.</exception>
    public required ImmutableDictionary<Solute, Clearance> MassTransfer
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            foreach (var (solute, transfer) in value)
            {
                Require.NotNegative(transfer.MillilitersPerMinute, "mL/min", solute.Name);
            }

            field = value;
        }
    }

    /// <summary>S, what the ultrafiltrate carries of the mean concentration on both sides: 1 of all, 0 of none; of every solute.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1.</exception>
    public required double SievingCoefficient
    {
        get;
        init => field = Require.InRange(value, 0, 1, "");
    }

    /// <summary>Ultrafiltration for each mmHg of glucose's osmotic pressure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public required HydraulicConductance OsmoticConductanceToGlucose
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(OsmoticConductanceToGlucose));
    }

    /// <summary>Ultrafiltration for each mmHg of sodium's osmotic pressure, its anion's share included. Zero: glucose alone draws.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public HydraulicConductance OsmoticConductanceToSodium
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(OsmoticConductanceToSodium));
    }

    /// <summary>
    /// Total loss of fluid from the cavity, at its concentrations. It is not <see cref="ThreePoreMembrane.LymphaticRemoval"/>: there capillary
    /// reabsorption is computed, here it is in this number.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public required FlowRate FluidAbsorption
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(FluidAbsorption));
    }

    /// <summary>
    /// An adult of 1.73 m². Creatinine 8.8 mL/min (Smit et al., Perit Dial Int 2003;23:440, read: 4.7 to 12.7), urea 18, glucose 11, sodium 5 (memory
    /// of 16 to 20, 10 to 12, 4 to 6); sieving 0.55 (0.5 to 0.6, read); conductance to glucose 3.0 µL/min/mmHg (Smit 2004, read); to sodium 1.75
    /// times that (computed from the reflection coefficients of Imholz et al., Kidney Int 1994, read: sodium 0.029 and chloride 0.027 over glucose
    /// 0.032); absorption 1.5 mL/min (Johansson and Haraldsson, Perit Dial Int 2006: 1.54, read).
    /// </summary>
    public static LumpedMembrane Typical { get; } = new()
    {
        MassTransfer = ImmutableDictionary.CreateRange<Solute, Clearance>(
        [
            new(Solutes.Urea, Clearance.FromMillilitersPerMinute(18)),
            new(Solutes.Creatinine, Clearance.FromMillilitersPerMinute(8.8)),
            new(Solutes.Glucose, Clearance.FromMillilitersPerMinute(11)),
            new(Solutes.Sodium, Clearance.FromMillilitersPerMinute(5)),
        ]),
        SievingCoefficient = 0.55,
        OsmoticConductanceToGlucose = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.0030),
        OsmoticConductanceToSodium = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.00525),
        FluidAbsorption = FlowRate.FromMillilitersPerMinute(1.5),
    };

    /// <summary>
    /// The mean incident adult of this model, per 1.73 m²: the typical adult with the three numbers that return the published mean test (3.86 %, 4 h, n 758: D/P
    /// creatinine 0.73, D/D0 glucose 0.25, ultrafiltration 675 mL; Perit Dial Int 2019, doi 10.3747/pdi.2017.00004, read). The fit is ours (computed).
    /// Urea and sodium's conductance follow creatinine's coefficient and glucose's conductance.
    /// </summary>
    public static LumpedMembrane MeanIncidentAdult { get; } = Typical.With(creatinine: 14.15, glucoseToCreatinine: 0.981, conductance: 0.0040);

    /// <summary>This membrane at the size of another person: everything but the sieving coefficient times surface over 1.73 m².</summary>
    /// <exception cref="ArgumentOutOfRangeException">The surface is not positive.</exception>
    public LumpedMembrane ScaledTo(Area bodySurface)
    {
        var factor = Require.Positive(bodySurface.SquareMeters, "m²", nameof(bodySurface)) / 1.73;
        return this with
        {
            MassTransfer = MassTransfer.ToImmutableDictionary(pair => pair.Key, pair => pair.Value * factor),
            OsmoticConductanceToGlucose = OsmoticConductanceToGlucose * factor,
            OsmoticConductanceToSodium = OsmoticConductanceToSodium * factor,
            FluidAbsorption = FluidAbsorption * factor,
        };
    }

    // Urea stays what it is to creatinine, and sodium's conductance what it is to glucose's.
    private LumpedMembrane With(double creatinine, double glucoseToCreatinine, double conductance)
    {
        var factor = creatinine / MassTransfer[Solutes.Creatinine].MillilitersPerMinute;
        var perGlucose = OsmoticConductanceToSodium.MillilitersPerMinutePerMillimeterOfMercury / OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury;
        return this with
        {
            MassTransfer = MassTransfer
                .SetItem(Solutes.Creatinine, Clearance.FromMillilitersPerMinute(creatinine))
                .SetItem(Solutes.Urea, MassTransfer[Solutes.Urea] * factor)
                .SetItem(Solutes.Glucose, Clearance.FromMillilitersPerMinute(glucoseToCreatinine * creatinine)),
            OsmoticConductanceToGlucose = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(conductance),
            OsmoticConductanceToSodium = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(perGlucose * conductance),
        };
    }

    DwellCourse IMembrane.Run(Patient patient, Dwell dwell, DwellOptions options)
    {
        if (dwell.Solution.Polymer is not null)
        {
            throw new ArgumentException($"One barrier without pores does not tell a polymer's fractions apart: {dwell.Solution} is not for it.", nameof(dwell));
        }

        var plasma = CavityContents.Of(patient.Plasma, options.Panel);
        return DwellSimulation.Run(new LumpedSystem<Real>(LumpedParameters<Real>.From(this, options.Panel), plasma, dwell.Fill.Milliliters), this, patient, dwell, options);
    }
}
