namespace Transport;

/// <summary>Finds the rhythm in which cavity and body end a period as they began it, and the generation that a plasma level asks for.</summary>
/// <remarks>
/// Unknown are the clock at the start, volume and amounts in the cavity, the plasma concentration of each pool, and each generation that is not
/// given. The cavity forgets its start in a day, a pool forgets e^(−KT/V) of it; with these as the Jacobian's guess Broyden's method needs
/// some six rounds where a body left to itself needs months.
/// </remarks>
internal sealed class BodyRhythm
{
    /// <summary>Relative, of each unknown; integrations are at least as careful.</summary>
    public const double Tolerance = 1e-9;

    private const int MostRounds = 60;

    private readonly CavityRun run;
    private readonly RegimenRing ring;
    private readonly BodyCondition[] conditions;
    private readonly int pools;
    private readonly int firstPool;
    private readonly int[] generations;
    private readonly double[] unknowns;
    private readonly double[] sizes;

    private BodyRhythm(CavityRun run, RegimenRing ring, BodyCondition[] conditions)
    {
        this.run = run;
        this.ring = ring;
        this.conditions = conditions;
        pools = conditions.Length;
        firstPool = 1 + run.CavitySize;
        generations = [.. Enumerable.Range(0, pools).Where(k => conditions[k].FindsGeneration)];
        unknowns = new double[firstPool + pools + generations.Length];
        sizes = new double[unknowns.Length];
    }

    /// <summary>From a ring that has settled with its pools held.</summary>
    /// <exception cref="IntegrationException">The rhythm was not found.</exception>
    public static void Settle(CavityRun run, RegimenRing ring, BodyCondition[] conditions, RunControl control)
    {
        var rhythm = new BodyRhythm(run, ring, conditions);
        var newton = new QuasiNewton(rhythm.Guess());
        run.HoldsPools = false;
        var miss = rhythm.Miss(control);
        var step = new double[miss.Length];
        for (var rounds = 0; rounds < MostRounds; rounds++)
        {
            newton.Step(miss, step);
            rhythm.Take(step);
            if (step.Max(part => Math.Abs(part)) <= Tolerance)
            {
                rhythm.Start();
                return;
            }

            var after = rhythm.Miss(control);
            newton.Learn(step, [.. after.Zip(miss, (now, then) => now - then)]);
            miss = after;
        }

        throw new IntegrationException(run.Time, $"the rhythm of cavity and body did not settle in {MostRounds} rounds.");
    }

    // The unknowns as the settled ring suggests them, and ∂(end − start)/∂start in units of their sizes.
    private double[,] Guess()
    {
        var jacobian = new double[unknowns.Length, unknowns.Length];
        unknowns[0] = ring.TimeOf(0);
        sizes[0] = 100;
        for (var i = 0; i < run.CavitySize; i++)
        {
            unknowns[1 + i] = ring.StartOf(0)[i];
        }

        for (var i = 0; i < firstPool; i++)
        {
            sizes[i] = i == 0 ? 100 : Math.Max(Math.Abs(unknowns[i]), 1e-6);
            jacobian[i, i] = -1;
        }

        var found = firstPool + pools;
        for (var k = 0; k < pools; k++)
        {
            var (condition, pool, at) = (conditions[k], run.Pools[k], firstPool + k);
            var clearance = Math.Max(Membrane(pool) + pool.OtherClearance, 1e-3);
            var level = condition.FindsGeneration ? condition.Level : pool.Generation / clearance;
            var rate = clearance / pool.Volume;
            var kept = Math.Exp(-rate * ring.Period);
            (unknowns[at], sizes[at]) = (level, level);
            jacobian[at, at] = kept - 1;
            jacobian[2 + pool.Solute, at] = unknowns[2 + pool.Solute] / condition.Level * level / sizes[2 + pool.Solute];
            if (!condition.FindsGeneration)
            {
                continue;
            }

            // Generation in units of what holds the level.
            (unknowns[found], sizes[found]) = (level * clearance, level * clearance);
            var share = double.IsNaN(condition.Minutes) ? (1 - kept) / (rate * ring.Period) : Math.Exp(-rate * condition.Minutes);
            jacobian[at, found] = 1 - kept;
            jacobian[found, at] = share;
            jacobian[found, found] = 1 - share;
            found++;
        }

        return jacobian;
    }

    // By the drains of the settled ring, mL/min.
    private double Membrane(in BodyPool pool)
    {
        var drained = 0.0;
        for (var k = 0; k < ring.Plan.Count; k++)
        {
            drained += ring.DrainedBy(k)[pool.Solute];
        }

        return drained / (pool.UsualLevel * ring.Period);
    }

    private void Take(double[] step)
    {
        // No volume, amount or level may become negative on the way.
        var part = 1.0;
        for (var i = 1; i < step.Length; i++)
        {
            while (unknowns[i] > 0 && unknowns[i] + part * step[i] * sizes[i] <= 0)
            {
                part *= 0.5;
            }
        }

        for (var i = 0; i < step.Length; i++)
        {
            step[i] *= part;
            unknowns[i] += step[i] * sizes[i];
        }
    }

    private void Start()
    {
        run.Time = unknowns[0];
        Array.Clear(run.State);
        for (var i = 0; i < run.CavitySize; i++)
        {
            run.State[i] = Real.Of(unknowns[1 + i]);
        }

        for (var k = 0; k < pools; k++)
        {
            run.State[run.PoolSlot + k] = Real.Of(unknowns[firstPool + k] * run.Pools[k].Volume);
        }

        for (var j = 0; j < generations.Length; j++)
        {
            ref var pool = ref run.Pools[generations[j]];
            pool = pool with { Generation = unknowns[firstPool + pools + j] };
        }
    }

    // Once around; what came out other than it went in, in units of the sizes.
    private double[] Miss(RunControl control)
    {
        Start();
        var course = conditions.Any(condition => condition.FindsGeneration && !double.IsNaN(condition.Minutes))
            ? new PlasmaCourse([.. conditions.Select(condition => condition.Volume.Milliliters)], run.Time, ring.Period)
            : null;
        run.Course = course;
        ring.Once(control);
        run.Course = null;
        var miss = new double[unknowns.Length];
        miss[0] = run.Time - ring.Period - unknowns[0];
        for (var i = 0; i < run.CavitySize; i++)
        {
            miss[1 + i] = run.State[i].Value - unknowns[1 + i];
        }

        for (var k = 0; k < pools; k++)
        {
            miss[firstPool + k] = run.State[run.PoolSlot + k].Value / run.Pools[k].Volume - unknowns[firstPool + k];
        }

        for (var i = 0; i < firstPool + pools; i++)
        {
            miss[i] /= sizes[i];
        }

        for (var j = 0; j < generations.Length; j++)
        {
            var (k, condition) = (generations[j], conditions[generations[j]]);
            var level = double.IsNaN(condition.Minutes)
                ? run.State[run.PoolSlot + pools + k].Value / (run.Time - unknowns[0])
                : course!.At(k, condition.Minutes);
            miss[firstPool + pools + j] = level / condition.Level - 1;
        }

        return miss;
    }
}
