namespace Transport.Analysis;

/// <summary>A density to draw from, up to a factor, evaluated at four points at once: one for each lane of the kinetics.</summary>
internal interface ILogDensity
{
    /// <summary>Points of one evaluation, and so the number of chains.</summary>
    public const int Lanes = 4;

    /// <summary>Coordinates of a point.</summary>
    public int Dimension { get; }

    /// <summary>Writes the logarithm of the density at four points; −∞ where there is none.</summary>
    /// <param name="points">Coordinate j of point l at 4 j + l.</param>
    /// <param name="logDensities">One for each point.</param>
    public void Evaluate(ReadOnlySpan<double> points, Span<double> logDensities);
}
