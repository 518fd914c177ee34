namespace Transport;

/// <summary>
/// What the physics calculates with: one number, a number with its derivatives, or several patients side by side. The equations are
/// written once over it.
/// </summary>
/// <typeparam name="T">The lane itself.</typeparam>
internal interface ILane<T>
    where T : struct, ILane<T>
{
    /// <summary>A constant.</summary>
    public static abstract T Of(double value);

    /// <summary>The value that decides a step size: of several patients, the largest.</summary>
    public static abstract double Largest(T x);

    /// <summary>Whether it is above zero for every patient; a NaN is not.</summary>
    public static abstract bool AllPositive(T x);

    /// <summary>Whether it is above a limit for any patient.</summary>
    public static abstract bool AnyAbove(T x, double limit);

    /// <summary>Of each patient the one number where x is above a limit, else the other.</summary>
    public static abstract T WhereAbove(T x, double limit, T then, T otherwise);

    public static abstract T operator +(T left, T right);

    public static abstract T operator -(T left, T right);

    public static abstract T operator *(T left, T right);

    public static abstract T operator *(double left, T right);

    public static abstract T operator /(T left, T right);

    /// <summary>x y + z, rounded once where the machine can.</summary>
    public static abstract T MultiplyAdd(T x, T y, T z);

    public static abstract T Sqrt(T x);

    public static abstract T Exp(T x);

    public static abstract T Log(T x);

    /// <summary>max(x, 0).</summary>
    public static abstract T PositivePart(T x);

    /// <summary>min(x, limit).</summary>
    public static abstract T AtMost(T x, T limit);

    /// <summary>|x|.</summary>
    public static abstract T Abs(T x);

    /// <summary>The larger of two.</summary>
    public static abstract T Max(T left, T right);

    /// <summary>ps₁ y₁ coth y₁ + ps₂ y₂ coth y₂: <see cref="DiffusionGain"/>.</summary>
    public static abstract T DiffusionGains(T ps1, T y1, T ps2, T y2);
}
