using System.Text;
using FsCheck.Xunit;
using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

public class SampleSheetReadTests
{
    [Fact]
    public void The_clean_sheet_has_no_finding_at_all() => Assert.Empty(Read(Clean).Findings);

    // Values are those written in Sheets.Clean; conversions exact to the digits given.
    [Fact]
    public void The_clean_sheet_becomes_the_test_it_describes()
    {
        var test = Read(Clean).ToTest();

        Assert.Equal("T-01", test.Patient.Code);
        Assert.Equal(Sex.Female, test.Patient.Sex);
        Assert.Equal(50, test.Patient.AgeYears);
        Assert.Equal(165, test.Patient.Height.Centimeters, 9);
        Assert.Equal(65, test.Patient.Weight.Kilograms, 9);
        Assert.Equal(500, test.Patient.ResidualFunction.UrineVolumePerDay.Milliliters, 9);
        Assert.Equal(2, test.Patient.ResidualFunction.UreaClearance.MillilitersPerMinute, 9);
        Assert.Equal(3, test.Patient.ResidualFunction.CreatinineClearance.MillilitersPerMinute, 9);
        Assert.Equal(new DateOnly(2025, 3, 11), test.Date);
        Assert.Equal(214.3, test.Solution.Glucose.MillimolesPerLiter, 9);
        Assert.Equal(132, test.Solution.Sodium.MillimolesPerLiter, 9);
        Assert.Equal(FillBasis.Measured, test.FillBasis);
        Assert.Equal(600, test.NetUltrafiltration!.Value.Milliliters, 9);
        Assert.Null(test.ResidualVolume);
        Assert.Equal(TimeSpan.FromHours(4), test.Dwell);
        Assert.Equal(CreatinineMethod.Enzymatic, test.CreatinineAssay.Method);
        Assert.Equal([0, 60, 120, 240], test.Dialysate.Select(sample => sample.Time.TotalMinutes));
        Assert.Equal([60, null, 400, 560], test.Dialysate.Select(sample => sample.Creatinine?.MicromolesPerLiter));
        Assert.Equal([131, 124, null, 128], test.Dialysate.Select(sample => sample.Sodium?.MillimolesPerLiter));
        Assert.Equal(800, Assert.Single(test.Plasma).Creatinine!.Value.MicromolesPerLiter, 9);
        Assert.Equal([20, 0.8, 6, 139], new[]
        {
            test.Patient.Plasma.Urea, test.Patient.Plasma.Creatinine, test.Patient.Plasma.Glucose, test.Patient.Plasma.Sodium,
        }.Select(value => value.MillimolesPerLiter));
    }

    [Fact]
    public void Writing_the_usual_sodium_down_does_not_change_the_solution()
    {
        // 132 mmol/L is what is assumed where nothing is written, so both sheets mean one bag, lactate, calcium and magnesium included.
        var written = Read(Clean).ToTest().Solution;
        var assumed = Read(With("test,solution sodium", "")).ToTest().Solution;
        Assert.Equal(assumed, written);
        Assert.Equal(40, written.Others[Solutes.Lactate].MillimolesPerLiter);
    }

    [Fact]
    public void A_measurement_keeps_its_row_and_the_laboratorys_own_text_and_unit()
    {
        var sheet = Read(With("dialysate,creatinine,240", "dialysate,creatinine,240,6.33,MG/DL,late lab"));
        var measured = sheet.Measurements.Single(row => row.Row == 21);

        Assert.Equal((SampledFluid.Dialysate, Analyte.Creatinine, "6.33", "MG/DL", "mg/dL", "late lab"),
            (measured.Fluid, measured.Analyte, measured.Text, measured.UnitText, measured.Unit, measured.Remark));
        Assert.Equal("T-01", sheet.Facts.Single(fact => fact.Item == "code").Text);
    }

    [Theory]
    [InlineData(",")]
    [InlineData(";")]
    [InlineData("\t")]
    public void Comma_semicolon_and_tab_read_alike(string delimiter) =>
        AssertSameAsClean(Encoding.UTF8.GetBytes(Clean.Replace(",", delimiter)));

    public static TheoryData<string> EncodingNames => ["utf-8", "utf-8 with mark", "utf-16 le", "utf-16 be", "windows-1252"];

