using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Whether the measurements of one test go together: whether a membrane that adults near the start of dialysis have gives all of them in one dwell.</summary>
/// <remarks>
/// The fit judges (<see cref="FitStatus.DataContradictModel"/>), with twice the prior's spread of transfer: very fast and very slow people have findings of their own, and contradict nothing. Of
/// people drawn from the prior and from a published spread of membranes, with the errors of laboratory and scale, it calls at most 1 in 200 a contradiction; of draws from the means and standard
/// deviations of two series in print at most 1 in 100. A test counts both again. Of the much wider spread of a series of 1987 it calls 18 of 500 one, 16 of them with an ultrafiltration below
/// −100 mL (computed): among them may be people with a true loss of ultrafiltration.
/// </remarks>
public static class TestCoherence
{
    private static readonly MembraneFitOptions Options = MembraneFitOptions.Default with
    {
        Prior = MembraneFitOptions.Default.Prior with { DiffusionAreaLogDeviation = 2 * MembraneFitOptions.Default.Prior.DiffusionAreaLogDeviation },
    };

    /// <summary>Fits the test, and where its measurements contradict each other, once more without each of them.</summary>
    /// <param name="test">The test. Of another agent than glucose, or of a bag whose strength is in doubt, nothing is said.</param>
    /// <returns>What contradicts what; null where all go together, or nothing of the test can be fitted.</returns>
    /// <exception cref="ArgumentNullException">The test is null.</exception>
    public static Finding? Run(EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        if (test.IsStrengthInDoubt || test.Solution.Agent != OsmoticAgent.Glucose || Fit(test) is not { Status: FitStatus.DataContradictModel } fit)
        {
            return null;
        }

        var exchange = fit.Exchanges[0];
        List<FitResidual> alone = [.. Enumerable.Range(0, exchange.Observations.Count).Where(i => exchange.Observations[i].IsFitted).Select(i => WithoutOne(exchange, i)).OfType<FitResidual>()];
        return new(
            Severity.Warning, "test-contradicts-itself", $"The measurements hardly go together: no membrane that adults near the start of dialysis have gives all of them in one dwell. {Where(alone, test)}");
    }

    private static string Where(List<FitResidual> alone, EquilibrationTest test)
    {
        if (alone.Count == 0)
        {
            return "Leaving out a single one does not mend it: check bag, volumes and the order of the samples.";
        }

        var volume = alone.Find(one => one.Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters);
        var isSample = alone.Exists(one => one.Observation.Quantity != ObservedQuantity.NetUltrafiltrationMilliliters);
        return $"{(alone.Count == 1 ? "Without this one the rest agrees" : "Without any one of these the rest agrees")}: {string.Join("; ", alone.Select(Beside))}. Check "
            + string.Join(" and ", new[]
            {
                volume is not null ? "the drain (weight, tare, what else it counts, incomplete, a leak)" : null,
                isSample ? "the sample (swapped, late, mistyped)" : null,
            }.OfType<string>())
            + (volume is not null && volume.Observation.Value < volume.Predicted ? TooLow(volume.Observation, test) : " first; a membrane unlike most comes last.");
    }

    // The prior is that of people near the start of dialysis: too little fluid may be what years have done. A conductance of nothing draws nothing, and people lose what they take up, 1.5 mL/min in the
    // mean of 249 (read); what lies below that by more than two standard deviations of the volumes (choice) no conductance explains.
    private static string TooLow(Observation volume, EquilibrationTest test)
    {
        var uptake = LumpedMembrane.Typical.ScaledTo(test.Patient.BodySurface).FluidAbsorption.MillilitersPerMinute * volume.Time.TotalMinutes;
        return volume.Value < -uptake - 2 * volume.Deviation
            ? Invariant($" first: no osmotic conductance, however low, explains so great a loss, for a bag that draws nothing loses about {Math.Round(uptake / 10) * 10:0} mL in this time; a leak, fluid left inside or a much faster uptake may.")
            : $" first; in somebody long on dialysis a low osmotic conductance may be as likely: repeat the test{(test.Dialysate.Any(sample => sample.Time == TimeSpan.FromHours(1) && sample.Sodium is not null) ? "" : ", with sodium at 60 min")}.";
    }

    private static string Beside(FitResidual one) => one.Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters
        ? Invariant($"net ultrafiltration {one.Observation.Value:0;−0;0} mL at {one.Observation.Time.TotalMinutes:0} min, where the rest goes with about {Math.Round(one.Predicted / 10) * 10:0;−0;0} mL")
        : Invariant($"{one.Observation.Quantity.Name()} {one.Observation.Value:0.00} at {one.Observation.Time.TotalMinutes:0} min, where the rest goes with about {one.Predicted:0.00}");

    // What the others let expect of it; null where they contradict each other without it as well, or nothing is left of them.
    private static FitResidual? WithoutOne(ObservedExchange exchange, int left)
    {
        var rest = exchange with { Observations = [.. exchange.Observations.Select((one, i) => i == left ? one with { IsFitted = false } : one)] };
        return Fit(() => MembraneFit.Run([rest], Options)) is { Status: not (FitStatus.DataContradictModel or FitStatus.IterationLimit) } fit ? fit.Residuals[left] : null;
    }

    private static FittedMembrane? Fit(EquilibrationTest test) => Fit(() => MembraneFit.Run(test, Options));

    private static FittedMembrane? Fit(Func<FittedMembrane> run)
    {
        try
        {
            return run();
        }
        catch (Exception failure) when (failure is ArgumentException or IntegrationException)
        {
            return null;
        }
    }
}
