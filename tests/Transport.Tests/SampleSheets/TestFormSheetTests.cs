using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

/// <summary>Each form of test is recognized from its sheet or named, and says what it cannot give. Invented data.</summary>
public class TestFormSheetTests
{
    private static readonly string Classic = With(With(Clean, "dialysate,sodium,60", ""), "test,date", "test,date,,2025-03-11,,");

    private static readonly string OneHour = Only(
        With(With(Clean, "test,dwell", "test,dwell,,60,min,"), "test,drained volume", "test,drained volume,,2480,mL,"),
        "dialysate,creatinine,0,60,µmol/L,", "dialysate,creatinine,60,240,µmol/L,", "dialysate,glucose,0,185,mmol/L,", "dialysate,glucose,60,125,mmol/L,",
        "dialysate,sodium,0,132,mmol/L,", "dialysate,sodium,60,124.5,mmol/L,");

    private static readonly string Fast = Only(Clean, "dialysate,creatinine,240,560,µmol/L,", "dialysate,glucose,240,55,mmol/L,");

    [Fact]
    public void A_form_is_recognized_from_what_was_measured()
    {
        Assert.Equal(TestForm.FourHour, Read(Classic).Form);
        Assert.Equal(TestForm.FourHourWithSodium, Read(Clean).Form);
        Assert.Equal(TestForm.OneHour, Read(OneHour).Form);
        Assert.Equal(TestForm.Fast, Read(Fast).Form);
        Assert.Equal(TestForm.TemporaryDrain, Read(With("test,drained volume", "test,drained volume,,2640,mL,|test,temporary drain,,2480,mL,")).Form);
        Assert.Equal(TestForm.Permeability, Read(With("dialysate,sodium,60", "dialysate,dextran,0,0.9,g/L,|dialysate,dextran,240,72,mg/dL,")).Form);
        Assert.Equal(TestForm.Collection, Read(Collection).Form);
    }

    [Fact]
    public void A_named_form_wins_and_a_pair_can_only_be_named()
    {
        var sheet = Read(With(OneHour, "test,date", "test,test form,,paired,,"));
        Assert.Equal(TestForm.PairedOneHour, sheet.Form);
        Assert.DoesNotContain(sheet.Findings, finding => finding.Code == "form-differs");
        Assert.Contains(sheet.Form!.Value.CannotGive(), missing => missing.Name == "osmotic conductance to glucose");
    }

    [Theory]
    [InlineData(TestForm.FourHour, "sodium dip")]
    [InlineData(TestForm.Fast, "D/D0 glucose")]
    [InlineData(TestForm.OneHour, "transport category")]
    [InlineData(TestForm.Collection, "transport category")]
    public void A_form_says_what_it_cannot_give(TestForm form, string index) => Assert.Contains(form.CannotGive(), missing => missing.Name == index && missing.Reason.Length > 10);

    [Fact]
    public void A_one_hour_test_gives_free_water_and_no_class_and_is_not_blamed_for_its_dwell()
    {
        var sheet = Read(OneHour);
        var indices = EquilibrationIndices.Of(sheet.ToTest());

        Assert.DoesNotContain(sheet.Findings, finding => finding.Code == "dwell-not-comparable");
        Assert.NotNull(indices.FirstHour);
        Assert.Null(indices.Classification);
        Assert.Contains(indices.NotAvailable, missing => missing.Name == "transport category");
    }

    [Fact]
    public void A_fast_test_gives_D_over_P_and_reads_the_absolute_glucose_at_2_27_percent_only()
    {
        var strong = EquilibrationIndices.Of(Read(Fast).ToTest());
        Assert.Equal(0.70, strong.DialysateToPlasmaCreatinine!.Value, 1e-12);
        Assert.Null(strong.Classification!.GlucoseCategory);
        Assert.DoesNotContain(Read(Fast).Findings, finding => finding.Code == "missing-initial-glucose");

        // 38 mmol/L is 685 mg/dL: between 502 and 723, High-average (memory).
        var middle = With(With(Fast, "test,solution glucose", "test,solution glucose,,126,mmol/L,"), "dialysate,glucose,240", "dialysate,glucose,240,38,mmol/L,");
        Assert.Equal(TransportCategory.FastAverage, EquilibrationIndices.Of(Read(middle).ToTest()).Classification!.GlucoseCategory);
    }

