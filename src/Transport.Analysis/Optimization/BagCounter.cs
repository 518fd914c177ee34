using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>How many bags regimens open, and how much is in them. Regimens of a grid share nights and days, and each is counted once.</summary>
internal sealed class BagCounter(BagShelf shelf)
{
    private readonly ConcurrentDictionary<ImmutableArray<Exchange>, (int Bags, double Liters)> nights = [];
    private readonly ConcurrentDictionary<ImmutableArray<Exchange>, (int Bags, double Liters)> days = [];

    /// <summary>The two figures of 24 h.</summary>
    public (int Bags, double Liters) Of(Regimen regimen)
    {
        var night = nights.GetOrAdd(regimen.Night, static (key, own) => Count(own.shelf, own.regimen with { Day = [] }), (shelf, regimen));
        var day = days.GetOrAdd(regimen.Day, static (key, own) => Count(own.shelf, own.regimen with { Night = [] }), (shelf, regimen));
        return (night.Bags + day.Bags, night.Liters + day.Liters);
    }

    private static (int Bags, double Liters) Count(BagShelf shelf, Regimen part)
    {
        // The present regimen may take what the shelf does not hold; then the usual sizes count.
        var covers = shelf.Holds(part) ? shelf.For(part) : BagCover.Of(part);
        return (covers.Sum(cover => cover.Bags.Length), covers.Sum(cover => cover.Supplied.Liters));
    }
}
