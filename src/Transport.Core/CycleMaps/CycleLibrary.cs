using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>The maps of exchanges that regimens share, for one membrane at a time, and the rhythm of rings made of them. One per thread.</summary>
internal sealed class CycleLibrary
{
    private const int MostRounds = 20;

    // What is found in the cavity as a share of a complete drain's residual: below, between and above, the first exchange is near one of the points that it is mapped around.
    private const double NearlyNothing = 0.25;
    private const double NearlyResidual = 0.75;

    // Relative, of each thing carried: a tenth of the contents, so that a day is settled to 1e-6.
    private const double SteadyTolerance = 1e-5;

    private readonly IReadOnlyList<CycleKind> kinds;
    private readonly ICycleMapper mapper;
    private readonly CycleMap[] maps;
    private readonly int[] madeFor;
    private readonly CycleMap?[] starts;
    private readonly int[] startsFor;
    private readonly Dictionary<(int Kind, double Minutes, CycleStart Start), EarlyStart> earlyStarts = [];
    private readonly ImmutableArray<CycleGroup> groups;
    private readonly CycleDwells?[] dwells;
    private readonly int[] dwellsFor;
    private readonly CyclePolynomial?[] polynomials;
    private readonly int[] polynomialsFor;
    private readonly (int Group, int Member)[] places;
    private readonly int solutes;
    private readonly double[] gains;
    private readonly double[] usual;
    private readonly double[] carried;
    private readonly double[] before;
    private readonly double[] outcome;
    private int membranes;

    /// <param name="patient">Whose plasma and size.</param>
    /// <param name="options">How to simulate; the panel holds the polymer where there is one.</param>
    /// <param name="sample">A regimen with the settings that all have.</param>
    /// <param name="kinds">The exchanges.</param>
    /// <param name="groups">The same in groups.</param>
    /// <param name="seesPeak">Whether the fullest moment inside a dwell is looked for.</param>
    /// <param name="startCount">How many starts there are that rings share.</param>
    /// <param name="gains">Of each exchange, how much of what it removes counts for <see cref="Gained"/>; nothing where none are given.</param>
    public CycleLibrary(
        Patient patient, RegimenOptions options, Regimen sample, IReadOnlyList<CycleKind> kinds, ImmutableArray<CycleGroup> groups, bool seesPeak, int startCount = 0, ImmutableArray<double> gains = default)
    {
        this.groups = groups;
        this.kinds = kinds;
        solutes = options.Panel.Count;
        this.gains = gains.IsDefault ? new double[kinds.Count] : [.. gains];
        mapper = Vector512.IsHardwareAccelerated
            ? new CycleMapper<Lanes8>(patient, options, sample, seesPeak)
            : new CycleMapper<Lanes4>(patient, options, sample, seesPeak);
        maps = new CycleMap[kinds.Count];
        madeFor = new int[kinds.Count];
        starts = new CycleMap?[startCount];
        startsFor = new int[startCount];
        dwells = new CycleDwells?[groups.Length];
        dwellsFor = new int[groups.Length];
        polynomials = new CyclePolynomial?[groups.Length];
        polynomialsFor = new int[groups.Length];
        places = new (int, int)[kinds.Count];
        for (var group = 0; group < groups.Length; group++)
        {
            // The fullest moment is no smooth function of the dwell.
            polynomials[group] = !seesPeak && DwellPoints.Of(groups[group]) is { } points ? new(points, solutes) : null;
            for (var member = 0; member < groups[group].Members.Length; member++)
            {
                places[groups[group].Members[member]] = (group, member);
            }
        }

        usual = new double[2 + solutes];
        carried = new double[2 + solutes];
        before = new double[2 + solutes];
        outcome = new double[CycleMap.RowsOf(solutes)];
        mapper.UsualStart(usual);
    }

    /// <summary>Numbers that a ring gives: volume drained, mL; amounts drained, µmol; the fullest moment, mL.</summary>
    public int SumCount => 2 + solutes;

    /// <summary>Of the ring that was run last, what its exchanges removed, each times its gain, mL.</summary>
    public double Gained { get; private set; }

