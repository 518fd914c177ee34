using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What one regimen returns by the fitted membrane, and how that answers to small changes of membrane, body and night.</summary>
/// <remarks>
/// A year has few regimens and many nights: each regimen is simulated ten times, and its nights are read off by straight lines. Over the doubt of a
/// fit and an hour of lost dwell the lines are within a few millilitres of the simulation (measured in its test).
/// </remarks>
internal sealed class NightResponse
{
    private const double LogStep = 0.1;
    private const double LossStep = 0.2;
    private const double ResidualStep = 50;
    private const double DrainStep = 6;
    private const double GlucoseStep = 3;

    private static readonly RegimenOptions Simulation = new() { Integration = new() { RelativeTolerance = 1e-5 } };

    private readonly double[] night = new double[Enum.GetValues<NightLever>().Length];
    private readonly double[] day = new double[Enum.GetValues<NightLever>().Length];

    private NightResponse(RegimenOutcome outcome, DialysisSolution? tested, bool isByHand)
    {
        Regimen = outcome.Regimen;
        IsByHand = isByHand;
        var (byNight, byDay) = (DailyDoubt.Night(outcome), DailyDoubt.Day(outcome));
        var ofNight = DailyDoubt.ByStrength(isByHand ? byNight.Concat(byDay) : byNight, DoubtLayers.OfReviews, tested).ToList();
        Night = NightOf(outcome).Milliliters + ofNight.Sum(strength => strength.Miss.Shift);
        var ofDay = DailyDoubt.ByStrength(byDay, DoubtLayers.OfReviews, tested).ToList();
        InitialDrain = isByHand ? 0 : outcome.EveningDrain.Milliliters + ofDay.Sum(strength => strength.Miss.Shift);
        ModelForm = Math.Sqrt(ofNight.Sum(strength => strength.Miss.Deviation * strength.Miss.Deviation));
        DayModelForm = Math.Sqrt(ofDay.Sum(strength => strength.Miss.Deviation * strength.Miss.Deviation));
        DayFill = isByHand ? 0 : Regimen.DayFill?.Volume.Milliliters ?? 0;
        FirstCycle = outcome.Cycles.Length < 3
            ? null
            : (outcome.Cycles[0].Ultrafiltration - outcome.Cycles[1..^1].Select(cycle => cycle.Ultrafiltration).Aggregate((a, b) => a + b) * (1.0 / (outcome.Cycles.Length - 2))).Milliliters;
        var counted = Counted(outcome);
        AverageDwell = counted.Average(cycle => cycle.DwellTime.TotalMinutes);
        DrainTime = counted.Average(cycle => cycle.DrainTime.TotalMinutes);
        FullestInside = counted.Max(cycle => (cycle.Drained + cycle.LeftBehind).Milliliters);
        Residual = Regimen.ResidualFor(outcome.Patient);
        Exchanges = counted.Length;
        LargestFill = Regimen.Exchanges.Max(exchange => exchange.Fill.Milliliters);
    }

    public Regimen Regimen { get; }

    /// <summary>Whether these are exchanges by hand: then the night stands for the whole day, and nothing is drained before it.</summary>
    public bool IsByHand { get; }

    /// <summary>Ultrafiltration of the cycles, mL, moved by what the model is known to miss at strengths that were not tested.</summary>
    public double Night { get; }

    /// <summary>What comes out before the first fill, mL.</summary>
    public double InitialDrain { get; }

    /// <summary>What went in for the day, mL.</summary>
    public double DayFill { get; }

    /// <summary>Ultrafiltration of the first cycle less the mean of the middle ones, mL; null with fewer than three.</summary>
    public double? FirstCycle { get; }

    /// <summary>Planned, min.</summary>
    public double AverageDwell { get; }

    /// <summary>Of one drain as simulated, min.</summary>
    public double DrainTime { get; }

    /// <summary>Most that is in before a drain, mL.</summary>
    public double FullestInside { get; }

    /// <summary>What a drain leaves behind, mL.</summary>
    public double Residual { get; }

    /// <summary>The largest fill of night and day, mL.</summary>
    public double LargestFill { get; }

    /// <summary>Cycles of the night; of exchanges by hand those of the whole day.</summary>
    public int Exchanges { get; }

    /// <summary>
    /// By how much one exchange returns less for each millilitre more that it meets. Not what a larger residual does to a night: a dry day takes the residual up, and the first cycle makes it good.
    /// </summary>
    public double DilutionOfFill { get; private set; }

    /// <summary>How sure the model itself is of <see cref="Night"/> at strengths that were not tested, SD in mL.</summary>
    public double ModelForm { get; }