    [Theory]
    [MemberData(nameof(EncodingNames))]
    public void Every_encoding_of_a_spreadsheet_reads_alike(string name)
    {
        Encoding encoding = name switch
        {
            "utf-8" => new UTF8Encoding(false),
            "utf-8 with mark" => new UTF8Encoding(true),
            "utf-16 le" => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
            "utf-16 be" => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
            _ => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
        };
        AssertSameAsClean([.. encoding.GetPreamble(), .. encoding.GetBytes(Clean)]);
    }

    [Theory]
    [InlineData("\u03BCmol/L")]
    [InlineData("umol/l")]
    [InlineData("mcmol/L")]
    [InlineData(" \u00B5 mol / L ")]
    [InlineData("micromol/L")]
    public void Every_spelling_of_micro_reads_alike(string unit) => AssertSameAsClean(Encoding.UTF8.GetBytes(Clean.Replace("µmol/L", unit)));

    // What spreadsheets add on saving: quotes, blank rows of delimiters, trailing delimiters, comments, CRLF, Excel's first line.
    [Fact]
    public void What_spreadsheets_add_is_read_over()
    {
        var dressed = "sep=,\n\n# a comment, \"unfinished\n,,,,,\n"
            + Clean.Replace("plasma,urea,120", "\"# another, comment\",,,,,,\n\n  plasma , \"urea\" ,120").Replace("\n", ",\r\n");
        AssertSameAsClean(Encoding.UTF8.GetBytes(dressed));
    }

    [Fact]
    public void Words_are_known_in_any_case_and_by_the_trades_synonyms() => AssertSameAsClean(Encoding.UTF8.GetBytes(Clean
        .Replace("section,item,time,value,unit,remark", "SAMPLE,Analyte,Dwell time (min),Result,Units,Comment")
        .Replace("dialysate,", "Effluent,").Replace("plasma,", "SERUM,").Replace(",sodium,", ",Na+,").Replace(",creatinine,", ",Creat,")
        .Replace("fill volume", "Instilled-Volume").Replace("weighed", "Measured").Replace("female", "F")));

    [Theory]
    [InlineData("120", "2:00")]
    [InlineData("120", "120 min")]
    [InlineData("120", "2 h")]
    [InlineData("120", "2.0h")]
    [InlineData("240", "04:00:00")]
    public void A_time_is_minutes_or_hours_or_hours_and_minutes(string minutes, string written) =>
        AssertSameAsClean(Encoding.UTF8.GetBytes(Clean.Replace($",{minutes},", $",{written},")));

    // End of inflow 22:30: 0, 60, 120 and 240 min are 22:30, 23:30, 00:30 and 02:30 of the next day.
    [Fact]
    public void Clock_times_are_counted_from_the_end_of_inflow_and_across_midnight()
    {
        var clocked = With("test,dwell", "test,end of inflow,,10:30 pm,,|test,start of drain,,02:30,,")
            .Replace(",0,", ",22:30,").Replace("sodium,60,", "sodium,23:30,").Replace(",120,", ",00:30,").Replace(",240,", ",2:30,");
        AssertSameAsClean(Encoding.UTF8.GetBytes(clocked));
    }

    [Fact]
    public void Blood_drawn_just_before_the_end_of_inflow_has_a_negative_time()
    {
        var sheet = Read(With("test,dwell", "test,dwell,,240,min,|test,end of inflow,,08:15,,").Replace("plasma,creatinine,120", "plasma,creatinine,08:05"));
        Assert.Equal(-10, sheet.ToTest().Plasma[0].Time!.Value.TotalMinutes, 9);
    }

    [Fact]
    public void Urea_nitrogen_is_read_as_urea()
    {
        // 50 mg/dL of nitrogen: 500 mg/L / 28.014 g/mol = 17.85 mmol/L of urea, to four digits.
        var test = Read(With("plasma,urea", "plasma,BUN,120,50,mg/dL,")).ToTest();
        Assert.Equal(17.85, test.PlasmaUrea!.Value.MillimolesPerLiter, 2);
    }

