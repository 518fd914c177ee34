namespace Transport;

/// <summary>dy/dt = f(t, y), over a lane.</summary>
internal interface IOdeSystem<T>
    where T : struct, ILane<T>
{
    /// <summary>How many components y has.</summary>
    public int Dimension { get; }

    /// <summary>Writes f(t, y); t in minutes.</summary>
    public void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates);

    /// <summary>Writes the size below which the error of each component is not worth a smaller step.</summary>
    public void AbsoluteScale(Span<double> scale);
}
