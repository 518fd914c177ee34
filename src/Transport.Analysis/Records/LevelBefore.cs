using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What nights would return had the last change not come: a level that is learned follows the change, and beside it nothing would look amiss.</summary>
internal static class LevelBefore
{
    // Of so many nights before a change the level is taken (choice).
    private const int Nights = 14;

    /// <summary>Writes it to every night from the day on which a change may have begun, until the next.</summary>
    public static void Write(ReviewedNight[] nights, IReadOnlyList<ChangeFound> changes)
    {
        for (var i = 0; i < changes.Count; i++)
        {
            var (began, next) = (changes[i].Began, i + 1 < changes.Count ? changes[i + 1].Began : DateOnly.MaxValue);
            var before = nights.Where(night => night.Record.Date < began && night is { Basis: not null, LeftOut: "" }).TakeLast(Nights).ToList();
            var ofNight = Level(before.Where(night => night.Expected is not null).Select(night => night.Expected!.Value.Median.Milliliters - night.Basis!.Ultrafiltration(night.HoldsDay)));
            var ofDrain = Level(before.Where(night => night is { ExpectedInitialDrain: not null, Basis.InitialDrain: not null })
                .Select(night => night.ExpectedInitialDrain!.Value.Median.Milliliters - night.Basis!.InitialDrain!.Value));
            for (var t = 0; t < nights.Length; t++)
            {
                if (nights[t].Record.Date >= began && nights[t].Record.Date < next && nights[t].Basis is { } basis)
                {
                    nights[t] = nights[t] with
                    {
                        ExpectedBeforeChange = Of(basis.Ultrafiltration(nights[t].HoldsDay) + ofNight),
                        InitialDrainBeforeChange = (basis.InitialDrain + ofDrain) is { } drain ? Of(Math.Max(0, drain)) : null,
                    };
                }
            }
        }
    }

    private static double? Level(IEnumerable<double> offsets) => offsets.ToList() is { Count: > 0 } known ? known.Median() : null;

    private static Volume? Of(double? milliliters) => milliliters is { } known ? Volume.FromMilliliters(known) : null;
}
