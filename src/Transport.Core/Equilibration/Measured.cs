namespace Transport;

/// <summary>A number with its standard deviation, for sums and products of independent measurements.</summary>
internal readonly record struct Measured(double Value, double Deviation)
{
    public static Measured operator +(Measured a, Measured b) => new(a.Value + b.Value, double.Hypot(a.Deviation, b.Deviation));

    public static Measured operator -(Measured a, Measured b) => new(a.Value - b.Value, double.Hypot(a.Deviation, b.Deviation));

    public static Measured operator *(Measured a, Measured b) => new(a.Value * b.Value, double.Hypot(a.Deviation * b.Value, a.Value * b.Deviation));

    public static Measured operator /(Measured a, Measured b) =>
        new(a.Value / b.Value, double.Hypot(a.Deviation / b.Value, a.Value * b.Deviation / (b.Value * b.Value)));

    public static Measured operator *(Measured a, double factor) => new(a.Value * factor, a.Deviation * Math.Abs(factor));
}
