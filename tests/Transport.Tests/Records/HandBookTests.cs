using System.Globalization;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using Transport.Reporting;

namespace Transport.Tests.Records;

/// <summary>A book of exchanges by hand: four a day with their times and weights, beside what the membrane lets expect of 24 h.</summary>
public sealed class HandBookTests
{
    private const string Header = "date,patient,exchange,began,night fluid (mmol/L),filled (g),drained (g)";

    private static readonly (int Number, string Began, double Strength)[] Day = [(1, "07:30", 75.5), (2, "12:00", 75.5), (3, "17:30", 126), (4, "22:30", 126)];

    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);

    [Fact]
    public void Times_and_fluids_of_an_exchange_are_written_once_and_make_the_day()
    {
        var book = Read(Written(3, 150, day => 0));
        Assert.Empty(book.Findings);
        Assert.Equal(3, book.Nights.Count);
        Assert.All(book.Nights, day => Assert.True(day.IsByHand));
        Assert.Equal(book.Nights[0].Regimen, book.Nights[2].Regimen);
        Assert.Equal(4, book.Nights[2].Regimen!.Exchanges.Count());
        Assert.Equal([126, 75.5, 75.5, 126], book.Nights[2].Regimen!.Exchanges.Select(exchange => exchange.Solution.Glucose.MillimolesPerLiter)); // from the evening on
    }

    [Fact]
    public void A_day_is_expected_as_its_simulation_says()
    {
        // The regimen of these four exchanges simulated on its own; a prior nobody doubts (one member), so that the first day's expectation is the model's. The strengths: the tested one
        // carries no shift, the other 25 mL for each of its two exchanges of 4.5 and 5.5 h (ModelDiscrepancy, at 4 h and from then on the same).
        var regimen = Regimen.Ambulatory(Day.Select(one => new HandExchange(TimeOnly.ParseExact(one.Began, "HH:mm", CultureInfo.InvariantCulture), DialysisSolution.OfGlucose(one.Strength), Volume.FromLiters(2))));
        var simulated = RegimenSimulation.Run(Person, Membrane, regimen).Ultrafiltration.Milliliters;
        var review = Review(Written(2, 0.001, day => 0));
        var reading = Assert.Single(review.Nights[0].Readings);
        Assert.Equal(NightChannel.Ultrafiltration, reading.Channel);
        Assert.Equal(simulated + 50, reading.Expected, 3.0); // times to the half hour, tolerance 1e-5
        Assert.True(review.Nights[0].HoldsDay);
    }

    // Four exchanges of 2 L. Drains of 900 leave 1,100 each below the next fill: 3,300 and 2,000 before the last, 2.65 times. One of 4,300 held 2.15 times. One that brings nothing on the last day is said by
    // itself. Drains of 1,500 in a body that takes fluid up hold nothing.
    [Theory]
    [InlineData(900, "record-overfill-now", "2.65 times the fill, 5300 mL")]
    [InlineData(4300, "record-overfill-now", "2.15 times the fill, 4300 mL")]
    [InlineData(0, "record-drain-below-fill", "Hardly anything came of one these days")]
    [InlineData(1500, null, "")]
    public void What_exchanges_by_hand_leave_inside_or_bring_beyond_the_fill_is_said(double lastDrains, string? code, string said)
    {
        var rows = Written(10, 50, day => 0).ToList();
        var all = lastDrains == 900;
        for (var at = rows.Count - (all ? 4 : lastDrains == 1500 ? 28 : 1); at < rows.Count; at++)
        {
            var cells = rows[at].Split(',');
            cells[^1] = lastDrains.ToString(CultureInfo.InvariantCulture);
            rows[at] = string.Join(',', cells);
        }

        var findings = Review(rows).Findings;
        if (code is null)
        {
            Assert.DoesNotContain(findings, found => found.Code is "record-overfill-now" or "record-overfill-risk" or "record-drain-below-fill");
            return;
        }

        Assert.Contains(said, findings.Single(found => found.Code == code).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_loss_of_forty_per_cent_over_sixty_days_is_found_and_the_page_speaks_of_days()
    {
        var review = Review(Written(200, 150, day => -0.4 * Math.Clamp((day - 90) / 60.0, 0, 1)));
        Assert.Contains(review.Changes, change => change.IsDownward && change.SignalledOn.DayNumber - new DateOnly(2026, 1, 1).DayNumber is > 95 and < 155);
        var page = RecordPage.Of(review);
        Assert.Contains("UF, mL<br>a day", page, StringComparison.Ordinal);
        Assert.Contains("ultrafiltration of 24 h", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Writing the initial drain down", page, StringComparison.Ordinal);
        Assert.Empty(Review(Written(200, 150, day => 0)).Changes);
    }

    [Fact]
    public void Days_by_hand_feed_the_fit()
    {
        var review = Review(Written(60, 150, day => 0));
        var nights = ObservedNights.From(review);
        var mean = Assert.Single(nights.Means);
        Assert.Equal(ObservedQuantity.MeanNightAndDayUltrafiltrationMilliliters, mean.Observation.Quantity);
        Assert.InRange(mean.Nights, 55, 60);

        // The mean is the simulated day's (three standard errors of 150 mL), and a fit of the same membrane's test expects it within its own error.
        var regimen = review.Nights[0].Record.Regimen!;
        Assert.Equal(RegimenSimulation.Run(Person, Membrane, regimen).Ultrafiltration.Milliliters, mean.Observation.Value, 3 * 150 / Math.Sqrt(60));
        var joint = MembraneFit.Run(Fitting.InventedTests.Of(Membrane, DialysisSolution.Glucose227, Person with { Code = "MV-90" }), nights: nights);
        Assert.InRange(joint.Residuals.Single(residual => residual.Observation.Quantity.IsOfNights()).Standardized, -1, 1);
    }

    [Fact]
    public void Long_dwells_by_hand_tell_little_of_the_conductance()
    {
        // More conductance draws more while there is glucose and takes back more when it is gone: over 24 h of long dwells half of it more changes ultrafiltration by less than a third of what it
        // changes a night of short ones (both simulated here), and beside the prior alone sixty days leave nine tenths of the doubt or more.
        var nights = ObservedNights.From(Review(Written(60, 150, day => 0)));
        Assert.InRange(MembraneFit.Run([], nights: nights).NightEvidence.First(one => one.Parameter == MembraneParameter.OsmoticConductance).SpreadLeft, 0.9, 1.02);
        var cycles = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227);
        Assert.InRange(Gain(nights.Means[0].Regimen) / Gain(cycles), -0.3, 0.3);

        double Gain(Regimen regimen) => RegimenSimulation.Run(Person, Membrane with { UltrafiltrationCoefficient = Membrane.UltrafiltrationCoefficient * 1.5 }, regimen).Ultrafiltration.Milliliters
            - RegimenSimulation.Run(Person, Membrane, regimen).Ultrafiltration.Milliliters;
    }

    [Fact]
    public void A_day_without_a_time_or_a_weight_has_no_expectation_and_one_too_close_says_why()
    {
        string[] first = [.. Written(1, 0.001, day => 0)];
        Assert.All(Read(first.Select(row => row.Replace("07:30", "", StringComparison.Ordinal))).Nights, day => Assert.Null(day.Regimen));
        var close = Read(first.Select(row => row.Replace("12:00", "07:40", StringComparison.Ordinal)));
        Assert.Contains(close.Findings, finding => finding.Code == "book-regimen-impossible" && finding.Row == 2);
    }

    // Rows of so many days: what the membrane returns, changed by a share, and normal differences shared by the four drains.
    private static IEnumerable<string> Written(int days, double deviation, Func<int, double> change)
    {
        var regimen = Regimen.Ambulatory(Day.Select(one => new HandExchange(TimeOnly.ParseExact(one.Began, "HH:mm", CultureInfo.InvariantCulture), DialysisSolution.OfGlucose(one.Strength), Volume.FromLiters(2))));
        var total = RegimenSimulation.Run(Person, Membrane, regimen).Ultrafiltration.Milliliters;
        var random = new MersenneTwister(7);
        for (var day = 0; day < days; day++)
        {
            var drained = 2000 + (total * (1 + change(day)) + deviation * Normal.Sample(random, 0, 1)) / 4;
            foreach (var (number, began, strength) in Day)
            {
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{new DateOnly(2026, 1, 1).AddDays(day):yyyy-MM-dd},{(day + number == 1 ? "MV-90" : "")},{number},{(day == 0 ? began : "")},{(day == 0 ? strength : "")},2000,{drained:0.0}");
            }
        }
    }

    private static RecordBook Read(IEnumerable<string> rows) =>
        Books.Read(rows.Prepend(Header));

    private static RecordReview Review(IEnumerable<string> rows) =>
        RecordReview.Run(Person with { Code = "MV-90" }, Known, Read(rows), new() { Tested = DialysisSolution.Glucose227 });

    // The membrane itself, as somebody would have it who does not doubt it.
    private static MembraneEnsemble Known => new(
        EnsembleSource.Posterior, 1, Membrane, [Membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury],
        [Membrane.DiffusionArea.Centimeters], [Membrane.GlucosePermeabilityScale], [Membrane.TransientAmplitude]);
}
