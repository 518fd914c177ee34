using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>Simulates many dwells, each with its own patient, membrane and fluid.</summary>
public static class DwellBatch
{
    /// <summary>Dwells that a worker takes at a time: well below 20 ms of work, and many lanes.</summary>
    internal const int ShareSize = 256;

    /// <summary>Samples of many dwells.</summary>
    /// <remarks>
    /// Eight or four dwells share a vector and a step, which the most demanding of them chooses, so each is at least as exact as alone. A dwell's
    /// neighbors are the most alike of the 256 among which it stands in the list: neither cores nor order of work change a result. A dwell that fails takes its neighbours back to
    /// being simulated alone, and nothing else.
    /// </remarks>
    /// <param name="dwells">The dwells. Those of icodextrin have one polymer; its fractions join the panel.</param>
    /// <param name="times">When to sample, in order, from 0 on, to the end of the shortest dwell at most.</param>
    /// <param name="options">Which solutes, how carefully, on how many cores.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">There is no dwell or no time, or the times are not in order.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static DwellSamples Run(
        IReadOnlyList<DwellCase> dwells, IEnumerable<TimeSpan> times, DwellBatchOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(dwells);
        options ??= DwellBatchOptions.Default;
        var polymer = dwells.Select(at => at.Dwell.Solution.Polymer).FirstOrDefault(found => found is not null);
        options = options with { Panel = options.Panel.With(polymer) };
        var samples = new DwellSamples(options.Panel, times, dwells.Count);
        Run(dwells, samples, options, control);
        return samples;
    }

    /// <summary>The same, into samples that exist. Nothing is allocated for a dwell.</summary>
    /// <param name="dwells">The dwells, as many as there is room for.</param>
    /// <param name="into">Where to; what it held is gone. Stopped runs leave it half written.</param>
    /// <param name="options">As above; the panel must be that of the samples.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">The samples are for another number of dwells or another panel.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static void Run(IReadOnlyList<DwellCase> dwells, DwellSamples into, DwellBatchOptions? options = null, RunControl? control = null)
    {
        // The one place where the width is chosen.
        if (Vector512.IsHardwareAccelerated)
        {
            Run<Lanes8>(dwells, into, options, control);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            Run<Lanes4>(dwells, into, options, control);
        }
        else
        {
            Run<Real>(dwells, into, options, control);
        }
    }

    internal static void Run<T>(IReadOnlyList<DwellCase> dwells, DwellSamples into, DwellBatchOptions? options, RunControl? control)
        where T : struct, ILane<T>
    {
        ArgumentNullException.ThrowIfNull(dwells);
        ArgumentNullException.ThrowIfNull(into);
        options ??= DwellBatchOptions.Default;
        if (dwells.Count != into.Count || into.Panel != options.Panel)
        {
            throw new ArgumentException("Expected room for as many dwells as there are, and their panel.", nameof(into));
        }

        into.Clear();
        var shares = (dwells.Count + ShareSize - 1) / ShareSize;
        ParallelRuns.Run(
            shares, options.Workers, control ?? RunControl.None, 0, 1, () => new DwellBatchWorkspace<T>(into, options.Integration), (workspace, share) =>
            {
                var first = share * ShareSize;
                workspace.Run(dwells, first, Math.Min(ShareSize, dwells.Count - first));
            });
        into.Finish();
    }
}
