namespace Transport.Benchmarks;

/// <summary>The phases of one regimen, given to CVODE one by one: fills, dwells, drains, a day and the six cycles after it that settle the rhythm.</summary>
internal sealed class NightPeer
{
    private const int Cycles = 6;
    private const double Fill = 2000;
    private const double Residual = 250;

    public static readonly Regimen Regimen = Regimen.Cycling(
        TimeSpan.FromHours(9),
        Cycles,
        Volume.FromMilliliters(Fill),
        DialysisSolution.Glucose136,
        new(DialysisSolution.Glucose227, Volume.FromMilliliters(Fill)));

    private readonly CvodePeer peer;
    private readonly double[] start;
    private readonly double[] rest;
    private readonly double[] drain;
    private readonly double[] nightFill;
    private readonly double[] dayFill;
    private readonly double[] state;

    public NightPeer(CvodePeer peer, PeerProblem problem)
    {
        this.peer = peer;
        start = problem.Start(0);
        for (var i = start.Length - 1; i >= 0; i--)
        {
            start[i] *= Residual / start[0];
        }

        state = new double[start.Length];
        rest = problem.Coefficients(0);
        drain = problem.Coefficients(0, outflow: 200);
        nightFill = problem.Coefficients(0, DialysisSolution.Glucose136, inflowRate: 200);
        dayFill = problem.Coefficients(0, DialysisSolution.Glucose227, inflowRate: 200);
    }

    /// <summary>The state at the end.</summary>
    public double[] Run()
    {
        start.CopyTo(state, 0);
        var time = 0.0;
        Night(0, ref time);
        Phase(dayFill, time, time + Fill / 200, -1, ref time);
        Phase(rest, time, 1430, -1, ref time);
        Phase(drain, 1430, 1440, Residual, ref time);
        Night(1440, ref time);
        return state;
    }

    private void Night(double begin, ref double time)
    {
        const double cycle = 540.0 / Cycles;
        for (var k = 0; k < Cycles; k++)
        {
            var instilled = time;
            Phase(nightFill, instilled, time + Fill / 200, -1, ref time);
            Phase(rest, instilled, begin + (k + 1) * cycle - 12, -1, ref time);
            Phase(drain, instilled, time + 60, Residual, ref time);
        }
    }

    private void Phase(double[] coefficients, double instilled, double end, double target, ref double time) =>
        peer.Phase(coefficients, instilled, end, target, ref time, state);
}
