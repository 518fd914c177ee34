namespace Transport.Tests.Strategies;

/// <summary>Where virtual patients come from: a prior, means and standard deviations in print, a table of fits.</summary>
public sealed class VirtualPopulationTests
{
    private const string Header = "diffusion_area_cm,ultrafiltration_coefficient_mL_per_min_per_mmHg,ultrasmall_fraction,height_cm,weight_kg,sex";

    [Fact]
    public void People_from_print_have_the_printed_means_and_standard_deviations()
    {
        // Johansson and Haraldsson, Perit Dial Int 2006;26 (249 people, read): A0/Δx 19,000 ± 7,100 cm, LpS 0.071 ± 0.032 mL/min/mmHg; a share, invented, 0.02 ± 0.01.
        // 20,000 people: the mean is within 4 standard errors (0.03 of a standard deviation), the standard deviation within 4 %.
        var published = PublishedPopulation.JohanssonHaraldsson2006 with { UltrasmallFraction = new(0.02, 0.01) };
        var population = VirtualPopulation.OfPublished(published, Patient.Example);
        var people = Enumerable.Range(0, 20_000).Select(number => population[1, number].Membrane).ToList();
        var size = Patient.Example.SurfaceFactor;
        Holds(19_000, 7_100, people.Select(one => one.DiffusionArea.Centimeters / size));
        Holds(0.071, 0.032, people.Select(one => one.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury / size));
        Holds(0.02, 0.01, people.Select(one => one.Pores.UltrasmallFraction));
        Assert.All(people, one => Assert.Equal(published.Center.GlucosePermeabilityScale, one.GlucosePermeabilityScale));

        static void Holds(double mean, double deviation, IEnumerable<double> drawn)
        {
            var values = drawn.ToList();
            var found = values.Average();
            Assert.InRange(found, mean - 0.03 * deviation, mean + 0.03 * deviation);
            Assert.InRange(Math.Sqrt(values.Average(value => Math.Pow(value - found, 2))), 0.96 * deviation, 1.04 * deviation);
        }
    }

    [Fact]
    public void A_share_that_cannot_scatter_so_far_is_refused() =>

        // Between 0 and 1 a mean of 0.02 allows at most √(0.02 · 0.98) = 0.14.
        Assert.Throws<InvalidOperationException>(() => VirtualPopulation.OfPublished(new("nobody") { UltrasmallFraction = new(0.02, 0.15) }, Patient.Example));

    [Fact]
    public void A_person_is_the_same_whoever_else_is_asked_for()
    {
        var population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example);
        var alone = Numbers(population[3, 17]);
        Assert.Equal(alone, Enumerable.Range(0, 20).Select(number => Numbers(population[3, number])).ElementAt(17));
        Assert.NotEqual(alone, Numbers(population[4, 17]));
        Assert.NotEqual(alone, Numbers(population[3, 18]));

