using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>From what a prescription states to its cycles, and the bags that hold them. Arithmetic by hand; 1e-9 relative leaves room for rounding only.</summary>
public sealed class PrescriptionTests
{
    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    private static readonly AutomatedPrescription Plain = new(TimeSpan.FromHours(9), Weak)
    {
        FluidInAll = Milliliters(12_000),
        VolumePerCycle = Milliliters(2_000),
        DayFill = Day(2_000),
        Settings = Settings(200, 20),
    };

    [Fact]
    public void Any_two_of_fluid_volume_and_cycles_give_the_third()
    {
        // (12,000 − 2,000)/2,000 = 5 cycles; (540 − 5 × 30)/5 = 78 min.
        Regimen[] all =
        [
            Plain.ToRegimen(),
            (Plain with { FluidInAll = null, Cycles = 5 }).ToRegimen(),
            (Plain with { VolumePerCycle = null, Cycles = 5 }).ToRegimen(),
            (Plain with { Cycles = 5 }).ToRegimen(),
        ];
        Assert.All(all, regimen => Assert.Equal(all[0], regimen));
        Assert.Equal(5, all[0].Cycles);
        Assert.Equal(78, all[0].DwellTimes[0].TotalMinutes, 1e-6);
        Assert.Empty(Plain.Findings);
    }

    [Fact]
    public void A_remainder_is_left_with_a_note_or_shared_out()
    {
        var more = Plain with { FluidInAll = Milliliters(13_000) };
        var note = Assert.Single(more.Findings);
        Assert.Equal((Severity.Note, "fluid-left-over"), (note.Severity, note.Code));
        Assert.Contains("1000 of 13000 mL", note.Message, StringComparison.Ordinal);
        Assert.Contains("2200 mL a cycle", note.Message, StringComparison.Ordinal);
        Assert.Equal(2_200, (more with { Spare = SpareFluid.Share }).ToRegimen().VolumePerCycle!.Value.Milliliters, 1e-9);
    }

    [Fact]
    public void A_tidal_night_makes_one_full_cycle_and_as_many_tidal_ones_as_there_is_fluid_for()
    {
        // 1 + (14 − 2)/1 = 13; 1300 mL expected make each drain 1100 mL. With a complete drain every fourth cycle the first, fifth and ninth are
        // full: 2 + 3 + 2 + 3 + 2 + … = 14 L after the eleventh: 5 + 5 + 2 + 1 + 1.
        var tidal = Plain with { FluidInAll = Milliliters(14_000), DayFill = null, TidalShare = 0.5, ExpectedUltrafiltration = Milliliters(1_300), NightLength = TimeSpan.FromHours(10) };
        var regimen = tidal.ToRegimen();
        Assert.Equal(13, regimen.Cycles);
        Assert.All(regimen.Night[..^1], exchange => Assert.Equal(1_100, exchange.PartialDrain!.Total.Milliliters, 1e-9));
        var reset = (tidal with { CompleteDrainEvery = 4 }).ToRegimen();
        Assert.Equal(11, reset.Cycles);
        Assert.Equal(14_000, reset.FluidInAll.Milliliters, 1e-9);

        // Shared out, 14.5 L make the same thirteen cycles, each fuller by 14.5/14.
        var shared = (tidal with { FluidInAll = Milliliters(14_500), Spare = SpareFluid.Share }).ToRegimen();
        Assert.Equal(2_000 * 14.5 / 14, shared.Night[0].Fill.Milliliters, 1e-9);
        Assert.Equal(14_500, shared.FluidInAll.Milliliters, 1e-8);
    }

    [Theory]
    [InlineData("prescription-incomplete", null, 2_000.0, null, null)]
    [InlineData("prescription-incomplete", null, null, 5, null)]
    [InlineData("tidal-without-base-fill", 12_000.0, null, 5, 0.5)]
    [InlineData("fluid-does-not-add-up", 11_000.0, 2_000.0, 5, null)]
    [InlineData("fluid-does-not-add-up", 3_900.0, 2_000.0, null, null)]
    [InlineData("fluid-does-not-add-up", 1_500.0, 2_000.0, null, null)]
    [InlineData("tidal-share", 12_000.0, 2_000.0, null, 1.2)]
    [InlineData("fill-not-positive", 12_000.0, -2_000.0, null, null)]
    [InlineData("cycles", 12_000.0, null, 0, null)]
    public void What_does_not_make_a_night_is_refused(string code, double? fluid, double? fill, int? cycles, double? tidal)
    {
        var stated = Plain with { FluidInAll = Of(fluid), VolumePerCycle = Of(fill), Cycles = cycles, TidalShare = tidal };
        Assert.Equal(code, Assert.Single(stated.Findings, finding => finding.Severity == Severity.Error).Code);
        Assert.Equal(stated.Findings, Assert.Throws<RegimenException>(stated.ToRegimen).Findings);

        static Volume? Of(double? value) => value is { } given ? Milliliters(given) : null;
    }

    [Fact]
    public void Missing_fluid_is_named_with_its_numbers()
    {
        var finding = Assert.Single((Plain with { FluidInAll = Milliliters(11_000), Cycles = 5 }).Findings);
        Assert.Equal("5 cycles of 2000 mL and a day fill of 2000 mL take 12000 mL, and 11000 mL are stated: 1000 mL are missing.", finding.Message);
        Assert.Empty((Plain with { FluidInAll = Milliliters(11_999.5), Cycles = 5 }).Findings);
    }

