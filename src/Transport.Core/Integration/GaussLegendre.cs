namespace Transport;

/// <summary>The seven points of Gauss and Legendre between −1 and 1: exact for polynomials up to degree 13 (tabulated).</summary>
internal static class GaussLegendre
{
    public static ReadOnlySpan<double> Nodes =>
        [-0.9491079123427585, -0.7415311855993945, -0.4058451513773972, 0, 0.4058451513773972, 0.7415311855993945, 0.9491079123427585];

    public static ReadOnlySpan<double> Weights =>
    [
        0.1294849661688697, 0.2797053914892767, 0.3818300505051189, 0.4179591836734694, 0.3818300505051189, 0.2797053914892767, 0.1294849661688697,
    ];
}
