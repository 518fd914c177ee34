using Transport.Studies;
using static Transport.Tests.Records.Books;

namespace Transport.Tests.Records;

/// <summary>What a review says of nights whose story is known here and hidden from it.</summary>
public sealed class RecordReviewTests
{
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
    public void Initial_drains_that_are_written_later_start_no_chart_of_drains_before()
    {
        // Ultrafiltration alone until night 130, then initial drains too; the chart's lowest limit, so that it would signal on next to nothing where it ran.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(6, 200, 150, BookKind.WithInitialDrain, BookStory.DrainFault, 60, 0.2).ToList();
        var begins = nights[0].Date.AddDays(130);
        IReadOnlyList<NightRecord> late = [.. nights.Select(night => night.Date < begins ? night with { InitialDrain = null } : night)];
        var review = RecordReview.Run(person, ensemble, RecordBook.From(late, "virtual"), new() { Tested = DialysisSolution.Glucose227, Limits = new() { Charts = new() { DrainFaultLogRatio = 1 } } });
        Assert.DoesNotContain(review.Changes, change => change.Channel is null && change.SignalledOn < begins);
    }

    [Fact]
    public void A_drain_fault_after_wet_days_is_seen_in_initial_drain_and_ultrafiltration_together()
    {
        // A fifth of what is in stays behind from night 100 on: in the evening of what the day left, in the morning of a cycle. From the second night on initial drain and night are off
        // by the difference, against each other, and no chart of one number signals it so soon.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(6, 160, 150, BookKind.WithInitialDrain, BookStory.DrainFault, 100, 0.2);
        var review = Review(person, ensemble, nights);
        var change = review.Changes[0];
        Assert.InRange(change.SignalledOn.DayNumber - new DateOnly(2025, 1, 1).DayNumber, 100, 114);
        Assert.Null(change.Channel);
        Assert.Equal("initial drain and ultrafiltration", ChangeWords.Name(change.Channel));
        Assert.Equal(ChangeCause.DrainTrouble, change.Explanations[0].Cause);
        Assert.StartsWith(
            "Initial drain and ultrafiltration move together in a way that drains which leave fluid behind, among others, would explain, signalled on",
            review.Findings.Single(finding => finding.Code == "record-change-found").Message,
            StringComparison.Ordinal);

        // Turned off (50 is never reached), the charts of single numbers are left.
        var without = RecordReview.Run(person, ensemble, RecordBook.From(nights, "virtual"), new() { Tested = DialysisSolution.Glucose227, Limits = new() { Charts = new() { DrainFaultLogRatio = 50 } } });
        Assert.DoesNotContain(without.Changes, found => found.SignalledOn <= change.SignalledOn);

        // Where drain times are written they speak for themselves, as the initial drain does after a dry day.
        Assert.All(
            new[] { (WetDay, BookKind.WithCycles), (DryDay, BookKind.WithInitialDrain) },
            book => Assert.NotNull(Review(person, ensemble, new VirtualBook(person, truth, book.Item1).Write(6, 160, 150, book.Item2, BookStory.DrainFault, 100, 0.2)).Changes[0].Channel));
    }

    [Fact]
    public void Dwell_that_is_lost_and_not_written_is_named_where_the_book_has_an_average_dwell()
    {
        // 90 min a night from night 100 on, of which the column for it says nothing: 18 min less in each of five dwells, on a clock that differs by 2 min.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(6, 160, 150, BookKind.WithCycles, BookStory.LostDwell, 100, 90);
        var change = Review(person, ensemble, nights).Changes[0];
        Assert.InRange(change.SignalledOn.DayNumber - new DateOnly(2025, 1, 1).DayNumber, 100, 107);
        Assert.Equal((NightChannel.AverageDwell, true), (change.Channel, change.IsDownward));
        Assert.Equal(ChangeCause.LostDwell, change.Explanations[0].Cause);
        Assert.Contains("clock times", change.Separation, StringComparison.Ordinal);

        // Written down, it is no change: each night is expected to return what so much dwell returns.
        var written = Review(person, ensemble, [.. nights.Select(night => night with
        {
            LostDwell = night.Date.DayNumber - new DateOnly(2025, 1, 1).DayNumber < 100 ? night.LostDwell : night.LostDwell + TimeSpan.FromMinutes(90),
        })]);
        Assert.Empty(written.Changes);
    }

