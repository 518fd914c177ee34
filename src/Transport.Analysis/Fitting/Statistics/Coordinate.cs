namespace Transport.Analysis;

/// <summary>How one parameter is written as a coordinate without bounds: zero at its center, of order one.</summary>
/// <remarks>
/// Three scales: the value itself (any sign), its logarithm (positive), its log odds (a share between 0 and 1). The value at coordinate u is center + spread u on that scale,
/// so a prior that is Gaussian on it, with that center and spread, is a unit Gaussian of u.
/// </remarks>
internal readonly record struct Coordinate
{
    private readonly Scale scale;
    private readonly double center;

    private Coordinate(Scale scale, double center, double spread)
    {
        this.scale = scale;
        this.center = center;
        Spread = Require.Positive(spread, "", nameof(spread));
    }

    private enum Scale
    {
        Identity,
        Logarithm,
        LogOdds,
    }

    /// <summary>What one unit of the coordinate is on the scale: of the value, its logarithm or its log odds.</summary>
    public double Spread { get; }

    /// <summary>A value of any sign.</summary>
    public static Coordinate OfAnySign(double center, double spread) => new(Scale.Identity, center, spread);

    /// <summary>A positive value: its median and the standard deviation of its logarithm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The median or the deviation is not positive.</exception>
    public static Coordinate OfPositive(double median, double logDeviation) =>
        new(Scale.Logarithm, Math.Log(Require.Positive(median, "", nameof(median))), logDeviation);

    /// <summary>A share: its median, between 0 and 1, and the standard deviation of its log odds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The median is not between 0 and 1, or the deviation not positive.</exception>
    public static Coordinate OfShare(double median, double logOddsDeviation) => new(
        Scale.LogOdds, Math.Log(Require.Positive(median, "", nameof(median)) / Require.Positive(1 - median, "", nameof(median))), logOddsDeviation);

    /// <summary>The value at a coordinate.</summary>
    public double Value(double coordinate) => scale switch
    {
        Scale.Logarithm => Math.Exp(center + Spread * coordinate),
        Scale.LogOdds => 1 / (1 + Math.Exp(-(center + Spread * coordinate))),
        _ => center + Spread * coordinate,
    };

    /// <summary>The value at a coordinate, over a lane: with derivatives, or of several points at once.</summary>
    public T Value<T>(T coordinate)
        where T : struct, ILane<T>
    {
        var at = T.Of(center) + Spread * coordinate;
        return scale switch
        {
            Scale.Logarithm => T.Exp(at),
            Scale.LogOdds => T.Of(1) / (T.Of(1) + T.Exp(-1.0 * at)),
            _ => at,
        };
    }

    /// <summary>Derivative of the value by the coordinate, given the value there.</summary>
    public double Slope(double value) => scale switch
    {
        Scale.Logarithm => Spread * value,
        Scale.LogOdds => Spread * value * (1 - value),
        _ => Spread,
    };

    /// <summary>The coordinate of a value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside what the scale can hold.</exception>
    public double Of(double value) => (scale switch
    {
        Scale.Logarithm => Math.Log(Require.Positive(value, "", nameof(value))),
        Scale.LogOdds => Math.Log(Require.Positive(value, "", nameof(value)) / Require.Positive(1 - value, "", nameof(value))),
        _ => value,
    } - center) / Spread;
}
