using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

/// <summary>What several sheets make is told by what they hold, and nothing is put together on a guess.</summary>
public sealed class SheetGroupTests
{
    private static readonly string Weak = HourSheet.Of("75.5", "2080", "70", "48", "131");
    private static readonly string Strong = HourSheet.Of("214.3", "2480", "200", "125", "124.5");

    private static string Later => With("test,date", "test,date,,2026-03-11,,");

    private static IReadOnlyList<SheetGroup> Groups(params string[] sheets)
    {
        var groups = SheetGroup.Of([.. sheets.Select(Read)], out var findings);
        Assert.Empty(findings);
        return groups;
    }

    private static string[] Problems(params string[] sheets)
    {
        Assert.Empty(SheetGroup.Of([.. sheets.Select(Read)], out var findings));
        return [.. findings.Select(finding => finding.Code)];
    }

    [Fact]
    public void One_sheet_is_a_test_or_a_collection()
    {
        Assert.Equal(SheetGroupKind.Test, Assert.Single(Groups(Clean)).Kind);
        Assert.Equal(SheetGroupKind.Collection, Assert.Single(Groups(TestFormSheetTests.Collection)).Kind);
    }

    [Fact]
    public void Two_first_hours_with_two_strengths_are_a_pair_in_either_order()
    {
        Assert.Equal(SheetGroupKind.Pair, Assert.Single(Groups(Weak, Strong)).Kind);
        Assert.Equal(SheetGroupKind.Pair, Assert.Single(Groups(Strong, Weak)).Kind);
    }

    [Theory]
    [InlineData("2025-03-25", SheetGroupKind.Pair)] // 14 days
    [InlineData("2025-03-26", SheetGroupKind.Series)]
    public void A_pair_lies_within_two_weeks(string date, SheetGroupKind expected) =>
        Assert.Equal(expected, Assert.Single(Groups(Weak, With(Strong, "test,date", $"test,date,,{date},,"))).Kind);

    [Fact]
    public void Tests_without_a_volume_at_60_min_or_with_one_strength_are_a_series()
    {
        Assert.Equal(SheetGroupKind.Series, Assert.Single(Groups(Clean, Later)).Kind);
        Assert.Equal(SheetGroupKind.Series, Assert.Single(Groups(Strong, With(Strong, "test,date", "test,date,,2025-03-12,,"))).Kind);
    }

    [Fact]
    public void A_collection_among_tests_stands_alone() =>
        Assert.Equal([SheetGroupKind.Series, SheetGroupKind.Collection], Groups(Clean, TestFormSheetTests.Collection, Later).Select(group => group.Kind));

    [Fact]
    public void People_are_never_mixed()
    {
        Assert.Contains("sheets-of-different-patients", Problems(Clean, With(Later, "patient,code", "patient,code,,T-99,,")));
        Assert.Contains("sheets-without-code", Problems(Clean, With(Later, "patient,code", "")));
    }

    [Fact]
    public void A_series_needs_dates_and_a_pair_does_not()
    {
        Assert.Contains("sheets-without-date", Problems(Clean, With("test,date", "")));
        Assert.Equal(SheetGroupKind.Pair, Assert.Single(Groups(Weak, With(Strong, "test,date", ""))).Kind);
    }

    [Fact]
    public void Every_error_of_every_sheet_is_given_at_once()
    {
        var problems = Problems(With("patient,age", ""), With(Later, "test,dwell", ""));
        Assert.Contains("missing-patient-fact", problems);
        Assert.Contains("missing-dwell", problems);
    }
}
