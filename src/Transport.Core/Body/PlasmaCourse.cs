namespace Transport;

/// <summary>Plasma concentrations of the pools through a rhythm, with the dense output of every step.</summary>
/// <param name="volumes">Of the pools, mL.</param>
/// <param name="start">When the rhythm starts, min.</param>
/// <param name="period">How long it is, min.</param>
internal sealed class PlasmaCourse(double[] volumes, double start, double period)
{
    private const int Terms = DenseStep<Real>.TermCount;
    private readonly List<double> starts = [];
    private readonly List<double> lengths = [];
    private readonly List<double> values = [];

    /// <summary>Keeps a step; what lies behind an event in it is hidden by the next one, which starts at the event.</summary>
    public void Take(ref DenseStep<Real> step, int poolSlot)
    {
        starts.Add(step.Start);
        lengths.Add(step.Length);
        var terms = step.Terms();
        var dimension = step.StartState.Length;
        for (var k = 0; k < volumes.Length; k++)
        {
            values.Add(step.StartState[poolSlot + k].Value);
            for (var term = 0; term < Terms; term++)
            {
                values.Add(terms[term * dimension + poolSlot + k].Value);
            }
        }
    }

    /// <summary>mmol/L at a time, min, in this round of the rhythm or one before or after it.</summary>
    public double At(int pool, double minutes)
    {
        minutes -= period * Math.Floor((minutes - start) / period);
        var found = starts.BinarySearch(minutes);
        var step = Math.Max(0, found >= 0 ? found : ~found - 1);
        var at = (step * volumes.Length + pool) * (1 + Terms);
        Span<Real> terms = stackalloc Real[Terms];
        for (var term = 0; term < Terms; term++)
        {
            terms[term] = Real.Of(values[at + 1 + term]);
        }

        var amount = DenseStep<Real>.Evaluate(terms, [Real.Of(values[at])], 0, (minutes - starts[step]) / lengths[step]);
        return amount.Value / volumes[pool];
    }
}
