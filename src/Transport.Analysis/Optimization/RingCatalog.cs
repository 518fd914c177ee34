using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Transport.Analysis;

/// <summary>The exchanges that many regimens are made of, with one panel. Filled first, then asked.</summary>
internal sealed class RingCatalog
{
    private readonly Patient patient;
    private readonly RegimenOptions options;
    private readonly Regimen sample;
    private readonly Dictionary<CycleKind, int> places = [];
    private readonly List<CycleKind> kinds = [];
    private readonly List<double[]> infused = [];
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
    public void Add(IReadOnlyList<CycleKind> ring, Span<int> into)
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
    }

    /// <summary>Nothing more is added.</summary>
    public void Complete(RegimenSearchOptions search)
    {
        groups = CycleGroup.Of(kinds);
        Doubt = new(kinds, search);
    }

    /// <summary>A library for one worker.</summary>
    public CycleLibrary ToLibrary(bool seesPeak) => new(patient, options, sample, kinds, groups, seesPeak);

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
