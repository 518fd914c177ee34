using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

/// <summary>
/// Synthetic patients with exact arithmetic, worked outside this code (computed). Printed to six or seven figures, so the tolerance
/// is half the last printed digit unless a case says otherwise.
/// </summary>
public sealed class EquilibrationIndicesTests
{
    [Theory]
    [InlineData(50)]
    [InlineData(110)]
    public void A_residual_volume_that_nobody_measured_is_the_same_for_indices_and_fits(double kilograms)
    {
        // 250 mL for 1.73 m² (choice in 200 to 300 mL, memory), times the person's surface: one source. What is assumed gives the D0 of what is stated.
        var test = Middle(0.70, 0.38);
        test = test with
        {
            Patient = test.Patient with { Weight = Mass.FromKilograms(kilograms) },
            Dialysate = [test.Dialysate[0] with { Glucose = null }, .. test.Dialysate.Skip(1)],
            ResidualVolume = null,
        };
        var usual = Volume.FromMilliliters(250 * test.Patient.BodySurface.SquareMeters / 1.73);
        Assert.Equal(
            EquilibrationIndices.Of(test with { ResidualVolume = usual }).InitialGlucose!.Value, EquilibrationIndices.Of(test).InitialGlucose!.Value, 1e-9);
        Assert.Equal(usual.Milliliters, Transport.Analysis.ObservedExchange.TypicalResidual(test.Patient).Milliliters, 1e-9);
    }

    private static readonly CreatinineAssay Jaffe = new(CreatinineMethod.Jaffe, 0.000531415);

