namespace Transport.Tests.Integration;

/// <summary>A test problem of ordinary differential equations with what is known of its solution.</summary>
/// <remarks>A to D: Hull, Enright, Fellen and Sedgwick, SIAM J Numer Anal 1972;9:603 (memory). Closed solutions: by hand.</remarks>
internal sealed record Problem(string Name, Func<double, double[], double[]> Rates, double[] Initial, double End) : IOdeSystem<Real>
{
    /// <summary>The solution in closed form; null where only something of it is known.</summary>
    public Func<double, double[]>? Solution { get; init; }

    /// <summary>Something that stays as it was at the start.</summary>
    public Func<double, double[], double>? Invariant { get; init; }

    public double Scale { get; init; } = 1;

    public int Dimension => Initial.Length;

    public void Derivatives(double minutes, ReadOnlySpan<Real> state, Span<Real> rates)
    {
        var y = new double[state.Length];
        for (var i = 0; i < y.Length; i++)
        {
            y[i] = state[i].Value;
        }

        var f = Rates(minutes, y);
        for (var i = 0; i < f.Length; i++)
        {
            rates[i] = Real.Of(f[i]);
        }
    }

    public int KinkCount => 0;

    public Real Kink(int index, ReadOnlySpan<Real> state) => Real.Of(1);

    public Real Bend(ReadOnlySpan<Real> rates) => Real.Of(0);

    public void AbsoluteScale(Span<double> scale) => scale.Fill(Scale);

    public Real[] Start() => [.. Initial.Select(Real.Of)];

    public override string ToString() => Name;

    public static Problem Oscillator { get; } = new("harmonic oscillator", (_, y) => [y[1], -y[0]], [1, 0], 20)
    {
        Solution = t => [Math.Cos(t), -Math.Sin(t)],
    };

    public static Problem A1 { get; } = new("A1 decay", (_, y) => [-y[0]], [1], 20) { Solution = t => [Math.Exp(-t)] };

    public static Problem A2 { get; } = new("A2 Riccati", (_, y) => [-y[0] * y[0] * y[0] / 2], [1], 20) { Solution = t => [1 / Math.Sqrt(t + 1)] };

    public static Problem A3 { get; } = new("A3 oscillating", (t, y) => [y[0] * Math.Cos(t)], [1], 20) { Solution = t => [Math.Exp(Math.Sin(t))] };

    public static Problem A4 { get; } = new("A4 logistic", (_, y) => [y[0] / 4 * (1 - y[0] / 20)], [1], 20)
    {
        Solution = t => [20 / (1 + 19 * Math.Exp(-t / 4))],
    };

    // In polar coordinates dr/dθ = −r, hence r e^θ is constant, 4 e^(π/2).
    public static Problem A5 { get; } = new("A5 spiral", (t, y) => [(y[0] - t) / (y[0] + t)], [4], 20)
    {
        Solution = t => [Spiral(t)],
        Invariant = (t, y) => Math.Sqrt(t * t + y[0] * y[0]) * Math.Exp(Math.Atan2(y[0], t)),
    };

    public static Problem B1 { get; } = new(
        "B1 conflicting populations", (_, y) => [2 * (y[0] - y[0] * y[1]), -(y[1] - y[0] * y[1])], [1, 3], 20)
    {
        Invariant = (_, y) => Math.Log(y[0]) - y[0] + 2 * (Math.Log(y[1]) - y[1]),
    };

    // Eigenvalues 0, −1 and −3.
    public static Problem B2 { get; } = new(
        "B2 linear reaction", (_, y) => [-y[0] + y[1], y[0] - 2 * y[1] + y[2], y[1] - y[2]], [2, 0, 1], 20)
    {
        Solution = t =>
        [
            1 + 0.5 * Math.Exp(-t) + 0.5 * Math.Exp(-3 * t),
            1 - Math.Exp(-3 * t),
            1 - 0.5 * Math.Exp(-t) + 0.5 * Math.Exp(-3 * t),
        ],
    };

    public static Problem B3 { get; } = new("B3 nonlinear reaction", (_, y) => [-y[0], y[0] - y[1] * y[1], y[1] * y[1]], [1, 0, 0], 20)
    {
        Invariant = (_, y) => y[0] + y[1] + y[2],
    };

    // Angle t, distance from the axis 2 + cos t, height sin t.
    public static Problem B4 { get; } = new(
        "B4 torus",
        (_, y) => Math.Sqrt(y[0] * y[0] + y[1] * y[1]) is var r ? [-y[1] - y[0] * y[2] / r, y[0] - y[1] * y[2] / r, y[0] / r] : [],
        [3, 0, 0],
        20)
    {
        Solution = t => [(2 + Math.Cos(t)) * Math.Cos(t), (2 + Math.Cos(t)) * Math.Sin(t), Math.Sin(t)],
    };

    public static Problem B5 { get; } = new("B5 rigid body", (_, y) => [y[1] * y[2], -y[0] * y[2], -0.51 * y[0] * y[1]], [0, 1, 1], 20)
    {
        Solution = t => Jacobi(t, 0.51),
    };

    public static Problem D(double eccentricity) => new(
        $"D orbit of eccentricity {eccentricity:0.0}",
        (_, y) => Math.Pow(y[0] * y[0] + y[1] * y[1], 1.5) is var r3 ? [y[2], y[3], -y[0] / r3, -y[1] / r3] : [],
        [1 - eccentricity, 0, 0, Math.Sqrt((1 + eccentricity) / (1 - eccentricity))],
        20)
    {
        Solution = t => Kepler(t, eccentricity),
    };

    // Along the spiral t = r cos θ rises while θ falls from π/2 to −π/4, so θ is found by halving.
    private static double Spiral(double t)
    {
        double Radius(double angle) => 4 * Math.Exp(Math.PI / 2 - angle);
        double low = -Math.PI / 4, high = Math.PI / 2;
        while (high - low > 2e-16)
        {
            var middle = 0.5 * (low + high);
            if (middle == low || middle == high)
            {
                break;
            }

            (low, high) = Radius(middle) * Math.Cos(middle) > t ? (middle, high) : (low, middle);
        }

        return Radius(high) * Math.Sin(high);
    }

    // sn, cn, dn by the descending arithmetic-geometric mean.
    private static double[] Jacobi(double u, double m)
    {
        double a = 1, b = Math.Sqrt(1 - m), c = Math.Sqrt(m);
        var ratios = new List<double>();
        while (c > 1e-16)
        {
            (a, b, c) = ((a + b) / 2, Math.Sqrt(a * b), (a - b) / 2);
            ratios.Add(c / a);
        }

        var phi = Math.Pow(2, ratios.Count) * a * u;
        for (var i = ratios.Count - 1; i >= 0; i--)
        {
            phi = (phi + Math.Asin(ratios[i] * Math.Sin(phi))) / 2;
        }

        return [Math.Sin(phi), Math.Cos(phi), Math.Sqrt(1 - m * Math.Sin(phi) * Math.Sin(phi))];
    }

    private static double[] Kepler(double t, double e)
    {
        var anomaly = t;
        for (var i = 0; i < 200; i++)
        {
            var next = anomaly - (anomaly - e * Math.Sin(anomaly) - t) / (1 - e * Math.Cos(anomaly));
            anomaly = Math.Clamp(next, t - e, t + e);
        }

        var (sin, cos, minor) = (Math.Sin(anomaly), Math.Cos(anomaly), Math.Sqrt(1 - e * e));
        var r = 1 - e * cos;
        return [cos - e, minor * sin, -sin / r, minor * cos / r];
    }
}
