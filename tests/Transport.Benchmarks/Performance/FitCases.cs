using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>Invented tests: 4 h at 2.27 %, read without error at 0, 2 and 4 h from a membrane that is known.</summary>
internal static class FitCases
{
    public static readonly Patient Person = Patient.Example;

    private static readonly Dwell Dwell = new(
        DialysisSolution.Glucose227, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Person.Plasma));

    /// <summary>The test of one membrane.</summary>
    public static EquilibrationTest Of(ThreePoreMembrane membrane)
    {
        var course = DwellSimulation.Run(Person, membrane, Dwell);
        return new()
        {
            Patient = Person,
            Solution = Dwell.Solution,
            InstilledVolume = Dwell.Fill,
            FillBasis = FillBasis.Measured,
            DrainedVolume = Dwell.Fill + course.NetUltrafiltrationAt(Dwell.Duration),
            Dwell = Dwell.Duration,
            CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
            Plasma = [new(TimeSpan.FromHours(2)) { Creatinine = Person.Plasma.Creatinine, Glucose = Person.Plasma.Glucose }],
            Dialysate = [.. new[] { 0, 2, 4 }.Select(hours => TimeSpan.FromHours(hours)).Select(time => new DialysateSample(time)
            {
                Creatinine = course.DialysateAt(Solutes.Creatinine, time),
                Glucose = course.DialysateAt(Solutes.Glucose, time),
            })],
        };
    }

    /// <summary>Tests of people drawn from the population, and among them one with a fluid that cannot be fitted.</summary>
    public static EquilibrationTest[] Many(int count, int failing)
    {
        var people = PopulationPrior.IncidentAdults().ToEnsemble(Person.BodySurface, count, seed: 21);
        var tests = Enumerable.Range(0, count).Select(i => Of(people[i])).ToArray();
        tests[failing] = tests[failing] with { Solution = DialysisSolution.Icodextrin };
        return tests;
    }
}
