using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

/// <summary>Tests of one invented person over years.</summary>
public sealed class SerialTestsTests
{
    [Theory]
    [InlineData(0.83, false)]
    [InlineData(0.84, true)]
    public void A_change_is_real_beyond_2_77_standard_deviations_of_one_test(double later, bool expected)
    {
        // 1.96 × √2 × 0.05 = 0.1386: from 0.70 to 0.83 is chance, to 0.84 is not.
        var course = Course(SerialTests.Of([Test(2023, 0.70, 600, 8), Test(2024, later, 600, 8)]), "D/P creatinine");

        Assert.Equal(0.138593, course.MinimalDetectableChange.Value, 1e-6);
        Assert.Equal(expected, course.IsReal(course.ChangeFromFirst));
    }

    [Fact]
    public void The_slope_of_three_yearly_tests_is_half_the_change_of_two_years_with_its_error()
    {
        // 0.60, 0.66, 0.72 a year apart: 0.06 a year; σ/√Σ(t − mean)² = 0.05/√2 but for leap days (0.3 %).
        var course = Course(SerialTests.Of([Test(2022, 0.60, 600, 8), Test(2024, 0.72, 600, 8), Test(2023, 0.66, 600, 8)]), "D/P creatinine");

        Assert.Equal(0.06, course.SlopePerYear!.Value, 0.0003);
        Assert.Equal(0.05 / Math.Sqrt(2), course.SlopePerYear.StandardDeviation!.Value, 0.0002);
        Assert.Equal(0.12, course.ChangeFromFirst.Value, 1e-12);
        Assert.Equal(0.06, course.ChangeFromPrevious.Value, 1e-12);
    }

    [Fact]
    public void Only_D_over_P_is_followed_across_strengths()
    {
        var middle = EquilibrationIndices.Of(Middle(0.66, 0.38) with { Date = new(2023, 5, 1) });
        var series = SerialTests.Of([middle, Test(2024, 0.70, 600, 8)]);

        Assert.Equal(["D/P creatinine", "D/P urea", "mass transfer area coefficient of creatinine"], series.Courses.Select(course => course.Name));
    }

    [Fact]
    public void A_smaller_dip_and_faster_transfer_are_named_tentatively()
    {
        var series = SerialTests.Of([Test(2023, 0.65, 600, 8), Test(2024, 0.75, 500, 5)]);

        Assert.Contains(series.Findings, finding => finding.Code == "transfer-rising");
        Assert.Contains(series.Findings, finding => finding.Code == "sodium-dip-falling");
        Assert.DoesNotContain(series.Findings, finding => finding.Code == "falling-after-years");
        Assert.All(series.Findings, finding => Assert.DoesNotContain("must", finding.Message, StringComparison.Ordinal));
    }

    // A clinic reads these on a page: rounded as the index is, from the earlier to the later.
    [Fact]
    public void A_change_is_told_from_its_earlier_value_to_its_later_one_in_rounded_numbers()
    {
        var series = SerialTests.Of([Test(2023, 0.6512, 612.34, 9.04), Test(2024, 0.8123, 100.3, 1.96)]);
        var found = series.Findings.Where(finding => finding.Code == "change-beyond-noise").ToDictionary(finding => finding.Field!, finding => finding.Found);

        Assert.Equal("+0.16, from 0.65 on 2023-05-01 to 0.81 on 2024-05-01", found["D/P creatinine"]);
        Assert.StartsWith("−512 mL, from 612 on", found["net ultrafiltration"], StringComparison.Ordinal);
        Assert.StartsWith("−7.1 mmol/L, from 9.0 on", found["sodium dip"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2018, 100, true)] // six years, a real fall
    [InlineData(2018, 550, false)] // six years, within noise: 2.77 × 150 mL is 416
    [InlineData(2020, 100, false)] // four years
    public void The_sentence_on_sclerosis_needs_years_and_a_real_fall(int start, double ultrafiltration, bool expected)
    {
        EquilibrationIndices After(int year, double volume) => EquilibrationIndices.Of(
            Strong(0.70, volume, 8) with { Date = new(year, 5, 1), Conditions = new() { DialysisStart = new(start, 5, 1) } });
        var findings = SerialTests.Of([After(2022, 700), After(2024, ultrafiltration)]).Findings;

        Assert.Equal(expected, findings.Any(finding => finding.Code == "falling-after-years"));
        Assert.Equal(expected, findings.Any(finding => finding.Message.Contains("No peritoneal test screens for or predicts", StringComparison.Ordinal)));
    }

    [Fact]
    public void Another_code_stops_the_series_and_a_test_without_a_date_is_left_out()
    {
        var stranger = EquilibrationIndices.Of(Strong(0.7, 600, 8) with { Date = new(2024, 1, 1), Patient = Patient.Example with { Code = "another" } });
        Assert.Contains(SerialTests.Of([Test(2023, 0.7, 600, 8), stranger]).Findings, finding => finding.Code == "series-of-different-patients");
        Assert.Empty(SerialTests.Of([Test(2023, 0.7, 600, 8), stranger]).Courses);

        var undated = SerialTests.Of([Test(2023, 0.7, 600, 8), EquilibrationIndices.Of(Strong(0.7, 600, 8))]);
        Assert.Single(undated.Tests);
        Assert.Contains(undated.Findings, finding => finding.Code == "series-test-undated");
    }

    private static EquilibrationIndices Test(int year, double ratio, double ultrafiltration, double dip) =>
        EquilibrationIndices.Of(Strong(ratio, ultrafiltration, dip) with { Date = new(year, 5, 1) });

    private static SerialIndex Course(SerialTests series, string name) => Assert.Single(series.Courses, course => course.Name == name);
}
