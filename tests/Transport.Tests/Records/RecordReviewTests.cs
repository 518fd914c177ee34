using Transport.Studies;

namespace Transport.Tests.Records;

/// <summary>What a review says of nights whose story is known here and hidden from it.</summary>
public sealed class RecordReviewTests
{
    private static readonly Regimen DryDay = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227);
    private static readonly Regimen WetDay = DryDay with { DayFill = new(DialysisSolution.Glucose227, Volume.FromLiters(2)) };

    [Fact]
    public void Scores_of_a_stable_person_are_standard_and_no_change_is_found()
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var review = Review(person, ensemble, new VirtualBook(person, truth, WetDay).Write(5, 200, 150, BookKind.WithCycles));
        foreach (var channel in Enum.GetValues<NightChannel>())
        {
            var scores = review.Nights.SelectMany(night => night.Readings).Where(reading => reading.Channel == channel).Select(reading => reading.Score).Skip(60).ToArray();
            var z = Math.Sqrt(scores.Average(score => score * score));
            Assert.True(z is > 0.8 and < 1.2, $"{channel}: {z:0.00}"); // 120 scores: SD within 1/√240 of one, three of them
        }

        Assert.Empty(review.Changes);
    }

    [Fact]
    public void A_drain_fault_is_found_and_said_to_be_one()
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var review = Review(person, ensemble, new VirtualBook(person, truth, DryDay).Write(6, 160, 150, BookKind.WithCycles, BookStory.DrainFault, 100, 0.1));
        var change = review.Changes[0];
        Assert.InRange(change.SignalledOn.DayNumber - new DateOnly(2025, 1, 1).DayNumber, 100, 114);
        Assert.Equal(ChangeCause.DrainTrouble, change.Explanations[0].Cause);
    }

    [Fact]
    public void A_line_through_ten_simulations_stands_for_the_simulation()
    {
        // A membrane two thirds of a posterior deviation away in each parameter, and 20 min of lost dwell: the lines against the simulation itself.
        var person = Patient.Example;
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(person.BodySurface);
        var response = NightResponse.Of(new RegimenWorkspace(), person, membrane, WetDay, null);
        var other = membrane with
        {
            DiffusionArea = membrane.DiffusionArea * Math.Exp(0.1),
            UltrafiltrationCoefficient = membrane.UltrafiltrationCoefficient * Math.Exp(-0.12),
            GlucosePermeabilityScale = membrane.GlucosePermeabilityScale * Math.Exp(0.06),
        };
        var slow = WetDay with { Settings = WetDay.Settings with { Drain = DrainProfile.Within(TimeSpan.FromMinutes(16)) } };
        var truth = RegimenSimulation.Run(person, other, slow);
        var here = RegimenSimulation.Run(person, membrane, WetDay);
        var line = response.Night + 0.1 * response.OfNight(NightLever.Area) - 0.12 * response.OfNight(NightLever.Conductance)
            + 0.06 * response.OfNight(NightLever.GlucoseScale) + 20 * response.OfNight(NightLever.LostDwell);
        var shift = response.Night - here.NightUltrafiltration.Milliliters;
        Assert.Equal(truth.NightUltrafiltration.Milliliters + shift, line, 25.0); // a sixth of how much a night differs from the next
        var drainShift = response.InitialDrain - here.EveningDrain.Milliliters; // as the night, moved by what the model misses where nothing was tested
        Assert.Equal(truth.EveningDrain.Milliliters + drainShift,
            response.InitialDrain + 0.1 * response.OfInitialDrain(NightLever.Area) - 0.12 * response.OfInitialDrain(NightLever.Conductance)
            + 0.06 * response.OfInitialDrain(NightLever.GlucoseScale) + 20 * response.OfInitialDrain(NightLever.LostDwell), 25.0);
    }

    [Fact]
    public void The_logarithm_of_a_far_tail_is_not_lost()
    {
        // Φ(−10) = 7.619853024160527e-24 and Φ(−30) = 4.906713927148187e-198 (memory; published tables of the normal tail); at −60 no double holds it.
        Assert.Equal(Math.Log(2 * 7.619853024160527e-24), ChangeSearch.LogTwicePhi(-10), 1e-9);
        Assert.Equal(Math.Log(2) + Math.Log(4.906713927148187e-198), ChangeSearch.LogTwicePhi(-30), 1e-5); // first term of the series: 3/x⁴
        Assert.Equal(ChangeSearch.LogTwicePhi(-20.0001), ChangeSearch.LogTwicePhi(-19.9999), 0.005);
        Assert.InRange(ChangeSearch.LogTwicePhi(-60), -1806, -1803);
    }

    [Fact]
    public void After_a_night_without_treatment_the_initial_drain_has_no_expectation()
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(5, 40, 150, BookKind.WithInitialDrain);
        var at = Enumerable.Range(10, 20).First(t => nights[t].Date == nights[t - 1].Date.AddDays(1));
        var skipped = Review(person, ensemble, [.. nights.Select((night, t) => t == at - 1 ? night with { IsSkipped = true } : night)]).Nights[at];
        Assert.DoesNotContain(skipped.Readings, reading => reading.Channel == NightChannel.InitialDrain);
        Assert.Contains(skipped.Readings, reading => reading.Channel == NightChannel.Ultrafiltration);
        Assert.Contains(Review(person, ensemble, nights).Nights[at].Readings, reading => reading.Channel == NightChannel.InitialDrain);
    }

    [Fact]
    public void What_the_initial_drain_left_counts_below_the_first_fill()
    {
        // 2 L in for the day, about that expected in the evening; 300 mL come. With the first fill of 2 L the cavity holds about 3.7 L, 1.8 times the fill, though every cycle
        // drains what it was given.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(5, 60, 150, BookKind.WithCycles);
        Assert.DoesNotContain(Review(person, ensemble, nights).Findings, finding => finding.Code == "record-overfill-risk");
        Assert.Equal(nights[^1].Date.AddDays(-1), nights[^2].Date);
        var held = Review(person, ensemble, [.. nights.SkipLast(1), nights[^1] with { InitialDrain = Volume.FromMilliliters(300) }]);
        Assert.Contains(held.Findings, finding => finding.Code == "record-overfill-risk");
    }

    [Fact]
    public void Limits_and_noise_out_of_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReviewLimits { LowDrainShare = new(1.2, "", Evidence.Choice, "test") });
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReviewLimits { LearningNights = new(double.NaN, "nights", Evidence.Choice, "test") });
        Assert.Throws<ArgumentOutOfRangeException>(() => new NightNoise { WanderCorrelation = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new NightNoise { OffsetMilliliters = double.PositiveInfinity });
    }

    [Fact]
    public void The_charts_of_a_review_have_the_limits_of_their_stated_run_lengths()
    {
        // To 0.005, as they are written; the run lengths are the documentation's.
        var charts = ReviewCharts.Default;
        Assert.Equal(EwmaChart.Of(0.05, 1200).LimitFactor, charts.SlowFall.LimitFactor, 0.005);
        Assert.Equal(EwmaChart.Of(0.05, 8000).LimitFactor, charts.SlowRise.LimitFactor, 0.005);
        Assert.Equal(CusumChart.Of(0.75, 4000).Limit, charts.SuddenUltrafiltration.Limit, 0.005);
        Assert.Equal(CusumChart.Of(1, 40000).Limit, charts.Drains.Limit, 0.005);
    }

    private static RecordReview Review(Patient person, MembraneEnsemble ensemble, IReadOnlyList<NightRecord> nights) =>
        RecordReview.Run(person, ensemble, RecordBook.From(nights, "virtual"), new() { Tested = DialysisSolution.Glucose227 });
}
