using static Transport.Tests.SampleSheets.Sheets;
using static Transport.Tests.SampleSheets.TestFormSheetTests;

namespace Transport.Tests.SampleSheets;

/// <summary>A 24-h collection from its sheet. The figures are worked by hand from the sheet's numbers; invented data.</summary>
public class CollectionSheetTests
{
    private static CollectionIndices Indices(string text) => CollectionIndices.Of(Read(text).ToCollection());

    [Fact]
    public void Dose_and_residual_function_are_sums_over_the_bags_and_the_urine()
    {
        var sheet = Read(Collection);
        Assert.Empty(sheet.Findings);
        var indices = Indices(Collection);

        // Urea 2.2 x 18 + 2.4 x 17 = 80.4 mmol in the drains, 60 in urine, plasma 20: 4.02 and 3 L a day cleared. Body water by Watson:
        // -2.097 + 0.1069 x 165 + 0.2466 x 65 = 31.5705 L.
        Assert.Equal(7 * 4.02 / 31.5705, indices.WeeklyUreaDose.Peritoneal!.Value, 1e-12);
        Assert.Equal(7 * 3.00 / 31.5705, indices.WeeklyUreaDose.Renal!.Value, 1e-12);
        Assert.Equal(7 * 7.02 / 31.5705, indices.WeeklyUreaDose.Total!.Value, 1e-12);
        Assert.Equal(3000 / 1440.0, indices.RenalUreaClearance!.Value, 1e-12);
        Assert.Equal(2500 / 1440.0, indices.RenalCreatinineClearance!.Value, 1e-12);
        Assert.Equal(2750 / 1440.0, indices.ResidualFiltration!.Value, 1e-12);
        Assert.Equal(500, indices.Residual!.UrineVolumePerDay.Milliliters, 1e-9);

        // Creatinine 2.2 x 0.6 + 2.4 x 0.56 = 2.664 mmol over 0.8: 3.33 L a day; with half of 3 + 2.5 L by the kidneys.
        var surface = 1.73 / (0.007184 * Math.Pow(65, 0.425) * Math.Pow(165, 0.725));
        Assert.Equal(7 * 3.33 * surface, indices.WeeklyCreatinineClearance.Peritoneal!.Value, 1e-9);
        Assert.Equal(7 * (3.33 + 2.75) * surface, indices.WeeklyCreatinineClearance.Total!.Value, 1e-9);
    }

    [Fact]
    public void Fluid_sodium_glucose_and_protein_balance_close()
    {
        var indices = Indices(Collection);

        Assert.Equal(600, indices.NetUltrafiltration!.Value, 1e-9);
        Assert.Equal(2.2 * 130 + 2.4 * 129 - 4 * 132, indices.SodiumRemoved.Peritoneal!.Value, 1e-9);
        Assert.Equal(30, indices.SodiumRemoved.Renal!.Value, 1e-9);
        Assert.Equal(2 * 75.5 + 2 * 126 - 2.2 * 30 - 2.4 * 40, indices.GlucoseAbsorbed!.Value, 1e-9);
        Assert.Equal(2.2 * 1.0 + 2.4 * 0.8, indices.ProteinLoss!.Value, 1e-12);
        Assert.Equal(1000 * 4.12 / 65, indices.ProteinClearance!.Value, 1e-9);
    }

