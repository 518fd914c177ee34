namespace Transport.Analysis;

/// <summary>Draws of what the model misses and of how days differ, the same for every regimen that is laid beside another.</summary>
/// <remarks>Exchanges of one strength err together, different strengths independently, and so do sodium, pressure and nights.</remarks>
internal sealed class CommonDoubt
{
    private readonly OutlookOptions options;
    private readonly DoubtDraws draws;

    /// <param name="options">What was tested, and which layers are held.</param>
    /// <param name="seed">The ensemble's.</param>
    public CommonDoubt(OutlookOptions options, int seed)
    {
        this.options = options;
        draws = new(options.Layers, seed);
    }

    /// <summary>One simulated rhythm with one draw of the doubt.</summary>
    public MeasuredDay Of(SimulatedRhythm rhythm, int draw)
    {
        var sodium = rhythm.Days[0].Options.Sodium;
        var night = rhythm.Mean(one => Shift(DailyDoubt.Night(one), draw));
        var day = rhythm.Mean(one => Shift(DailyDoubt.Day(one), draw));
        if (options.Layers.HoldsNightToNight)
        {
            var mean = rhythm.NightUltrafiltration + night + rhythm.DayUltrafiltration + day;
            night += draws[DoubtDraws.Part.Night, draw] * options.Layers.NightToNight.Milliliters(mean);
        }

        var people = options.IsPressureMeasured ? 0 : PressureRisk.DeviationBetweenPeople;
        return new(
            rhythm,
            options,
            night,
            day,
            sodium.Factor * Math.Exp(sodium.DeviationOfLogFactor * draws[DoubtDraws.Part.Sodium, draw]),
            people * draws[DoubtDraws.Part.Pressure, draw]);
    }

    /// <summary>Every draw of some members, each as often as it takes.</summary>
    public MeasuredDay[] Of(IReadOnlyList<SimulatedRhythm> members)
    {
        var repeats = DoubtDraws.PerMember(members.Count);
        return [.. Enumerable.Range(0, members.Count * repeats).Select(draw => Of(members[draw / repeats], draw))];
    }

    private double Shift(IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> exchanges, int draw) => exchanges.Sum(one =>
    {
        var discrepancy = options.Layers.Of(one.Solution, options.Tested, one.Mode);
        return discrepancy.ShiftOf(one.Ran.Ultrafiltration.Milliliters, one.Ran.DwellTime)
            + discrepancy.DeviationAt(one.Ran.DwellTime) * draws[DoubtDraws.Of(one.Solution), draw];
    });
}
