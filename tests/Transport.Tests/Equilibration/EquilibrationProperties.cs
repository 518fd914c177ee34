using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

/// <summary>What must hold for every sheet, whatever its numbers.</summary>
public sealed class EquilibrationProperties
{
    /// <summary>Ratios, dips and fractions do not know the size of the patient's cavity.</summary>
    private static readonly Func<EquilibrationIndices, IndexValue?>[] ScaleFree =
    [
        indices => indices.DialysateToPlasmaCreatinine,
        indices => indices.UncorrectedDialysateToPlasmaCreatinine,
        indices => indices.DialysateToPlasmaUrea,
        indices => indices.DialysateToInitialGlucose,
        indices => indices.SodiumDip,
        indices => indices.SodiumRatioDip,
        indices => indices.CorrectedSodiumDip,
        indices => indices.GlucoseAbsorbedFraction,
    ];

    [Property(MaxTest = 200)]
    public Property Unit_changes_never_change_an_index() => Prop.ForAll(Tests, test =>
    {
        // Through mg/dL and litres and back: the last bits may differ, nothing else.
        Concentration? Mass(Concentration? value, Solute solute) =>
            value is { } v ? Concentration.FromMilligramsPerDeciliter(v.MilligramsPerDeciliter(solute), solute) : null;
        var rewritten = test with
        {
            InstilledVolume = Volume.FromLiters(test.InstilledVolume.Liters),
            DrainedVolume = Volume.FromLiters(test.DrainedVolume!.Value.Liters),
            ResidualVolume = Volume.FromLiters(test.ResidualVolume!.Value.Liters),
            Dialysate = [.. test.Dialysate.Select(sample => sample with
            {
                Creatinine = Mass(sample.Creatinine, Solutes.Creatinine),
                Urea = Mass(sample.Urea, Solutes.Urea),
                Glucose = Mass(sample.Glucose, Solutes.Glucose),
                Sodium = Mass(sample.Sodium, Solutes.Sodium),
            })],
            Plasma = [.. test.Plasma.Select(sample => sample with
            {
                Creatinine = Mass(sample.Creatinine, Solutes.Creatinine),
                Urea = Mass(sample.Urea, Solutes.Urea),
                Glucose = Mass(sample.Glucose, Solutes.Glucose),
                Sodium = Mass(sample.Sodium, Solutes.Sodium),
            })],
        };
        var (before, after) = (EquilibrationIndices.Of(test).All, EquilibrationIndices.Of(rewritten).All);
        return before.Count == after.Count
            && before.Zip(after).All(pair => pair.First.Name == pair.Second.Name && Near(pair.First.Value, pair.Second.Value, 1e-9));
    });

    [Property(MaxTest = 200)]
    public Property Scaling_all_volumes_never_changes_a_ratio_and_scales_mass_transfer() => Prop.ForAll(Tests, Factors, (test, factor) =>
    {
        var (small, large) = (EquilibrationIndices.Of(test), EquilibrationIndices.Of(test with
        {
            InstilledVolume = test.InstilledVolume * factor,
            DrainedVolume = test.DrainedVolume!.Value * factor,
            ResidualVolume = test.ResidualVolume!.Value * factor,
        }));
        return ScaleFree.All(read => Near(read(small)?.Value ?? 0, read(large)?.Value ?? 0, 1e-9))
            && Near((small.CreatinineMassTransfer?.Value ?? 0) * factor, large.CreatinineMassTransfer?.Value ?? 0, 1e-9)
            && Near((small.NetUltrafiltration?.Value ?? 0) * factor, large.NetUltrafiltration?.Value ?? 0, 1e-9);
    });

