using System.Runtime.ExceptionServices;

namespace Transport;

/// <summary>Many runs at once, one workspace for each worker. Results go to their own places, so their order does not matter.</summary>
internal static class ParallelRuns
{
    /// <param name="count">How many.</param>
    /// <param name="workers">At most at a time.</param>
    /// <param name="control">Watches and stops, between runs.</param>
    /// <param name="from">Finished share at the start.</param>
    /// <param name="to">Finished share at the end.</param>
    /// <param name="workspace">Makes what a worker works in.</param>
    /// <param name="work">One run.</param>
    /// <exception cref="OperationCanceledException">The runs were stopped.</exception>
    public static void Run<TWorkspace>(
        int count, int workers, RunControl control, double from, double to, Func<TWorkspace> workspace, Action<TWorkspace, int> work)
    {
        var next = -1;
        var done = 0;
        var reported = 0;
        var gate = new Lock();
        workers = Math.Clamp(workers, 1, Math.Max(1, count));
        var options = new ParallelOptions { MaxDegreeOfParallelism = workers, CancellationToken = control.Cancellation };
        try
        {
            Parallel.For(0, workers, options, _ =>
            {
                // Each worker takes the next run there is: nothing is made for a run, and none waits for a slow one.
                var own = workspace();
                while (Interlocked.Increment(ref next) is var i && i < count)
                {
                    control.Cancellation.ThrowIfCancellationRequested();
                    work(own, i);
                    Report();
                }
            });
        }
        catch (AggregateException failures)
        {
            // Nobody else needs to know that there were several workers.
            ExceptionDispatchInfo.Throw(failures.InnerExceptions[0]);
        }

        void Report()
        {
            if (control.Progress is not { } progress)
            {
                return;
            }

            lock (gate)
            {
                done++;
                var percent = (int)(100L * done / count);
                if (percent > reported)
                {
                    reported = percent;
                    progress.Report(from + (to - from) * percent / 100);
                }
            }
        }
    }
}
