using System.Collections.Immutable;
using System.Globalization;

namespace Transport.Analysis;

/// <summary>Asks how a choice changes if the membrane is at the edges of what the data allow, the kidneys fail, or time is lost.</summary>
public static class RegimenSensitivity
{
    private static readonly TimeSpan Lost = TimeSpan.FromHours(2);

    /// <summary>The chosen regimen under other conditions, one at a time, and what the search would then list first.</summary>
    /// <remarks>
    /// An edge is the member of the ensemble that stands at 5 or 95 % in order of the parameter, with its own other parameters. The search is asked at that
    /// membrane alone, so without the goals' bounds over an ensemble. Where residual function falls, the fluid range rises by the urine that is lost.
    /// </remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes.</param>
    /// <param name="goals">The goals.</param>
    /// <param name="space">Where to look.</param>
    /// <param name="chosen">The regimen that was chosen.</param>
    /// <param name="options">How to go about it.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="RegimenException">The chosen regimen cannot be carried out.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ImmutableArray<SensitivityRow> Run(
        Patient patient,
        MembraneEnsemble ensemble,
        RegimenGoals goals,
        RegimenSpace space,
        Regimen chosen,
        RegimenSearchOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentNullException.ThrowIfNull(chosen);
        options ??= RegimenSearchOptions.Default;
        control ??= RunControl.None;
        ensemble = options.Layers.AtNight(ensemble);
        chosen.OrThrow();
        var byArea = Enumerable.Range(0, ensemble.Count).OrderBy(member => ensemble.DiffusionAreas[member]).ToArray();
        var byWater = Enumerable.Range(0, ensemble.Count).OrderBy(member => ensemble.UltrafiltrationCoefficients[member]).ToArray();
        var lying = options.Layers.Posture.LargestAreaFactor;
        var shorter = chosen with
        {
            NightLength = chosen.NightLength - Lost,
            Night = [.. chosen.Night.Select(exchange => exchange with { DwellTime = null })],
        };
        var hasKidneys = patient.ResidualFunction.UrineVolumePerDay > default(Volume) || patient.ResidualFunction.UreaClearance > default(Clearance);
        (string What, double Share)[] kidneys = hasKidneys ? [("half of the residual kidney function", 0.5), ("no residual kidney function", 0)] : [];
        (string What, Patient Patient, ThreePoreMembrane Membrane, RegimenGoals Goals, Regimen Regimen, TimeSpan Lost)[] cases =
        [
            ("the membrane as fast as 1 draw in 20", patient, Member(byArea, 0.95), goals, chosen, default),
            ("the membrane as slow as 1 draw in 20", patient, Member(byArea, 0.05), goals, chosen, default),
            ("water passing as badly as in 1 draw in 20", patient, Member(byWater, 0.05), goals, chosen, default),
            (Larger("for solutes alone"), patient, Lying(1), goals, chosen, default),
            (Larger("for solutes and water"), patient, Lying(lying), goals, chosen, default),
            .. kidneys.Select(left => (left.What, With(left.Share), ensemble.Center, Falling(left.Share), chosen, default(TimeSpan))),
            ("two hours of every night lost", patient, ensemble.Center, goals, shorter, Lost),
        ];
        return [.. cases.Select(one => Row(one.What, one.Patient, one.Membrane, one.Goals, space, one.Regimen, chosen, one.Lost, options, control))];

        ThreePoreMembrane Member(int[] order, double share) => ensemble[order[(int)Math.Round(share * (order.Length - 1))]];

        string Larger(string forWhat) => Text($"an exchange surface {100 * (lying - 1):0} % larger at night, lying, {forWhat}");

        ThreePoreMembrane Lying(double conductance) => ensemble.Center with { LyingAreaFactor = lying, LyingConductanceFactor = conductance };

        Patient With(double share) => Left(patient, share);

