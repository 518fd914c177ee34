using System.Text;
using System.Text.RegularExpressions;
using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

public sealed class LocalProtocolTests
{
    [Fact]
    public void One_limit_in_a_file_moves_one_finding_and_its_name_is_carried()
    {
        var protocol = Read("""{ "name": "Ward 5", "version": "2026-02", "limits": { "smallSodiumDip": { "value": 4, "unit": "mmol/L" } } }""");
        var indices = EquilibrationIndices.Of(Strong(0.70, 350, 4.5), protocol.ToOptions());

        Assert.Empty(protocol.Findings);
        Assert.DoesNotContain(indices.Findings, finding => finding.Code == "low-osmotic-conductance");
        Assert.Equal("Ward 5, version 2026-02", indices.Options.Thresholds.Name);
        Assert.Equal(MembraneThresholds.Default.LowUltrafiltrationStrong, protocol.Thresholds.LowUltrafiltrationStrong);
        Assert.Contains("Ward 5, version 2026-02; choice", protocol.Thresholds.SmallSodiumDip.ToString(), StringComparison.Ordinal);
        Assert.Equal(5, MembraneThresholds.Default.SmallSodiumDip.Value);
    }

    [Fact]
    public void Borders_of_the_class_can_be_local()
    {
        var protocol = Read("""{ "name": "Ward 5", "version": "1", "creatinineBorders": { "slow": 0.5, "middle": 0.65, "fast": 0.81, "fastBorderIsFast": true } }""");
        var classification = EquilibrationIndices.Of(Strong(0.85, 500, 8), protocol.ToOptions()).Classification!;
        Assert.Equal(TransportCategory.Fast, classification.Cuts.Of(0.81));
        Assert.Contains("Ward 5, version 1", classification.Cuts.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("not json", "protocol-unreadable")]
    [InlineData("""{ "version": "1" }""", "protocol-unnamed")]
    [InlineData("""{ "name": "a", "version": "1", "limits": { "smallDip": { "value": 4 } } }""", "protocol-unknown-limit")]
    [InlineData("""{ "name": "a", "version": "1", "limits": { "smallSodiumDip": { "value": 4, "unit": "mEq" } } }""", "protocol-wrong-unit")]
    [InlineData("""{ "name": "a", "version": "1", "limits": { "smallSodiumDip": { "value": -4, "unit": "mmol/L" } } }""", "protocol-bad-value")]
    [InlineData("""{ "name": "a", "version": "1", "limits": { "smallSodiumDip": 4 } }""", "protocol-bad-value")]
    [InlineData("""{ "name": "a", "version": "1", "creatinineBorders": { "slow": 0.7, "middle": 0.65, "fast": 0.81 } }""", "protocol-bad-value")]
    [InlineData("""{ "name": "a", "version": "1", "Limits": { "smallSodiumDip": { "value": 4, "unit": "mmol/L" } } }""", "protocol-unknown-limit")]
    [InlineData("""{ "name": "a", "version": "1", "limits": [ 4 ] }""", "protocol-bad-value")]
    [InlineData("""{ "limits": { } }""", "protocol-unnamed")]
    public void What_is_wrong_with_a_file_is_a_finding_and_the_shipped_limit_stays(string json, string code)
    {
        var protocol = Read(json);

        Assert.Equal(code, Assert.Single(protocol.Findings).Code);
        Assert.True(protocol.HasErrors);
        Assert.Equal(MembraneThresholds.Default, protocol.Thresholds with { Name = MembraneThresholds.Default.Name });
        Assert.Null(protocol.Cuts);
    }

    [Fact]
    public void Everything_wrong_with_a_limit_is_told_at_once_with_what_was_found()
    {
        var findings = Read("""{ "name": "a", "version": "1", "limits": { "smallSodiumDip": { "value": -4, "unit": "h" } } }""").Findings;
        Assert.Equal(
            [("protocol-wrong-unit", "h", "mmol/L"), ("protocol-bad-value", """{ "value": -4, "unit": "h" }""", """{ "value": 5, "unit": "mmol/L" }""")],
            findings.Select(finding => (finding.Code, finding.Found!, finding.Expected!)));
    }

    [Fact]
    public void The_pages_own_file_is_read_and_the_page_lists_every_limit()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "how-to", "local-protocol.md"));
        Assert.Empty(Read(Regex.Match(page, "```json\r?\n(?<file>.*?)```", RegexOptions.Singleline).Groups["file"].Value).Findings);
        Assert.All(typeof(MembraneThresholds).GetProperties().Where(property => property.PropertyType == typeof(Threshold)), property =>
            Assert.Contains($"`{char.ToLowerInvariant(property.Name[0])}{property.Name[1..]}`", page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_part_on_nights_overrides_the_limits_of_a_review_and_the_page_lists_every_one()
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "how-to", "local-protocol.md"));
        var limits = ReviewLimits.From(Read(Regex.Matches(page, "```json\r?\n(?<file>.*?)```", RegexOptions.Singleline)[1].Groups["file"].Value), out var findings);
        Assert.Empty(findings);
        Assert.Equal((0.80, 5, 3), (limits.LowDrainShare.Value, limits.NowDays.Value, limits.RepeatedNights.Value));
        Assert.Equal("Ward 5, invented, version 2026-02", limits.Name);
        Assert.All(typeof(ReviewLimits).GetProperties().Where(property => property.PropertyType == typeof(Threshold)), property =>
        {
            var shipped = (Threshold)property.GetValue(ReviewLimits.Default)!;
            Assert.Contains(FormattableString.Invariant($"| `{char.ToLowerInvariant(property.Name[0])}{property.Name[1..]}` | {shipped.Value:0.##} | {shipped.Unit} |"), page, StringComparison.Ordinal);
        });
        Assert.Same(ReviewLimits.Default, ReviewLimits.From(Read("""{ "name": "x", "version": "1" }"""), out _));
    }

    [Theory]
    [InlineData("""{ "noSuchLimit": { "value": 1 } }""", "protocol-unknown-limit")]
    [InlineData("""{ "nowDays": { "value": 3, "unit": "h" } }""", "protocol-wrong-unit")]
    [InlineData("""{ "nowDays": { "value": 400, "unit": "days" } }""", "protocol-bad-value")]
    [InlineData("""{ "lowDrainShare": { "value": -1 } }""", "protocol-bad-value")]
    public void What_is_wrong_with_the_part_on_nights_is_a_finding_and_the_shipped_limit_stays(string nights, string code)
    {
        var limits = ReviewLimits.From(Read($$"""{ "name": "x", "version": "1", "nights": {{nights}} }"""), out var findings);
        Assert.Equal(code, Assert.Single(findings).Code);
        Assert.Equal(ReviewLimits.Default, limits with { Name = ReviewLimits.Default.Name });
    }

    private static LocalProtocol Read(string json)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(json));
        return LocalProtocol.Read(stream);
    }
}