    [Property(MaxTest = 200)]
    public Property Scaling_all_volumes_never_changes_free_waters_share() => Prop.ForAll(Tests, Factors, (test, factor) =>
    {
        EquilibrationIndices Hour(double scale) => EquilibrationIndices.Of(test with
        {
            Dwell = TimeSpan.FromHours(1),
            InstilledVolume = test.InstilledVolume * scale,
            DrainedVolume = test.DrainedVolume!.Value * scale,
            ResidualVolume = test.ResidualVolume!.Value * scale,
        });
        var (small, large) = (Hour(1).FirstHour!, Hour(factor).FirstHour!);
        return Near(small.FreeWater.Value * factor, large.FreeWater.Value, 1e-9)
            && Near(small.FreeWaterFraction?.Value ?? 0, large.FreeWaterFraction?.Value ?? 0, 1e-9);
    });

    [Property(MaxTest = 200)]
    public Property The_dip_is_its_ratio_times_plasma_sodium() => Prop.ForAll(Tests, test =>
    {
        var indices = EquilibrationIndices.Of(test);
        return Near(indices.SodiumDip!.Value, indices.SodiumRatioDip!.Value * test.PlasmaSodium!.Value.MillimolesPerLiter, 1e-9);
    });

    [Property(MaxTest = 200)]
    public Property Residual_volume_by_dilution_lies_between_those_of_its_solutes() => Prop.ForAll(Between(50, 900).ToArbitrary(), Between(2, 40).ToArbitrary(), (creatinine, urea) =>
    {
        var dilution = EquilibrationIndices.Of(Strong(0.7, 300, 7) with
        {
            PrecedingDrain = new(TimeSpan.Zero) { Creatinine = Micromolar(creatinine), Urea = Millimolar(urea) },
        }).ResidualByDilution;
        return dilution is null
            || (dilution.Volume.Milliliters >= dilution.EachSolute.Min(one => one.Value) - 1e-9 && dilution.Volume.Milliliters <= dilution.EachSolute.Max(one => one.Value) + 1e-9);
    });

    [Property(MaxTest = 300)]
    public Property Whatever_is_missing_the_rest_is_computed_without_an_exception() => Prop.ForAll(Incomplete, test =>
    {
        var indices = EquilibrationIndices.Of(test);
        return indices.All.All(index => double.IsFinite(index.Value) && index.StandardDeviation is null or >= 0)
            && indices.NotAvailable.All(missing => missing.Reason.Length > 0)
            && indices.NotAvailable.Select(missing => missing.Name).Distinct().Count() == indices.NotAvailable.Count;
    });

    [Property]
    public Property A_class_never_gets_slower_as_D_over_P_rises() => Prop.ForAll(Ratios, Ratios, (a, b) =>
        CategoryCuts.Twardowski1987Creatinine.Of(Math.Min(a, b)) <= CategoryCuts.Twardowski1987Creatinine.Of(Math.Max(a, b))
        && CategoryCuts.Warady1996Creatinine.Of(Math.Min(a, b)) <= CategoryCuts.Warady1996Creatinine.Of(Math.Max(a, b)));

    [Property]
    public Property A_class_never_gets_faster_as_D_over_D0_rises() => Prop.ForAll(Fractions, Fractions, (a, b) =>
        CategoryCuts.Twardowski1987Glucose.Of(Math.Min(a, b)) >= CategoryCuts.Twardowski1987Glucose.Of(Math.Max(a, b)));

    [Property]
    public Property Class_probabilities_are_probabilities_and_sum_to_one() => Prop.ForAll(Ratios, Spreads, (ratio, spread) =>
        Sane(CategoryCuts.Twardowski1987Creatinine.ProbabilitiesOf(ratio, spread))
        && Sane(CategoryCuts.Twardowski1987Glucose.ProbabilitiesOf(Math.Min(ratio, 1), spread)));

    [Property]
    public Property With_a_tiny_error_the_class_itself_is_certain() => Prop.ForAll(Ratios, ratio =>
        CategoryCuts.Twardowski1987Creatinine.DistanceToBorder(ratio) < 1e-6
        || CategoryCuts.Twardowski1987Creatinine.ProbabilitiesOf(ratio, 1e-9)[CategoryCuts.Twardowski1987Creatinine.Of(ratio)] > 0.999999);