    // 22.7 g of anhydrous glucose are 126.0 mmol; 25 g of monohydrate (198.17 g/mol) are 126.2 mmol.
    [Theory]
    [InlineData("126", "mmol/L", 126.0)]
    [InlineData("22.7", "g/L", 126.0)]
    [InlineData("2270", "mg/dL", 126.0)]
    [InlineData("2.27", "% anhydrous", 126.0)]
    [InlineData("2.5", "% monohydrate", 126.2)]
    [InlineData("25", "g/L monohydrate", 126.2)]
    public void A_strength_is_a_concentration_or_a_percentage_of_a_named_convention(string value, string unit, double millimoles)
    {
        var text = With("test,solution glucose", $"test,solution glucose,,{value},{unit},");
        text = With(With(text, "dialysate,glucose,0", "dialysate,glucose,0,108,mmol/L,"), "dialysate,glucose,240", "dialysate,glucose,240,50,mmol/L,");
        Assert.Equal(millimoles, Read(text).ToTest().Solution.Glucose.MillimolesPerLiter, 1);
    }

    // Twardowski's 0.000531415 mg/dL per mg/dL is 0.84634 µmol/L per mmol/L (computed with 180.156 g/mol; 180.16 here, hence seven decimals).
    [Theory]
    [InlineData("0.000531415", "mg/dL per mg/dL")]
    [InlineData("5.31415E-04", "mg/mg")]
    [InlineData("0.84634", "µmol/L per mmol/L")]
    public void A_glucose_factor_is_read_in_both_unit_systems(string value, string unit)
    {
        var text = With("test,creatinine method", $"test,creatinine method,,Jaffe,,|test,creatinine glucose factor,,{value},{unit},");
        text = With(text, "dialysate,creatinine,0", "dialysate,creatinine,0,200,µmol/L,");
        Assert.Equal(0.000531415, Read(text).ToTest().CreatinineAssay.GlucoseFactor!.Value, 7);
    }

    [Fact]
    public void What_was_not_measured_stays_null_in_the_samples_and_typical_in_the_patient()
    {
        var sheet = Read(With(With("plasma,sodium", ""), "plasma,glucose", "plasma,glucose,120,not measured,mmol/L,"));
        var test = sheet.ToTest();

        Assert.Null(test.PlasmaSodium);
        Assert.Null(test.PlasmaGlucose);
        Assert.Equal((140, 6), (test.Patient.Plasma.Sodium.MillimolesPerLiter, test.Patient.Plasma.Glucose.MillimolesPerLiter));
        Assert.Contains("plasma sodium", sheet.Findings.Where(finding => finding.Code == "plasma-not-measured").Select(finding => finding.Field));
        Assert.Contains(sheet.Findings, finding => finding.Message == "Plasma sodium not measured: 140 mmol/L assumed in simulations only.");
    }

    [Fact]
    public void Reading_problems_and_doubts_about_plausibility_come_together()
    {
        var codes = CodesOf(With(With("patient,age", "patient,age,,old,years,"), "dialysate,creatinine,240", "dialysate,creatinine,240,1000,µmol/L,"));
        Assert.Contains("not-a-number", codes);
        Assert.Contains("ratio-impossible", codes);
    }

    [Fact]
    public void The_exception_lists_every_error_and_no_warning_and_its_log_form_no_value()
    {
        var sheet = Read(With(With(With("patient,sex", ""), "plasma,creatinine", "plasma,creatinine,120,8o0,µmol/L,"), "test,dwell", "test,dwell,,255,min,"));
        var refused = Assert.Throws<SampleSheetException>(() => sheet.ToTest());

        Assert.False(sheet.TryToTest(out _));
        Assert.Equal(["not-a-number", "missing-patient-fact"], refused.Errors.Select(error => error.Code));
        Assert.Equal(3, refused.Message.Split(Environment.NewLine).Length);
        Assert.Contains("sheet.csv, row 30, plasma creatinine: This is not a number.", refused.Message);
        Assert.Contains("8o0", refused.Message);
        Assert.DoesNotContain("8o0", refused.ToLogString());
        Assert.Contains("Error not-a-number sheet.csv, row 30, plasma creatinine", refused.ToLogString());
    }

    // A spreadsheet counts comments and blank rows, and a remark of two lines as one row: plasma urea moves from row 32 to 34.
    [Fact]
    public void Rows_are_counted_as_a_spreadsheet_counts_them()
    {
        var text = With(With("patient,age", "# comment||patient,age,,50,years,\"two\nlines\""), "plasma,urea", "plasma,urea,120,x,mmol/L,");
        Assert.Equal(34, Assert.Single(Read(text).Findings).Row);
    }

