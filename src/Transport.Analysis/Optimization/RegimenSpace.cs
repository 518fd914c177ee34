using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The regimens that a search looks at: every combination of what is listed.</summary>
/// <remarks>The order of the lists and what is in them twice does not matter. A list that was never made (<c>default</c>) is refused.</remarks>
public sealed record RegimenSpace
{
    /// <summary>Night lengths.</summary>
    public ImmutableArray<TimeSpan> NightLengths { get; init => field = Require.Made(value, nameof(NightLengths)); } = [TimeSpan.FromHours(8), TimeSpan.FromHours(9), TimeSpan.FromHours(10)];

    /// <summary>Numbers of cycles.</summary>
    /// <exception cref="ArgumentException">The list was never made.</exception>
    /// <exception cref="ArgumentOutOfRangeException">One of them is less than 1.</exception>
    public ImmutableArray<int> Cycles
    {
        get;
        init => field = Require.Made(value, nameof(Cycles)).All(cycles => cycles >= 1)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(Cycles), value.Min(), "Expected 1 or more cycles.");
    }
    = [3, 4, 5, 6, 7];

    /// <summary>Volumes per cycle.</summary>
    public required ImmutableArray<Volume> VolumesPerCycle { get; init => field = Require.Made(value, nameof(VolumesPerCycle)); }

    /// <summary>Solutions for the night.</summary>
    public ImmutableArray<DialysisSolution> NightSolutions { get; init => field = Require.Made(value, nameof(NightSolutions)); } = [.. DialysisSolution.UsualGlucose];

    /// <summary>
    /// How many of the first cycles have the next stronger of the night's solutions; 0: all have the same.
    /// </summary>
    public ImmutableArray<int> StrongerFirstCycles { get; init => field = Require.Made(value, nameof(StrongerFirstCycles)); } = [0, 2];

    /// <summary>Day fills; null in the list is a dry day.</summary>
    public ImmutableArray<DayFill?> DayFills { get; init => field = Require.Made(value, nameof(DayFills)); } = [null];

    /// <summary>Whether <see cref="StrongerFirstCycles"/> try every stronger solution of the night's and not the next one alone, so that a longer list never loses a night.</summary>
    public bool TriesEveryStronger { get; init; }

    /// <summary>Further days, exchange by exchange: exchanges by hand before the night begins again.</summary>
    public ImmutableArray<ImmutableArray<Exchange>> OtherDays { get; init => field = Require.Made(value, nameof(OtherDays)); } = [];

    /// <summary>Clock time of the first fill of the night. It decides when exchanges by hand fall, and nothing else.</summary>
    public TimeOnly NightStart { get; init; } = new(22, 0);

    /// <summary>Belly, catheter and machine.</summary>
    public RegimenSettings Settings { get; init; } = RegimenSettings.Default;

    /// <summary>
    /// 8, 9 and 10 h; 3 to 7 cycles; from 1.5 L in steps of 250 mL up to the largest fill; the three glucose strengths, alone or with the next
    /// stronger in the first two cycles; a dry day or 1.0, 1.5 and 2.0 L of the two weaker strengths: about 2,600 regimens at 1.8 m² of body surface.
    /// </summary>
    public static RegimenSpace Usual(Patient patient, RegimenGoals goals)
    {
        ArgumentNullException.ThrowIfNull(goals);
        var largest = goals.LargestFillOf(patient).Milliliters;
        var smallest = Math.Min(1500, 100 * Math.Floor(largest / 100));
        var count = 1 + (int)((largest - smallest) / 250);
        var day = from milliliters in new[] { 1000.0, 1500, 2000 }
                  where milliliters <= largest
                  from solution in new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose227 }
                  select new DayFill(solution, Volume.FromMilliliters(milliliters));
        return new()
        {
            VolumesPerCycle = [.. Enumerable.Range(0, count).Select(i => Volume.FromMilliliters(smallest + 250 * i))],
            DayFills = [null, .. day],
            NightStart = goals.NightWindow?.From ?? new(22, 0),
        };
    }

    /// <summary>
    /// The usual space of a shelf: its glucose strengths and what a machine mixes of each two of them, every stronger one in the first two cycles; of days also 1.5 and 2 L of
    /// its icodextrin.
    /// </summary>
    /// <param name="patient">Whose size.</param>
    /// <param name="goals">The goals; they name the shelf, or the usual one is meant.</param>
    /// <param name="parts">How bags are mixed, in parts of the weaker and of the stronger one; none: not at all.</param>
    public static RegimenSpace OfShelf(Patient patient, RegimenGoals goals, params IEnumerable<(double Weaker, double Stronger)> parts)
    {
        var usual = Usual(patient, goals);
        var shelf = goals.Shelf ?? BagShelf.Usual;
        var strengths = shelf.WithMixes(parts);
        var volumes = usual.DayFills.OfType<DayFill>().Select(fill => fill.Volume).Distinct().ToList();
        var polymer = shelf.Bags.Select(bag => bag.Solution).Where(solution => solution.Polymer is not null).Distinct();
        return usual with
        {
            NightSolutions = strengths,
            TriesEveryStronger = true,
            DayFills =
            [
                null,
                .. from volume in volumes from solution in shelf.Glucose select new DayFill(solution, volume),
                .. from volume in volumes where volume.Liters >= 1.5 from solution in polymer select new DayFill(solution, volume),
            ],
        };
    }

    /// <summary>Further nights, exchange by exchange: small and short before large and long, two fluids, whatever a step of the lists does not make.</summary>
    public ImmutableArray<ImmutableArray<Exchange>> OtherNights { get; init; } = [];

    /// <summary>Whole regimens besides the combinations, with the same settings.</summary>
    public ImmutableArray<Regimen> Others { get; init => field = Require.Made(value, nameof(Others)); } = [];

    /// <summary>How many regimens there are, whether they can be carried out or not.</summary>
    public int Count => ToGrid().Count;

    /// <summary>All of them, whether they can be carried out or not, in an order that depends on their content alone.</summary>
    internal List<Regimen> All()
    {
        var grid = ToGrid();
        return [.. Enumerable.Range(0, grid.Count).Select(i => grid[i])];
    }

    /// <summary>The same, each made when it is asked for.</summary>
    internal RegimenGrid ToGrid()
    {
        var solutions = NightSolutions.Distinct().OrderBy(Strength).ThenBy(Sodium).ThenBy(Name, StringComparer.Ordinal).ToList();
        var days = DayFills.Distinct()
            .OrderBy(day => day?.Volume ?? default)
            .ThenBy(day => day is null ? 0 : Strength(day.Solution))
            .ThenBy(day => day is null ? 0 : Sodium(day.Solution))
            .ThenBy(day => day?.Solution.Name, StringComparer.Ordinal);
        var equal =
            from cycles in Cycles.Distinct().Order()
            from volume in VolumesPerCycle.Distinct().Order()
            from night in Nights(solutions, cycles, volume)
            select night;
        List<ImmutableArray<Exchange>> nights = [.. equal];
        var known = nights.ToHashSet(SameExchanges.Instance);
        nights.AddRange(OtherNights.Where(night => !night.IsEmpty && known.Add(night)).OrderBy(night => string.Join(';', night), StringComparer.Ordinal));
        var fills = days.Select(day => day is null ? ImmutableArray<Exchange>.Empty : [new(day.Solution, day.Volume)]).ToList();
        var knownDays = fills.ToHashSet(SameExchanges.Instance);
        fills.AddRange(OtherDays.Where(knownDays.Add).OrderBy(day => string.Join(';', day), StringComparer.Ordinal));
        return new([.. NightLengths.Distinct().Order()], [.. nights], [.. fills], [.. Others.Distinct().OrderBy(other => other.Describe(), StringComparer.Ordinal)], NightStart, Settings);
    }

    private IEnumerable<ImmutableArray<Exchange>> Nights(List<DialysisSolution> solutions, int cycles, Volume volume)
    {
        for (var i = 0; i < solutions.Count; i++)
        {
            var exchange = new Exchange(solutions[i], volume);
            foreach (var stronger in StrongerFirstCycles.Distinct().Order())
            {
                if (stronger == 0)
                {
                    yield return [.. Enumerable.Repeat(exchange, cycles)];
                }
                else if (stronger > 0 && stronger < cycles)
                {
                    for (var j = i + 1; j < (TriesEveryStronger ? solutions.Count : Math.Min(i + 2, solutions.Count)); j++)
                    {
                        yield return
                        [
                            .. Enumerable.Repeat(new Exchange(solutions[j], volume), stronger),
                            .. Enumerable.Repeat(exchange, cycles - stronger),
                        ];
                    }
                }
            }
        }
    }

    private sealed class SameExchanges : IEqualityComparer<ImmutableArray<Exchange>>
    {
        public static SameExchanges Instance { get; } = new();

        public bool Equals(ImmutableArray<Exchange> left, ImmutableArray<Exchange> right) => left.SequenceEqual(right);

        public int GetHashCode(ImmutableArray<Exchange> night) => night.IsEmpty ? 0 : HashCode.Combine(night.Length, night[0], night[^1]);
    }

    private static double Strength(DialysisSolution solution) => solution.Glucose.MillimolesPerLiter;

    private static double Sodium(DialysisSolution solution) => solution.Sodium.MillimolesPerLiter;

    private static string Name(DialysisSolution solution) => solution.Name;
}
