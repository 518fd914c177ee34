namespace Transport.Analysis;

/// <summary>Regimens as rings of exchanges, with and without a polymer. What is no ring is simulated phase after phase.</summary>
internal sealed class RegimenCatalog
{
    private readonly Patient patient;
    private readonly RegimenOptions options;
    private readonly double residual;
    private readonly CavityPressure pressure;
    private readonly Regimen sample;
    private readonly Lock gate = new();
    private readonly RingCatalog plain;
    private RingCatalog? polymer;
    private PolymerDistribution? which;

    public RegimenCatalog(Patient patient, RegimenOptions options, Regimen sample, CavityPressure pressure)
    {
        this.patient = patient;
        this.options = options;
        this.pressure = pressure;
        this.sample = sample;
        residual = sample.ResidualFor(patient);
        plain = new(patient, options, sample, pressure);
    }

    /// <summary>The ring of a regimen that can be carried out; null where it is none: other settings, a body, a first night.</summary>
    public RegimenRingOf? Add(Regimen regimen, List<CycleKind> scratch)
    {
        scratch.Clear();
        if (options.Body is not null || options.FirstNight is not null || !regimen.Settings.Equals(sample.Settings) || !CyclePlan.TryRead(regimen, residual, options.Transient, scratch))
        {
            return null;
        }

        var own = regimen.Polymer;
        var places = new int[scratch.Count];
        lock (gate)
        {
            if (own is not null && which is null)
            {
                which = own;
                polymer = new(patient, options with { Panel = options.Panel.With(own) }, sample, pressure);
            }

            if (own is not null && !ReferenceEquals(own, which))
            {
                return null;
            }

            (own is null ? plain : polymer!).Add(scratch, places);
        }

        return new(own is not null, places);
    }

    public void Complete(RegimenSearchOptions search)
    {
        plain.Complete(search);
        polymer?.Complete(search);
    }

    public RingCatalog Of(bool hasPolymer) => hasPolymer ? polymer! : plain;

    public bool HasPolymer => polymer is not null;

    public int KindCount => plain.KindCount + (polymer?.KindCount ?? 0);
}

/// <summary>A regimen's exchanges by their places in a catalog.</summary>
internal sealed record RegimenRingOf(bool HasPolymer, int[] Places);
