namespace Transport.Analysis;

/// <summary>Regimens as rings of exchanges, those of each polymer and those of none apart. What is no ring is simulated phase after phase.</summary>
internal sealed class RegimenCatalog
{
    private readonly Patient patient;
    private readonly RegimenOptions options;
    private readonly double residual;
    private readonly CavityPressure pressure;
    private readonly Regimen sample;
    private readonly Lock gate = new();

    // The first is of those without a polymer. In which order the others come depends on who asks first, and nothing depends on their order.
    private readonly List<(PolymerDistribution? Polymer, RingCatalog Rings)> catalogs = [];

    public RegimenCatalog(Patient patient, RegimenOptions options, Regimen sample, CavityPressure pressure)
    {
        this.patient = patient;
        this.options = options;
        this.pressure = pressure;
        this.sample = sample;
        residual = sample.ResidualFor(patient);
        catalogs.Add((null, new(patient, options, sample, pressure)));
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
            var place = catalogs.FindIndex(catalog => ReferenceEquals(catalog.Polymer, own));
            if (place < 0)
            {
                place = catalogs.Count;
                catalogs.Add((own, new(patient, options with { Panel = options.Panel.With(own!) }, sample, pressure)));
            }

            var rings = catalogs[place].Rings;
            var branch = rings.Add(scratch, places);
            return new(place, branch, places);
        }
    }

    public void Complete(RegimenSearchOptions search) => catalogs.ForEach(catalog => catalog.Rings.Complete(search));

    /// <summary>The rings of each catalog, by its number.</summary>
    public IReadOnlyList<RingCatalog> All => [.. catalogs.Select(catalog => catalog.Rings)];

    public int KindCount => catalogs.Sum(catalog => catalog.Rings.KindCount);
}
