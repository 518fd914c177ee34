namespace Transport.Tests.Optimization;

/// <summary>
/// The problem of two kinds of cycle that can be solved by hand: A 60 min, 180 mL, clearance 4, 14 g; B 120 min, 20 mL, clearance 7, 5 g; 500 mL and a clearance of 35 for the
/// least glucose. Every expected number is computed by hand: the two equations 180 a + 20 b = 500 and 4 a + 7 b = 35 have the determinant 1180.
/// </summary>
public sealed class CycleMixTests
{
    private static readonly CycleType A = new("A", 60, 180, 4, 14);
    private static readonly CycleType B = new("B", 120, 20, 7, 5);
    private static readonly CycleType[] Both = [A, B];

    [Fact]
    public void Parts_of_cycles_meet_where_both_goals_are_just_met()
    {
        // a = (500·7 − 20·35)/1180 = 2800/1180 = 140/59, b = (180·35 − 4·500)/1180 = 4300/1180 = 215/59. To rounding.
        var relaxed = CycleMix.Relaxed(Both, 500, 35)!;
        Assert.Equal(140.0 / 59, relaxed.Cycles[0], 1e-9);
        Assert.Equal(215.0 / 59, relaxed.Cycles[1], 1e-9);
        Assert.Equal((14 * 140 + 5 * 215) / 59.0, relaxed.Glucose, 1e-9);
        Assert.Equal((60 * 140 + 120 * 215) / 59.0, relaxed.Minutes, 1e-9);
    }

    [Theory]
    [InlineData(double.PositiveInfinity, 3, 4, 62, 660, 620, 40)]
    [InlineData(600, 4, 3, 71, 600, 780, 37)]
    [InlineData(540, 7, 1, 103, 540, 1280, 35)]
    public void Whole_cycles_within_a_time(double minutes, int a, int b, double glucose, double time, double ultrafiltration, double clearance)
    {
        var whole = CycleMix.Whole(Both, 500, 35, minutes)!;
        Assert.Equal((a, b), (whole.Cycles[0], whole.Cycles[1]));
        Assert.Equal((glucose, time, ultrafiltration, clearance), (whole.Glucose, whole.Minutes, whole.Ultrafiltration, whole.Clearance));
    }

    [Fact]
    public void A_gap_to_nothing_is_nothing_or_no_number()
    {
        var free = new CycleType("free", 60, 100, 5, 0);
        var none = CycleMix.Relaxed([free], 100, 5)!;
        Assert.Equal(0, none.GapTo(none));
        Assert.Null(CycleMix.Whole([A], 100, 4)!.GapTo(none));
        Assert.Equal(62 / ((14 * 140 + 5 * 215) / 59.0) - 1, CycleMix.Whole(Both, 500, 35)!.GapTo(CycleMix.Relaxed(Both, 500, 35)!)!.Value, 1e-9);
    }

    [Fact]
    public void Thousands_of_kinds_are_as_well_as_two()
    {
        // The two kinds by hand among 2,000 that are worse in everything: the answer stays.
        CycleType[] many = [A, B, .. Enumerable.Range(0, 2_000).Select(i => new CycleType($"{i}", 130 + i % 7, 15 - i % 5, 3.5 - i % 3, 15 + i % 11))];
        Assert.Equal(140.0 / 59, CycleMix.Relaxed(many, 500, 35)!.Cycles[0], 1e-9);
        Assert.Equal((3, 4), (CycleMix.Whole(many, 500, 35)!.Cycles[0], CycleMix.Whole(many, 500, 35)!.Cycles[1]));
    }

    [Fact]
    public void To_round_the_answer_in_parts_does_not_do()
    {
        // (2, 4) removes 2·180 + 4·20 = 440 mL.
        Assert.True(2 * A.Ultrafiltration + 4 * B.Ultrafiltration < 500);
        Assert.NotEqual(2, CycleMix.Whole(Both, 500, 35)!.Cycles[0]);
    }

    [Fact]
    public void Tightening_never_improves_and_a_larger_set_never_worsens()
    {
        var random = new Random(59);
        for (var i = 0; i < 50; i++)
        {
            var types = Enumerable.Range(0, 3).Select(k => new CycleType($"{k}", 40 + 100 * random.NextDouble(), 250 * random.NextDouble(), 2 + 6 * random.NextDouble(), 3 + 15 * random.NextDouble())).ToArray();
            var (uf, clearance) = (200 + 500 * random.NextDouble(), 10 + 20 * random.NextDouble());
            var (loose, tight) = (Least(types, uf, clearance, 700), Least(types, uf, clearance, 500));
            Assert.True(loose <= tight);
            Assert.True(Least(types, 0.9 * uf, clearance, 500) <= tight);
            Assert.True(tight <= Least(types[..2], uf, clearance, 500));

            // The order of the kinds does not matter, and parts of cycles are a bound.
            Assert.Equal(tight, Least([types[2], types[0], types[1]], uf, clearance, 500), 1e-9);
            if (CycleMix.Whole(types, uf, clearance, 500) is { } whole)
            {
                Assert.True(whole.GapTo(CycleMix.Relaxed(types, uf, clearance, 500)!)!.Value >= 0);
            }
        }

        static double Least(CycleType[] types, double uf, double clearance, double minutes) =>
            CycleMix.Whole(types, uf, clearance, minutes)?.Glucose ?? double.MaxValue;
    }
}