    [Fact]
    public void The_preceding_drain_gives_the_residual_volume()
    {
        // 2040 mL; creatinine 60 after mixing, 600 before: 2040 x 60 / 540 = 226.67 mL. Urea 2.4 and 20: 278.18. Weighted between.
        var sheet = Read(With("plasma,sodium", "plasma,sodium,120,139,mmol/L,|preceding drain,creatinine,,600,µmol/L,|preceding drain,urea,,20,mmol/L,"));
        var indices = EquilibrationIndices.Of(sheet.ToTest());

        Assert.Equal([2040 * 60 / 540.0, 2040 * 2.4 / 17.6], indices.ResidualByDilution!.EachSolute.Select(one => one.Value), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.InRange(indices.ResidualVolume!.Value, 226.7, 278.1);
        Assert.NotNull(indices.CreatinineMassTransfer);
    }

    [Fact]
    public void Proteins_and_markers_are_read_by_mass_in_the_laboratorys_units()
    {
        var sheet = Read(With("plasma,sodium",
            "plasma,sodium,120,139,mmol/L,|plasma,albumin,120,3.6,g/dL,|dialysate,albumin,240,150,mg/L,|dialysate,IgG,240,3,mg/dL,"));
        var albumin = sheet.Measurements.Single(row => row is { Analyte: Analyte.Albumin, Fluid: SampledFluid.Plasma });

        Assert.Equal(36, albumin.Mass!.Value.GramsPerLiter, 1e-12);
        Assert.Equal("g/dL", albumin.Unit);
        Assert.Equal(0.15, sheet.ToTest().Dialysate[^1].Of(Protein.Albumin)!.Value.GramsPerLiter, 1e-12);
        Assert.Equal(0.03, sheet.ToTest().Dialysate[^1].Of(Protein.ImmunoglobulinG)!.Value.GramsPerLiter, 1e-12);
    }

    [Fact]
    public void A_result_is_written_in_the_units_of_its_sheet_with_SI_in_brackets()
    {
        // 9.8 mg/dL of creatinine is 866.3 µmol/L, 56 mg/dL of urea nitrogen 19.99 mmol/L of urea.
        var sheet = Read(With(With("plasma,creatinine", "plasma,creatinine,120,9.8,mg/dL,"), "plasma,urea", "plasma,BUN,120,56,mg/dL,"));
        var milligrams = Read(string.Join('\n', Clean.Split('\n').Where(line => !line.Contains("creatinine,", StringComparison.Ordinal)).Append("plasma,creatinine,120,9.8,mg/dL,")));

        Assert.Equal("9.8 mg/dL (866.3 µmol/L)", milligrams.InOwnUnits(milligrams.Measurements[^1].Value!.Value, Analyte.Creatinine));
        Assert.Equal("56 mg/dL (19.99 mmol/L)", sheet.InOwnUnits(sheet.ToTest().PlasmaUrea!.Value, Analyte.UreaNitrogen));
        Assert.Equal("6 mmol/L", sheet.InOwnUnits(Concentration.FromMillimolesPerLiter(6), Analyte.Glucose));
    }

    [Fact]
    public void A_bag_weighed_with_its_tare_is_the_fluid_in_it()
    {
        var sheet = Read(With(With("test,fill volume", "test,fill volume,,2.10,kg,|test,fill tare,,60,g,"), "test,drained volume", "test,drained volume,,2700,g,|test,drain tare,,60,g,"));
        Assert.Empty(sheet.Findings);
        Assert.Equal(600, sheet.ToTest().NetUltrafiltration!.Value.Milliliters, 1e-9);
    }

    [Fact]
    public void What_went_before_makes_a_test_preliminary_and_is_still_computed()
    {
        var test = Read(With("test,date", "test,date,,2025-03-11,,|test,last peritonitis,,2025-03-01,,|test,preceding agent,,icodextrin,,")).ToTest();
        var classification = EquilibrationIndices.Of(test).Classification!;

        Assert.Equal(0.70, classification.Value, 1e-12);
        Assert.False(classification.IsComparable);
        Assert.Contains(classification.Cautions, caution => caution.Contains("10 days after a peritonitis", StringComparison.Ordinal));
        Assert.Contains(classification.Cautions, caution => caution.Contains("icodextrin", StringComparison.Ordinal));
    }

    // A 3-L fill of a large patient, a short and a long dwell: preliminary, still computed.
    [Theory]
    [InlineData("test,fill volume", "test,fill volume,,2500,mL,")]
    [InlineData("test,dwell", "test,dwell,,229,min,")]
    [InlineData("test,dwell", "test,dwell,,252,min,")]
    public void A_test_that_is_not_as_the_classes_ask_for_is_computed_all_the_same(string row, string instead) =>
        Assert.NotNull(EquilibrationIndices.Of(Read(With(row, instead)).ToTest()).Classification);

    // Clinical correction: refuse only what cannot be computed. Icodextrin is no fluid of this test, and yet its ratios are ratios.
    [Fact]
    public void A_test_with_icodextrin_gives_what_does_not_rest_on_glucose_and_nothing_is_compared()
    {
        var text = With(With(With(With("test,osmotic agent", "test,osmotic agent,,icodextrin,,"), "test,solution glucose", ""), "dialysate,glucose,0", "dialysate,glucose,0,0.8,mmol/L,"),
            "dialysate,glucose,120", "dialysate,glucose,120,1.9,mmol/L,");
        text = With(text, "dialysate,glucose,240", "dialysate,glucose,240,3.2,mmol/L,");
        var sheet = Read(text);
        Assert.False(sheet.HasErrors);
        Assert.Contains(sheet.Findings, finding => finding is { Code: "not-a-glucose-test", Severity: Severity.Warning });
        Assert.DoesNotContain(sheet.Findings, finding => finding.Code.StartsWith("glucose-", StringComparison.Ordinal));

        var indices = EquilibrationIndices.Of(sheet.ToTest());
        Assert.Equal(0.70, indices.DialysateToPlasmaCreatinine!.Value, 1e-12);
        Assert.Equal(600, indices.NetUltrafiltration!.Value, 1e-9);
        Assert.Null(indices.Classification);
        Assert.Null(indices.DialysateToInitialGlucose);
        Assert.Null(indices.GlucoseAbsorbed);
        Assert.Empty(indices.Comparison!.Rows);
        Assert.DoesNotContain(indices.Findings, finding => finding.Severity == Severity.Warning);
        Assert.Contains(indices.NotAvailable, missing => missing.ToString() == "D/D0 glucose: not a glucose solution");
        Assert.Throws<ArgumentException>(() => ObservedExchange.From(indices.Test));
        Assert.Contains("glucose meters read falsely high", Transport.Reporting.ReportPages.Of(sheet, indices).Markdown, StringComparison.Ordinal);
    }

    // The 0-min glucose is 108 mmol/L, 0.86 of a 2.27 % bag; written is 3.86 %. One of the two is wrong, and which is not known.
    [Fact]
    public void A_strength_in_doubt_leaves_out_what_rests_on_it_and_nothing_else()
    {
        var text = With(With(With("dialysate,glucose,0", "dialysate,glucose,0,108,mmol/L,"), "test,drained", "test,drained volume,,2240,mL,"), "dialysate,sodium,60", "dialysate,sodium,60,128,mmol/L,");
        var test = Read(text).ToTest();
        var indices = EquilibrationIndices.Of(test);
        Assert.True(test.IsStrengthInDoubt);
        Assert.NotNull(indices.DialysateToPlasmaCreatinine);
        Assert.Equal(55 / 108.0, indices.DialysateToInitialGlucose!.Value, 1e-12);
        Assert.Equal(200, indices.NetUltrafiltration!.Value, 1e-9);
        Assert.Equal(3, indices.SodiumDip!.Value, 1e-9);
        Assert.Null(indices.GlucoseAbsorbed);
        Assert.False(indices.Classification!.IsComparable);
        Assert.Equal(["D/P creatinine"], indices.Comparison!.Rows.Select(row => row.Index.Name));
        Assert.DoesNotContain(indices.Findings, finding => finding.Code is "low-ultrafiltration-capacity" or "low-osmotic-conductance");
        Assert.Throws<ArgumentException>(() => ObservedExchange.From(test));

        // The same test of a bag that fits its sample has all of it.
        var sure = EquilibrationIndices.Of(test with { IsStrengthInDoubt = false });
        Assert.Contains(sure.Findings, finding => finding.Code == "low-ultrafiltration-capacity");
        Assert.NotNull(sure.GlucoseAbsorbed);
    }

    [Theory]
    [InlineData(TestForm.FourHour)]
    [InlineData(TestForm.FourHourWithSodium)]
    [InlineData(TestForm.Fast)]
    [InlineData(TestForm.OneHour)]
    [InlineData(TestForm.PairedOneHour)]
    [InlineData(TestForm.TemporaryDrain)]
    [InlineData(TestForm.Permeability)]
    [InlineData(TestForm.Collection)]
    public void The_blank_sheet_of_each_form_only_lacks_values(TestForm form)
    {
        using var writer = new StringWriter();
        SampleSheet.WriteBlank(writer, form);
        var sheet = Read(writer.ToString());

        Assert.All(sheet.Findings, finding => Assert.Matches(
            "^(missing-|collection-plasma-missing|bag-fill-missing|plasma-not-measured|solution-sodium-assumed|residual-function-not-given|assay-not-stated)", finding.Code));
    }

    // Three drains of a day on manual exchanges and urine. Invented data.
    internal const string Collection = """
        section,item,time,value,unit,remark
        patient,code,,T-01,,
        patient,sex,,female,,
        patient,age,,50,years,
        patient,height,,165,cm,
        patient,weight,,65,kg,
        test,date,,2025-03-11,,
        test,collection time,,24,h,
        test,blood time,,09:30,,
        test,creatinine method,,enzymatic,,
        drain 1,fill volume,,2000,mL,
        drain 1,solution glucose,,75.5,mmol/L,
        drain 1,solution sodium,,132,mmol/L,
        drain 1,drained volume,,2200,mL,
        drain 1,creatinine,,600,µmol/L,
        drain 1,urea,,18,mmol/L,
        drain 1,glucose,,30,mmol/L,
        drain 1,sodium,,130,mmol/L,
        drain 1,protein,,1.0,g/L,
        drain 2,fill volume,,2000,mL,
        drain 2,solution glucose,,126,mmol/L,
        drain 2,solution sodium,,132,mmol/L,
        drain 2,drained volume,,2400,mL,
        drain 2,creatinine,,560,µmol/L,
        drain 2,urea,,17,mmol/L,
        drain 2,glucose,,40,mmol/L,
        drain 2,sodium,,129,mmol/L,
        drain 2,protein,,0.8,g/L,
        urine,volume,,500,mL,
        urine,creatinine,,4,mmol/L,
        urine,urea,,120,mmol/L,
        urine,sodium,,60,mmol/L,
        plasma,creatinine,,800,µmol/L,
        plasma,urea,,20,mmol/L,
        plasma,protein,,65,g/L,

        """;

    private static string Only(string text, params string[] dialysate) => string.Join('\n',
        text.Split('\n').Where(line => !line.StartsWith("dialysate,", StringComparison.Ordinal)).SelectMany(line =>
            line.StartsWith("plasma,creatinine", StringComparison.Ordinal) ? [.. dialysate, line] : new[] { line }));
}
