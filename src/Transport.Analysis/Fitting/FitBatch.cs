namespace Transport.Analysis;

/// <summary>Fits many tests in one call, over all cores. A test that cannot be fitted costs the others nothing.</summary>
public static class FitBatch
{
    /// <summary>One outcome for each test, in their order; each is what <see cref="MembraneFit"/> makes of the test alone.</summary>
    /// <param name="tests">The tests, each of one person.</param>
    /// <param name="options">How; the same for all.</param>
    /// <param name="control">Watches and stops, between tests.</param>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static IReadOnlyList<FitOutcome> Run(IReadOnlyList<EquilibrationTest> tests, MembraneFitOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(tests);
        var outcomes = new FitOutcome[tests.Count];
        ParallelRuns.Run(
            tests.Count, Environment.ProcessorCount, control ?? RunControl.None, 0, 1, () => outcomes, (into, i) => into[i] = Outcome(i, tests[i], options));
        return outcomes;
    }

    private static FitOutcome Outcome(int index, EquilibrationTest test, MembraneFitOptions? options)
    {
        try
        {
            return new(index, MembraneFit.Run(test, options), null);
        }
        catch (Exception failure) when (failure is ArgumentException or IntegrationException)
        {
            return new(index, null, new(Severity.Error, "fit-not-possible", failure.Message));
        }
    }
}
