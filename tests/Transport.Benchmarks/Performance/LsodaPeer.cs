namespace Transport.Benchmarks;

/// <summary>SciPy's LSODA on the same equations. It times itself in a process of its own.</summary>
internal sealed record LsodaPeer(double Microseconds, double Error, double Tolerance)
{
    private const int Members = 20;

    /// <summary>The peer's timing; null where it is not installed.</summary>
    public static LsodaPeer? Run(PeerProblem problem)
    {
        return PythonPeer.Run<LsodaPeer>("lsoda_dwell.py", new
        {
            minutes = PeerProblem.Times.Select(time => time.TotalMinutes),
            scale = problem.Scale(),
            target = PeerProblem.Target,
            floors = PeerProblem.Floors(),
            cases = Enumerable.Range(0, Members).Select(i => new
            {
                coefficients = problem.Coefficients(i),
                start = problem.Start(i),
                reference = Concentrations(problem, i),
            }),
        });
    }

    // The program compares concentrations, the problem's references are over plasma.
    private static double[] Concentrations(PeerProblem problem, int member)
    {
        var reference = (double[])problem.References[member].Clone();
        var ones = problem.Observed([.. reference.Select(_ => 1.0)]);
        return [.. reference.Zip(ones, (ratio, perPlasma) => ratio / perPlasma)];
    }
}
