using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Judges regimens by limits, fluid range and clearance at the ensemble's center.</summary>
internal sealed class CenterJudge(Patient patient, RegimenGoals goals)
{
    private readonly Volume largestFill = goals.LargestFillOf(patient);

    /// <summary>What the dose that it judges may be called.</summary>
    public string Dose => OptionWords.Dose(patient.ResidualFunction);

    /// <summary>How far a map's figure may be from the simulated one, at most: CycleMapTests, twice.</summary>
    public static double Margin(RegimenMeasure measure, double value) => measure switch
    {
        RegimenMeasure.Ultrafiltration => 2 + 2e-3 * Math.Abs(value),
        RegimenMeasure.SodiumRemoved => 0.4,
        RegimenMeasure.UreaDose or RegimenMeasure.CreatinineClearance or RegimenMeasure.PhosphateClearance or RegimenMeasure.Beta2MicroglobulinClearance =>
            2e-3 * Math.Abs(value),
        RegimenMeasure.GlucoseAbsorbed => 0.5,
        RegimenMeasure.PeakVolume => 10,
        RegimenMeasure.PeakPressure => 0.05,
        _ => 0,
    };

    /// <summary>What can be judged before anything is simulated.</summary>
    public DropReason? Limits(Regimen regimen)
    {
        var largest = default(Volume);
        var strongest = 0;
        foreach (var exchange in regimen.Exchanges)
        {
            largest = exchange.Fill > largest ? exchange.Fill : largest;
            strongest += RegimenFindings.IsStrongest(exchange.Solution) ? 1 : 0;
        }

        return regimen.NightLength > goals.LongestNight || regimen.NightLength > goals.NightWindow?.Length ? DropReason.NightTooLong
            : largest > largestFill ? DropReason.FillTooLarge
            : strongest > (goals.MostStrongestExchanges ?? int.MaxValue) ? DropReason.TooManyStrongest
            : !IsAllowed(regimen) ? DropReason.NotAllowed
            : Possible(regimen);
    }

    /// <summary>By figures that are exact.</summary>
    public DropReason? Judge(Candidate candidate) => Judge(candidate, 0);

    /// <summary>By figures of maps: what is certainly out, and whether what is not is certainly in.</summary>
    public (DropReason? Reason, bool IsSure) JudgeMaps(Candidate candidate) =>
        Judge(candidate, -1) is { } out_ ? (out_, true) : (null, Judge(candidate, 1) is null);

    /// <summary>How far below the floor, mL.</summary>
    public double FluidGap(Candidate candidate) => Math.Max(0, goals.Fluid.Floor.Milliliters - candidate.Ultrafiltration);

    /// <summary>How far below the clearance asked for; zero for what comes up to it within the noise.</summary>
    public double DoseGap(Candidate candidate) =>
        goals.Clearance is { } goal && candidate.UreaDose < goal.Least ? goal.WeeklyUreaDose - candidate.UreaDose : 0;

    /// <summary>The violation in units of 100 mL and of the noise of Kt/V.</summary>
    public double Violation(Candidate candidate) => FluidGap(candidate) / 100
        + DoseGap(candidate) / (goals.Clearance is { } goal ? Math.Max(goal.Noise, 0.01) * goal.WeeklyUreaDose : 1);

    // tightness −1: out only what is out with the margin; 1: in only what is in with the margin. A reason that stands before another has to be certain for the
    // later one to be given.
    private DropReason? Judge(Candidate candidate, int tightness)
    {
        var uf = candidate.Ultrafiltration;
        return Over(RegimenMeasure.PeakVolume, goals.LargestVolume?.Milliliters) ? DropReason.Overfill
            : Over(RegimenMeasure.PeakPressure, goals.HighestPressure?.CentimetersOfWater) ? DropReason.PressureTooHigh
            : uf + M(RegimenMeasure.Ultrafiltration) > goals.Fluid.Ceiling.Milliliters ? DropReason.AboveFluidCeiling
            : uf - M(RegimenMeasure.Ultrafiltration) < goals.Fluid.Floor.Milliliters ? DropReason.BelowFluidFloor
            : candidate.UreaDose - M(RegimenMeasure.UreaDose) < (goals.Clearance?.Least ?? 0) ? DropReason.BelowClearanceGoal
            : null;

        double M(RegimenMeasure measure) => tightness * Margin(measure, candidate[measure]);

        bool Over(RegimenMeasure measure, double? limit) => limit is { } most && candidate[measure] + M(measure) > most;
    }

    private bool IsAllowed(Regimen regimen)
    {
        if ((goals.IsDayDry && !regimen.Day.IsEmpty) || regimen.Night.Length > (goals.MostCycles ?? int.MaxValue)
            || (goals.MostFluid is { } most && regimen.FluidInAll > most) || goals.Shelf?.Holds(regimen) == false
            || goals.NightWindow?.Contains(regimen.NightStart, regimen.NightLength) == false || !CarerIsThere(regimen.NightStart)
            || !CarerIsThere(regimen.NightStart.Add(regimen.NightLength)) || !HandsAreFree(regimen))
        {
            return false;
        }

        var icodextrin = regimen.Exchanges.Count(exchange => exchange.Solution.Polymer is not null);
        if (icodextrin == 0)
        {
            return true;
        }

        if (icodextrin > 1 || goals.ShortestIcodextrin is not { } shortest)
        {
            return false;
        }

        if (Possible(regimen) == DropReason.NotPossible)
        {
            return true;
        }

        var dwells = regimen.Exchanges.Zip(regimen.DwellTimes.Concat(regimen.DayDwellTimes));
        return dwells.All(pair => pair.First.Solution.Polymer is null || pair.Second >= shortest);
    }

    // An exchange by hand begins with the drain of the one before; a dry part of the day begins with a drain alone.
    private bool HandsAreFree(Regimen regimen)
    {
        if (regimen.Day.IsEmpty || (goals.HandWindows.IsEmpty && goals.CarerWindows.IsEmpty && goals.MostHandExchanges is null) || Possible(regimen) == DropReason.NotPossible)
        {
            return true;
        }

        var schedule = regimen.UsualSchedule;
        var hands = schedule.Day[..(schedule.DayEndsDry ? ^0 : ^1)];
        return hands.Length <= (goals.MostHandExchanges ?? int.MaxValue)
            && hands.All(leg => regimen.NightStart.AddMinutes(leg.DrainStart) is var time && CarerIsThere(time) && IsWithin(goals.HandWindows, time));
    }

    private bool CarerIsThere(TimeOnly time) => IsWithin(goals.CarerWindows, time);

    private static bool IsWithin(ImmutableArray<ClockWindow> windows, TimeOnly time) =>
        windows.IsEmpty || windows.Any(window => window.Contains(time, TimeSpan.Zero));

    private static DropReason? Possible(Regimen regimen)
    {
        var isShort = false;
        foreach (var finding in regimen.Findings)
        {
            if (finding.Severity == Severity.Error)
            {
                return DropReason.NotPossible;
            }

            isShort |= finding.Code == "short-dwell";
        }

        return isShort ? DropReason.DwellTooShort : null;
    }
}
