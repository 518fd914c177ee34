namespace Transport;

/// <summary>A rhythm as a ring of phases, and what was seen on the way around.</summary>
internal sealed class RegimenRing
{
    private const double SteadyTolerance = 1e-9;
    private const int MostDays = 60;

    // A tenth of the contents goes from cycle to cycle: after so many days what still differs is the integrator's, which steps otherwise when its start moves by a hair.
    private const int DaysToForget = 8;

    private readonly CavityRun run;
    private readonly RegimenPlan plan;
    private readonly Regimen fallback;
    private readonly int solutes;
    private readonly int stateSize;
    private readonly PhaseRecord[] records;
    private readonly double[] drained;
    private readonly double[] times;
    private readonly double[] states;

    /// <param name="run">Runs the phases.</param>
    /// <param name="plan">The phases.</param>
    /// <param name="fallback">The regimen whose settings hold on a day without any.</param>
    /// <param name="solutes">How many solutes are followed.</param>
    public RegimenRing(CavityRun run, RegimenPlan plan, Regimen fallback, int solutes)
    {
        this.run = run;
        this.plan = plan;
        this.fallback = fallback;
        this.solutes = solutes;
        stateSize = run.State.Length;
        records = new PhaseRecord[plan.Count];
        drained = new double[plan.Count * solutes];
        times = new double[plan.Count + 1];
        states = new double[(plan.Count + 1) * stateSize];
    }

    public RegimenPlan Plan => plan;

    public double Period => plan.Days * RegimenSchedule.MinutesPerDay;

    public ref readonly PhaseRecord this[int phase] => ref records[phase];

    /// <summary>What a phase drained of each solute, µmol.</summary>
    public ReadOnlySpan<double> DrainedBy(int phase) => drained.AsSpan(phase * solutes, solutes);

    /// <summary>The whole state at the start of a phase; at the end of the ring where there is no such phase.</summary>
    public Span<double> StartOf(int phase) => states.AsSpan(phase * stateSize, stateSize);

    /// <summary>When a phase started, min.</summary>
    public double TimeOf(int phase) => times[phase];

    /// <summary>
    /// Around until the cavity meets, at the start of a phase, what it was there one period earlier; from there on every phase would repeat what is on
    /// record. Only the residual is carried from cycle to cycle, a tenth of the contents and half forgotten, so that a day and about six
    /// cycles suffice. With loose tolerances of integration it meets itself only to these. Pools are not compared: they are to be held.
    /// </summary>
    public void Settle(RunControl control)
    {
        for (var rounds = 0; rounds < Math.Max(2, MostDays / plan.Days); rounds++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            for (var k = 0; k < plan.Count; k++)
            {
                if (rounds > 0 && RepeatsItself(k, rounds * plan.Days < DaysToForget ? SteadyTolerance : Math.Max(SteadyTolerance, run.RelativeTolerance)))
                {
                    Restart();
                    Keep(plan.Count);
                    return;
                }

                RunPhase(k);
            }

            run.TurnBack(Period);
        }

        throw new IntegrationException(run.Time, $"the rhythm of the day did not settle in {MostDays} days.");
    }

    /// <summary>Once around from where the run stands.</summary>
    public void Once(RunControl control)
    {
        for (var k = 0; k < plan.Count; k++)
        {
            if (plan[k].Kind == RegimenPhase.EveningDrain)
            {
                control.Cancellation.ThrowIfCancellationRequested();
            }

            RunPhase(k);
        }

        Keep(plan.Count);
        run.EndSampling();
    }

    /// <summary>Back to the start of the ring as it is on record.</summary>
    public void Restart()
    {
        run.Time = times[0];
        var start = StartOf(0);
        for (var i = 0; i < stateSize; i++)
        {
            run.State[i] = Real.Of(start[i]);
        }
    }

    private void RunPhase(int k)
    {
        Keep(k);
        run.Run(plan[k], plan[k].Regimen ?? fallback, out records[k], drained.AsSpan(k * solutes, solutes));
    }

    private bool RepeatsItself(int phase, double tolerance)
    {
        var before = StartOf(phase);
        for (var i = 0; i < run.CavitySize; i++)
        {
            var (now, then) = (run.State[i].Value, before[i]);
            if (Math.Abs(now - then) > tolerance * Math.Max(Math.Abs(then), 1e-3))
            {
                return false;
            }
        }

        return Math.Abs(run.Time - times[phase]) <= tolerance * RegimenSchedule.MinutesPerDay;
    }

    private void Keep(int phase)
    {
        times[phase] = run.Time;
        var here = StartOf(phase);
        for (var i = 0; i < stateSize; i++)
        {
            here[i] = run.State[i].Value;
        }
    }
}
