namespace Transport;

/// <summary>The maps of a group for one membrane, from those at a few dwells. One per thread.</summary>
/// <param name="points">The dwells.</param>
/// <param name="solutes">How many solutes are followed.</param>
internal sealed class CyclePolynomial(DwellPoints points, int solutes)
{
    // What drains and what is left behind, together, as a share; the drain's end, min: a tenth of what a map may be off.
    private const double Tolerance = 1e-4;
    private const double LateTolerance = 1e-3;

    private readonly CycleMap[] maps = [.. points.Kinds.Select(_ => new CycleMap(solutes))];
    private readonly CycleMap between = new(solutes);
    private readonly double[] expected = new double[CycleMap.RowsOf(solutes)];
    private readonly double[] read = new double[CycleMap.RowsOf(solutes)];
    private CycleDwells? dwells;

    /// <summary>Whether it holds: each of its dwells drains, and it gives the exchange between two of them.</summary>
    public bool Holds { get; private set; }

    /// <summary>Makes it for the membrane that the mapper is ready for.</summary>
    /// <param name="mapper">Maps exchanges.</param>
    /// <param name="found">What is usually found.</param>
    public void Make(ICycleMapper mapper, ReadOnlySpan<double> found)
    {
        dwells = mapper.Dwell(points.Group, dwells);
        Holds = true;
        for (var member = 0; member < maps.Length && Holds; member++)
        {
            var point = points.Group.Members[member];
            mapper.Map(points.Kinds[point], dwells, member, maps[point]);
            Holds = maps[point].Holds && maps[point].Drains;
        }

        Holds = Holds && GivesTheOneBetween(found);
    }

    /// <summary>Writes the map of a member of the group.</summary>
    /// <param name="member">Which.</param>
    /// <param name="drain">How long its drain is planned to take, min.</param>
    /// <param name="into">Its map.</param>
    public void Read(int member, double drain, CycleMap into) => into.Set(maps, points.Weights[member], drain);

    private bool GivesTheOneBetween(ReadOnlySpan<double> found)
    {
        between.Set(maps, points.Weights[^1], 0);
        between.Apply(found, read);
        maps[^1].Apply(found, expected);
        var holds = Math.Abs(read[0] - expected[0]) <= LateTolerance;
        for (var i = 1; i < found.Length; i++)
        {
            var (left, drained) = (i, between.DrainedRow + i - 1);
            var most = Tolerance * (Math.Abs(expected[left]) + Math.Abs(expected[drained]));
            holds &= Math.Abs(read[left] - expected[left]) <= most && Math.Abs(read[drained] - expected[drained]) <= most;
        }

        return holds;
    }
}
