namespace Transport;

/// <summary>dy/dt = f(t, y), over a lane.</summary>
/// <remarks>No member has a body here: a struct that inherits one is copied to the heap whenever it is called.</remarks>
internal interface IOdeSystem<T>
    where T : struct, ILane<T>
{
    /// <summary>How many components y has.</summary>
    public int Dimension { get; }

    /// <summary>Writes f(t, y); t in minutes.</summary>
    public void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates);

    /// <summary>How many surfaces f has a kink on. A step ends on each, so that none is stepped over and the tolerance is kept.</summary>
    public int KinkCount { get; }

    /// <summary>Where the state is with respect to one of them: zero on it, of different sign on its sides, of the size of the relative distance.</summary>
    public T Kink(int index, ReadOnlySpan<T> state);

    /// <summary>
    /// A number, told from f, through whose zero f turns as sharply as √(1 + b²) does: almost a kink, and narrow against a step, in which the estimate of
    /// the error may not see it. A step takes it to zero or a little way past, and no further.
    /// </summary>
    public T Bend(ReadOnlySpan<T> rates);

    /// <summary>Writes the size below which the error of each component is not worth a smaller step.</summary>
    public void AbsoluteScale(Span<double> scale);
}
