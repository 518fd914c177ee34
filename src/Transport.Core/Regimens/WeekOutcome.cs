using System.Collections.Immutable;

namespace Transport;

/// <summary>A week of treatment in its steady rhythm, in which every week ends as it began.</summary>
/// <remarks>Of weeks that alternate, amounts and volumes are means per week. An estimate for licensed prescribers; local protocol rules.</remarks>
public sealed record WeekOutcome
{
    internal WeekOutcome()
    {
    }

    /// <summary>Whose plasma, kidneys and size.</summary>
    public required Patient Patient { get; init; }

    /// <summary>What was prescribed.</summary>
    public required RegimenWeek Week { get; init; }

    /// <summary>How it was simulated.</summary>
    public required RegimenOptions Options { get; init; }

    /// <summary>The days; null where nothing was done. A day's clearances are over the mean level of that day.</summary>
    public required ImmutableArray<RegimenOutcome?> Days { get; init; }

    /// <summary>Fluid that crossed the membrane, and that was taken up, on the days without treatment.</summary>
    public required RestFluid Rest { get; init; }

    /// <summary>What is drained at the end of each day, before the next night's first fill; after a day without treatment near zero.</summary>
    public required ImmutableArray<Volume> EveningDrains { get; init; }

    /// <summary>Removal and clearance of each solute in the week, by the bags, over the mean plasma level of the week.</summary>
    public required ImmutableArray<SoluteRemoval> Solutes { get; init; }

    /// <summary>What plasma did; null where it was constant.</summary>
    public required PlasmaRhythm? Plasma { get; init; }

    /// <summary>Drained minus infused in the week.</summary>
    public Volume Ultrafiltration => Rest.Drained + PerWeek(day => day.Ultrafiltration.Milliliters, Volume.FromMilliliters);

    /// <summary>Fluid infused in the week.</summary>
    public Volume FluidUsed => PerWeek(day => day.FluidUsed.Milliliters, Volume.FromMilliliters);

    /// <summary>Glucose absorbed in the week, anhydrous; what is taken up of the residual fluid on days without treatment included.</summary>
    public required Mass GlucoseAbsorbed { get; init; }

    /// <summary>Glucose polymer absorbed in the week, apart from glucose.</summary>
    public required Mass PolymerAbsorbed { get; init; }

    /// <summary>The cavity against time from the start of the first night; empty unless <see cref="RegimenOptions.Timeline"/> asked for it.</summary>
    public required ImmutableArray<TimelinePoint> Timeline { get; init; }

    /// <summary>Weekly Kt/V of urea over body water (<see cref="Transport.Patient.BodyWater"/>): what the drains hold over the mean level of the week, and the kidneys.</summary>
    public UreaDose UreaDose => new(
        Solutes[SolutePanel.Urea].Clearance!.Value.LitersPerWeek / Patient.BodyWater.Liters,
        Patient.ResidualFunction.UreaClearance.LitersPerWeek / Patient.BodyWater.Liters);

    /// <summary>Creatinine clearance per 1.73 m².</summary>
    public CreatinineDose CreatinineDose => new(
        Solutes[SolutePanel.Creatinine].Clearance!.Value * (1 / Patient.SurfaceFactor), Patient.ResidualFunction.FiltrationRate * (1 / Patient.SurfaceFactor));

    /// <summary>Removal and clearance of one solute in the week.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    public SoluteRemoval RemovalOf(Solute solute) => Solutes[Options.Panel.IndexOf(solute)];

    private T PerWeek<T>(Func<RegimenOutcome, double> read, Func<double, T> quantity) => quantity(Days.OfType<RegimenOutcome>().Sum(read) / Week.Weeks);
}
