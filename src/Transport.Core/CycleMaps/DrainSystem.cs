namespace Transport;

/// <summary>A drain with the volume in place of time, so that several cavities that run out at different rates are empty together.</summary>
/// <remarks>
/// dy/du = f(t, y) (end − start) / (dV/dt), u from 0 at the start of the drain to 1 at its end (Hénon, Physica D 1982;5:412, memory). State: that of
/// the cavity with what is drained of each solute; then the time, min.
/// </remarks>
internal struct DrainSystem<T>(ThreePoreSystem<T> cavity) : IOdeSystem<T>
    where T : struct, ILane<T>
{
    /// <summary>The equations of the cavity, which collect what is drained.</summary>
    public ThreePoreSystem<T> Cavity = cavity;

    /// <summary>Flow out, mL/min.</summary>
    public T Outflow;

    /// <summary>Volume at the end less that at the start, mL.</summary>
    public T Fall;

    public readonly int Dimension => Cavity.Dimension + 1;

    public readonly int TimeSlot => Cavity.Dimension;

    public readonly void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        var size = Cavity.Dimension;
        Cavity.Derivatives(LaneOf.Read(state[size], 0), state[..size], rates[..size]);
        var solutes = Cavity.DrainSlot - 4;
        var perVolume = Outflow / state[0];
        for (var i = 0; i < solutes; i++)
        {
            var out_i = state[1 + i] * perVolume;
            rates[Cavity.DrainSlot + i] = out_i;
            rates[1 + i] -= out_i;
        }

        var pace = Fall / (rates[0] - Outflow);
        for (var i = 1; i < size; i++)
        {
            rates[i] = rates[i] * pace;
        }

        rates[0] = Fall;
        rates[size] = pace;
    }

    public readonly int KinkCount => 0;

    public readonly T Kink(int index, ReadOnlySpan<T> state) => T.Of(1);

    public readonly T Bend(ReadOnlySpan<T> rates) => T.Of(0);

    public readonly void AbsoluteScale(Span<double> scale)
    {
        Cavity.AbsoluteScale(scale[..Cavity.Dimension]);
        scale[TimeSlot] = 1;
    }
}