    [Fact]
    public void A_patients_code_is_in_no_finding()
    {
        var sheet = Read(Clean.Replace("T-01", "Q7Z").Replace("dialysate", "patient,code,,Q7Z,,\ndialysat"));
        Assert.True(sheet.Findings.Count > 10);
        Assert.DoesNotContain(sheet.Findings, finding => finding.ToString().Contains("Q7Z"));
    }

    [Fact]
    public void A_missing_file_is_a_finding() =>
        Assert.Equal("file-not-found", Assert.Single(SampleSheet.Read(Path.Combine(Path.GetTempPath(), "no such folder", "no such sheet.csv")).Findings).Code);

    [Fact]
    public void A_folder_is_a_finding() => Assert.Equal("file-unreadable", Assert.Single(SampleSheet.Read(Path.GetTempPath()).Findings).Code);

    // A stream of 50 MB that fails when more is read than the limit and one block: the refusal cannot have read it whole.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_huge_file_is_refused_without_reading_it_whole(bool canSeek)
    {
        using var huge = new HugeStream(canSeek);
        Assert.Equal("file-too-large", Assert.Single(SampleSheet.Read(huge, "huge.csv").Findings).Code);
        Assert.True(huge.Position <= (canSeek ? 0 : 5_100_000), $"{huge.Position} bytes were read.");
    }

    [Theory]
    [InlineData(new byte[] { 0x50, 0x4B, 0x03, 0x04, 0x14, 0x00 }, "file-not-text")] // a workbook
    [InlineData(new byte[] { 0x61, 0x00, 0x62, 0x00 }, "file-not-text")] // UTF-16 without its mark
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61 }, "file-not-text")] // half a UTF-16 letter
    [InlineData(new byte[] { 0x61, 0x2C, 0x81 }, "file-not-text")] // a byte that Windows-1252 does not have
    [InlineData(new byte[0], "file-empty")]
    [InlineData(new byte[] { 0xEF, 0xBB, 0xBF, 0x0D, 0x0A }, "file-empty")]
    [InlineData(new byte[] { 0x23, 0x0A }, "file-empty")] // one comment
    public void What_is_no_table_gets_one_finding(byte[] bytes, string code) => Assert.Equal(code, Assert.Single(Read(bytes).Findings).Code);

    // Whatever stands in a file, reading ends with findings, never with an exception; and what has no error makes a test.
    [Property(MaxTest = 300)]
    public void No_content_makes_reading_throw(byte[] bytes) => AssertReadable(bytes ?? []);

    [Property(MaxTest = 500)]
    public void No_damage_to_a_sheet_makes_reading_throw(uint place, uint length, string patch)
    {
        var from = (int)(place % (uint)Clean.Length);
        var to = Math.Min(Clean.Length, from + (int)(length % 40));
        AssertReadable(Encoding.UTF8.GetBytes(Clean[..from] + patch + Clean[to..]));
    }

    [Fact]
    public void Every_row_can_be_left_out_without_an_exception()
    {
        var lines = Clean.Split('\n');
        for (var left = 0; left < lines.Length; left++)
        {
            AssertReadable(Encoding.UTF8.GetBytes(string.Join('\n', lines.Where((_, at) => at != left))));
        }
    }

    private static void AssertReadable(byte[] bytes)
    {
        var sheet = Read(bytes);
        Assert.Equal(!sheet.HasErrors, sheet.TryToTest(out _));
        Assert.All(sheet.Findings, finding => Assert.Equal("sheet.csv", finding.File));
    }

    private static void AssertSameAsClean(byte[] bytes)
    {
        var sheet = Read(bytes);
        Assert.Empty(sheet.Findings);
        Assert.Equivalent(Read(Clean).ToTest(), sheet.ToTest(), strict: true);
    }

    private sealed class HugeStream(bool canSeek) : Stream
    {
        private long position;

        public override bool CanRead => true;

        public override bool CanSeek => canSeek;

        public override bool CanWrite => false;

        public override long Length => 50_000_000;

        public override long Position { get => position; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Fill(buffer, (byte)'a', offset, count);
            position += count;
            return count;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