        RegimenGoals Falling(double share) => Left(goals, patient, share);
    }

    /// <summary>The chosen regimen as the kidneys fail: on each day whether it still meets the goals, and what the search would then list first.</summary>
    /// <remarks>At the ensemble's center, without bounds over its members; the fluid range rises by the urine that is lost.</remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes.</param>
    /// <param name="goals">The goals.</param>
    /// <param name="space">Where to look.</param>
    /// <param name="chosen">The regimen that was chosen.</param>
    /// <param name="decline">How the function is expected to fall.</param>
    /// <param name="days">On which days.</param>
    /// <param name="options">How to go about it.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="RegimenException">The chosen regimen cannot be carried out.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ImmutableArray<SensitivityRow> AsKidneysFail(
        Patient patient,
        MembraneEnsemble ensemble,
        RegimenGoals goals,
        RegimenSpace space,
        Regimen chosen,
        RenalDecline decline,
        IReadOnlyList<DateOnly> days,
        RegimenSearchOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentNullException.ThrowIfNull(space);
        ArgumentNullException.ThrowIfNull(chosen);
        ArgumentNullException.ThrowIfNull(decline);
        ArgumentNullException.ThrowIfNull(days);
        chosen.OrThrow();
        options ??= RegimenSearchOptions.Default;
        ensemble = options.Layers.AtNight(ensemble);
        return [.. days.Select(day =>
        {
            var share = decline.ShareOn(day, patient.ResidualFunction);
            return Row(
                Text($"the residual kidney function of {RenalDecline.Words(day)} ({100 * share:0} % of today's)"),
                Left(patient, share),
                ensemble.Center,
                Left(goals, patient, share),
                space,
                chosen,
                chosen,
                default,
                options,
                control ?? RunControl.None);
        })];
    }

    private static SensitivityRow Row(
        string what,
        Patient patient,
        ThreePoreMembrane membrane,
        RegimenGoals goals,
        RegimenSpace space,
        Regimen regimen,
        Regimen chosen,
        TimeSpan lost,
        RegimenSearchOptions options,
        RunControl control)
    {
        control.Cancellation.ThrowIfCancellationRequested();
        var isPossible = regimen.Findings.All(finding => finding.Severity != Severity.Error);
        var then = new Candidate(0, isPossible ? regimen : chosen);
        var outcome = isPossible ? RegimenSimulation.Run(patient, membrane, regimen, options.Simulation) : null;
        if (outcome is not null)
        {
            then.Take(outcome, new(patient, options.Simulation, goals.Pressure), options);
        }

        var meets = isPossible && new CenterJudge(patient, goals).Judge(then) is null;
        var nights = space with { NightLengths = [.. space.NightLengths.Select(length => length - lost).Where(length => length > TimeSpan.FromHours(1))] };
        var front = RegimenSearch.Run(
            patient, MembraneEnsemble.Of(membrane), goals with { Bounds = [] }, nights, null, options with { Simulation = options.Plain, Layers = options.Layers with { Holds = options.Layers.OfDwells } }, control);
        var wouldBe = front.NothingMeets is null && front.Options.Length > 0 ? front.Options[0].Regimen : null;
        return new(what, outcome, meets, wouldBe, Words(what, then, isPossible, meets, wouldBe, goals, OptionWords.Dose(patient.ResidualFunction)));
    }

    private static Patient Left(Patient patient, double share) => patient with
    {
        // None at all is known; a share of what was not stated is not.
        ResidualFunction = share <= 0 ? ResidualFunction.None : patient.ResidualFunction with
        {
            UreaClearance = patient.ResidualFunction.UreaClearance * share,
            CreatinineClearance = patient.ResidualFunction.CreatinineClearance * share,
            UrineVolumePerDay = patient.ResidualFunction.UrineVolumePerDay * share,
        },
    };

    private static RegimenGoals Left(RegimenGoals goals, Patient patient, double share)
    {
        var more = patient.ResidualFunction.UrineVolumePerDay * (1 - share);
        return goals with { Fluid = FluidTarget.Between(goals.Fluid.Floor + more, goals.Fluid.Ceiling + more) };
    }

    /// <summary>The urine and the residual clearance at which an option stops meeting the floor of the fluid range or the clearance goal.</summary>
    /// <remarks>
    /// Exact while plasma is constant: the peritoneal share of Kt/V does not depend on the kidneys, the renal share is in proportion to them, and every mL of
    /// urine that is missing has to be removed otherwise. By the middle of the option's bands.
    /// </remarks>
    /// <param name="option">The option.</param>
    /// <param name="goals">The goals.</param>
    /// <param name="decline">How the function is expected to fall, so that the day can be named; null: not stated.</param>
    public static RenalReserve ReserveOf(RegimenOption option, RegimenGoals goals, RenalDecline? decline = null)
    {
        ArgumentNullException.ThrowIfNull(option);
        ArgumentNullException.ThrowIfNull(goals);
        var kidneys = option.Outcome.Patient.ResidualFunction;
        var dose = option.Outcome.UreaDose;
        var urine = kidneys.UrineVolumePerDay.Milliliters;
        var byClearance = Needed((goals.Clearance?.Least ?? 0) - dose.PeritonealKtOverV, dose.RenalKtOverV);
        var byFluid = Needed(goals.Fluid.Floor.Milliliters + urine - option.Ultrafiltration.Median.Milliliters, urine);
        var share = Math.Max(byClearance, byFluid);
        if (share <= 0)
        {
            return new(0, CenterGoal.None, "It meets floor and clearance without any residual kidney function.");
        }

        var first = byFluid >= byClearance ? CenterGoal.FluidFloor : CenterGoal.Clearance;
        var goal = first == CenterGoal.FluidFloor ? "fluid floor" : "clearance goal";
        var urea = kidneys.IsUreaClearanceKnown ? Text($" and residual urea clearance below {share * kidneys.UreaClearance.MillilitersPerMinute:0.0} mL/min") : "";
        var isKnown = first == CenterGoal.FluidFloor ? kidneys.IsUrineStated : kidneys.IsUreaClearanceKnown;
        var words = double.IsPositiveInfinity(share) && !isKnown
            ? Text($"By the peritoneum alone it does not come up to the {goal}; {(first == CenterGoal.FluidFloor ? "urine" : kidneys.Missing)} was not stated.")
            : double.IsPositiveInfinity(share)
            ? Text($"It does not come up to the {goal}, and there is no residual function today that could make up for it.")
            : share > 1
            ? Text($"It does not come up to the {goal} with today's residual function.")
            : Text($"It stops meeting the {goal} when urine falls below about {share * urine:0} mL a day{urea} ({100 * share:0} % of today's).");
        if (share > 1 || decline is null)
        {
            return new(double.IsFinite(share) ? share : null, first, words);
        }

        var until = decline.DayOf(share, kidneys);
        var rate = Text($" With {decline.FiltrationRateLostPerMonth.MillilitersPerMinute:0.00} mL/min of filtration rate lost in 30 days ");
        return new(share, first, words + rate + (until is { } day ? $"that is about {RenalDecline.Words(day)}, by the middle of the bands: of the membranes that fit the test half get there sooner." : "it does not come to that."), until);

        static double Needed(double missing, double whole) => missing <= 0 ? 0 : whole > 0 ? missing / whole : double.PositiveInfinity;
    }

    private static string Words(string what, Candidate then, bool isPossible, bool meets, Regimen? wouldBe, RegimenGoals goals, string dose)
    {
        var result = isPossible
            ? Text($"With {what}: {then.Ultrafiltration:0} mL of ultrafiltration where {goals.Fluid} are asked for, {dose} {then.UreaDose:0.00}; fluid range and clearance goal are {(meets ? "still met" : "missed")}, by this one membrane.")
            : Text($"With {what} the regimen cannot be carried out.");
        return result + (wouldBe is null ? " Nothing that was looked at would meet them." : $" The search would list first: {wouldBe}.");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
