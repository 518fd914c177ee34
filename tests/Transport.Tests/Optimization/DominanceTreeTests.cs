using MathNet.Numerics.Random;

namespace Transport.Tests.Optimization;

/// <summary>The tree that finds whether a point is beaten, against asking every point.</summary>
public sealed class DominanceTreeTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(7)]
    public void The_tree_says_of_every_point_what_asking_all_of_them_says(int axes)
    {
        // Whole numbers of few values on some axes, so that points are equal and tie; margins on half of the problems.
        var random = new MersenneTwister(axes);
        var (beaten, asked) = (0, 0);
        for (var problem = 0; problem < 60; problem++)
        {
            var count = random.Next(0, 400);
            var points = new double[count * axes];
            for (var i = 0; i < points.Length; i++)
            {
                points[i] = i % axes % 2 == 0 ? random.Next(0, 6) : random.NextDouble() - 0.5;
            }

            var tree = new DominanceTree(axes, points);
            var margin = problem % 2 * 0.05;
            for (var i = 0; i < count; i++)
            {
                var place = points.AsSpan(i * axes, axes).ToArray();
                double[] limit = [.. place.Select(value => value - margin)];
                var expected = Enumerable.Range(0, count).Any(k =>
                    Enumerable.Range(0, axes).All(axis => points[k * axes + axis] <= limit[axis])
                    && Enumerable.Range(0, axes).Any(axis => points[k * axes + axis] < place[axis]));
                Assert.Equal(expected, tree.Beats(limit, place));
                beaten += expected ? 1 : 0;
                asked++;
            }
        }

        Assert.InRange(beaten, 1, asked - 1);
    }

    [Fact]
    public void Equal_points_do_not_beat_each_other_and_no_points_beat_nothing()
    {
        double[] place = [1, 2];
        Assert.False(new DominanceTree(2, [1, 2, 1, 2, 1, 2]).Beats(place, place));
        Assert.True(new DominanceTree(2, [1, 2, 1, 1.5]).Beats(place, place));
        Assert.False(new DominanceTree(2, []).Beats(place, place));
    }
}