    [Fact]
    public void Three_figures_that_disagree_by_a_cycle_are_refused_and_less_than_a_cycle_is_spare()
    {
        // 12 L less 2 L by day make five cycles of 2 L, and four are stated: one of the three is not meant. 11.9 L with four leave 1.9 L over, less than a cycle.
        var four = Plain with { Cycles = 4 };
        var finding = Assert.Single(four.Findings);
        Assert.Equal((Severity.Error, "fluid-does-not-add-up"), (finding.Severity, finding.Code));
        Assert.Contains("12000 mL are stated, enough for 5", finding.Message, StringComparison.Ordinal);
        Assert.Equal("fluid-left-over", Assert.Single((four with { FluidInAll = Milliliters(11_900) }).Findings).Code);

        // To share it out is to say which is meant: four cycles of (12 − 2)/4 L.
        Assert.Equal(2_500, (four with { Spare = SpareFluid.Share }).ToRegimen().VolumePerCycle!.Value.Milliliters, 1e-9);

        // Tidal: 1 + (14 − 2)/1 = 13 cycles, and twelve are stated.
        var tidal = Plain with { FluidInAll = Milliliters(14_000), DayFill = null, TidalShare = 0.5, NightLength = TimeSpan.FromHours(10), Cycles = 12 };
        Assert.Equal("fluid-does-not-add-up", Assert.Single(tidal.Findings, one => one.Severity == Severity.Error).Code);
        Assert.Empty((tidal with { Cycles = 13 }).Findings);
        Assert.Throws<ArgumentException>(() => Plain with { Bags = default });
    }

    [Fact]
    public void Everything_that_stands_against_a_prescription_is_named_at_once()
    {
        var stated = Plain with
        {
            NightLength = TimeSpan.FromHours(25),
            TidalShare = 3,
            ExpectedUltrafiltration = Milliliters(-1),
            Cycles = 90,
            VolumePerCycle = Milliliters(0),
        };
        Assert.Equal(
            ["cycles", "fill-not-positive", "night-too-long", "tidal-numbers", "tidal-share"],
            stated.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Code).Order());
    }

    [Fact]
    public void Bags_have_to_hold_what_is_prescribed()
    {
        FluidBag[] enough = [new(Weak, Milliliters(5_000)), new(Weak, Milliliters(5_000)), new(Weak, Milliliters(2_000), true)];
        Assert.Empty((Plain with { Bags = [.. enough] }).Findings);
        var lacking = Assert.Single((Plain with { Bags = [enough[0], enough[2]] }).Findings);
        Assert.Equal("bags-do-not-add-up", lacking.Code);
        Assert.Contains("5000 mL are missing", lacking.Message, StringComparison.Ordinal);
        var small = (Plain with { Bags = [.. enough[..2], new(Weak, Milliliters(1_500), true)] }).Findings;
        Assert.Equal(["bags-do-not-add-up", "day-fill-larger-than-bag"], small.Select(finding => finding.Code).Order());

        // Two bags hold it together, and neither of them the fill.
        var two = (Plain with { Bags = [.. enough[..2], new(Weak, Milliliters(1_500), true), new(Weak, Milliliters(1_500), true)] }).Findings;
        Assert.Equal("day-fill-larger-than-bag", Assert.Single(two).Code);
        var other = (Plain with { Bags = [.. enough, new(DialysisSolution.Glucose386, Milliliters(2_000))] }).Findings;
        Assert.Equal((Severity.Warning, "bag-not-used"), (Assert.Single(other).Severity, other[0].Code));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FluidBag(Weak, Milliliters(0)));
    }

    [Fact]
    public void Bags_that_cover_a_day_leave_least_over()
    {
        // 10 L of the night are 2 × 5 L; 2.2 L of the day are one of 2.5 L.
        var covers = BagCover.Of(Regimen.Cycling(TimeSpan.FromHours(9), 5, Milliliters(2_000), Weak, new(DialysisSolution.Icodextrin, Milliliters(2_200))));
        Assert.Equal([5_000.0, 5_000], covers[0].Bags.Select(bag => bag.Milliliters));
        Assert.Equal([2_500.0], covers[1].Bags.Select(bag => bag.Milliliters));
        Assert.Equal(300, covers[1].LeftOver.Milliliters, 1e-9);
        Assert.Equal(DialysisSolution.Icodextrin, covers[1].Solution);
        Assert.Throws<ArgumentException>(() => BagCover.Of(Plain.ToRegimen(), []));
    }

    [Property(MaxTest = 50)]
    public bool No_other_choice_of_bags_leaves_less_over(PositiveInt draw)
    {
        // Against every choice of up to eight bags of 2, 2.5, 5 and 6 L.
        var fill = Milliliters(1_000 + draw.Get * 137 % 2_400);
        int[] sizes = [2_000, 2_500, 5_000, 6_000];
        var cover = BagCover.Of(Regimen.Cycling(TimeSpan.FromHours(9), 6, fill, Weak), sizes.Select(size => Milliliters(size)))[0];
        var sums = new HashSet<int> { 0 };
        for (var i = 0; i < 10; i++)
        {
            sums.UnionWith(sums.SelectMany(sum => sizes.Select(size => sum + size)).ToList());
        }

        return cover.Supplied.Milliliters == sums.Where(sum => sum >= Math.Ceiling(6 * fill.Milliliters - 0.5)).Min();
    }
}
