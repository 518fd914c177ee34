using MathNet.Numerics.Distributions;
using Transport.Tests.Fitting;
using Xunit.Abstractions;
using static Transport.Studies.ComparedModels;

namespace Transport.Tests.Comparison;

/// <summary>Pores, pores without the ultrasmall ones, and one barrier, in worlds that are known.</summary>
public sealed class ModelComparisonTests(ITestOutputHelper output)
{
    [Fact]
    public void Sodium_speaks_against_a_membrane_without_ultrasmall_pores_and_is_named()
    {
        // A test of pores, without errors: of the three the pores are right, and their dip of 5.8 mmol/L nothing else than free water makes without them.
        var test = InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose386);
        var compared = Compare(test);

        var best = compared.Models[0];
        Assert.Equal(Pores, best.Name);
        Assert.Equal(ModelVerdict.Best, best.Verdict);
        Assert.All(best.Checks, check => Assert.True(check.TailProbability > 0.3 && check.LeftOutTailProbability is null or > 0.3));
        var without = compared.Models.Single(model => model.Name == WithoutUltrasmall);
        Assert.True(without.Difference < -4);
        Assert.Contains($"against {WithoutUltrasmall}", compared.Summary, StringComparison.Ordinal);
        Assert.Contains("D/P sodium", compared.Summary, StringComparison.Ordinal);
        Assert.Contains(compared.Findings, finding => finding.Code == "comparison-datum-against-model"
            && finding.Message.StartsWith("Fall of sodium from 0 to 60 min speaks against no ultrasmall pores", StringComparison.Ordinal));
        Assert.DoesNotContain(compared.Findings, finding => finding.Code == "comparison-datum-against-model" && finding.Message.Contains($"against {Pores}", StringComparison.Ordinal));

