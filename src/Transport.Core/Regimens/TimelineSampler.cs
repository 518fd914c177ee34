namespace Transport;

/// <summary>Samples the cavity at a fixed interval, and where one phase gives way to the next.</summary>
internal sealed class TimelineSampler(double interval)
{
    private readonly List<TimelinePoint> points = [];
    private RegimenPhase phase;
    private long next;

    public IReadOnlyList<TimelinePoint> Points => points;

    public void Begin(RegimenPhase kind, double minutes, ReadOnlySpan<Real> state)
    {
        phase = kind;
        next = (long)Math.Floor(minutes / interval) + 1;
        Add(minutes, state[0].Value, state[1 + SolutePanel.Glucose].Value, state[1 + SolutePanel.Sodium].Value);
    }

    public void Take(ref DenseStep<Real> step, double end)
    {
        while (next * interval < end)
        {
            var minutes = next++ * interval;
            Add(
                minutes,
                step.Component(0, minutes).Value,
                step.Component(1 + SolutePanel.Glucose, minutes).Value,
                step.Component(1 + SolutePanel.Sodium, minutes).Value);
        }
    }

    public void End(double minutes, ReadOnlySpan<Real> state) =>
        Add(minutes, state[0].Value, state[1 + SolutePanel.Glucose].Value, state[1 + SolutePanel.Sodium].Value);

    private void Add(double minutes, double volume, double glucose, double sodium) => points.Add(new(
        TimeSpan.FromMinutes(minutes),
        phase,
        Volume.FromMilliliters(volume),
        Concentration.FromMillimolesPerLiter(glucose / volume),
        Concentration.FromMillimolesPerLiter(sodium / volume)));
}