    /// <summary>Another membrane; maps are made as they are asked for.</summary>
    public void Prepare(ThreePoreMembrane membrane)
    {
        membranes++;
        mapper.Prepare(membrane);
    }

    /// <summary>Twenty-four hours in their steady rhythm. False where one of the exchanges is no map.</summary>
    /// <param name="ring">The exchanges, by their place in the list of kinds.</param>
    /// <param name="sums">What comes of it.</param>
    /// <param name="drained">What each exchange drains, mL; may be empty.</param>
    /// <param name="late">How late each begins, min; may be empty.</param>
    public bool TryRun(ReadOnlySpan<int> ring, Span<double> sums, Span<double> drained = default, Span<double> late = default)
    {
        for (var k = 0; k < ring.Length; k++)
        {
            if (!MapOf(ring[k]).Holds || (k < ring.Length - 1 && !maps[ring[k]].Drains))
            {
                return false;
            }
        }

        // The residual is a tenth of the contents and half forgotten: two cycles and a day before the first fill decide what it finds.
        usual.CopyTo(carried.AsSpan());
        for (var k = Math.Max(0, ring.Length - 3); k < ring.Length; k++)
        {
            maps[ring[k]].Apply(carried, outcome);
            outcome.AsSpan(0, carried.Length).CopyTo(carried);
        }

        // Where little or nothing is left to drain, the last exchange hands over as much earlier as its drain was to take, and perhaps an all but empty cavity.
        var ahead = AheadBy(ring[^1]);
        var start = kinds[ring[0]].Start == CycleStart.Nothing ? CycleStart.Nothing : StartWith(carried[1] / usual[1]);
        var first = ahead > 0 || start != kinds[ring[0]].Start ? EarlyOf(ring[0], ahead, start) : maps[ring[0]];
        if (!first.Holds)
        {
            return false;
        }

        for (var round = 0; round < MostRounds; round++)
        {
            carried.CopyTo(before.AsSpan());
            Around(ring, first, ahead, sums, drained, late);
            if (IsSteady())
            {
                return maps[ring[^1]].Fits(carried[1]);
            }
        }

        return false;
    }

    /// <summary>The same for a ring that shares all but its last exchange with others, whose map is put together once: many times faster, without the fullest
    /// moment, which is zero. False where one of the exchanges is no map.</summary>
    /// <param name="ring">The exchanges, by their place in the list of kinds.</param>
    /// <param name="start">The number of what it shares.</param>
    /// <param name="sums">What comes of it.</param>
    public bool TryRunShared(ReadOnlySpan<int> ring, int start, Span<double> sums)
    {
        var (shared, last) = (StartOf(ring[..^1], start), MapOf(ring[^1]));
        if (!shared.Holds || !last.Holds || !last.Drains)
        {
            return TryRun(ring, sums);
        }

        usual.CopyTo(carried.AsSpan());
        last.Apply(carried, outcome);
        outcome.AsSpan(0, carried.Length).CopyTo(carried);
        if (AheadBy(ring[^1]) > 0)
        {
            return TryRun(ring, sums);
        }

        for (var round = 0; round < MostRounds; round++)
        {
            carried.CopyTo(before.AsSpan());
            sums.Clear();
            foreach (var map in (ReadOnlySpan<CycleMap>)[shared, last])
            {
                map.Apply(carried, outcome);
                for (var i = 0; i <= solutes; i++)
                {
                    sums[i] += outcome[map.DrainedRow + i];
                }

                outcome.AsSpan(0, carried.Length).CopyTo(carried);
                Gained = map == shared ? outcome[map.PeakRow] : Gained + GainOf(ring[^1], map);
            }

            if (IsSteady())
            {
                return true;
            }
        }

        return false;
    }

    private void Around(ReadOnlySpan<int> ring, CycleMap first, double ahead, Span<double> sums, Span<double> drained, Span<double> late)
    {
        sums.Clear();
        Gained = 0;
        for (var k = 0; k < ring.Length; k++)
        {
            var map = k == 0 ? first : maps[ring[k]];
            if (!late.IsEmpty)
            {
                late[k] = carried[0];
            }

            carried[0] += k == 0 ? ahead : 0;

            map.Apply(carried, outcome);
            for (var i = 0; i <= solutes; i++)
            {
                sums[i] += outcome[map.DrainedRow + i];
            }

            sums[solutes + 1] = Math.Max(sums[solutes + 1], outcome[map.PeakRow]);
            if (!drained.IsEmpty)
            {
                drained[k] = outcome[map.DrainedRow];
            }

            Gained += GainOf(ring[k], map);
            outcome.AsSpan(0, carried.Length).CopyTo(carried);
        }
    }