    // To a billionth of a percentile: far out in the tail the series of the distribution function rounds, as it did at ratios of 0.0069 and 0.0065.
    [Property]
    public Property A_percentile_rises_with_the_value() => Prop.ForAll(Ratios, Ratios, (a, b) => ReferencePopulations.All.All(population =>
        population.DialysateToPlasmaCreatinine.Percentile(Math.Min(a, b)) <= population.DialysateToPlasmaCreatinine.Percentile(Math.Max(a, b)) + 1e-9));

    private static Arbitrary<double> Ratios => Between(0, 1.1).ToArbitrary();

    private static Arbitrary<double> Fractions => Between(0, 1).ToArbitrary();

    private static Arbitrary<double> Spreads => Between(0.001, 0.5).ToArbitrary();

    private static Arbitrary<double> Factors => Between(0.3, 2).ToArbitrary();

    private static Arbitrary<EquilibrationTest> Tests => Complete.ToArbitrary();

    private static Gen<EquilibrationTest> Complete =>
        from ratio in Between(0.2, 0.95)
        from ultrafiltration in Between(-400, 1200)
        from dip in Between(-2, 15)
        from factor in Between(0, 0.0008)
        select Strong(ratio, ultrafiltration, dip) with { CreatinineAssay = new(CreatinineMethod.Jaffe, factor) };

    /// <summary>A complete test from which each thing is taken, or set to zero, by one bit of a number.</summary>
    private static Arbitrary<EquilibrationTest> Incomplete => (
        from test in Complete
        from bits in Gen.Choose(0, (1 << 20) - 1)
        from zero in Gen.Elements(true, false)
        select Without(test, bits, zero)).ToArbitrary();

    private static EquilibrationTest Without(EquilibrationTest test, int bits, bool zero)
    {
        bool Taken(int bit) => (bits >> bit & 1) == 1;
        Concentration? Keep(Concentration? value, int bit) => !Taken(bit) ? value : zero ? default(Concentration) : null;
        return test with
        {
            DrainedVolume = Taken(0) ? null : test.DrainedVolume,
            ResidualVolume = Taken(1) ? null : test.ResidualVolume,
            PrecedingDrain = Taken(5) ? null : new(TimeSpan.Zero) { Creatinine = Keep(Micromolar(600), 9), Urea = Keep(Millimolar(20), 12) },
            TemporaryDrain = Taken(6) ? null : new(TimeSpan.FromHours(1), Volume.FromMilliliters(2300)),
            InstilledVolume = Taken(2) && Taken(3) ? default : test.InstilledVolume,
            Solution = Taken(4) ? DialysisSolution.Glucose227 : test.Solution,
            Dialysate = [.. test.Dialysate.Where((_, i) => !(Taken(5 + i) && Taken(8))).Select((sample, i) => sample with
            {
                Creatinine = Keep(sample.Creatinine, 9 + i),
                Glucose = Keep(sample.Glucose, 10 + i),
                Sodium = Keep(sample.Sodium, 11 + i),
                Urea = Keep(sample.Urea, 12 + i),
            })],
            Plasma = [.. test.Plasma.Select(sample => sample with
            {
                Creatinine = Keep(sample.Creatinine, 16),
                Glucose = Keep(sample.Glucose, 17),
                Sodium = Keep(sample.Sodium, 18),
                Urea = Keep(sample.Urea, 19),
            })],
        };
    }

    private static Gen<double> Between(double low, double high) =>
        Gen.Choose(0, 1_000_000).Select(i => low + (high - low) * i / 1_000_000.0);

    private static bool Sane(CategoryProbabilities probabilities) =>
        TransportCategories.All.All(category => probabilities[category] is >= 0 and <= 1)
        && Near(TransportCategories.All.Sum(category => probabilities[category]), 1, 1e-12);

    private static bool Near(double a, double b, double tolerance) => Math.Abs(a - b) <= tolerance * Math.Max(1, Math.Abs(a));
}
