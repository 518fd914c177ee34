namespace Transport;

/// <summary>Keeps the largest and the smallest volume, of several cavities at once.</summary>
internal struct PeakObserver<T>(T start, bool looksWithin) : IStepObserver<T>
    where T : struct, ILane<T>
{
    public T Peak { get; private set; } = start;

    public T Least { get; private set; } = start;

    public double Observe(ref DenseStep<T> step)
    {
        if (looksWithin)
        {
            // The top of a dwell is flat: eight looks in a step miss it by less than a mL.
            for (var i = 1; i < 8; i++)
            {
                Peak = T.Max(Peak, step.Component(0, step.Start + i / 8.0 * step.Length));
            }
        }

        var end = step.EndState[0];
        Peak = T.Max(Peak, end);
        Least = T.AtMost(Least, end);
        return double.NaN;
    }
}