    // Of the exchange whose outcome is at hand.
    private double GainOf(int kind, CycleMap map) => gains[kind] * (outcome[map.DrainedRow] - kinds[kind].Fill);

    private bool IsSteady()
    {
        if (Math.Abs(carried[0] - before[0]) > 1e-3)
        {
            return false;
        }

        for (var i = 1; i < carried.Length; i++)
        {
            if (Math.Abs(carried[i] - before[i]) > SteadyTolerance * Math.Max(Math.Abs(before[i]), Math.Abs(usual[i])))
            {
                return false;
            }
        }

        return true;
    }

    private CycleMap MapOf(int kind)
    {
        ref var map = ref maps[kind];
        map ??= new(solutes);
        if (madeFor[kind] != membranes)
        {
            madeFor[kind] = membranes;
            var (group, member) = places[kind];
            if (PolynomialOf(group) is { Holds: true } polynomial)
            {
                polynomial.Read(member, kinds[kind].Drain, map);
            }
            else
            {
                mapper.Map(kinds[kind], DwellsOf(group), member, map);
            }
        }

        return map;
    }

    private CycleMap StartOf(ReadOnlySpan<int> exchanges, int start)
    {
        var shared = starts[start] ??= new(solutes);
        if (startsFor[start] != membranes)
        {
            startsFor[start] = membranes;
            shared.Set(MapOf(exchanges[0]), gains[exchanges[0]], kinds[exchanges[0]].Fill);
            for (var k = 1; k < exchanges.Length && shared.Holds; k++)
            {
                shared.Append(MapOf(exchanges[k]), gains[exchanges[k]], kinds[exchanges[k]].Fill);
            }
        }

        return shared;
    }

    // By how much the drain of an exchange is over sooner than planned, if by more than half of it; min.
    private double AheadBy(int kind) => carried[0] < -0.5 * kinds[kind].Drain ? kinds[kind].Drain : 0;

    private static CycleStart StartWith(double share) =>
        share < NearlyNothing ? CycleStart.Nothing : share < NearlyResidual ? CycleStart.HalfResidual : CycleStart.Residual;

    // An exchange that begins earlier than planned, and perhaps finds a cavity that is all but empty.
    private CycleMap EarlyOf(int kind, double minutes, CycleStart start)
    {
        ref var early = ref CollectionsMarshal.GetValueRefOrAddDefault(earlyStarts, (kind, minutes, start), out _);
        early ??= new(kinds[kind] with { Start = start, Dwell = kinds[kind].Dwell + minutes }, solutes);
        if (early.MadeFor != membranes)
        {
            early.MadeFor = membranes;
            early.Dwells = mapper.Dwell(early.Group, early.Dwells);
            mapper.Map(early.Kind, early.Dwells, 0, early.Map);
        }

        return early.Map;
    }

    private CyclePolynomial? PolynomialOf(int group)
    {
        if (polynomials[group] is { } polynomial && polynomialsFor[group] != membranes)
        {
            polynomialsFor[group] = membranes;
            polynomial.Make(mapper, usual);
        }

        return polynomials[group];
    }

    private CycleDwells DwellsOf(int group)
    {
        if (dwellsFor[group] != membranes)
        {
            dwells[group] = mapper.Dwell(groups[group], dwells[group]);
            dwellsFor[group] = membranes;
        }

        return dwells[group]!;
    }

    private sealed class EarlyStart(CycleKind kind, int solutes)
    {
        public CycleKind Kind { get; } = kind;

        public CycleGroup Group { get; } = CycleGroup.Of([kind])[0];

        public CycleDwells? Dwells { get; set; }

        public CycleMap Map { get; } = new(solutes);

        public int MadeFor { get; set; }
    }
}
