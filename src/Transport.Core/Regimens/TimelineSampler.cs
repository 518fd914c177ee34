using System.Collections.Immutable;

namespace Transport;

/// <summary>Samples the cavity at a fixed interval, and where one phase gives way to the next.</summary>
/// <param name="interval">How often, min.</param>
/// <param name="panel">Which solutes.</param>
/// <param name="dimension">How many unknowns the equations have.</param>
internal sealed class TimelineSampler(double interval, SolutePanel panel, int dimension)
{
    private readonly List<TimelinePoint> points = [];
    private readonly Real[] sample = new Real[dimension];
    private RegimenPhase phase;
    private long next;

    public IReadOnlyList<TimelinePoint> Points => points;

    public void Begin(RegimenPhase kind, double minutes, ReadOnlySpan<Real> state, in BodySystem<Real> system)
    {
        phase = kind;
        next = (long)Math.Floor(minutes / interval) + 1;
        Add(minutes, state, system);
    }

    public void Take(ref DenseStep<Real> step, double end, in BodySystem<Real> system)
    {
        while (next * interval < end)
        {
            var minutes = next++ * interval;
            for (var i = 0; i < step.StartState.Length; i++)
            {
                sample[i] = step.Component(i, minutes);
            }

            Add(minutes, sample, system);
        }
    }

    public void End(double minutes, ReadOnlySpan<Real> state, in BodySystem<Real> system) => Add(minutes, state, system);

    private void Add(double minutes, ReadOnlySpan<Real> state, in BodySystem<Real> system)
    {
        var flows = system.PoreFlows(state);
        points.Add(new(
            TimeSpan.FromMinutes(minutes),
            phase,
            Volume.FromMilliliters(state[0].Value),
            new(Flow(flows.Ultrasmall), Flow(flows.Small), Flow(flows.Large)),
            panel,
            Amounts(state)));
    }

    private ImmutableArray<double> Amounts(ReadOnlySpan<Real> state)
    {
        var amounts = ImmutableArray.CreateBuilder<double>(panel.Count);
        for (var i = 0; i < panel.Count; i++)
        {
            amounts.Add(state[1 + i].Value);
        }

        return amounts.MoveToImmutable();
    }

    private static FlowRate Flow(Real value) => FlowRate.FromMillilitersPerMinute(value.Value);
}
