using System.Collections.Immutable;

namespace Transport;

/// <summary>Twenty-four hours of a regimen: fluid, dose, sodium, glucose, fullness.</summary>
/// <remarks>Plasma was constant at the patient's level. An estimate for licensed prescribers; local protocol rules.</remarks>
public sealed record RegimenOutcome
{
    /// <summary>Energy of absorbed glucose, kcal per g anhydrous (memory).</summary>
    private const double KilocaloriesPerGram = 3.75;

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

    /// <summary>What is drained before the first fill of the next night. Near zero after a dry day, which is no incomplete drain.</summary>
    public required Volume EveningDrain { get; init; }

    /// <summary>Night: drained minus filled over the cycles.</summary>
    public Volume NightUltrafiltration => Cycles.Aggregate(default(Volume), (sum, cycle) => sum + cycle.Ultrafiltration);

    /// <summary>Day: the drain of the evening minus the day fill. Negative where the day takes up fluid.</summary>
    /// <value>After a dry day zero: what was taken up from the residual is missed in the first drain of the night.</value>
    public Volume DayUltrafiltration => EveningDrain - (Regimen.DayFill?.Volume ?? default);

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

    /// <summary>Urea clearance by the drains of 24 h.</summary>
    public required Clearance PeritonealUreaClearance { get; init; }

    /// <summary>Creatinine clearance by the drains of 24 h, not normalised to a surface.</summary>
    public required Clearance PeritonealCreatinineClearance { get; init; }

    /// <summary>Weekly Kt/V of urea over body water by Watson. Its measurement noise is 4 to 6 % (read): a value, not a tick.</summary>
    public UreaDose UreaDose => new(
        PeritonealUreaClearance.LitersPerWeek / Patient.BodyWater.Liters,
        Patient.ResidualFunction.UreaClearance.LitersPerWeek / Patient.BodyWater.Liters);

    /// <summary>Creatinine clearance per 1.73 m²; the kidneys' share is the mean of their urea and creatinine clearance.</summary>
    public CreatinineDose CreatinineDose => new(
        PeritonealCreatinineClearance * (1 / Patient.SurfaceFactor), Patient.ResidualFunction.FiltrationRate * (1 / Patient.SurfaceFactor));

    /// <summary>Sodium drained minus infused in 24 h as the model has it, urine not counted.</summary>
    public required AmountOfSubstance SodiumRemovedByModel { get; init; }

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

    /// <summary>The smallest volume in the cavity.</summary>
    public required Volume SmallestVolume { get; init; }

    /// <summary>The cavity against time; empty unless <see cref="RegimenOptions.Timeline"/> asked for it.</summary>
    public required ImmutableArray<TimelinePoint> Timeline { get; init; }

    /// <summary>What to be careful about.</summary>
    public IReadOnlyList<Finding> Findings => RegimenFindings.Of(this);
}