        // Twelve data with that of the residual volume, eight parameters, no residual: ln L is the sum of the heights and of 2π of the residual volume's datum.
        Assert.Equal(11, compared.DataCount);
        var likelihood = new PointwiseDraws(best.Fit.Estimation, new()).LogHeight - 0.5 * Math.Log(2 * Math.PI);
        Assert.Equal(-2 * likelihood + 16 + 2 * 8 * 9 / 3.0, best.CorrectedAkaike!.Value, 1e-5);
    }

    [Fact]
    public void In_worlds_of_pores_sodium_tells_of_the_ultrasmall_ones_and_nothing_else_does()
    {
        // Eight people drawn from the prior, tested with 3.86 % at 0, 1, 2 and 4 h with errors. In most their sodium puts the membrane without ultrasmall pores behind by
        // more than 4 (of 16 other people 15): fewer than six of eight have a probability of 1 % at that rate. Without sodium the same tests never tell the two.
        var with = People(i => PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 8, seed: 78)[i], hasSodium: true);
        var alone = People(i => PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 8, seed: 78)[i], hasSodium: false);

        Assert.InRange(with.Count(compared => Lead(compared, Pores, WithoutUltrasmall) > 4), 6, 8);
        Assert.InRange(with.Count(compared => Lead(compared, Pores, OneBarrier) > 0), 6, 8);
        Assert.All(with, compared => Assert.True(Lead(compared, Pores, OneBarrier) > -4));
        Assert.All(alone, compared => Assert.InRange(Lead(compared, Pores, WithoutUltrasmall), -4, 4));

        // Seven data and that of the residual volume do not tell eight parameters by themselves.
        Assert.All(alone, compared => Assert.Contains(compared.Findings, finding => finding.Code == "comparison-aicc-undefined"));
        Assert.All(alone, compared => Assert.DoesNotContain("against three pores", compared.Summary, StringComparison.Ordinal));
    }

    [Fact]
    public void In_a_world_of_one_barrier_the_barrier_leads_but_is_seldom_told_from_pores_with_a_share_of_their_own()
    {
        // The same with the truth drawn from the barrier's prior. Pores whose ultrasmall share is free imitate one sieving coefficient: the barrier leads in most, and by
        // more than 4 in few; without ultrasmall pores nothing imitates it.
        var compared = People(
            i => DrawnBarrier(500 + i),
            hasSodium: true);

        Assert.InRange(compared.Count(each => Lead(each, OneBarrier, Pores) > 0), 5, 8);
        Assert.All(compared, each => Assert.True(Lead(each, OneBarrier, Pores) > -4));
        Assert.InRange(compared.Count(each => Lead(each, OneBarrier, Pores) > 4), 0, 4);
        Assert.All(compared, each => Assert.True(Lead(each, OneBarrier, WithoutUltrasmall) > 4));
    }

    [Fact]
    public void One_model_twice_is_not_told_from_itself_and_few_parameters_have_an_AICc()
    {
        var test = InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose386);
        var few = MembraneFit.Run(test, new() { Free = [MembraneParameter.DiffusionArea, MembraneParameter.OsmoticConductance] });
        var compared = ModelComparison.Run([new("once", few), new("again", MembraneFit.Run(test, new() { Free = [MembraneParameter.DiffusionArea, MembraneParameter.OsmoticConductance] }))], Quick);

        Assert.Equal("The data do not tell once and again apart.", compared.Summary);
        Assert.All(compared.Models, model => Assert.Equal((0, 0), (model.Difference, model.DifferenceError)));

        // Without errors in the data the largest likelihood is that of no residual at all: the sum of the heights, and 2π of the residual volume's datum.
        var one = compared.Models[0];
        var expected = new PointwiseDraws(few.Estimation, new()).LogHeight - 0.5 * Math.Log(2 * Math.PI);
        Assert.Equal(expected, one.LargestLogLikelihood!.Value, 1e-6);
        Assert.Equal(-2 * expected + 6 + 24.0 / 8, one.CorrectedAkaike!.Value, 1e-5);
        Assert.DoesNotContain(compared.Findings, finding => finding.Code == "comparison-aicc-undefined");
    }

    [Fact]
    public void Two_exchanges_keep_their_names_and_their_sodium_apart()
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
        ObservedExchange[] both = [.. new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose386 }.Select(solution => ObservedExchange.From(InventedTests.Of(membrane, solution)))];
        var compared = ModelComparison.Run([new(Pores, MembraneFit.Run(both)), new(OneBarrier, LumpedFit.Run(both))], Quick);

        var names = compared.Models[0].Checks.Select(check => check.Name).ToArray();
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Equal(2, names.Count(name => name.StartsWith("fall of sodium", StringComparison.Ordinal)));
        Assert.Contains("D/P creatinine at 240 min, exchange 2", names);
    }

    [Fact]
    public void Replicated_data_of_the_true_membrane_cover_what_was_observed()
    {
        // Twelve tests of one known membrane with errors, 132 data, each predicted from the others of its test: a tenth should have a tail under 0.1, half under 0.5. The
        // membrane is the prior's center, so predictions are too wide rather than too narrow: three binomial standard deviations above for the tenth, and for the half
        // four and a half to both sides, half as much again for data that share an error.
        var truth = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
        var tails = Enumerable.Range(0, 12).SelectMany(i =>
        {
            var fit = MembraneFit.Run(Test(truth, 40 + i, hasSodium: true));
            return ModelComparison.Run([new(Pores, fit), new("the same", fit)], Quick).Models[0].Checks.Select(check => check.LeftOutTailProbability).OfType<double>();
        }).ToArray();

        Assert.Equal(12 * 11, tails.Length);
        Assert.InRange(tails.Count(tail => tail < 0.1) / 132.0, 0, 0.1 + 3 * Math.Sqrt(0.09 / 132));
        Assert.InRange(tails.Count(tail => tail < 0.5) / 132.0, 0.5 - 4.5 * Math.Sqrt(0.25 / 132), 0.5 + 4.5 * Math.Sqrt(0.25 / 132));
    }

    [Fact]
    public void Heavy_tails_foretell_a_sheet_with_one_wild_sample_better_and_a_clean_one_alike()
    {
        // One creatinine of a clean test read a third too high, which a slip of a pipette does: Gaussian errors put it five standard deviations off, a t with 4 degrees of freedom takes
        // it for what such errors bring now and then. Where nothing is wrong the two predict alike: up to 4, as any two models.
        var clean = InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose386);
        var wild = clean with
        {
            Dialysate = [.. clean.Dialysate.Select(sample => sample.Time == TimeSpan.FromHours(2) ? sample with { Creatinine = sample.Creatinine * 1.33 } : sample)],
        };

        Assert.All(Both(clean).Models, model => Assert.InRange(model.Difference, -4, 0));
        var compared = Both(wild);
        Assert.Equal("heavy tails", compared.Models[0].Name);
        Assert.True(compared.Models[1].Difference < -4);
        Assert.Contains("D/P creatinine at 120 min", compared.Summary, StringComparison.Ordinal);

        // The log likelihood at the fit is the product of the t densities of its whitened residuals and the heights of their whitening.
        var heavy = compared.Models[0];
        var observations = heavy.Fit.Residuals.Count(residual => residual.Observation.IsFitted);
        Assert.Equal(compared.DataCount, observations);
        var exchange = new ExchangeModel<Real>(heavy.Fit.Exchanges[0], heavy.Fit.Estimation.Model);
        Real[] at = [.. heavy.Fit.Optimum.Coordinates.Select(Real.Of)];
        exchange.Run(at.AsSpan(0, heavy.Fit.Estimation.Model.Count), heavy.Fit.Estimation.ResidualVolumes[0].Value(at[^1]), new() { RelativeTolerance = 1e-8 });
        var whitened = new Real[exchange.FittedCount];
        exchange.Whiten(whitened);
        var expected = whitened.Sum(residual => StudentT.PDFLn(0, Math.Sqrt(0.5), 4, residual.Value))
            + exchange.Groups.Sum(group => Enumerable.Range(0, group.Observations.Length).Sum(i => Math.Log(group.Whitening[i, i])));
        Assert.Equal(expected, heavy.LogLikelihood, 1e-5);

        static ModelComparison Both(EquilibrationTest test) => ModelComparison.Run(
            [new("Gaussian", MembraneFit.Run(test)), new("heavy tails", MembraneFit.Run(test, new() { StudentDegreesOfFreedom = 4 }))], Quick);
    }

    [Fact]
    public void What_cannot_be_compared_is_refused_with_its_reason()
    {
        var test = InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose386);
        var fit = MembraneFit.Run(test);
        var other = MembraneFit.Run(test with { DrainedVolume = test.DrainedVolume + Volume.FromMilliliters(10) });

        Assert.Contains("at least two", Reason(new NamedFit(Pores, fit)), StringComparison.Ordinal);
        Assert.Contains("a name of its own", Reason(new(Pores, fit), new(Pores, fit)), StringComparison.Ordinal);
        Assert.Contains("is of other data", Reason(new(Pores, fit), new("other", other)), StringComparison.Ordinal);
        Assert.Contains("prior", Reason(new(Pores, fit), new("alone", MembraneFit.Run(test, new() { UsesPrior = false, Free = [MembraneParameter.DiffusionArea] }))), StringComparison.Ordinal);

        static string Reason(params NamedFit[] fits) => Assert.Throws<ArgumentException>(() => ModelComparison.Run(fits)).Message;
    }

    private ModelComparison[] People(Func<int, IMembrane> truth, bool hasSodium)
    {
        var all = new ModelComparison[8];
        Parallel.For(0, all.Length, i => all[i] = Compare(Test(truth(i), 900 + i, hasSodium)));
        output.WriteLine(string.Join("; ", all.Select(each =>
            FormattableString.Invariant($"{Lead(each, Pores, WithoutUltrasmall):0.0}, {Lead(each, Pores, OneBarrier):0.0} ({each.Models.Single(model => model.Name == OneBarrier).Verdict})"))));
        return all;
    }

    private static ModelComparison Compare(EquilibrationTest test) => ModelComparison.Run(Fits(test), Quick);

    private static double Lead(ModelComparison compared, string one, string other) =>
        compared.Models.Single(model => model.Name == one).LeaveOneOut - compared.Models.Single(model => model.Name == other).LeaveOneOut;
}
