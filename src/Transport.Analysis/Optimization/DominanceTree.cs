using System.Runtime.CompilerServices;

namespace Transport.Analysis;

/// <summary>Points of any number of axes, less being better, halved again and again so that one that beats a given point is found without asking all.</summary>
/// <remarks>
/// A k-d tree (Bentley, Commun ACM 1975;18:509, memory) whose boxes answer for their points: a box none of whose points can be as good is left out, and one all of
/// whose points are better ends the search. What is found does not depend on the order of the points.
/// </remarks>
internal sealed class DominanceTree
{
    private const int LeafSize = 8;

    private readonly int axes;
    private readonly double[] points;
    private readonly List<double> lows = [];
    private readonly List<double> highs = [];

    // Of each box: first point, one past the last, and the second half; the first half follows the box. No second half: a leaf.
    private readonly List<(int First, int End, int Second)> boxes = [];

    /// <param name="axes">How many numbers a point has.</param>
    /// <param name="points">Point after point, each better where it is less.</param>
    public DominanceTree(int axes, ReadOnlySpan<double> points)
    {
        this.axes = axes;
        var count = points.Length / axes;
        var order = new int[count];
        for (var i = 0; i < count; i++)
        {
            order[i] = i;
        }

        var given = points.ToArray();
        if (count > 0)
        {
            Halve(given, order, 0, count);
        }

        this.points = new double[given.Length];
        for (var i = 0; i < count; i++)
        {
            given.AsSpan(order[i] * axes, axes).CopyTo(this.points.AsSpan(i * axes));
        }
    }

    /// <summary>Whether a point is as good as a limit on every axis and better than a place on one.</summary>
    /// <param name="limit">What it must not exceed: the place, or the place less a margin.</param>
    /// <param name="place">The place that is to be beaten.</param>
    public bool Beats(ReadOnlySpan<double> limit, ReadOnlySpan<double> place) => boxes.Count > 0 && Beats(0, limit, place);

    private bool Beats(int box, ReadOnlySpan<double> limit, ReadOnlySpan<double> place)
    {
        if (!IsWithin(Corner(lows, box), limit))
        {
            return false;
        }

        var worst = Corner(highs, box);
        if (IsWithin(worst, limit) && IsBelow(worst, place))
        {
            return true;
        }

        var (first, end, second) = boxes[box];
        if (second > 0)
        {
            return Beats(box + 1, limit, place) || Beats(second, limit, place);
        }

        for (var i = first; i < end; i++)
        {
            var point = points.AsSpan(i * axes, axes);
            if (IsWithin(point, limit) && IsBelow(point, place))
            {
                return true;
            }
        }

        return false;
    }

    private ReadOnlySpan<double> Corner(List<double> corners, int box) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(corners).Slice(box * axes, axes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsWithin(ReadOnlySpan<double> point, ReadOnlySpan<double> limit)
    {
        for (var i = 0; i < point.Length; i++)
        {
            if (!(point[i] <= limit[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsBelow(ReadOnlySpan<double> point, ReadOnlySpan<double> place)
    {
        for (var i = 0; i < point.Length; i++)
        {
            if (point[i] < place[i])
            {
                return true;
            }
        }

        return false;
    }

    private void Halve(double[] given, int[] order, int first, int end)
    {
        var box = boxes.Count;
        boxes.Add((first, end, 0));
        var widest = Bound(given, order.AsSpan(first, end - first));
        if (end - first <= LeafSize || widest < 0)
        {
            return;
        }

        var keys = new double[end - first];
        for (var i = 0; i < keys.Length; i++)
        {
            keys[i] = given[order[first + i] * axes + widest];
        }

        keys.AsSpan().Sort(order.AsSpan(first, keys.Length));
        var middle = first + keys.Length / 2;
        Halve(given, order, first, middle);
        boxes[box] = (first, end, boxes.Count);
        Halve(given, order, middle, end);
    }

    // The box of some points; and the axis along which their ranks are best halved: the one with the largest spread for its size. −1: all points are the same.
    private int Bound(double[] given, ReadOnlySpan<int> some)
    {
        var (widest, width) = (-1, 0.0);
        for (var axis = 0; axis < axes; axis++)
        {
            var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (var i in some)
            {
                var value = given[i * axes + axis];
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }

            lows.Add(low);
            highs.Add(high);
            var size = (high - low) / Math.Max(Math.Max(Math.Abs(low), Math.Abs(high)), 1e-300);
            if (size > width)
            {
                (widest, width) = (axis, size);
            }
        }

        return widest;
    }
}
