using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Design;

/// <summary>
/// Standard deviations of estimates by Fisher information, computed elsewhere with central differences of another integration (computed; printed to two digits):
/// textbook membrane, glucose 3 %, creatinine 4 %, sodium 1 %, volume 60 mL, plasma and residual volume (250 mL of used fluid) exact, the transient fixed.
/// </summary>
public sealed class IdentifiabilityTableTests
{
    private static readonly string[] Names = ["A0", "sG", "LpS", "L", "αC", "Na"];

    private static readonly MembraneParameter[] Six =
    [
        MembraneParameter.DiffusionArea, MembraneParameter.GlucosePermeabilityScale, MembraneParameter.OsmoticConductance,
        MembraneParameter.LymphaticRemoval, MembraneParameter.UltrasmallFraction, MembraneParameter.SodiumPermeability,
    ];

    private static readonly double[] PriorDeviations = [0.37, 0.2, 0.45, 0.9, 0.5, 0.3];

    // In the table LpS stands in the conductance's place.
    [Theory]
    [InlineData("classic", false, "A0 LpS", new[] { 0.03, 0.17 })]
    [InlineData("classic", false, "A0 sG LpS", new[] { 0.06, 0.07, 0.17 })]
    [InlineData("classic", false, "A0 LpS L", new[] { 0.05, 0.56, 2.9 })]
    [InlineData("strong", false, "A0 sG LpS", new[] { 0.05, 0.06, 0.06 })]
    [InlineData("strong", false, "A0 sG LpS L", new[] { 0.05, 0.06, 0.10, 1.4 })]
    [InlineData("strong", false, "A0 sG LpS L αC", new[] { 0.11, 0.08, 1.1, 10, 1.0 })]
    [InlineData("strong, drained at 60", false, "A0 sG LpS L αC", new[] { 0.06, 0.07, 0.44, 4.3, 0.42 })]
    [InlineData("two 1-h dwells", false, "A0 sG LpS", new[] { 0.05, 0.09, 0.11 })]
    [InlineData("two 1-h dwells", false, "A0 sG LpS L αC", new[] { 0.06, 0.10, 0.35, 4.0, 0.39 })]
    [InlineData("two 4-h dwells", false, "A0 sG LpS L αC", new[] { 0.04, 0.05, 0.15, 0.97, 0.17 })]
    [InlineData("classic", true, "A0 sG LpS L αC Na", new[] { 0.06, 0.08, 0.24, 0.84, 0.47, 0.30 })]
    [InlineData("strong", true, "A0 sG LpS L αC Na", new[] { 0.05, 0.06, 0.14, 0.87, 0.21, 0.26 })]
    [InlineData("two 1-h dwells", true, "A0 sG LpS L αC Na", new[] { 0.05, 0.09, 0.18, 0.87, 0.26, 0.29 })]
    public void The_printed_standard_deviation_is_returned(string design, bool hasPrior, string names, double[] printed)
    {
        var free = names.Split(' ').Select(name => Six[Array.IndexOf(Names, name)]).ToArray();
        var found = Deviations(design, hasPrior, free);
        for (var j = 0; j < free.Length; j++)
        {
            // Within a fifth or half a printed digit where the deviation is at most 0.6; above, the order of magnitude: half a decade on either side.
            var (low, high) = printed[j] <= 0.6
                ? (Math.Min(0.8 * printed[j], printed[j] - 0.005), Math.Max(1.2 * printed[j], printed[j] + 0.005))
                : (printed[j] / Math.Sqrt(10), printed[j] * Math.Sqrt(10));
            Assert.True(found[j] >= low && found[j] <= high, $"{free[j]}: {string.Join(", ", found.Select(one => one.ToString("0.000")))}; printed {string.Join(", ", printed)}");
        }
    }

    private static double[] Deviations(string design, bool hasPrior, MembraneParameter[] free)
    {
        var patient = Patient.Example with { Plasma = Concentrations(20, 1, 6, 140) };
        var membrane = new MembraneCoordinates(ReferenceMembranes.Textbook, Natural, free);
        var advice = TestDesign.Run(
            patient,
            membrane,
            Vector<double>.Build.Dense(free.Length),
            hasPrior ? Prior(free) : 1e8 * Matrix<double>.Build.DenseIdentity(free.Length),
            new("LpS", "", one => Math.Log(one.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury)),
            Samples(design),
            new()
            {
                Errors = new() { CreatinineVariation = 0.04, SamplingVariation = 0, CreatinineFloor = default, GlucoseFloor = default },
                ExactDenominators = true,
                Membranes = 1,
            },
            null);
        var all = advice.Path[^1];
        return [.. free.Select(parameter => parameter == MembraneParameter.OsmoticConductance ? all.Target : all.Parameters[parameter])];
    }