    [Fact]
    public void Protein_catabolism_names_its_formula_and_uses_the_protein_loss_where_it_was_measured()
    {
        // Urea nitrogen 140.4 mmol x 28.014 mg = 3.9332 g a day. 15.1 + 6.95 x 3.9332 + 4.12; without protein 20.1 + 7.5 x 3.9332 (memory).
        var with = Indices(Collection);
        var without = Indices(string.Join('\n', Collection.Split('\n').Where(line => !line.Contains(",protein,", StringComparison.Ordinal))));

        Assert.Equal(140.4 * 0.028014, with.UreaNitrogenAppearance!.Value, 1e-12);
        Assert.Equal(46.5556, with.ProteinCatabolicRate!.Value, 1e-4);
        Assert.Equal(49.5988, without.ProteinCatabolicRate!.Value, 1e-4);
        Assert.Equal(45.0991, with.ProteinCatabolicRateByRanderson!.Value, 1e-4);
        Assert.Equal(46.5556 / (31.5705 / 0.58), with.NormalizedProteinCatabolicRate!.Value, 1e-4);
        Assert.Contains("memory", with.ProteinCatabolicRate.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bag_without_a_value_leaves_out_the_sum_and_says_so()
    {
        var indices = Indices(With(Collection, "drain 2,urea", ""));

        Assert.Null(indices.WeeklyUreaDose.Total);
        Assert.NotNull(indices.WeeklyCreatinineClearance.Total);
        Assert.Contains(indices.NotAvailable, missing => missing.ToString() == "urea in the drains: urea not measured in every drain");
        Assert.Equal(indices.NotAvailable.Count, indices.NotAvailable.Select(missing => missing.Name).Distinct().Count());
    }

    [Fact]
    public void A_pooled_collection_without_urine_gives_the_peritoneal_part_and_no_total()
    {
        var text = string.Join('\n', Collection.Split('\n').Where(line => !line.StartsWith("urine", StringComparison.Ordinal) && !line.StartsWith("drain 2", StringComparison.Ordinal)))
            .Replace("drain 1", "pool", StringComparison.Ordinal);
        var indices = Indices(text);

        Assert.NotNull(indices.WeeklyUreaDose.Peritoneal);
        Assert.Null(indices.WeeklyUreaDose.Total);
        Assert.Contains(indices.Findings, finding => finding.Code == "collection-urine-missing");
    }

    [Fact]
    public void A_patient_without_urine_has_totals_and_a_low_day_is_said_beside_volume_state()
    {
        var indices = Indices(With(Collection, "urine,volume", "urine,volume,,0,mL,"));

        Assert.Equal(indices.WeeklyUreaDose.Peritoneal!.Value, indices.WeeklyUreaDose.Total!.Value, 1e-12);
        Assert.Equal(0, indices.ResidualFiltration!.Value);
        Assert.Contains(indices.Findings, finding => finding.Code == "daily-ultrafiltration-low-without-urine" && finding.Message.Contains("volume state", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("test,collection time", "test,collection time,,22.9,h,", "collection-not-a-day", "test,collection time,,23,h,")]
    [InlineData("test,blood time", "", "collection-blood-time-missing", "test,blood time,,09:30,,")]
    [InlineData("plasma,protein", "plasma,protein,,22.8,g/L,", "protein-loss-high", "plasma,protein,,22.9,g/L,")] // 4120/22.8 = 180.7 mL/day
    // Expected (23.8 - 0.17 x 50) = 15.3 mg/kg/day; 1.4 of it over 65 kg is 12.308 mmol, less 2.664 in the drains: 19.29 mmol/L in 0.5 L.
    [InlineData("urine,creatinine", "urine,creatinine,,19.4,mmol/L,", "collection-creatinine-output-unusual", "urine,creatinine,,19.2,mmol/L,")]
    public void A_finding_of_a_collection_fires_beyond_its_limit_and_is_silent_just_within(string row, string beyond, string code, string within)
    {
        Assert.Contains(code, Indices(With(Collection, row, beyond)).Findings.Select(finding => finding.Code));
        Assert.DoesNotContain(code, Indices(With(Collection, row, within)).Findings.Select(finding => finding.Code));
    }

    [Theory]
    [InlineData("test,collection time", "", "collection-time-assumed")]
    [InlineData("plasma,urea", "", "collection-plasma-missing")]
    [InlineData("drain 1,drained volume", "", "missing-bag-volume")]
    [InlineData("drain 2,fill volume", "", "bag-fill-missing")]
    public void A_check_of_a_collection_sheet_fires_where_its_row_is_missing(string row, string instead, string code)
    {
        Assert.Contains(code, CodesOf(With(Collection, row, instead)));
        Assert.DoesNotContain(code, CodesOf(Collection));
    }

    [Fact]
    public void A_collection_is_no_test_and_a_test_no_collection()
    {
        Assert.Equal("not-a-test", Assert.Single(Assert.Throws<SampleSheetException>(() => Read(Collection).ToTest()).Errors).Code);
        Assert.Equal("not-a-collection", Assert.Single(Assert.Throws<SampleSheetException>(() => Read(Clean).ToCollection()).Errors).Code);
        Assert.Contains("missing-measurements", CodesOf(string.Join('\n', Clean.Split('\n').Where(line => !line.StartsWith("dialysate", StringComparison.Ordinal) && !line.StartsWith("plasma", StringComparison.Ordinal)))));
    }

    [Fact]
    public void Bags_may_be_weighed_and_a_name_with_or_without_its_space_is_one_bag()
    {
        var text = With(With(With(Collection, "drain 1,drained volume", "Drain1,drained volume,,2.26,kg,"), "drain 2,drained volume", "drain 2,volume,,2460,g,"),
            "test,blood time", "test,blood time,,09:30,,|test,drain tare,,60,g,");
        Assert.Equal(Indices(Collection).All.Select(index => index.Value), Indices(text).All.Select(index => index.Value), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void Drains_on_a_sheet_that_is_named_a_test_are_not_passed_over_in_silence() =>
        Assert.Contains("form-differs", CodesOf(With(Clean, "test,date", "test,test form,,classic,,|drain 1,volume,,2200,mL,")));

    [Fact]
    public void Longer_or_shorter_collections_are_scaled_to_a_day()
    {
        var whole = Indices(Collection);
        var half = Indices(With(Collection, "test,collection time", "test,collection time,,12,h,"));
        Assert.Equal(2 * whole.WeeklyUreaDose.Total!.Value, half.WeeklyUreaDose.Total!.Value, 1e-12);
    }
}