    /// <summary>The same of <see cref="InitialDrain"/>.</summary>
    public double DayModelForm { get; }

    /// <summary>Change of <see cref="Night"/> per unit of a lever.</summary>
    public double OfNight(NightLever lever) => night[(int)lever];

    /// <summary>Change of <see cref="InitialDrain"/> per unit of a lever.</summary>
    public double OfInitialDrain(NightLever lever) => day[(int)lever];

    public static NightResponse Of(RegimenWorkspace workspace, Patient patient, ThreePoreMembrane membrane, Regimen regimen, DialysisSolution? tested, bool isByHand = false)
    {
        var at = Run(patient, membrane, regimen);
        var response = new NightResponse(at, tested, isByHand);
        Take(NightLever.Area, LogStep, Run(patient, membrane with { DiffusionArea = membrane.DiffusionArea * Math.Exp(LogStep) }, regimen));
        Take(NightLever.GlucoseScale, LogStep, Run(patient, membrane with { GlucosePermeabilityScale = membrane.GlucosePermeabilityScale * Math.Exp(LogStep) }, regimen));
        Take(NightLever.Conductance, LogStep, Run(patient, membrane with { UltrafiltrationCoefficient = membrane.UltrafiltrationCoefficient * Math.Exp(LogStep) }, regimen));
        Take(NightLever.Transient, LogStep, Run(patient, membrane with { TransientAmplitude = membrane.TransientAmplitude * Math.Exp(LogStep) }, regimen));
        Take(NightLever.FluidLoss, LossStep, Run(patient, membrane with { LymphaticRemoval = membrane.LymphaticRemoval + FlowRate.FromMillilitersPerMinute(LossStep) }, regimen));
        var fuller = Run(patient, membrane, regimen with
        {
            Settings = regimen.Settings with { Residual = Volume.FromMilliliters(regimen.ResidualFor(patient) + ResidualStep) },
        });
        response.DilutionOfFill = response.Exchanges < 2 ? 0 : Later(fuller).Zip(Later(at), (with, without) => (with - without) / ResidualStep).Average();
        if (!isByHand && regimen.Settings.Drain.WholeDrain is { } drain)
        {
            var slower = regimen with { Settings = regimen.Settings with { Drain = DrainProfile.Within(drain + TimeSpan.FromMinutes(DrainStep)) } };

            // A night that has no minute to lose says nothing of lost minutes.
            if (slower.Findings.All(finding => finding.Severity != Severity.Error))
            {
                Take(NightLever.LostDwell, DrainStep * regimen.Cycles, Run(patient, membrane, slower));
            }
        }

        var plasma = patient.Plasma with { Glucose = patient.Plasma.Glucose + Concentration.FromMillimolesPerLiter(GlucoseStep) };
        Take(NightLever.PlasmaGlucose, GlucoseStep, Run(patient with { Plasma = plasma }, membrane, regimen));
        var changed = isByHand ? regimen.Exchanges : regimen.Night;
        if (changed.All(exchange => exchange.Solution.Polymer is null))
        {
            Take(NightLever.Strength, LogStep, Run(patient, membrane, regimen with
            {
                Night = [.. regimen.Night.Select(Stronger)],
                Day = isByHand ? [.. regimen.Day.Select(Stronger)] : regimen.Day,
            }));
        }

        return response;

        // The first may stand behind a dry day.
        IEnumerable<double> Later(RegimenOutcome outcome) => response.Counted(outcome).Skip(1).Select(cycle => cycle.Ultrafiltration.Milliliters);

        static Exchange Stronger(Exchange exchange) => exchange with { Solution = DialysisSolution.OfGlucose(exchange.Solution.Glucose.MillimolesPerLiter * Math.Exp(LogStep)) };

        RegimenOutcome Run(Patient person, ThreePoreMembrane changed, Regimen run) => workspace.Run(person, changed, run, Simulation, RunControl.None);

        void Take(NightLever lever, double step, RegimenOutcome changed)
        {
            response.night[(int)lever] = (response.NightOf(changed) - response.NightOf(at)).Milliliters / step;
            response.day[(int)lever] = isByHand ? 0 : (changed.EveningDrain - at.EveningDrain).Milliliters / step;
        }
    }

    private ImmutableArray<CycleOutcome> Counted(RegimenOutcome outcome) => IsByHand || outcome.Cycles.IsEmpty ? [.. outcome.Cycles, .. outcome.DayExchanges] : outcome.Cycles;

    private Volume NightOf(RegimenOutcome outcome) => IsByHand ? outcome.Ultrafiltration : outcome.NightUltrafiltration;
}