        static double[] Numbers(VirtualPatient one) => [one.Seed, .. Enum.GetValues<MembraneParameter>().Select(parameter => MembraneCoordinates.Of(one.Membrane, parameter))];
    }

    [Fact]
    public void A_cohort_is_written_and_read_as_it_was()
    {
        // A fit of an invented sheet, a person of another size than the example; 1e-12: a factor of body surface goes in and out.
        var fit = MembraneFit.Run(SampleSheet.Read(Path.Combine(Repository.Root, "reference-data", "examples", "merrow-01-average.csv")).ToTest());
        var path = Path.GetTempFileName();
        try
        {
            FitCohort.From([fit, fit]).Write(path);
            var cohort = FitCohort.Read(path);
            Assert.Empty(cohort.Findings);
            Assert.Equal(2, cohort.Members.Length);
            var read = cohort.Members[1];
            foreach (var parameter in Enum.GetValues<MembraneParameter>())
            {
                Assert.Equal(1, MembraneCoordinates.Of(read.Membrane, parameter) / MembraneCoordinates.Of(fit.Membrane, parameter), 12);
            }

            Assert.Equal(fit.Patient.BodySurface.SquareMeters, read.Patient.BodySurface.SquareMeters, 12);
            Assert.Equal(fit.Patient.ResidualFunction.UrineVolumePerDay, read.Patient.ResidualFunction.UrineVolumePerDay);
            Assert.Equal("", read.Patient.Code);
            var population = VirtualPopulation.OfCohort(cohort);
            Assert.Equal(2, population.Count);
            Assert.Equal(read.Membrane, population[9, 1].Membrane);
            Assert.Throws<ArgumentOutOfRangeException>(() => population[9, 2]);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_bad_cohort_says_everything_that_is_wrong_with_it_at_once()
    {
        var cohort = FitCohort.Parse(
            $"{Header},colour\n24000,0.06,0.02,170,70,male,red\nmany,0.06,0.02,170,70,male,\n24000,,0.02,170,70,x,\n24000,0.06,0.7,17,70,female,\n", "cohort.csv");
        Assert.True(cohort.HasErrors);
        Assert.Equal(
            [(1, "colour", Severity.Warning), (3, "diffusion_area_cm", Severity.Error), (4, "ultrafiltration_coefficient_mL_per_min_per_mmHg", Severity.Error), (4, "sex", Severity.Error), (5, "ultrasmall_fraction", Severity.Error), (5, "height_cm", Severity.Error)],
            cohort.Findings.Select(finding => (finding.Row!.Value, finding.Field!, finding.Severity)));
        Assert.All(cohort.Findings, finding => Assert.Equal("cohort.csv", finding.File));
        Assert.Single(cohort.Members);
        var refusal = Assert.Throws<ArgumentException>(() => VirtualPopulation.OfCohort(cohort));
        Assert.Contains("cohort.csv, row 5, height_cm", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("colour", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("diffusion_area_cm\n24000\n")]
    [InlineData("diffusion_area_cm,diffusion_area_cm,ultrafiltration_coefficient_mL_per_min_per_mmHg\n1,2,3\n")]
    [InlineData("diffusion_area_cm,ultrafiltration_coefficient_mL_per_min_per_mmHg\n24000,\"0.06\n")]
    [InlineData("diffusion_area_cm,ultrafiltration_coefficient_mL_per_min_per_mmHg\n24000,0.06,7\n")]
    public void What_is_no_cohort_is_refused(string text) => Assert.True(FitCohort.Parse(text, "cohort.csv").HasErrors);

    [Fact]
    public void A_cohort_with_semicolons_and_decimal_commas_is_read() => Assert.Equal(
        0.0625,
        FitCohort.Parse("diffusion_area_cm;ultrafiltration_coefficient_mL_per_min_per_mmHg;height_cm\n24000;0,0625;170\n", "cohort.csv")
            .Members[0].Membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury / Patient.Example.SurfaceFactor,
        12);

    [Fact]
    public void A_study_of_more_people_than_there_are_is_refused()
    {
        var cohort = VirtualPopulation.OfCohort(FitCohort.Parse($"{Header}\n24000,0.06,0.02,170,70,male\n24000,0.06,0.02,170,70,male\n", "cohort.csv"));
        var fluid = FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1_100));
        var refusal = Assert.Throws<ArgumentException>(() => StrategyStudy.Run(new()
        {
            Population = cohort,
            Patients = 3,
            Loss = new(fluid),
            Limits = new(fluid),
            Strategies = [new FixedStrategy("one", Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136))],
        }));
        Assert.Contains("has 2 people; asked for are 3", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Heavy_tails_have_the_stated_standard_deviation()
    {
        // 4,000 tests of one membrane. The drained volume errs by the scale alone: residual fixed, so its scatter is the stated deviation. Student's t with 5 degrees of
        // freedom scaled to it: within 6 % (its fourth moment is finite, kurtosis 9: standard error of a deviation about 2.2 %).
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
        foreach (var freedom in new double?[] { null, 5 })
        {
            var options = new SimulatedTestOptions { ResidualLogDeviation = 0, TailDegreesOfFreedom = freedom, SampleTimes = [TimeSpan.FromHours(4)] };
            var drained = Enumerable.Range(0, 4000).AsParallel().Select(seed => SimulatedTest.Run(Patient.Example, membrane, seed, options).DrainedVolume!.Value.Milliliters).ToList();
            var mean = drained.Average();
            var found = Math.Sqrt(drained.Average(value => Math.Pow(value - mean, 2)));
            Assert.InRange(found / AssayErrors.Default.VolumeDeviation.Milliliters, 0.94, 1.06);
        }
    }
}
