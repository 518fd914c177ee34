namespace Transport.Analysis;

/// <summary>A sample, or a volume, that could be taken of an exchange: what a test is put together of.</summary>
public sealed record PlannedSample
{
    /// <summary>A sample.</summary>
    /// <param name="name">What advice calls it.</param>
    /// <param name="exchange">Of which exchange. Samples of one exchange share its residual volume.</param>
    /// <param name="readings">The numbers it would give.</param>
    /// <exception cref="ArgumentException">No reading, or one outside the dwell.</exception>
    public PlannedSample(string name, PlannedExchange exchange, params IReadOnlyList<PlannedReading> readings)
    {
        ArgumentNullException.ThrowIfNull(exchange);
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count == 0 || readings.Any(reading => reading.Time < TimeSpan.Zero || reading.Time > exchange.Dwell.Duration))
        {
            throw new ArgumentException("Expected at least one reading, all within the dwell.", nameof(readings));
        }

        (Name, Exchange, Readings) = (name, exchange, [.. readings]);
    }

    /// <summary>What advice calls it.</summary>
    public string Name { get; }

    /// <summary>Of which exchange.</summary>
    public PlannedExchange Exchange { get; }

    /// <summary>The numbers it would give.</summary>
    public IReadOnlyList<PlannedReading> Readings { get; }

    /// <summary>
    /// What a clinic could do next: 4 h at 3.86 % and at 2.27 % with creatinine and glucose, the drained volume, sodium at the start and at 60 min, a temporary drain
    /// at 60 min; the drained volume of 4 h at 1.36 % and of a night of 8 h at 2.27 %. 2 L on the usual residual volume.
    /// </summary>
    public static IReadOnlyList<PlannedSample> Usual(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var strong = Planned("3.86 %, 4 h", DialysisSolution.Glucose386, 4);
        var middle = Planned("2.27 %, 4 h", DialysisSolution.Glucose227, 4);
        var weak = Planned("1.36 %, 4 h", DialysisSolution.Glucose136, 4);
        var night = Planned("2.27 %, 8 h overnight", DialysisSolution.Glucose227, 8);
        return
        [
            Curves(strong), Volume(strong, 240), Sodium(strong), Temporary(strong),
            Curves(middle), Volume(middle, 240), Volume(weak, 240), Volume(night, 480),
        ];

        PlannedExchange Planned(string name, DialysisSolution solution, double hours) => new(name, new(
            solution,
            Transport.Volume.FromLiters(2),
            TimeSpan.FromHours(hours),
            ResidualFluid.Used(ObservedExchange.TypicalResidual(patient), patient.Plasma)));

        static PlannedSample Curves(PlannedExchange of) => new($"creatinine and glucose at 0, 2 and 4 h of {of.Name}", of,
        [
            new(ObservedQuantity.CreatinineToPlasma, TimeSpan.FromMinutes(120)),
            new(ObservedQuantity.CreatinineToPlasma, TimeSpan.FromMinutes(240)),
            new(ObservedQuantity.GlucoseToInitial, TimeSpan.FromMinutes(120)),
            new(ObservedQuantity.GlucoseToInitial, TimeSpan.FromMinutes(240)),
        ]);

        static PlannedSample Volume(PlannedExchange of, double minutes) => new(
            $"the drained volume of {of.Name}", of, [new(ObservedQuantity.NetUltrafiltrationMilliliters, TimeSpan.FromMinutes(minutes))]);

        static PlannedSample Sodium(PlannedExchange of) => new($"sodium at 0 and 60 min of {of.Name}", of,
        [
            new(ObservedQuantity.SodiumToPlasma, TimeSpan.Zero),
            new(ObservedQuantity.SodiumToPlasma, TimeSpan.FromMinutes(60)),
        ]);

        static PlannedSample Temporary(PlannedExchange of) => new(
            $"a temporary drain at 60 min of {of.Name}", of, [new(ObservedQuantity.NetUltrafiltrationMilliliters, TimeSpan.FromMinutes(60))]);
    }
}
