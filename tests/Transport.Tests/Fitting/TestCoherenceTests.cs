namespace Transport.Tests.Fitting;

/// <summary>Measurements of one test that cannot be of one dwell: what is said, and how often of people of whom it is not true.</summary>
public sealed class TestCoherenceTests
{
    private static EquilibrationTest Average => SampleSheet.Read(Path.Combine(Repository.Root, "reference-data", "examples", "merrow-01-average.csv")).ToTest();

    [Fact]
    public void Much_ultrafiltration_without_the_glucose_for_it_names_the_sample_and_what_would_go_with_the_rest()
    {
        // The invented average sheet (UF 330 mL, D/D0 0.36) with 1,110 mL and, at 240 min, a glucose of 12.0 mmol/L: water follows glucose, and hardly any was left to draw it. Of the two it is
        // the glucose that also breaks its own course (61 mmol/L at 120 min): the sheet had 0.36 there, which the rest finds again within 0.08.
        var test = Average;
        test = test with
        {
            DrainedVolume = Volume.FromMilliliters(3150),
            Dialysate = [.. test.Dialysate.Select(sample => sample.Time == TimeSpan.FromHours(4) ? sample with { Glucose = Concentration.FromMillimolesPerLiter(12) } : sample)],
        };
        var finding = TestCoherence.Run(test);
        Assert.Equal(("test-contradicts-itself", Severity.Warning), (finding!.Code, finding.Severity));
        var rest = System.Text.RegularExpressions.Regex.Match(finding.Message, @"D/D0 glucose 0\.11 at 240 min, where the rest goes with about (?<rest>0\.\d+)");
        Assert.InRange(double.Parse(rest.Groups["rest"].Value, System.Globalization.CultureInfo.InvariantCulture), 0.28, 0.44);
        Assert.Contains("Check the sample (swapped, late, mistyped) first", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("the drain (", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drain_that_counts_something_else_is_named_with_what_the_rest_goes_with()
    {
        // The same sheet with 2 L of an earlier bag in its drain: no sample is off.
        var finding = TestCoherence.Run(Average with { DrainedVolume = Volume.FromMilliliters(4370) });
        var rest = System.Text.RegularExpressions.Regex.Match(finding!.Message, @"net ultrafiltration 2330 mL at 240 min, where the rest goes with about (?<rest>\d+) mL");
        Assert.InRange(double.Parse(rest.Groups["rest"].Value, System.Globalization.CultureInfo.InvariantCulture), 100, 700);
        Assert.Contains("Check the drain (weight, tare, what else it counts, incomplete, a leak) first", finding.Message, StringComparison.Ordinal);
    }

    // The average sheet (57 years, woman, fill 2040 mL) with too little fluid. Uptake of 1.54 mL/min per 1.73 m² (249 people, Johansson and Haraldsson 2006, read; taken as 1.5) is about 340 mL in 4 h, and
    // two standard deviations of the volumes are 120 to 200 mL: −400 mL may be what years on dialysis have done, −700 mL is no conductance, however low.
    [Theory]
    [InlineData(1640, "net ultrafiltration −400 mL at 240 min", true)]
    [InlineData(1340, "net ultrafiltration −700 mL at 240 min", false)]
    public void Too_little_fluid_may_be_a_low_conductance_down_to_what_a_bag_that_draws_nothing_would_lose(double drained, string found, bool mayBeConductance)
    {
        const string loss = " first; in somebody long on dialysis a low osmotic conductance may be as likely: repeat the test, with sodium at 60 min.";
        var low = TestCoherence.Run(Average with { DrainedVolume = Volume.FromMilliliters(drained) })!.Message;
        Assert.Contains(found + ", where the rest goes with about", low, StringComparison.Ordinal);
        Assert.Equal(mayBeConductance, low.EndsWith(loss, StringComparison.Ordinal));
        Assert.Equal(!mayBeConductance, low.Contains("no osmotic conductance, however low, explains so great a loss", StringComparison.Ordinal));
        Assert.DoesNotContain("comes last", low, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_much_fluid_is_no_low_conductance() =>
        Assert.EndsWith(" first; a membrane unlike most comes last.", TestCoherence.Run(Average with { DrainedVolume = Volume.FromMilliliters(4370) })!.Message, StringComparison.Ordinal);

    [Fact]
    public void Sodium_that_was_measured_is_not_asked_for()
    {
        // The same with sodium at 0 and 60 min, the dip of a usual membrane (7 mmol/L).
        var test = Average with { DrainedVolume = Volume.FromMilliliters(1640) };
        DialysateSample Sodium(DialysateSample sample, double value) => sample with { Sodium = Concentration.FromMillimolesPerLiter(value) };
        test = test with
        {
            Dialysate = [.. test.Dialysate.Select(sample => sample.Time == TimeSpan.Zero ? Sodium(sample, 132) : sample), Sodium(new(TimeSpan.FromHours(1)), 128)],
        };
        Assert.EndsWith("a low osmotic conductance may be as likely: repeat the test.", TestCoherence.Run(test)!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lost_dip_with_kept_ultrafiltration_is_no_contradiction_for_it_has_a_finding_of_its_own() =>
        Assert.Null(TestCoherence.Run(SampleSheet.Read(Path.Combine(Repository.Root, "reference-data", "examples", "merrow-04-lost-dip.csv")).ToTest()));

    // Two series in print at 3.86 % (Italy 2019, n 758, read) and 2.27 % (a cross-over of 23, read; its D/D0 is not printed, that of 1987 is taken): D/P and ultrafiltration from their means and
    // standard deviations, correlated by −0.4 (−0.33 and −0.51 were read), D/D0 with D/P by −0.8 (choice). Such draws hold leaks and poor drains; 1 in 100 may be called a contradiction.
    [Theory]
    [InlineData("3.86 %", 0.73, 0.10, 0.25, 0.08, 675, 308)]
    [InlineData("2.27 %", 0.67, 0.09, 0.38, 0.09, 478, 175)]
    public void The_spread_of_published_series_is_hardly_ever_called_a_contradiction(string strength, double transfer, double transferSpread, double glucose, double glucoseSpread, double volume, double volumeSpread)
    {
        const int count = 400;
        var random = new MathNet.Numerics.Random.MersenneTwister(3);
        var plasma = Patient.Example.Plasma.Creatinine;
        var solution = strength == "3.86 %" ? DialysisSolution.Glucose386 : DialysisSolution.Glucose227;
        var initial = solution.Glucose * 0.86;
        double Draw() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
        var alarms = 0;
        for (var i = 0; i < count; i++)
        {
            var fast = Draw();
            var (ratio, left) = (Math.Clamp(transfer + transferSpread * fast, 0.3, 0.97), Math.Max(0.08, glucose + glucoseSpread * (0.6 * Draw() - 0.8 * fast)));
            var net = volume + volumeSpread * (Math.Sqrt(1 - 0.4 * 0.4) * Draw() - 0.4 * fast);
            var test = Average with
            {
                Patient = Patient.Example,
                Solution = solution,
                InstilledVolume = Volume.FromLiters(2),
                DrainedVolume = Volume.FromMilliliters(2000 + net),
                Plasma = [new(TimeSpan.FromHours(2)) { Creatinine = plasma, Glucose = Patient.Example.Plasma.Glucose }],
                Dialysate = [new(TimeSpan.Zero) { Glucose = initial }, new(TimeSpan.FromHours(4)) { Creatinine = plasma * ratio, Glucose = initial * left }],
            };
            alarms += TestCoherence.Run(test) is null ? 0 : 1;
        }

        Assert.InRange(alarms, 0, count / 100);
    }

    [Fact]
    public void Very_fast_transfer_alone_contradicts_nothing()
    {
        // Five times the mean surface: D/P near 1 at 4 h, which the fit for the night calls far from what people have.
        var fast = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
        var test = InventedTests.Of(fast with { DiffusionArea = fast.DiffusionArea * 5 }, DialysisSolution.Glucose227);
        Assert.Equal(FitStatus.DataContradictModel, MembraneFit.Run(test).Status);
        Assert.Null(TestCoherence.Run(test));
    }

    [Fact]
    public void What_cannot_be_fitted_contradicts_nothing()
    {
        Assert.Null(TestCoherence.Run(Average with { Solution = DialysisSolution.Icodextrin }));
        Assert.Null(TestCoherence.Run(Average with { IsStrengthInDoubt = true }));
        Assert.Null(TestCoherence.Run(Average with { Dialysate = [], DrainedVolume = null }));
    }

    // False alarms among people of whom nothing is wrong, errors of laboratory and scale included; seeds fixed. By construction a parameter beyond 3.3 standard deviations is one in a
    // thousand and the misfit another; five or six parameters make a few in a thousand, less what the wide spread of transfer spares. The last: membranes from means and standard deviations in print (Johansson and Haraldsson 2006, read),
    // which are not this prior. Allowed is 1 in 200.
    [Theory]
    [InlineData("2.27 %", "prior", null)]
    [InlineData("3.86 %", "prior", null)]
    [InlineData("2.27 %", "prior", 4.0)]
    [InlineData("2.27 %", "print", null)]
    [InlineData("3.86 %", "print", null)]
    public void Hardly_anybody_is_called_a_contradiction_wrongly(string strength, string from, double? tails)
    {
        const int count = 400;
        var people = from == "prior"
            ? VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example)
            : VirtualPopulation.OfPublished(PublishedPopulation.JohanssonHaraldsson2006, Patient.Example);
        var options = new SimulatedTestOptions { Solution = strength == "2.27 %" ? DialysisSolution.Glucose227 : DialysisSolution.Glucose386, TailDegreesOfFreedom = tails };
        var alarms = Enumerable.Range(0, count).Select(number => people[11, number])
            .Count(person => TestCoherence.Run(SimulatedTest.Run(person.Patient, person.Membrane, person.Seed, options)) is not null);
        Assert.InRange(alarms, 0, count / 200);
    }

    // The hours of a pair, of which each is asked by itself; the same counting, the same limit of 1 in 200.
    [Theory]
    [InlineData("1.36 %")]
    [InlineData("3.86 %")]
    public void Hardly_an_hour_of_a_pair_is_called_a_contradiction_wrongly(string strength)
    {
        const int count = 400;
        var people = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example);
        var options = new SimulatedTestOptions
        {
            Solution = strength == "1.36 %" ? DialysisSolution.Glucose136 : DialysisSolution.Glucose386,
            Duration = TimeSpan.FromHours(1),
            SampleTimes = [TimeSpan.Zero, TimeSpan.FromHours(1)],
        };
        var alarms = Enumerable.Range(0, count).Select(number => people[11, number])
            .Count(person => TestCoherence.Run(SimulatedTest.Run(person.Patient, person.Membrane, person.Seed, options)) is not null);
        Assert.InRange(alarms, 0, count / 200);
    }
}
