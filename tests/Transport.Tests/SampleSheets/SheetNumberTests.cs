using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

public class SheetNumberTests
{
    // Expected values are what a person means by them; each needs nothing from the rest of the file.
    [Theory]
    [InlineData("12.5", 12.5)]
    [InlineData("12,5", 12.5)]
    [InlineData("0.531", 0.531)] // a thousand does not begin with 0
    [InlineData("0,531", 0.531)]
    [InlineData(",5", 0.5)]
    [InlineData("1234.567", 1234.567)] // thousands would have been marked too
    [InlineData("1,234.5", 1234.5)]
    [InlineData("1.234,5", 1234.5)]
    [InlineData("1.234.567", 1234567)]
    [InlineData("1 234", 1234)]
    [InlineData("1 234,567", 1234.567)]
    [InlineData("1\u00A0234", 1234)]
    [InlineData("1'234.5", 1234.5)]
    [InlineData("5.31E-04", 0.000531)]
    [InlineData("1.234E+03", 1234)]
    [InlineData("-3", -3)]
    [InlineData("\u22123", -3)]
    public void A_number_that_has_one_meaning_is_read(string text, double expected)
    {
        Assert.True(SheetNumber.TryRead(text, null, out var value, out var ambiguous));
        Assert.False(ambiguous);
        Assert.Equal(expected, value, 12);
    }

    [Theory]
    [InlineData("1.234", '.', 1.234)]
    [InlineData("1.234", ',', 1234)]
    [InlineData("1,234", ',', 1.234)]
    [InlineData("1,234", '.', 1234)]
    public void A_doubtful_number_takes_the_files_decimal_mark(string text, char mark, double expected)
    {
        Assert.False(SheetNumber.TryRead(text, null, out _, out var ambiguous));
        Assert.True(ambiguous);
        Assert.True(SheetNumber.TryRead(text, mark, out var value, out _));
        Assert.Equal(expected, value, 12);
    }

    [Theory]
    [InlineData("1,23,456")]
    [InlineData("1.23.456")]
    [InlineData("1,234.567,8")]
    [InlineData("12 5")]
    [InlineData("1e999")]
    [InlineData("5 mg")]
    [InlineData("NaN")]
    [InlineData("1.")]
    public void What_is_no_number_is_not_read(string text)
    {
        Assert.False(SheetNumber.TryRead(text, '.', out _, out var ambiguous));
        Assert.False(ambiguous);
    }

    // Semicolon file: 1.980 mg/dL of glucose may be 2 or 1980. Another value with a decimal comma settles it, an integer does not.
    [Theory]
    [InlineData("18", true, null)]
    [InlineData("18,5", false, 1980.0)]
    public void Another_value_of_the_file_settles_a_doubtful_one(string urea, bool ambiguous, double? milligrams)
    {
        var text = With(With("dialysate,urea,240", $"dialysate,urea,240,{urea.Replace(',', '~')},mmol/L,"), "dialysate,glucose,120", "dialysate,glucose,120,1.980,mg/dL,")
            .Replace("2.4,", "2,").Replace("15.0,", "15,").Replace("214.3", "214").Replace(',', ';').Replace('~', ',');
        var sheet = Read(text);
        Assert.Equal(ambiguous, sheet.Findings.Any(finding => finding.Code == "ambiguous-number"));
        var glucose = sheet.Measurements.Single(row => row is { Analyte: Analyte.Glucose, Fluid: SampledFluid.Dialysate, Time.TotalMinutes: 120 });
        Assert.Equal(milligrams, glucose.Value is { } value ? Math.Round(value.MilligramsPerDeciliter(Solutes.Glucose), 6) : null);
    }

    // Comma-separated: the program that wrote it marks decimals with a point, so 1.234 L/day of urine is 1234 mL.
    [Fact]
    public void In_a_comma_separated_file_a_lone_point_is_the_decimal_mark()
    {
        var text = With("patient,urine", "patient,urine volume,,1.234,L/day,").Replace("214.3", "214").Replace("2.4,", "2,").Replace("15.0", "15").Replace("18.0", "18");
        Assert.Equal(1234, Read(text).ToTest().Patient.ResidualFunction.UrineVolumePerDay.Milliliters, 9);
    }
}
