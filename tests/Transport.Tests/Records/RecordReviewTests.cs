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
