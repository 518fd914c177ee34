using System.Collections.Immutable;

namespace Transport;

/// <summary>The bags that hold what a part of a regimen needs of one solution.</summary>
/// <param name="Solution">The solution.</param>
/// <param name="Needed">What is infused of it.</param>
/// <param name="Bags">The bags, largest first.</param>
public sealed record BagCover(DialysisSolution Solution, Volume Needed, ImmutableArray<Volume> Bags)
{
    /// <summary>What the bags hold.</summary>
    public Volume Supplied => Bags.Aggregate(default(Volume), (sum, bag) => sum + bag);

    /// <summary>What stays in them.</summary>
    public Volume LeftOver => Supplied - Needed;

    /// <summary>
    /// The bags of 24 h: those of each solution of the night together, and apart from them those of each exchange of the day; a mix takes of two. Of all that hold enough, those
    /// that leave least over, and of these the fewest (choice). Nothing is added for priming and flush.
    /// </summary>
    /// <param name="regimen">The regimen.</param>
    /// <param name="sizes">Volumes that bags have; null: <see cref="FluidBag.UsualVolumes"/>.</param>
    /// <exception cref="ArgumentException">There is no size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is below 100 mL.</exception>
    public static ImmutableArray<BagCover> Of(Regimen regimen, IEnumerable<Volume>? sizes = null)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        int[] bags = [.. (sizes ?? FluidBag.UsualVolumes).Select(size =>
            (int)Math.Round(Require.InRange(size.Milliliters, 100, 100_000, "mL", nameof(sizes)))).Distinct()];
        if (bags.Length == 0)
        {
            throw new ArgumentException("Expected a size of bag.", nameof(sizes));
        }

        var night = regimen.Night.SelectMany(Needs).GroupBy(need => need.Solution)
            .Select(group => (Solution: group.Key, Volume: group.Aggregate(default(Volume), (sum, need) => sum + need.Volume)));
        return [.. night.Concat(regimen.Day.SelectMany(Needs)).Select(need => new BagCover(need.Solution, need.Volume, Cover(need.Volume.Milliliters, bags)))];

        // A mix is taken from two bags.
        static IEnumerable<(DialysisSolution Solution, Volume Volume)> Needs(Exchange exchange) =>
            exchange.Solution.Bags.Select(bag => (bag.Solution, exchange.Fill * bag.Share));
    }

    // Fewest bags for every volume that can be made of them, up to the first that is enough.
    private static ImmutableArray<Volume> Cover(double needed, int[] sizes)
    {
        // Half a mL is rounding of a shared-out fill.
        var enough = (int)Math.Ceiling(needed - 0.5);
        var count = new int[enough + sizes.Max() + 1];
        var last = new int[count.Length];
        for (var volume = 1; volume < count.Length; volume++)
        {
            count[volume] = int.MaxValue;
            foreach (var size in sizes)
            {
                if (size <= volume && count[volume - size] < count[volume] - 1)
                {
                    (count[volume], last[volume]) = (count[volume - size] + 1, size);
                }
            }

            if (volume >= enough && count[volume] < int.MaxValue)
            {
                var bags = new List<int>();
                for (var rest = volume; rest > 0; rest -= last[rest])
                {
                    bags.Add(last[rest]);
                }

                return [.. bags.OrderDescending().Select(bag => Volume.FromMilliliters(bag))];
            }
        }

        throw new InvalidOperationException("Any size covers any volume if it is taken often enough.");
    }
}
