using System.Collections.Immutable;

namespace Transport;

/// <summary>The dwells of a group as points of a polynomial: an exchange is a smooth function of how long it stays, so that maps at a few dwells give those of
/// all between the shortest and the longest.</summary>
/// <remarks>
/// A polynomial in the root of the dwell, because most happens early: of the same degree it is up to ten times nearer than one in the dwell. Chebyshev points, the ends among them:
/// volume rises and falls, so that where both ends have something to drain all between have. Weights by the barycentric formula (Berrut and Trefethen, SIAM Rev 2004;46:501-517, memory).
/// </remarks>
internal sealed class DwellPoints
{
    private const int Count = 8;

    // Fewer members than this are as soon made one by one.
    private const int FewestMembers = Count + 4;

    private DwellPoints(CycleGroup group, ImmutableArray<CycleKind> kinds, ImmutableArray<double[]> weights)
    {
        Group = group;
        Kinds = kinds;
        Weights = weights;
    }

    /// <summary>The exchanges at the points and, last, one between two of them, early, where it is checked.</summary>
    public ImmutableArray<CycleKind> Kinds { get; }

    /// <summary>The same as a group.</summary>
    public CycleGroup Group { get; }

    /// <summary>Of each member, the share of each point in its map; last, those of the exchange between.</summary>
    public ImmutableArray<double[]> Weights { get; }

    /// <summary>The points of a group; null where it is too small for them.</summary>
    public static DwellPoints? Of(CycleGroup group)
    {
        if (group.Head.IsDry || group.Members.Length < FewestMembers)
        {
            return null;
        }

        var (first, last) = (Math.Sqrt(group.Dwells[0]), Math.Sqrt(group.Dwells[^1]));
        var points = new double[Count];
        for (var i = 0; i < Count; i++)
        {
            points[i] = 0.5 * (first + last) - 0.5 * (last - first) * Math.Cos(i * Math.PI / (Count - 1));
        }

        (points[0], points[^1]) = (first, last);
        var between = 0.5 * (points[1] + points[2]);
        double[] dwells = [group.Dwells[0], .. points[1..^1].Select(point => point * point), group.Dwells[^1], between * between];
        ImmutableArray<CycleKind> kinds = [.. dwells.Select(dwell => group.Head with { Dwell = dwell })];
        return new(CycleGroup.Of(kinds)[0], kinds, [.. group.Dwells.Select(Math.Sqrt).Append(between).Select(root => WeightsAt(root, points))]);
    }

    private static double[] WeightsAt(double root, double[] points)
    {
        var weights = new double[Count];
        for (var i = 0; i < Count; i++)
        {
            if (root == points[i])
            {
                Array.Clear(weights);
                weights[i] = 1;
                return weights;
            }

            weights[i] = (i % 2 == 0 ? 1 : -1) * (i is 0 or Count - 1 ? 0.5 : 1) / (root - points[i]);
        }

        var sum = weights.Sum();
        for (var i = 0; i < Count; i++)
        {
            weights[i] /= sum;
        }

        return weights;
    }
}
