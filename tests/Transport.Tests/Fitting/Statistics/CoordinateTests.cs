using FsCheck.Xunit;

namespace Transport.Tests.Fitting.Statistics;

public sealed class CoordinateTests
{
    [Fact]
    public void Each_scale_holds_what_it_should()
    {
        // One unit up: 5 + 2; 5 e^0.3; odds 1/3 times e^0.3.
        Assert.Equal(7, Coordinate.OfAnySign(5, 2).Value(1), 1e-14);
        Assert.Equal(6.749294, Coordinate.OfPositive(5, 0.3).Value(1), 1e-6);
        Assert.Equal(0.310322, Coordinate.OfShare(0.25, 0.3).Value(1), 1e-6);
        Assert.Equal(-1, Coordinate.OfAnySign(-5, 2).Of(-7), 1e-14);
        Assert.InRange(Coordinate.OfPositive(5, 0.3).Value(-100), 1e-13, 1e-12);
        Assert.InRange(Coordinate.OfShare(0.25, 0.3).Value(200), 0.999, 1);
    }

    [Property]
    public void A_value_comes_back_and_its_slope_is_that_of_the_curve(int seed)
    {
        var u = new Random(seed).NextDouble() * 6 - 3;
        foreach (var coordinate in new[] { Coordinate.OfAnySign(-3, 2), Coordinate.OfPositive(0.07, 0.43), Coordinate.OfShare(0.02, 0.5) })
        {
            var value = coordinate.Value(u);
            Assert.Equal(u, coordinate.Of(value), 1e-11);

            // Central difference over 2e-5: its error is of order 1e-10 of the slope.
            var difference = (coordinate.Value(u + 1e-5) - coordinate.Value(u - 1e-5)) / 2e-5;
            Assert.Equal(1, coordinate.Slope(value) / difference, 1e-8);
        }
    }

    [Fact]
    public void What_a_scale_cannot_hold_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordinate.OfPositive(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordinate.OfShare(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordinate.OfAnySign(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordinate.OfPositive(1, 1).Of(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Coordinate.OfShare(0.5, 1).Of(1));
    }
}
