using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Whether the numbers of a book can all be true. Findings, not refusals.</summary>
internal static class BookArithmetic
{
    // The identity holds to 1 mL where all is written down; people round to 50 (choice).
    private const double Slack = 50;

    /// <param name="nights">The nights by date.</param>
    /// <param name="inDoubt">The days of rows that are no nights: nobody left them out.</param>
    public static IEnumerable<Finding> Of(IReadOnlyList<NightRecord> nights, IReadOnlySet<DateOnly> inDoubt)
    {
        NightRecord? before = null;
        foreach (var night in nights)
        {
            var isNext = before is not null && night.Date == before.Date.AddDays(1);
            foreach (var finding in OfOne(night).Concat(isNext ? OfTwo(before!, night) : []))
            {
                yield return finding with { Row = night.Row };
            }

            var missing = before is null ? 0 : night.Date.DayNumber - before.Date.DayNumber - 1 - inDoubt.Count(day => day > before.Date && day < night.Date);
            if (missing > 0)
            {
                yield return new(
                    missing > 3 ? Severity.Warning : Severity.Note,
                    "book-gap",
                    Invariant($"{missing} {(missing == 1 ? "night has" : "nights have")} no row before this one. Not written, or not treated? Ask."))
                {
                    Row = night.Row,
                    Field = "date",
                };
            }

            before = night;
        }
    }

    private static IEnumerable<Finding> OfOne(NightRecord night)
    {
        if (night is { Regimen: { } regimen, UltrafiltrationByBags: { } bags, WrittenUltrafiltration: { } written, CycleDrains.Length: > 0 })
        {
            // Each way of counting would do; the day fill of the morning before is taken to be today's.
            var initial = night.InitialDrain ?? default;
            var day = night.InitialDrain is null ? default : initial - (regimen.DayFill?.Volume ?? default);
            if (Off(bags, written) > Slack && Off(bags + day, written) > Slack && Off(bags + initial, written) > Slack)
            {
                yield return new(
                    Severity.Warning,
                    "book-sum-differs",
                    Invariant($"Drains less fills make {bags.Milliliters:0;−0} mL; the book has {written.Milliliters:0;−0} mL as ultrafiltration. One of the numbers may be from another line."))
                {
                    Field = "uf",
                };
            }
        }

        if (night is { WrittenUltrafiltration: { } total, InitialDrain: { Milliliters: > 0 } drained } && total == drained)
        {
            yield return new(Severity.Note, "book-copied-initial-drain", "Ultrafiltration and initial drain are the same number: one may be copied from the other's line.") { Field = "uf" };
        }

        if (night is { LostDwell: { } lost, Regimen: { } planned } && lost.TotalMinutes > planned.DwellTimes.Sum(dwell => dwell.TotalMinutes))
        {
            yield return new(Severity.Warning, "book-lost-more-than-planned", Invariant($"{lost.TotalMinutes:0} min of dwell are lost, more than were planned.")) { Field = "dwell deviation" };
        }

        if (night is { LostDwell: { } deviation, AverageDwell: { } average, Regimen: { } run })
        {
            var expected = run.DwellTimes.Average(dwell => dwell.TotalMinutes) - deviation.TotalMinutes / run.Cycles;
            if (Math.Abs(expected - average.TotalMinutes) > 5)
            {
                yield return new(
                    Severity.Note,
                    "book-dwell-differs",
                    Invariant($"The plan less what was lost makes an average dwell of {expected:0} min; the book has {average.TotalMinutes:0} min. What was run may differ from what the book says is run."))
                {
                    Field = "average dwell",
                };
            }
        }

        if (night.CycleDrains.Length > 0 && night.Regimen is { } cycled && night.CycleDrains.Length != cycled.Cycles)
        {
            yield return new(Severity.Note, "book-cycles-differ", Invariant($"{night.CycleDrains.Length} drains are written, {cycled.Cycles} cycles are to be run.")) { Field = "cycle drains" };
        }
    }

    private static IEnumerable<Finding> OfTwo(NightRecord before, NightRecord night)
    {
        if (night.WrittenUltrafiltration is { } total && total == before.WrittenUltrafiltration && night.InitialDrain is { Milliliters: > 0 } drain && drain == before.InitialDrain)
        {
            yield return new(Severity.Note, "book-copied-night", "Ultrafiltration and initial drain are those of the night before: this row may be a copy.");
        }

        var fill = before.Regimen?.DayFill?.Volume.Milliliters ?? 0;
        if (night is { Weight: { } now } && before is { Weight: { } then } && Math.Abs(now.Kilograms - then.Kilograms) > 2
            && !(fill > 0 && Math.Abs(Math.Abs(now.Kilograms - then.Kilograms) - fill / 1000) < 0.6))
        {
            yield return new(
                Severity.Warning,
                "book-weight-step",
                Invariant($"Weight changes by {now.Kilograms - then.Kilograms:+0.0;−0.0} kg in a day, from {then.Kilograms:0.0} to {now.Kilograms:0.0} kg. Another scale, clothes, a slip, a full belly?"))
            {
                Field = "weight",
            };
        }
    }

    private static double Off(Volume one, Volume other) => Math.Abs((one - other).Milliliters);
}
