using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>A plasma level that a regimen brings about, and what a collection's dose would come out as over it.</summary>
/// <remarks>
/// The present regimen has the patient's level, and with it a generation; other regimens have the same generation. On automated treatment a morning's sample makes
/// a Kt/V too large and an evening's too small, by about 6 % (computed). Potassium and phosphate are not among the solutes: their levels are never predicted.
/// </remarks>
/// <param name="Solute">Urea or creatinine, or what else has a pool.</param>
/// <param name="Time">Clock time of the sample; in a week the mean of its days at that time. Null: the mean over the rhythm.</param>
/// <param name="MillimolesPerLiter">Median and 90 % band of the level.</param>
/// <param name="Difference">Less the present regimen's, member by member; null for the present regimen itself.</param>
/// <param name="DoseRatio">A clearance over this level beside one over the mean: 1.06 is 6 % too much.</param>
public sealed record PlasmaOutlook(Solute Solute, TimeOnly? Time, Band<double> MillimolesPerLiter, Band<double>? Difference, Band<double> DoseRatio)
{
    internal static ImmutableArray<PlasmaOutlook> Of(IReadOnlyList<SimulatedRhythm> members, IReadOnlyList<SimulatedRhythm>? present, OutlookOptions options)
    {
        return members[0].Plasma is not { } first
            ? []
            : [.. first.Predicted.Except(options.NotMeasured).SelectMany(solute => options.SampleTimes.Select(time => (TimeOnly?)time).Prepend(null).Select(time => Of(members, present, solute, time, options.Layers.OfMembrane)))];
    }

    private static PlasmaOutlook Of(IReadOnlyList<SimulatedRhythm> members, IReadOnlyList<SimulatedRhythm>? present, Solute solute, TimeOnly? time, Doubt held)
    {
        double[] levels = [.. members.Select(member => Level(member.Plasma!, solute, time))];
        return new(
            solute,
            time,
            OutlookDraws.Band(levels, held),
            present is null ? null : OutlookDraws.Band([.. levels.Zip(present, (level, other) => level - Level(other.Plasma!, solute, time))], held),
            OutlookDraws.Band([.. levels.Zip(members, (level, member) => Level(member.Plasma!, solute, null) / level)], held));
    }

    private static double Level(PlasmaRhythm plasma, Solute solute, TimeOnly? time) => time is not { } clock
        ? plasma.MeanOf(solute).MillimolesPerLiter
        : Enumerable.Range(0, (int)plasma.Period.TotalDays).Average(day => plasma.LevelAt(solute, clock, day).MillimolesPerLiter);
}