    [Fact]
    public void Glucose_correction_moves_the_classic_sheet_from_High_to_High_average()
    {
        // Vector A, mg/dL: plasma creatinine 9.80, glucose 110; dialysate 1.60/6.10/8.10 with 1980/1120/760 at 0/2/4 h.
        var indices = EquilibrationIndices.Of(Classic(Jaffe, MilligramsPerDeciliter));

        Assert.Equal([0.056233, 0.565086, 0.790031], indices.Ratios.Select(sample => sample.DialysateToPlasmaCreatinine!.Value), Within(5e-7));
        Assert.Equal(
            [0.163265, 0.622449, 0.826531], indices.Ratios.Select(sample => sample.UncorrectedDialysateToPlasmaCreatinine!.Value), Within(5e-7));
        Assert.Equal([0.565657, 0.383838], indices.Ratios.Skip(1).Select(sample => sample.DialysateToInitialGlucose!.Value), Within(5e-7));
        Assert.Null(indices.Ratios[0].DialysateToInitialGlucose);
        Assert.Equal(TransportCategory.FastAverage, indices.Classification!.Category);
        Assert.Equal(TransportCategory.SlowAverage, indices.Classification.GlucoseCategory);
        Assert.True(indices.IsCreatinineCorrected);
        Assert.Contains("corrected for glucose, factor 0.000531415", indices.DialysateToPlasmaCreatinine!.Formula, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_its_factor_the_same_sheet_is_High_and_says_that_it_was_not_corrected()
    {
        var indices = EquilibrationIndices.Of(Classic(new(CreatinineMethod.Jaffe, null), MilligramsPerDeciliter));

        Assert.Equal(TransportCategory.Fast, indices.Classification!.Category);
        Assert.False(indices.Classification.IsComparable);
        Assert.Contains("not corrected", indices.DialysateToPlasmaCreatinine!.Formula, StringComparison.Ordinal);
    }

    [Fact]
    public void The_classic_sheet_in_SI_units_gives_identical_ratios()
    {
        // The same in µmol/L and mmol/L, printed to seven figures: P 866.3366, D 141.4427/539.2504/716.0537; glucose 6.105819;
        // 109.9047/62.1683/42.1857. Those were made with slightly other molar masses, so they agree to 1e-5.
        var printed = Classic(Jaffe, (value, solute) => solute == Solutes.Creatinine
            ? Micromolar(value * 88.4017)
            : Millimolar(value * 0.0555074));

        Assert.Equal(866.3366, printed.Plasma[0].Creatinine!.Value.MicromolesPerLiter, 1e-3);
        Assert.Equal(0.790031, EquilibrationIndices.Of(printed).DialysateToPlasmaCreatinine!.Value, 1e-5);
    }

    [Fact]
    public void Sodium_dip_ratio_and_correction_for_diffusion_follow_the_worked_case()
    {
        // Vector B: D0 132.0, D60 124.5, P 138: dip 7.5, ratio 0.054348. K 4.5 mL/min over 60 min hides 2.6325 mmol; in 2480 mL the
        // corrected dip is 8.5615.
        var test = Strong(0.70, 480, 7.5);
        var indices = EquilibrationIndices.Of(test);

        Assert.Equal(7.5, indices.SodiumDip!.Value, 1e-12);
        Assert.Equal(0.054348, indices.SodiumRatioDip!.Value, 5e-7);
        Assert.Equal(1.0615, SodiumDip.HiddenByDiffusion([(0, 132.0), (60, 124.5)], 138, 4.5, 2480), 5e-5);

        // Through the test: V is the mean of start and end, (2000 + 2480)/2 + 250 = 2490 mL, so 7.5 + 2632.5/2490.
        var chosen = EquilibrationIndicesOptions.Default with { SodiumPermeability = Clearance.FromMillilitersPerMinute(4.5) };
        Assert.Equal(8.557229, EquilibrationIndices.Of(test, chosen).CorrectedSodiumDip!.Value, 5e-7);
    }

    [Fact]
    public void The_dip_is_known_to_about_1_3_mmol_per_liter()
    {
        // √2 × 0.7 % of about 130 mmol/L: a single dip of 5 cannot be told from 7.
        Assert.Equal(1.3, EquilibrationIndices.Of(Strong(0.70, 480, 7.5)).SodiumDip!.StandardDeviation!.Value, 0.05);
    }

    [Fact]
    public void Assay_error_of_D_over_P_is_about_0_03_at_0_70()
    {
        // 3 % and 3 % make 4.2 %.
        Assert.Equal(0.030, EquilibrationIndices.Of(Strong(0.70, 480, 7.5)).DialysateToPlasmaCreatinine!.StandardDeviation!.Value, 0.0005);
    }

    [Fact]
    public void Glucose_absorbed_follows_the_worked_case()
    {
        // Vector G: 2.0 L × 126.0 in, 2.38 L × 45.0 out: 144.9 mmol, 57.50 %, 26.1046 g. Grams with 180.156 g/mol there, 180.16 here: 2e-5.
        var test = Middle(0.70, 45.0 / 110.0, ultrafiltration: 380);
        var indices = EquilibrationIndices.Of(test);

        Assert.Equal(144.9, indices.GlucoseAbsorbed!.Value, 1e-9);
        Assert.Equal(0.575, indices.GlucoseAbsorbedFraction!.Value, 1e-12);
        Assert.Equal(26.1046, indices.GlucoseAbsorbedMass!.Value, 26.1046 * 3e-5);
    }

    [Fact]
    public void Mass_transfer_of_the_whole_test_is_that_of_its_two_ends()
    {
        // Vector D (ii), plasma as measured: P 800, D0 45, Dt 560 µmol/L, 2100 -> 2480 mL in 240 min: F 0.5 gives 10.14201 mL/min.
        var test = Strong(0.70, 380, 7.5) with { InstilledVolume = Volume.FromMilliliters(1850), DrainedVolume = Volume.FromMilliliters(2230) };
        var plain = EquilibrationIndicesOptions.Default with { MassTransfer = new() { PlasmaWaterFraction = 1 } };

        Assert.Equal(10.14201, EquilibrationIndices.Of(test, plain).CreatinineMassTransfer!.Value, 5e-6);
        Assert.Contains("plasma water 0.937", EquilibrationIndices.Of(test).CreatinineMassTransfer!.Formula, StringComparison.Ordinal);
    }

    [Fact]
    public void The_error_of_a_coefficient_explodes_as_dialysate_nears_plasma()
    {
        // dK/d(D/P) = (Vm/t)/(1 − D/P), plasma as measured: 2290/240/0.3 × 0.7 × 4.24 % = 0.94 mL/min at 0.70 but for D0 and the part that
        // plasma's error takes back through it (below 3 %); at 0.95 it is 7.7.
        var plain = EquilibrationIndicesOptions.Default with { MassTransfer = new() { PlasmaWaterFraction = 1 } };
        double Error(double ratio) => EquilibrationIndices.Of(Strong(ratio, 80, 7.5), plain).CreatinineMassTransfer!.StandardDeviation!.Value;

        Assert.Equal(0.94, Error(0.70), 0.03);
        Assert.Equal(7.7, Error(0.95), 0.25);
    }

    [Fact]
    public void Without_residual_volume_there_is_no_mass_transfer_coefficient_but_a_reason()
    {
        var indices = EquilibrationIndices.Of(Strong(0.70, 380, 7.5) with { ResidualVolume = null });

        Assert.Null(indices.CreatinineMassTransfer);
        Assert.Contains(
            indices.NotAvailable, missing => missing.ToString() == "mass transfer area coefficient of creatinine: residual volume not known");
        Assert.Contains("6.0 mL/min (middle of 4 to 8)", indices.CorrectedSodiumDip!.Formula, StringComparison.Ordinal);
    }

    [Fact]
    public void D0_is_estimated_by_mixing_and_flagged_and_never_taken_from_the_bag()
    {
        // Vector F: 2000 mL of 126.0 with 201.342 mL at 35 mmol/L -> 117.677 mmol/L.
        var test = Middle(0.70, 0.38) with { ResidualVolume = Volume.FromMilliliters(201.342) };
        test = test with { Dialysate = [.. test.Dialysate.Skip(1)] };
        var indices = EquilibrationIndices.Of(test);

        Assert.True(indices.IsInitialGlucoseEstimated);
        Assert.Equal(117.677, indices.InitialGlucose!.Value, 5e-4);
        Assert.Contains(indices.Findings, finding => finding.Code == "initial-glucose-estimated");
        Assert.Null(indices.Classification!.GlucoseCategory);
        Assert.True(indices.DialysateToInitialGlucose!.Value > 110 * 0.38 / 126.0);
    }

    [Fact]
    public void A_residual_volume_that_was_not_measured_makes_the_estimated_D0_less_certain()
    {
        var test = Middle(0.70, 0.38);
        test = test with { Dialysate = [.. test.Dialysate.Skip(1)] };

        Assert.True(
            EquilibrationIndices.Of(test with { ResidualVolume = null }).InitialGlucose!.StandardDeviation
            > EquilibrationIndices.Of(test).InitialGlucose!.StandardDeviation);
    }

    [Fact]
    public void Residual_volume_by_dilution_follows_the_worked_case()
    {
        // Vector F: drained before 8.2, after mixing 0.75, fresh 0, 2000 mL instilled -> 201.342 mL.
        var residual = CavityMixing.ResidualVolume(Volume.FromMilliliters(2000), Millimolar(8.2), default, Millimolar(0.75));

        Assert.Equal(201.342, residual.Milliliters, 5e-4);
        Assert.Throws<ArgumentOutOfRangeException>(
            () => CavityMixing.ResidualVolume(Volume.FromMilliliters(2000), Millimolar(0.5), default, Millimolar(0.75)));
    }

    [Fact]
    public void Sodium_at_0_mixes_from_bag_and_residual()
    {
        // Vector B: 2000 mL at 132 with 250 mL at 133 -> 132.1111 mmol/L.
        var mixed = CavityMixing.InitialConcentration(
            Volume.FromMilliliters(2000), Millimolar(132), Volume.FromMilliliters(250), Millimolar(133));

        Assert.Equal(132.1111, mixed.MillimolesPerLiter, 5e-5);
    }

    [Fact]
    public void A_sodium_sample_at_66_minutes_is_no_60_minute_sample()
    {
        var test = Strong(0.70, 480, 7.5);
        var late = test with { Dialysate = [test.Dialysate[0], test.Dialysate[1] with { Time = TimeSpan.FromMinutes(66) }, test.Dialysate[2]] };

        Assert.Null(EquilibrationIndices.Of(late).SodiumDip);
        Assert.Contains(
            EquilibrationIndices.Of(late).NotAvailable,
            missing => missing.ToString() == "sodium dip: dialysate sodium at 60 min not measured");
    }

    [Fact]
    public void A_230_minute_dwell_is_classed_and_a_225_minute_one_is_classed_but_not_comparable()
    {
        static TransportClassification Class(double minutes)
        {
            var test = Strong(0.70, 480, 7.5);
            return EquilibrationIndices.Of(test with
            {
                Dwell = TimeSpan.FromMinutes(minutes),
                Dialysate = [test.Dialysate[0], test.Dialysate[1], test.Dialysate[2] with { Time = TimeSpan.FromMinutes(minutes) }],
            }).Classification!;
        }

        Assert.True(Class(230).IsComparable);
        Assert.False(Class(225).IsComparable);
        Assert.Equal(TransportCategory.FastAverage, Class(225).Category);
    }

    [Fact]
    public void A_two_hour_sample_gets_no_four_hour_class()
    {
        var test = Strong(0.50, 300, 7.5);
        var indices = EquilibrationIndices.Of(test with
        {
            Dwell = TimeSpan.FromHours(2),
            Dialysate = [test.Dialysate[0], test.Dialysate[1], test.Dialysate[2] with { Time = TimeSpan.FromHours(2) }],
        });

        Assert.Null(indices.Classification);
        Assert.Equal(0.50, indices.DialysateToPlasmaCreatinine!.Value, 1e-12);
        Assert.Contains(indices.NotAvailable, missing => missing.ToString().Contains("at 120 min", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1899, false)]
    [InlineData(1900, true)]
    [InlineData(2100, true)]
    [InlineData(2500, false)]
    public void A_fill_outside_2_L_is_classed_but_not_comparable(double fill, bool isComparable)
    {
        var indices = EquilibrationIndices.Of(Strong(0.70, 480, 7.5) with { InstilledVolume = Volume.FromMilliliters(fill) });

        Assert.Equal(isComparable, indices.Classification!.IsComparable);
        Assert.Equal(!isComparable, indices.Findings.Any(finding => finding.Code == "class-not-comparable"));
    }

    [Fact]
    public void Overfill_is_taken_off_only_where_the_fill_is_the_labels()
    {
        var test = Strong(0.70, 480, 7.5) with { Overfill = Volume.FromMilliliters(80) };
        var label = EquilibrationIndices.Of(test with { FillBasis = FillBasis.Label });

        Assert.Equal(480, EquilibrationIndices.Of(test).NetUltrafiltration!.Value, 1e-9);
        Assert.Equal(400, label.NetUltrafiltration!.Value, 1e-9);
        Assert.Equal(480, label.NetUltrafiltrationAsWritten!.Value, 1e-9);
        Assert.Contains("stated overfill of 80 mL", label.FillStatement, StringComparison.Ordinal);
    }

    [Fact]
    public void A_child_is_classed_by_the_childrens_table()
    {
        // 0.78 is High-average for adults and High for children (memory).
        var child = Patient.Example with { AgeYears = 8, Height = Length.FromCentimeters(128), Weight = Mass.FromKilograms(26) };
        var indices = EquilibrationIndices.Of(Strong(0.78, 300, 7.5) with { Patient = child, InstilledVolume = Volume.FromMilliliters(1100 * child.BodySurface.SquareMeters) });

        Assert.Equal(TransportCategory.Fast, indices.Classification!.Category);
        Assert.True(indices.Classification.IsComparable);
        Assert.DoesNotContain(indices.Findings, finding => finding.Field == "net ultrafiltration");
    }

    [Fact]
    public void An_icodextrin_test_gets_ratios_and_no_class()
    {
        var solution = new DialysisSolution("icodextrin", default, Millimolar(132), OsmoticAgent.Icodextrin);
        var indices = EquilibrationIndices.Of(Strong(0.78, 300, 7.5) with { Solution = solution });

        Assert.NotNull(indices.DialysateToPlasmaCreatinine);
        Assert.Null(indices.Classification);
        Assert.Null(indices.GlucoseAbsorbed);
    }

    [Fact]
    public void Samples_in_any_order_are_the_same_test()
    {
        // "The last sample" and the integral of the sodium gradient both rest on the order; neither may depend on who typed the samples.
        // A last sample at 200 min is too early to be found by its distance from 4 h.
        var test = Strong(0.70, 350, 4.5);
        var (first, hour, last) = (test.Dialysate[0], test.Dialysate[1], test.Dialysate[2] with { Time = TimeSpan.FromMinutes(200) });
        var typed = test with { Dialysate = [hour, last, first] };
        var sorted = test with { Dialysate = [first, hour, last] };
        Assert.Equal(TimeSpan.FromMinutes(200), EquilibrationIndices.Of(typed).FinalSampleTime);
        Assert.Equal(
            EquilibrationIndices.Of(sorted).All.Select(index => (index.Name, index.Value)),
            EquilibrationIndices.Of(typed).All.Select(index => (index.Name, index.Value)));
    }

    [Fact]
    public void An_index_that_is_missing_says_the_reason_and_not_another_one()
    {
        // With icodextrin there is no D/D0, whatever was measured: that D0 is not there either is no news.
        var strong = Strong(0.78, 300, 7.5);
        var test = strong with
        {
            Solution = new("icodextrin", default, Millimolar(132), OsmoticAgent.Icodextrin),
            Dialysate = [strong.Dialysate[0] with { Glucose = null }, .. strong.Dialysate.Skip(1)],
        };
        var missing = Assert.Single(EquilibrationIndices.Of(test).NotAvailable, missing => missing.Name == "D/D0 glucose");
        Assert.Equal("not a glucose solution", missing.Reason);
    }

    [Fact]
    public void A_complete_test_misses_only_what_needs_more_samples_or_a_temporary_drain() =>
        Assert.Equal(
            ["free water at 60 min", "urea-glucose crossing time", "osmotic conductance to glucose"],
            EquilibrationIndices.Of(Strong(0.70, 480, 7.5)).NotAvailable.Select(missing => missing.Name));

    [Fact]
    public void A_test_with_nothing_but_one_plasma_sample_gives_reasons_and_no_exception()
    {
        var indices = EquilibrationIndices.Of(Strong(0.70, 480, 7.5) with
        {
            Dialysate = [],
            Plasma = [new(null)],
            DrainedVolume = null,
            ResidualVolume = null,
        });

        Assert.Equal(["D0 glucose"], indices.All.Select(index => index.Name));
        Assert.Equal(
            [
                "D/P creatinine", "D/P urea", "D/D0 glucose", "net ultrafiltration", "glucose absorbed",
                "mass transfer area coefficient of creatinine", "mass transfer area coefficient of urea",
                "mass transfer area coefficient of glucose", "sodium dip", "sodium ratio dip",
                "sodium dip, corrected for diffusion", "free water at 60 min", "urea-glucose crossing time", "osmotic conductance to glucose", "transport category",
            ],
            indices.NotAvailable.Select(missing => missing.Name));
    }

    private static EquilibrationTest Classic(CreatinineAssay assay, Func<double, Solute, Concentration> concentration)
    {
        DialysateSample Sample(double hours, double creatinine, double glucose) => new(TimeSpan.FromHours(hours))
        {
            Creatinine = concentration(creatinine, Solutes.Creatinine),
            Glucose = concentration(glucose, Solutes.Glucose),
        };

        return Middle(0.7, 0.4) with
        {
            CreatinineAssay = assay,
            Dialysate = [Sample(0, 1.60, 1980), Sample(2, 6.10, 1120), Sample(4, 8.10, 760)],
            Plasma =
            [
                new(TimeSpan.FromHours(2)) { Creatinine = concentration(9.80, Solutes.Creatinine), Glucose = concentration(110, Solutes.Glucose) },
            ],
        };
    }

    private static Concentration MilligramsPerDeciliter(double value, Solute solute) => Concentration.FromMilligramsPerDeciliter(value, solute);

    private static Func<double, double, bool> Within(double tolerance) => (expected, found) => Math.Abs(expected - found) <= tolerance;
}
