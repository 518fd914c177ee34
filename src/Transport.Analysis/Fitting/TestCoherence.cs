using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Whether the measurements of one test go together: whether a membrane that adults near the start of dialysis have gives all of them in one dwell.</summary>
/// <remarks>
/// The fit judges (<see cref="FitStatus.DataContradictModel"/>), with twice the prior's spread of transfer: very fast and very slow people have findings of their own, and contradict nothing. Of
/// people drawn from the prior, with the errors of laboratory and scale, it calls at most one in two hundred a contradiction, of draws from published means and spreads at most one in a hundred (of the
/// wide ones of 1987 one in thirty: docs/concepts/fitting.md), which a test counts again.
/// </remarks>
public static class TestCoherence
{
    private static readonly MembraneFitOptions Options = MembraneFitOptions.Default with
    {
        Prior = MembraneFitOptions.Default.Prior with { DiffusionAreaLogDeviation = 2 * MembraneFitOptions.Default.Prior.DiffusionAreaLogDeviation },
    };

    /// <summary>Fits the test, and where its measurements contradict each other, once more without each of them.</summary>
    /// <param name="test">The test.</param>
    /// <exception cref="ArgumentNullException">No test.</exception>
    /// <returns>What contradicts what; null where all go together, or nothing of the test can be fitted.</returns>
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
            Severity.Warning, "test-contradicts-itself", $"The measurements hardly go together: no membrane that adults near the start of dialysis have gives all of them in one dwell. {Where(alone)}");
    }

    private static string Where(List<FitResidual> alone)
    {
        if (alone.Count == 0)
        {
            return "Leaving out a single one does not mend it: check bag, volumes and the order of the samples.";
        }

        var isVolume = alone.Exists(one => one.Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters);
        var isSample = alone.Exists(one => one.Observation.Quantity != ObservedQuantity.NetUltrafiltrationMilliliters);
        return $"{(alone.Count == 1 ? "Without this one the rest agrees" : "Without any one of these the rest agrees")}: {string.Join("; ", alone.Select(Beside))}. Check "
            + string.Join(" and ", new[]
            {
                isVolume ? "the drain (weight, tare, what else it counts, incomplete, a leak)" : null,
                isSample ? "the sample (swapped, late, mistyped)" : null,
            }.OfType<string>())
            + " first; a membrane unlike most comes last." + (alone.Exists(one => one.Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters && one.Observation.Value < one.Predicted)
                ? " In somebody long on dialysis a low osmotic conductance is as likely: repeat the test, with sodium at 60 min." : "");
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
