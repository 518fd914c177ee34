using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Transport.Analysis;

/// <summary>The exchanges that many regimens are made of, with one panel. Filled first, then asked.</summary>
internal sealed class RingCatalog
{
    private const int FewestSharing = 4;

    private readonly Patient patient;
    private readonly RegimenOptions options;
    private readonly Regimen sample;
    private readonly Dictionary<CycleKind, int> places = [];
    private readonly List<CycleKind> kinds = [];
    private readonly List<double[]> infused = [];

    // Rings that begin alike share the map of what they have in common: all but the last exchange, found exchange by exchange.
    private readonly Dictionary<(int Before, int Kind), int> branches = [];
    private readonly List<int> sharing = [];
    private int[] starts = [];
    private int startCount;
    private ImmutableArray<CycleGroup> groups;

    public RingCatalog(Patient patient, RegimenOptions options, Regimen sample, CavityPressure pressure)
    {
        this.patient = patient;
        this.options = options;
        this.sample = sample;
        Figures = new(patient, options, pressure);
    }

    public RegimenFigures Figures { get; }

    /// <summary>The doubt of rings; there once the catalog is complete.</summary>
    public RingDoubt Doubt { get; private set; } = null!;

    public int KindCount => kinds.Count;

    public int InfusedCount => 1 + options.Panel.Count;

    /// <summary>Places of exchanges in the catalog; new ones are added.</summary>
    /// <returns>The branch of the ring: its exchanges but the last.</returns>
    public int Add(IReadOnlyList<CycleKind> ring, Span<int> into)
    {
        for (var k = 0; k < ring.Count; k++)
        {
            ref var place = ref CollectionsMarshal.GetValueRefOrAddDefault(places, ring[k], out var isKnown);
            if (!isKnown)
            {
                place = kinds.Count;
                kinds.Add(ring[k]);
                infused.Add(Figures.InfusedBy(ring[k]));
            }

            into[k] = place;
        }

        var branch = -1;
        foreach (var kind in into[..^1])
        {
            ref var next = ref CollectionsMarshal.GetValueRefOrAddDefault(branches, (branch, kind), out var isKnown);
            if (!isKnown)
            {
                next = sharing.Count;
                sharing.Add(0);
            }

            branch = next;
        }

        if (branch >= 0)
        {
            sharing[branch]++;
        }

        return branch;
    }

    /// <summary>The number of the start that a branch shares with others; null where hardly any do.</summary>
    public int? StartOf(int branch) => branch >= 0 && starts[branch] >= 0 ? starts[branch] : null;

    /// <summary>Nothing more is added.</summary>
    public void Complete(RegimenSearchOptions search)
    {
        groups = CycleGroup.Of(kinds);

        // To put a start together takes as long as a few rings.
        starts = [.. sharing.Select(rings => rings >= FewestSharing ? startCount++ : -1)];
        Doubt = new(kinds, search);
    }

    /// <summary>A library for one worker.</summary>
    public CycleLibrary ToLibrary(bool seesPeak) => new(patient, options, sample, kinds, groups, seesPeak, startCount, Doubt.Gains);

    /// <summary>Volume and amounts infused by a ring.</summary>
    public void Infused(ReadOnlySpan<int> ring, Span<double> into)
    {
        into.Clear();
        foreach (var kind in ring)
        {
            var one = infused[kind];
            for (var i = 0; i < one.Length; i++)
            {
                into[i] += one[i];
            }
        }
    }
}
