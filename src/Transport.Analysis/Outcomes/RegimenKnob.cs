using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>One thing of a regimen or its patient that can be turned while all else stays.</summary>
public sealed class RegimenKnob
{
    private readonly Func<Patient, Regimen, double, (Patient, Regimen)> turn;

    private RegimenKnob(string name, string unit, Func<Patient, Regimen, double, (Patient, Regimen)> turn) =>
        (Name, Unit, this.turn) = (name, unit, turn);

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>In which unit it is turned; empty for a number.</summary>
    public string Unit { get; }

    /// <summary>Length of the night; exchanges without a dwell time of their own share it.</summary>
    public static RegimenKnob NightLength { get; } = OfRegimen("night length", "h", (regimen, value) => regimen with { NightLength = TimeSpan.FromHours(value) });

    /// <summary>Dwell time of every cycle; the night becomes longer or shorter by it.</summary>
    public static RegimenKnob Dwell { get; } = OfRegimen("dwell per cycle", "min", (regimen, value) =>
    {
        var busy = new RegimenSchedule(regimen, regimen.UsualResidual).NightBusy;
        return regimen with
        {
            NightLength = TimeSpan.FromMinutes(busy + regimen.Cycles * value),
            Night = [.. NightOf(regimen).Select(exchange => exchange with { DwellTime = null })],
        };
    });

    /// <summary>Mean volume per cycle; cycles that differ keep their proportions.</summary>
    public static RegimenKnob VolumePerCycle { get; } = OfRegimen("volume per cycle", "mL", (regimen, value) =>
    {
        var night = NightOf(regimen);
        var factor = value / night.Average(exchange => exchange.Fill.Milliliters);
        return regimen with
        {
            Night = [.. night.Select(exchange => exchange with
            {
                Fill = exchange.Fill * factor,
                PartialDrain = exchange.PartialDrain is { } drain ? drain with { Volume = drain.Volume * factor } : null,
            })],
        };
    });

    /// <summary>Glucose of every cycle that has any.</summary>
    public static RegimenKnob NightGlucose { get; } = OfRegimen("glucose of the night", "mmol/L", (regimen, value) => regimen with
    {
        Night = [.. NightOf(regimen).Select(exchange => exchange.Solution.Agent == OsmoticAgent.Glucose ? exchange with { Solution = DialysisSolution.OfGlucose(value) } : exchange)],
    });

    /// <summary>Number of cycles in the same night, where all are alike.</summary>
    public static RegimenKnob Cycles { get; } = OfRegimen("cycles", "", (regimen, value) =>
        NightOf(regimen) is [var first, ..] && regimen.Night.Any(exchange => exchange != first)
            ? throw NotPossible("Cycles that differ cannot be made more or fewer by a number.")
            : regimen with { Night = [.. Enumerable.Repeat(regimen.Night[0], (int)Math.Round(Require.InRange(value, 1, RegimenCheck.MostCycles, "")))] });

    /// <summary>Volume left after a drain.</summary>
    public static RegimenKnob Residual { get; } = OfRegimen("residual volume", "mL", (regimen, value) => regimen with { Settings = regimen.Settings with { Residual = Volume.FromMilliliters(value) } });

    /// <summary>Plasma glucose, day and night.</summary>
    public static RegimenKnob PlasmaGlucose { get; } = new("plasma glucose", "mmol/L", (patient, regimen, value) =>
        (patient with { Plasma = patient.Plasma with { Glucose = Concentration.FromMillimolesPerLiter(value) } }, regimen));

    /// <summary>
    /// Dwell time lost in a night, to alarms, breaks, a late start: the night is shorter by it. What slow drains lose is in contact meanwhile and costs less.
    /// </summary>
    public static RegimenKnob LostDwell { get; } = OfRegimen("dwell time lost in a night", "min", (regimen, value) => regimen with
    {
        NightLength = regimen.NightLength - TimeSpan.FromMinutes(Require.NotNegative(value, "min")),
        Night = [.. regimen.Night.Select(exchange => exchange with { DwellTime = null })],
    });

    /// <summary>All of them.</summary>
    public static IReadOnlyList<RegimenKnob> All { get; } = [NightLength, Dwell, VolumePerCycle, NightGlucose, Cycles, Residual, PlasmaGlucose, LostDwell];

    /// <summary>"volume per cycle (mL)".</summary>
    public override string ToString() => Unit.Length > 0 ? $"{Name} ({Unit})" : Name;

    /// <exception cref="RegimenException">It cannot be turned so.</exception>
    /// <exception cref="ArgumentOutOfRangeException">It cannot be turned so.</exception>
    internal (Patient Patient, Regimen Regimen) Turn(Patient patient, Regimen regimen, double value) => turn(patient, regimen, value);

    private static ImmutableArray<Exchange> NightOf(Regimen regimen) =>
        regimen.Night.IsEmpty ? throw NotPossible("A dry night has no cycles in which it could be turned.") : regimen.Night;

    private static RegimenException NotPossible(string message) => new([new(Severity.Error, "knob-not-possible", message)]);

    private static RegimenKnob OfRegimen(string name, string unit, Func<Regimen, double, Regimen> turn) =>
        new(name, unit, (patient, regimen, value) => (patient, turn(regimen, value).OrThrow()));
}