    [Fact]
    public void Every_explanation_is_weighed_and_every_two_of_them_have_what_would_tell_them_apart()
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var change = Review(person, ensemble, new VirtualBook(person, truth, DryDay).Write(6, 160, 150, BookKind.WithCycles, BookStory.DrainFault, 100, 0.1)).Changes[0];
        var causes = Enum.GetValues<ChangeCause>();
        Assert.Equal(causes, change.Explanations.Select(explanation => explanation.Cause).Order());
        Assert.Equal(1, change.Explanations.Sum(explanation => explanation.Weight), 1e-12);
        Assert.All(causes.SelectMany(_ => causes, (one, other) => (one, other)).Where(pair => pair.one != pair.other), pair =>
            Assert.Contains("would separate them", ChangeWords.Separation(pair.one, pair.other), StringComparison.Ordinal));
    }

    [Fact]
    public void The_average_dwell_of_a_night_has_a_distribution_by_plan_by_what_was_lost_and_by_drain_times()
    {
        // 9 h in five cycles, drains of 12 min, fills of 10 (the defaults): (540 - 5 x 22) / 5 = 86 min, as the plan of the regimen has it. On a first night nothing of the person's
        // clock is known: its doubt of 6 min and a night's 3 make 6.7 min, and 90 % of a normal distribution ends 1.645 of them from the middle.
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        Assert.Equal(86, WetDay.DwellTimes.Average(dwell => dwell.TotalMinutes), 1e-9);
        var plain = Expected(night => night);
        Assert.Equal(86, plain.Median.TotalMinutes, 0.05);
        Assert.Equal(1.645 * Math.Sqrt(45), (plain.High - plain.Median).TotalMinutes, 0.01);
        Assert.Equal(1.645 * Math.Sqrt(45), (plain.Median - plain.Low).TotalMinutes, 0.01);
        Assert.Equal(76, Expected(night => night with { LostDwell = TimeSpan.FromMinutes(50) }).Median.TotalMinutes, 0.05); // 50 min in five dwells
        Assert.Equal(81, Expected(night => night with { DrainTime = TimeSpan.FromMinutes(17) }).Median.TotalMinutes, 0.05); // drains took five minutes longer
        Assert.Equal(76, Expected(night => night with { DrainTime = TimeSpan.FromMinutes(17), LostDwell = TimeSpan.FromMinutes(50) }).Median.TotalMinutes, 0.05); // what is lost counts slow drains

        // The average says what was lost where no column does: as much is then expected of the night.
        NightRecord one = new() { Date = new(2025, 3, 1), Row = 2, Regimen = WetDay, WrittenUltrafiltration = Volume.FromMilliliters(700), Counts = UltrafiltrationCount.Night };
        var byAverage = Review(person, ensemble, [one with { AverageDwell = TimeSpan.FromMinutes(76) }]).Nights[0].Expected!.Value.Median.Milliliters;
        Assert.Equal(Review(person, ensemble, [one with { LostDwell = TimeSpan.FromMinutes(50) }]).Nights[0].Expected!.Value.Median.Milliliters, byAverage, 0.5);
        Assert.True(Math.Abs(Review(person, ensemble, [one]).Nights[0].Expected!.Value.Median.Milliliters - byAverage) > 2);

        Band<TimeSpan> Expected(Func<NightRecord, NightRecord> told) =>
            Review(person, ensemble, [told(new() { Date = new(2025, 3, 1), Row = 2, Regimen = WetDay })]).Nights[0].ExpectedDwell!.Value;
    }

    [Fact]
    public void Nine_nights_in_ten_have_their_average_dwell_within_its_band()
    {
        // Twelve virtual people, 150 nights each after 30: the clock of a virtual book differs by 2 min where 3 are taken at first and the person's own soon. 1,600 nights:
        // three binomial standard deviations are 2.2 %, and minutes are whole.
        var inside = Enumerable.Range(0, 12).SelectMany(number =>
        {
            var (person, truth, ensemble) = VirtualPerson.Of(2026, number);
            return Review(person, ensemble, new VirtualBook(person, truth, DryDay).Write(number, 180, 150, BookKind.WithCycles)).Nights.Skip(27);
        }).Select(night => night.Record.AverageDwell >= night.ExpectedDwell!.Value.Low && night.Record.AverageDwell <= night.ExpectedDwell.Value.High).ToList();
        Assert.InRange(inside.Average(within => within ? 1.0 : 0), 0.87, 0.94);
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
        // Φ(−10) = 7.619853024160527e-24 and Φ(−30) = 4.906713927148187e-198 (memory; published tables of the normal tail).
        Assert.Equal(50 + Math.Log(2 * 7.619853024160527e-24), ChangeSearch.EvidenceAt(-10), 1e-9);
        Assert.Equal(450 + Math.Log(2) + Math.Log(4.906713927148187e-198), ChangeSearch.EvidenceAt(-30), 1e-7); // next term of the series: 15/x⁶ = 2e-8

        // No double holds Φ(−60). Mills' ratio lies between x/(x² + 1) and 1/x (Gordon, Ann Math Stat 1941;12:364-366, memory).
        var mills = Math.Exp(ChangeSearch.EvidenceAt(-60)) * Math.Sqrt(Math.PI / 2);
        Assert.InRange(mills, 60.0 / 3601, 1.0 / 60);
    }

    [Fact]
    public void Evidence_of_the_wrong_sign_only_falls()
    {
        // From a size of a thousand standard deviations below zero to forty above, through the place where the formula changes: steeper nowhere than for a size without
        // a sign (x), and never level or falling.
        var at = Enumerable.Range(0, 104_001).Select(i => -1000 + 0.01 * i).Select(x => (X: x, Evidence: ChangeSearch.EvidenceAt(x))).ToArray();
        Assert.All(at.Zip(at.Skip(1)), pair => Assert.InRange(pair.Second.Evidence - pair.First.Evidence, 1e-6, 0.01 * Math.Max(1, pair.Second.X + 1)));
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
    public void And_so_it_does_where_the_book_has_no_cycles()
    {
        // As above, of a book that has the initial drain alone: 300 mL of about 2 L come on the last evening, and the next fill goes on top.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(5, 60, 150, BookKind.WithInitialDrain);
        Assert.All(nights, night => Assert.Empty(night.CycleDrains));
        Assert.DoesNotContain(Review(person, ensemble, nights).Findings, finding => finding.Code == "record-overfill-risk");
        Assert.Equal(nights[^1].Date.AddDays(-1), nights[^2].Date);
        var held = Review(person, ensemble, [.. nights.SkipLast(1), nights[^1] with { InitialDrain = Volume.FromMilliliters(300) }]);
        Assert.Contains("1.75 times the fill, ", held.Findings.Single(finding => finding.Code == "record-overfill-risk").Message, StringComparison.Ordinal); // 300 of about 1,800 mL expected (this day takes fluid up): 1,504 stay, and 2,000 on top
    }

    [Fact]
    public void A_last_drain_that_fails_counts_below_the_next_fill_of_the_same_night()
    {
        // Four of five cycles are written, and the fourth brings 300 mL of some 2.1 L: the fifth fill makes about 3.8 L.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles);
        var held = nights[^1] with { CycleDrains = [.. nights[^1].CycleDrains.Take(3), Volume.FromMilliliters(300)] };
        Assert.Contains(Review(person, ensemble, [.. nights.SkipLast(1), held]).Findings, finding => finding.Code == "record-overfill-risk");
    }

    [Theory]
    [InlineData(3_450)]
    [InlineData(5_000)]
    public void What_a_drain_brought_was_in_the_cavity(double milliliters)
    {
        // A cycle of 2 L that brings 3.45 or 5 L held at least as much, whatever the drains before it left by the book; so did a day that leaves its 2 L in the evening.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var drained = Volume.FromMilliliters(milliliters);
        var cycles = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles);
        Said([.. cycles.SkipLast(1), cycles[^1] with { CycleDrains = cycles[^1].CycleDrains.SetItem(2, drained) }]);
        var evenings = new VirtualBook(person, truth, WetDay).Write(5, 60, 150, BookKind.WithInitialDrain);
        Said([.. evenings.SkipLast(1), evenings[^1] with { InitialDrain = drained }]);

        void Said(IReadOnlyList<NightRecord> nights) => Assert.Contains(
            FormattableString.Invariant($"{milliliters:0} mL, on"), Review(person, ensemble, nights).Findings.Single(finding => finding.Code == (milliliters >= 4_000 ? "record-overfill-now" : "record-overfill-risk")).Message, StringComparison.Ordinal);
    }

    // Five cycles of 2 L without their drains. By the sum of the last night 2,600 mL stay: the next fill makes 2.3 times. After it a dry day: what 100 mL of an initial drain leave is below the next night's
    // first fill, 2.25 times. Half a fill or less is what a body takes up, or a leaving the next night shows.
    [Theory]
    [InlineData(-2_600, 1, "record-overfill-now", "with the next fill the cavity would hold 2.3 times the fill, 4600 mL, after the night of")]
    [InlineData(-1_300, 1, "record-overfill-risk", "with the next fill the cavity would hold 1.65 times the fill, 3300 mL, after the night of")]
    [InlineData(-2_600, 2, "record-overfill-now", "may have held 2.25 times the fill, 4500 mL, on")]
    [InlineData(-900, 1, null, "")]
    public void What_a_night_did_not_bring_back_counts_below_the_next_fill(double milliliters, int nightsBack, string? code, string expected)
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithInitialDrain).ToList();
        Assert.Equal(nights[^1].Date.AddDays(-1), nights[^2].Date);
        nights[^nightsBack] = nights[^nightsBack] with { WrittenUltrafiltration = Volume.FromMilliliters(milliliters) };
        nights[^1] = nights[^1] with { InitialDrain = Volume.FromMilliliters(100) };
        var review = Review(person, ensemble, nights);
        var said = review.Findings.SingleOrDefault(finding => finding.Code.StartsWith("record-overfill", StringComparison.Ordinal));
        Assert.Equal(code, said?.Code);
        Assert.Contains(expected, said?.Message ?? "", StringComparison.Ordinal);

        // Half a fill inside, and a whole one less than this person's nights bring (some 0.9 L): charted by no membrane.
        Assert.Equal(milliliters < -2_000 ? "hardly drained" : "", review.Nights[^nightsBack].LeftOut);
    }

    [Fact]
    public void A_first_drain_of_next_to_nothing_is_no_change_of_a_membrane()
    {
        // The last three evenings of a wet day bring 100 mL of about 1.8 L: said as what stays inside, at once, and by no chart.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(5, 60, 150, BookKind.WithInitialDrain);
        var review = Review(person, ensemble, [.. nights.SkipLast(3), .. nights.TakeLast(3).Select(night => night with { InitialDrain = Volume.FromMilliliters(100) })]);
        Assert.All(review.Nights.TakeLast(2), night => Assert.Equal("hardly drained", night.LeftOut));
        Assert.Empty(review.Changes);
        Assert.Contains("Hardly anything came of one these days", review.Findings.Single(finding => finding.Code == "record-drain-below-fill").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fill_that_is_no_childs_is_said()
    {
        // 1,600 mL in a child of 16 kg: far above 1,400 mL/m² (read, as where regimens are simulated).
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        var child = person with { AgeYears = 5, Weight = Mass.FromKilograms(16), Height = Length.FromCentimeters(105) };
        NightRecord[] nights = [.. Enumerable.Range(0, 20).Select(day => new NightRecord
        {
            Date = new DateOnly(2026, 2, 1).AddDays(day),
            Row = day + 2,
            Regimen = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromMilliliters(day < 17 ? 700 : 1_600), DialysisSolution.Glucose227),
            WrittenUltrafiltration = Volume.FromMilliliters(300),
        })];
        Assert.DoesNotContain(Review(child, ensemble, nights[..17]).Findings, finding => finding.Code == "record-fill-large-for-child");
        Assert.StartsWith("What the book says was run on 3 of the last seven days, last on 2026-02-20: its largest fill is 1600 mL, ", Review(child, ensemble, nights).Findings.Single(finding => finding.Code == "record-fill-large-for-child").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Review(person, ensemble, nights).Findings, finding => finding.Code == "record-fill-large-for-child");
    }

    // A cycle of 2 L. What is printed is judged: 1.975 is 1.98 and no 2.0, 1.9975 is 2.0 and high, which these days needs no complaint to be urgent.
    [Theory]
    [InlineData(3_950, "1.98 times the fill, 3950 mL, on ", false)]
    [InlineData(3_995, "2.0 times the fill, 3995 mL, on ", true)]
    public void The_figure_of_an_overfill_is_the_one_that_is_judged(double milliliters, string expected, bool isHigh)
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles);
        var held = nights[^1] with { CycleDrains = nights[^1].CycleDrains.SetItem(2, Volume.FromMilliliters(milliliters)) };
        var said = Review(person, ensemble, [.. nights.SkipLast(1), held]).Findings.Single(finding => finding.Code == (isHigh ? "record-overfill-now" : "record-overfill-risk")).Message;
        Assert.Contains(expected, said, StringComparison.Ordinal);
        Assert.Equal(isHigh, said.Contains("which is high", StringComparison.Ordinal));
    }

    // Breathlessness on the day of the overfill or within the three days around it is one emergency with it; a week before it is not.
    [Theory]
    [InlineData(1, true)]
    [InlineData(3, true)]
    [InlineData(8, false)]
    public void An_overfill_with_breathlessness_is_said_as_one(int daysBack, bool isJoined)
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles).ToList();
        nights[^1] = nights[^1] with { CycleDrains = nights[^1].CycleDrains.SetItem(2, Volume.FromMilliliters(3_600)) };
        var at = nights.FindLastIndex(night => nights[^1].Date.DayNumber - night.Date.DayNumber >= daysBack);
        nights[at] = nights[at] with { Symptoms = [Symptom.Breathless], Complaint = "short of breath" };
        var said = Review(person, ensemble, nights).Findings.Single(finding => finding.Code.StartsWith("record-overfill", StringComparison.Ordinal));
        Assert.Equal(isJoined ? "record-overfill-now" : "record-overfill-risk", said.Code);
        Assert.Equal(isJoined, said.Message.Contains("1.8 times the fill, 3600 mL", StringComparison.Ordinal) && said.Message.Contains("breathlessness (“short of breath”) is written on ", StringComparison.Ordinal));
    }

    // Twice the fill: urgent without a complaint, and where words stand beside it that nobody understood it is not said that there is none.
    [Theory]
    [InlineData("", "No complaint of the body is written beside it; none is needed")]
    [InlineData("slept well", "No complaint of the body is written beside it; none is needed")]
    [InlineData("Bauch ganz hart", "What is written beside it is not judged here (“Bauch ganz hart”), so read it; no complaint is needed")]
    public void An_overfill_beside_words_that_nobody_understood_quotes_them(string remark, string expected)
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles).ToList();
        nights[^1] = nights[^1] with { CycleDrains = nights[^1].CycleDrains.SetItem(2, Volume.FromMilliliters(4_200)), Remark = remark };
        Assert.Contains(expected, Review(person, ensemble, nights).Findings.Single(finding => finding.Code == "record-overfill-now").Message, StringComparison.Ordinal);
    }

    // 1.9 times the fill six nights before, borne; 1.75 times on the last, and short of breath: the fuller one does not hide the one of now.
    [Fact]
    public void A_fuller_day_that_was_borne_hides_no_overfill_of_now()
    {
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.WithCycles).ToList();
        var at = nights.FindIndex(night => nights[^1].Date.DayNumber - night.Date.DayNumber is > 3 and < 7);
        nights[at] = nights[at] with { CycleDrains = nights[at].CycleDrains.SetItem(2, Volume.FromMilliliters(3_800)) };
        nights[^1] = nights[^1] with { CycleDrains = nights[^1].CycleDrains.SetItem(2, Volume.FromMilliliters(3_500)), Symptoms = [Symptom.Breathless], Complaint = "short of breath" };
        var said = Review(person, ensemble, nights).Findings.Single(finding => finding.Code.StartsWith("record-overfill", StringComparison.Ordinal));
        Assert.Equal("record-overfill-now", said.Code);
        Assert.Contains("1.75 times the fill, 3500 mL", said.Message, StringComparison.Ordinal);
    }

    // Of 28 nights: 20 are more than 0.7 of 28, 19 are less (choice).
    [Theory]
    [InlineData(28, 28, true)]
    [InlineData(28, 20, true)]
    [InlineData(28, 19, false)]
    [InlineData(14, 14, true)]
    [InlineData(13, 13, false)]
    public void The_strongest_bag_on_most_nights_is_said_though_its_use_does_not_rise(int nights, int strongest, bool isSaid)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        var review = Review(person, ensemble, [.. Enumerable.Range(0, nights).Select(day => new NightRecord
        {
            Date = new DateOnly(2026, 2, 1).AddDays(day),
            Row = day + 2,
            NightFluid = new(day < strongest ? DialysisSolution.Glucose386 : DialysisSolution.Glucose136, []),
        })]);
        Assert.Equal(isSaid, review.Findings.Any(finding => finding.Code == "record-strongest-often"));
    }

    [Fact]
    public void The_factor_of_an_overfill_stands_beside_the_pressures_that_the_page_gives()
    {
        // docs/record-book.md: the mean adult lying, by read figures; 18 cmH2O are 2.1 fills of 2 L and 1.5 fills of 2.8 L.
        var mean = CavityPressure.Population;
        Assert.Equal(15.5, mean.At(Volume.FromLiters(ReviewLimits.Default.OverfillShare.Value * 2)).CentimetersOfWater, 1e-9);
        Assert.Equal(18, mean.At(Volume.FromLiters(4.25)).CentimetersOfWater, 1e-9);
        Assert.Equal((2.1, 2.8), (Math.Round(4.25 / 2, 1), Math.Round(4.25 / 1.5, 1)));
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
        Assert.Equal(EwmaChart.Of(0.05, 8000).LimitFactor, charts.SlowRise.LimitFactor, 0.005);
        Assert.Equal(CusumChart.Of(0.75, 10000).Limit, charts.SuddenUltrafiltration.Limit, 0.005);
        Assert.Equal(CusumChart.Of(1, 60000).Limit, charts.Drains.Limit, 0.005);
    }
}
