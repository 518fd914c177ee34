using System.Collections.Immutable;

namespace Transport;

/// <summary>Twenty-four hours of a regimen: fluid, dose, sodium, glucose, fullness.</summary>
/// <remarks>
/// Plasma was constant at the patient's level, or followed its body (<see cref="Plasma"/>). An estimate for licensed prescribers; local protocol
/// rules.
/// </remarks>
public sealed record RegimenOutcome
{
    /// <summary>Energy of absorbed glucose, kcal per g anhydrous (memory).</summary>
    internal const double KilocaloriesPerGram = 3.75;

    internal RegimenOutcome()
    {
    }

    /// <summary>Whose plasma, kidneys and size.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The membrane.</summary>
    public required ThreePoreMembrane Membrane { get; init; }

    /// <summary>What was prescribed.</summary>
    public required Regimen Regimen { get; init; }

    /// <summary>How it was simulated.</summary>
    public required RegimenOptions Options { get; init; }

    /// <summary>The cycles of the night.</summary>
    public required ImmutableArray<CycleOutcome> Cycles { get; init; }

    /// <summary>The exchanges of the day; none where it is dry.</summary>
    public required ImmutableArray<CycleOutcome> DayExchanges { get; init; }

    /// <summary>Every drain in order, with what it brought: a 24-h collection.</summary>
    public required ImmutableArray<DrainedFluid> Drains { get; init; }

    /// <summary>What is drained before the first fill of the next night. Near zero after a dry day, which is no incomplete drain.</summary>
    public required Volume EveningDrain { get; init; }

    /// <summary>Night: drained minus filled over the cycles.</summary>
    public Volume NightUltrafiltration => Cycles.Aggregate(default(Volume), (sum, cycle) => sum + cycle.Ultrafiltration);

    /// <summary>Day: its drains, that of the evening among them, minus its fills. Negative where the day takes up fluid.</summary>
    /// <value>After a dry day zero: what was taken up from the residual is missed in the first drain of the night.</value>
    public Volume DayUltrafiltration => Drains.Where(drain => drain.Phase != RegimenPhase.Drain).Aggregate(default(Volume), (sum, drain) => sum + drain.Volume)
        - Regimen.Day.Aggregate(default(Volume), (sum, exchange) => sum + exchange.Fill);

    /// <summary>Night and day.</summary>
    public Volume Ultrafiltration => NightUltrafiltration + DayUltrafiltration;

    /// <summary>Urine in 24 h.</summary>
    public Volume Urine => Patient.ResidualFunction.UrineVolumePerDay;

    /// <summary>Ultrafiltration and urine: the fluid that leaves the body.</summary>
    public Volume FluidRemoval => Ultrafiltration + Urine;

    /// <summary>What passed the three pore classes in 24 h.</summary>
    public required PoreVolumes PoreVolumes { get; init; }

    /// <summary>What the lymphatics took up in 24 h.</summary>
    public required Volume LymphaticRemoval { get; init; }

    /// <summary>What was lost into tissue in 24 h, by the balance of fluid; zero unless <see cref="ThreePoreMembrane.TissueConductance"/> is more.</summary>
    public Volume TissueLoss => Membrane.TissueConductance > default(HydraulicConductance)
        ? PoreVolumes.Total - LymphaticRemoval - VolumeChange - Ultrafiltration
        : default;

    /// <summary>Volume in the cavity at the end minus that at the start; zero in the steady rhythm.</summary>
    public required Volume VolumeChange { get; init; }

    /// <summary>Removal and clearance of each solute of the panel in 24 h, by the bags.</summary>
    public required ImmutableArray<SoluteRemoval> Solutes { get; init; }

    /// <summary>What plasma did; null where it was constant.</summary>
    public required PlasmaRhythm? Plasma { get; init; }

    /// <summary>Urea clearance by the drains of 24 h.</summary>
    public Clearance PeritonealUreaClearance => Solutes[SolutePanel.Urea].Clearance!.Value;

    /// <summary>Creatinine clearance by the drains of 24 h, not normalised to a surface.</summary>
    public Clearance PeritonealCreatinineClearance => Solutes[SolutePanel.Creatinine].Clearance!.Value;

    /// <summary>Weekly Kt/V of urea over body water (<see cref="Transport.Patient.BodyWater"/>). Its measurement noise is 4 to 6 % (read): a value, not a tick.</summary>
    public UreaDose UreaDose => new(
        PeritonealUreaClearance.LitersPerWeek / Patient.BodyWater.Liters,
        Patient.ResidualFunction.UreaClearance.LitersPerWeek / Patient.BodyWater.Liters);

    /// <summary>Creatinine clearance per 1.73 m²; the kidneys' share is the mean of their urea and creatinine clearance.</summary>
    public CreatinineDose CreatinineDose => new(
        PeritonealCreatinineClearance * (1 / Patient.SurfaceFactor), Patient.ResidualFunction.FiltrationRate * (1 / Patient.SurfaceFactor));

    /// <summary>Sodium drained minus infused in 24 h as the model has it, urine not counted.</summary>
    public AmountOfSubstance SodiumRemovedByModel => Solutes[SolutePanel.Sodium].Removed!.Value;

    /// <summary>The same, centred on published automated treatment, which removes less than the model (<see cref="SodiumCalibration"/>).</summary>
    public AmountOfSubstance SodiumRemoved => Options.Sodium.Of(SodiumRemovedByModel);

    /// <summary>Glucose absorbed in 24 h, anhydrous.</summary>
    public required Mass GlucoseAbsorbed { get; init; }

    /// <summary>Glucose polymer infused in 24 h.</summary>
    public required Mass PolymerUsed { get; init; }

    /// <summary>Glucose polymer absorbed in 24 h, apart from glucose; with plasma polymer the net amount.</summary>
    public required Mass PolymerAbsorbed { get; init; }

    /// <summary>Energy of the absorbed glucose, without that of a polymer, kcal: 3.75 kcal/g anhydrous (memory).</summary>
    public double EnergyAbsorbedKilocalories => GlucoseAbsorbed.Grams * KilocaloriesPerGram;

    /// <summary>Glucose infused in 24 h, anhydrous.</summary>
    public required Mass GlucoseUsed { get; init; }

    /// <summary>Fluid infused in 24 h.</summary>
    public Volume FluidUsed => Regimen.FluidInAll;

    /// <summary>The fullest moment. Ultrafiltration at large fills is overstated by the model, and pressure understated.</summary>
    public required PeakVolume Peak { get; init; }

    /// <summary>
    /// When the cavity first holds more than <see cref="RegimenSettings.LargestVolume"/>, or one and a half times the largest fill, from the start of the night; null: never.
    /// </summary>
    public required TimeSpan? FirstAboveLimit { get; init; }

    /// <summary>The smallest volume in the cavity.</summary>
    public required Volume SmallestVolume { get; init; }

    /// <summary>The cavity against time; empty unless <see cref="RegimenOptions.Timeline"/> asked for it.</summary>
    public required ImmutableArray<TimelinePoint> Timeline { get; init; }

    /// <summary>Removal and clearance of one solute in 24 h.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    public SoluteRemoval RemovalOf(Solute solute) => Solutes[Options.Panel.IndexOf(solute)];

    /// <summary>What to be careful about.</summary>
    public IReadOnlyList<Finding> Findings => RegimenFindings.Of(this);
}
