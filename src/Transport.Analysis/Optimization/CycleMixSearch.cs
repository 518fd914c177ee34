namespace Transport.Analysis;

/// <summary>Searches nights of any cycles by a linear programme in whole numbers, and judges what it finds by simulation.</summary>
/// <remarks>
/// <para>Each kind of cycle is simulated in a rhythm of its own, which gives what it removes, clears, absorbs and takes in time. Sums of these are linear in how many there are of
/// each kind, so the least glucose that keeps fluid, clearance and time is a linear programme, as in the published method of two phases (Öberg, Perit Dial Int 2021, doi
/// 10.1177/08968608211010055, abstract read). With parts of cycles it is a bound, with whole ones a candidate.</para>
/// <para>Cycles do act on each other, by what the drain leaves behind. So candidates are looked for at several places of the fluid range, and
/// <see cref="RegimenSearch"/> simulates and judges each, over the ensemble too; the gap to the bound says how much may be left. The bound is that of cycles that do not act on
/// each other: exact to about what the carried-over fluid changes (docs/concepts/search.md has figures).</para>
/// </remarks>
public static class CycleMixSearch
{
    // Nights and days that are looked at in whole cycles: those with the lowest bounds; and where in the fluid range.
    private const int Pairs = 4;
    private const double Gap = 0.02;
    private static readonly double[] Places = [0.1, 0.35, 0.6];

    /// <summary>The options among nights of any cycles.</summary>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes.</param>
    /// <param name="goals">What is wanted.</param>
    /// <param name="space">What nights and days are made of.</param>
    /// <param name="grid">Regimens that are looked at besides, so that the answer is never worse than theirs; null: none.</param>
    /// <param name="present">What the patient does now.</param>
    /// <param name="options">How to go about it.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">The space holds no cycle that the limits allow, or neither a mix nor the grid gives a regimen.</exception>
    /// <exception cref="InvalidOperationException">The solver has no library for this platform.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static CycleMixFront Run(
        Patient patient,
        MembraneEnsemble ensemble,
        RegimenGoals goals,
        CycleMixSpace space,
        RegimenSpace? grid = null,
        Regimen? present = null,
        RegimenSearchOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentNullException.ThrowIfNull(space);
        options ??= RegimenSearchOptions.Default;
        control ??= RunControl.None;
        ensemble = options.Layers.AtNight(ensemble);
        var yields = new CycleYields(patient, ensemble.Center, goals, space, options);
        List<(TimeSpan Length, int Day, double Bound)> relaxed = [];
        foreach (var length in space.NightLengths.Distinct().Where(length => length <= goals.LongestNight))
        {
            for (var day = 0; day < space.DayFills.Length; day++)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                if (yields.Programme(length, day, 0) is { } programme && programme.Solve(yields.Glucose, isWhole: false) is { } parts)
                {
                    relaxed.Add((length, day, yields.GlucoseOf(parts, length, day)));
                }
            }
        }

        List<Regimen> candidates = [];
        foreach (var (length, day, _) in relaxed.OrderBy(pair => pair.Bound).ThenBy(pair => pair.Length).ThenBy(pair => pair.Day).Take(Pairs))
        {
            foreach (var place in Places)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                if (yields.Programme(length, day, place)?.Solve(yields.Cost, isWhole: true, Gap) is { } whole && yields.ToRegimen(whole, length, day) is { } regimen && !candidates.Contains(regimen))
                {
                    candidates.Add(regimen);
                }
            }
        }

        var all = (grid ?? new RegimenSpace { VolumesPerCycle = [], Cycles = [], NightLengths = [], DayFills = [] }) with
        {
            Others = [.. candidates],
            NightStart = space.NightStart,
        };
        var front = RegimenSearch.Run(patient, ensemble, goals, all, present, options, control);
        Mass? bound = relaxed.Count > 0 ? Mass.FromGrams(relaxed.Min(pair => pair.Bound)) : null;
        double? best = front.NothingMeets is null && front.Options.Length > 0 ? front.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams) : null;
        return new(front, yields.Count, space.Count, bound, bound is { Grams: > 0 } least && best is { } grams ? grams / least.Grams - 1 : null);
    }
}
