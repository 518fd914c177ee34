namespace Transport;

/// <summary>The cavity's equations without their kinks: several cavities cross one at times a little apart, and a screening need not see it.</summary>
internal struct UnkinkedSystem<T>(ThreePoreSystem<T> cavity) : IOdeSystem<T>
    where T : struct, ILane<T>
{
    public ThreePoreSystem<T> Cavity = cavity;

    public readonly int Dimension => Cavity.Dimension;

    public readonly void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates) => Cavity.Derivatives(minutes, state, rates);

    public readonly int KinkCount => 0;

    public readonly T Kink(int index, ReadOnlySpan<T> state) => T.Of(1);

    public readonly T Bend(ReadOnlySpan<T> rates) => T.Of(0);

    public readonly void AbsoluteScale(Span<double> scale) => Cavity.AbsoluteScale(scale);
}
