namespace Transport.Tests.Fitting;

/// <summary>Bags of a collection and the two hours of a pair, as exchanges that a fit takes.</summary>
public sealed class CollectedExchangesTests
{
    private static readonly Patient Person = Patient.Example;

    // Faster and more conductive than the mean adult: what a fit has to find is not where its prior begins.
    private static readonly ThreePoreMembrane Truth = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface) with
    {
        DiffusionArea = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface).DiffusionArea * 1.3,
        UltrafiltrationCoefficient = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface).UltrafiltrationCoefficient * 1.25,
    };

    private static readonly TimeSpan?[] Dwells = [TimeSpan.FromHours(4), TimeSpan.FromHours(5), TimeSpan.FromHours(5), TimeSpan.FromHours(10)];

    [Fact]
    public void Four_bags_of_a_day_without_noise_return_the_membrane()
    {
        // Simulated with the truth, fitted with its prior: within one standard error, and 5 % of the area. A prior that pulls toward 1 leaves less.
        var exchanges = CollectedExchanges.From(Day([DialysisSolution.Glucose136, DialysisSolution.Glucose227, DialysisSolution.Glucose136, DialysisSolution.Glucose386]), Dwells, out var findings);
        Assert.Empty(findings);
        Assert.Equal(4, exchanges.Count);
        var fit = MembraneFit.Run(exchanges);
        Assert.Equal(FitStatus.Converged, fit.Status);
        var area = fit[MembraneParameter.DiffusionArea];
        Assert.Equal(Truth.DiffusionArea.Centimeters / Person.SurfaceFactor, area.Value, 0.05 * area.Value);
        Assert.All(new[] { (area, Truth.DiffusionArea.Centimeters), (fit[MembraneParameter.OsmoticConductance], Truth.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury) }, one =>
            Assert.InRange(Math.Log(one.Item1.Value * Person.SurfaceFactor / one.Item2), -one.Item1.LogStandardError, one.Item1.LogStandardError));

        // Each with its own residual volume: the fit has as many nuisances as exchanges.
        Assert.Equal(fit.Parameters.Count + 4, fit.Problem.Dimension);
    }

    [Fact]
    public void A_bag_that_cannot_be_one_dwell_is_left_out_with_its_reason()
    {
        var day = Day([DialysisSolution.Glucose136, DialysisSolution.Icodextrin, DialysisSolution.Glucose136, DialysisSolution.Glucose227]);
        day = day with { Drains = [day.Drains[0], day.Drains[1], day.Drains[2] with { Fill = null }, day.Drains[3]] };
        var exchanges = CollectedExchanges.From(day, [Dwells[0], Dwells[1], Dwells[2], null], out var findings);
        Assert.Single(exchanges);
        Assert.All(findings, finding => Assert.Equal("collection-not-fitted", finding.Code));
        Assert.Equal(3, findings.Count);
        Assert.Contains("no glucose solution", findings[0].Message, StringComparison.Ordinal);
        Assert.Contains("what was instilled is not written down", findings[1].Message, StringComparison.Ordinal);
        Assert.Contains("a pool of several", findings[2].Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => CollectedExchanges.From(day, [null], out _));
    }

    [Fact]
    public void A_pair_is_two_exchanges_of_one_membrane_and_tells_more_than_either()
    {
        var (weak, strong) = (InventedTests.Of(Truth, DialysisSolution.Glucose136), InventedTests.Of(Truth, DialysisSolution.Glucose386));
        var exchanges = ObservedExchange.From(PairedTest.Of(strong, weak));
        Assert.Equal([DialysisSolution.Glucose136, DialysisSolution.Glucose386], exchanges.Select(exchange => exchange.Dwell.Solution));
        var conductance = MembraneParameter.OsmoticConductance;
        var joint = MembraneFit.Run(exchanges)[conductance];
        Assert.InRange(
            Math.Log(joint.Value * Person.SurfaceFactor / Truth.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury), -joint.LogStandardError, joint.LogStandardError);
        Assert.All(new[] { weak, strong }, alone => Assert.True(joint.LogStandardError < MembraneFit.Run(alone)[conductance].LogStandardError));
        var other = strong with { Patient = strong.Patient with { Code = "somebody else" } };
        Assert.Throws<ArgumentException>(() => ObservedExchange.From(PairedTest.Of(weak, other)));
    }

    private static CollectedDay Day(IReadOnlyList<DialysisSolution> solutions) => new()
    {
        Patient = Person,
        Duration = TimeSpan.FromHours(24),
        CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
        Plasma =
        [
            new(null)
            {
                Creatinine = Person.Plasma.Creatinine,
                Urea = Person.Plasma.Urea,
                Glucose = Person.Plasma.Glucose,
                Sodium = Person.Plasma.Sodium,
            },
        ],
        Drains = [.. solutions.Select((solution, i) => Bag($"bag {i + 1}", solution, Dwells[i]!.Value))],
    };

    private static CollectedDrain Bag(string name, DialysisSolution solution, TimeSpan dwell)
    {
        var fill = Volume.FromLiters(2);
        var course = DwellSimulation.Run(Person, Truth, new(solution, fill, dwell, ResidualFluid.Used(ObservedExchange.TypicalResidual(Person), Person.Plasma)));
        return new(name, fill + course.NetUltrafiltrationAt(dwell))
        {
            Fill = fill,
            Solution = solution,
            Sample = new(TimeSpan.Zero)
            {
                Creatinine = course.DialysateAt(Solutes.Creatinine, dwell),
                Urea = course.DialysateAt(Solutes.Urea, dwell),
                Glucose = course.DialysateAt(Solutes.Glucose, dwell),
                Sodium = course.DialysateAt(Solutes.Sodium, dwell),
            },
        };
    }
}
