namespace Transport.Analysis;

/// <summary>Many runs at once, one workspace for each worker. Results go to their own places, so their order does not matter.</summary>
internal static class ParallelRuns
{
    /// <param name="count">How many.</param>
    /// <param name="workers">At most at a time.</param>
    /// <param name="control">Watches and stops.</param>
    /// <param name="from">Finished share at the start.</param>
    /// <param name="to">Finished share at the end.</param>
    /// <param name="work">One run.</param>
    public static void Run(int count, int workers, RunControl control, double from, double to, Action<RegimenWorkspace, int> work)
    {
        var done = 0;
        var reported = 0;
        var gate = new Lock();
        var options = new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, workers), CancellationToken = control.Cancellation };
        Parallel.For(
            0,
            count,
            options,
            () => new RegimenWorkspace(),
            (i, _, workspace) =>
            {
                work(workspace, i);
                if (control.Progress is { } progress)
                {
                    lock (gate)
                    {
                        done++;
                        var percent = 100 * done / count;
                        if (percent > reported)
                        {
                            reported = percent;
                            progress.Report(from + (to - from) * percent / 100);
                        }
                    }
                }

                return workspace;
            },
            _ => { });
    }
}