    // Coordinates that are the logarithms themselves.
    private static readonly PopulationPrior Natural = new()
    {
        Center = ReferenceMembranes.Textbook,
        DiffusionAreaLogDeviation = 1,
        GlucosePermeabilityLogDeviation = 1,
        OsmoticConductanceLogDeviation = 1,
        LymphaticRemovalLogDeviation = 1,
        UltrasmallFractionLogDeviation = 1,
        SodiumPermeabilityLogDeviation = 1,
    };

    // The prior is of LpS and of the share's logarithm: ln OCG = ln LpS + ln σ, and d ln σ / d ln α = α (1 − σ_S) / σ.
    private static Matrix<double> Prior(MembraneParameter[] free)
    {
        var textbook = ReferenceMembranes.Textbook;
        var share = textbook.Pores.UltrasmallFraction;
        var small = Hindrance.ReflectionCoefficient(Solutes.Glucose.RadiusAngstrom / textbook.Pores.SmallRadiusAngstrom, HindranceForm.ThreePore);
        var transform = Matrix<double>.Build.DenseIdentity(free.Length);
        transform[Array.IndexOf(free, MembraneParameter.OsmoticConductance), Array.IndexOf(free, MembraneParameter.UltrasmallFraction)] =
            share * (1 - small) / textbook.ReflectionCoefficient(Solutes.Glucose);
        var deviations = Matrix<double>.Build.DenseOfDiagonalArray([.. free.Select(parameter => Math.Pow(PriorDeviations[Array.IndexOf(Six, parameter)], 2))]);
        return transform * deviations * transform.Transpose();
    }

    private static PlasmaComposition Concentrations(double urea, double creatinine, double glucose, double sodium) => new(
        Concentration.FromMillimolesPerLiter(urea),
        Concentration.FromMillimolesPerLiter(creatinine),
        Concentration.FromMillimolesPerLiter(glucose),
        Concentration.FromMillimolesPerLiter(sodium));

    private static PlannedSample[] Samples(string design) => design switch
    {
        "classic" => [Sample(126, 240, false, 120, 240)],
        "strong" => [Sample(214, 240, true, 60, 120, 240)],
        "strong, drained at 60" => [Sample(214, 240, true, 60, 120, 240), DrainedAt60],
        "two 1-h dwells" => [Sample(75.5, 60, true, 60), Sample(214, 60, true, 60)],
        _ => [Sample(75.5, 240, true, 60, 120, 240), Sample(214, 240, true, 60, 120, 240)],
    };

    private static PlannedSample DrainedAt60 => new("drained", Exchange(214, 240), [new(ObservedQuantity.NetUltrafiltrationMilliliters, TimeSpan.FromMinutes(60))]);

    private static PlannedSample Sample(double glucose, double minutes, bool hasSodium, params double[] times) => new(
        $"{glucose}",
        Exchange(glucose, minutes),
        [
            new(ObservedQuantity.NetUltrafiltrationMilliliters, TimeSpan.FromMinutes(minutes)),
            .. times.Select(TimeSpan.FromMinutes).SelectMany(time => (PlannedReading[])
            [
                new(ObservedQuantity.CreatinineToPlasma, time),
                new(ObservedQuantity.GlucoseToFresh, time),
                .. hasSodium ? [new PlannedReading(ObservedQuantity.SodiumToPlasma, time)] : Array.Empty<PlannedReading>(),
            ]),
        ]);

    private static PlannedExchange Exchange(double glucose, double minutes) => new($"{glucose}", new(
        DialysisSolution.OfGlucose(glucose),
        Volume.FromLiters(2),
        TimeSpan.FromMinutes(minutes),
        ResidualFluid.Used(Volume.FromMilliliters(250), Concentrations(20, 1, 6, 140))))
    {
        ResidualLogDeviation = 1e-4,
    };
}
