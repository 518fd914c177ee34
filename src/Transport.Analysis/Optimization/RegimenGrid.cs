using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The regimens of a space in order, each made when it is asked for, so that a million of them take no room.</summary>
internal sealed class RegimenGrid(
    ImmutableArray<TimeSpan> lengths, ImmutableArray<ImmutableArray<Exchange>> nights, ImmutableArray<ImmutableArray<Exchange>> days, ImmutableArray<Regimen> others, TimeOnly nightStart, RegimenSettings settings)
{
    private readonly Regimen seed = new(
        TimeSpan.FromHours(9), [new Exchange(DialysisSolution.Glucose136, Volume.FromMilliliters(1000))], (DayFill?)null, settings)
    {
        NightStart = nightStart,
    };

    public int Count { get; } = checked(lengths.Length * nights.Length * days.Length + others.Length);

    public Regimen this[int index]
    {
        get
        {
            if (index >= Count - others.Length)
            {
                return others[index - (Count - others.Length)];
            }

            var (rest, day) = Math.DivRem(index, days.Length);
            var (length, night) = Math.DivRem(rest, nights.Length);
            return seed with { NightLength = lengths[length], Night = nights[night], Day = days[day] };
        }
    }
}
