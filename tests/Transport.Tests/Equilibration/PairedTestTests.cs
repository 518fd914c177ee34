using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

/// <summary>What makes a pair, and what is said where two tests make none. Invented data.</summary>
public sealed class PairedTestTests
{
    [Fact]
    public void The_order_of_the_two_does_not_matter_and_the_error_comes_from_volumes_and_glucose()
    {
        var (weak, strong) = (Hour(DialysisSolution.Glucose136, 2050), Hour(DialysisSolution.Glucose386, 2450));
        Assert.Equal(PairedTest.Of(weak, strong).OsmoticConductance!.Value, PairedTest.Of(strong, weak).OsmoticConductance!.Value);

        // Four volumes of 25 mL make 50 mL of 400: 12.5 %; glucose of 3 % adds about 5 %.
        var conductance = PairedTest.Of(weak, strong).OsmoticConductance!;
        Assert.InRange(conductance.StandardDeviation!.Value / conductance.Value, 0.125, 0.16);
    }

    [Fact]
    public void Two_codes_or_one_strength_or_no_volume_make_no_pair_and_say_so()
    {
        var (weak, strong) = (Hour(DialysisSolution.Glucose136, 2050), Hour(DialysisSolution.Glucose386, 2450));
        var stranger = PairedTest.Of(weak, strong with { Patient = strong.Patient with { Code = "another" } });
        Assert.Null(stranger.OsmoticConductance);
        Assert.Contains(stranger.Findings, finding => finding is { Code: "pair-of-different-patients", Severity: Severity.Error });
        Assert.Contains("two strengths", Assert.Single(PairedTest.Of(strong, strong).NotAvailable).Reason, StringComparison.Ordinal);
        Assert.Contains("volume at 60 min", Assert.Single(PairedTest.Of(weak, strong with { DrainedVolume = null }).NotAvailable).Reason, StringComparison.Ordinal);
    }

    // Swapped samples can leave no difference of glucose to divide by; that is a reason, no exception and no infinite conductance.
    [Fact]
    public void Two_hours_with_one_glucose_make_no_conductance()
    {
        var (weak, strong) = (Hour(DialysisSolution.Glucose136, 2050), Hour(DialysisSolution.Glucose386, 2450));
        Assert.Contains("swapped samples", Assert.Single(PairedTest.Of(weak with { Dialysate = strong.Dialysate }, strong).NotAvailable).Reason, StringComparison.Ordinal);
        Assert.Contains("swapped samples", Assert.Single(PairedTest.Of(weak with { Dialysate = strong.Dialysate }, strong with { Dialysate = weak.Dialysate }).NotAvailable).Reason, StringComparison.Ordinal);
        Assert.Contains("strength of a bag is in doubt", Assert.Single(PairedTest.Of(weak with { IsStrengthInDoubt = true }, strong).NotAvailable).Reason, StringComparison.Ordinal);
        var icodextrin = weak with { Solution = DialysisSolution.Icodextrin };
        Assert.Contains("two glucose solutions", Assert.Single(PairedTest.Of(icodextrin, strong).NotAvailable).Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(14, 2000, null)]
    [InlineData(15, 2000, "pair-dates-apart")]
    [InlineData(0, 2099, null)]
    [InlineData(0, 2106, "pair-fills-differ")]
    public void Days_apart_and_other_fills_are_said_and_still_computed(int days, double fill, string? code)
    {
        var weak = Hour(DialysisSolution.Glucose136, 2050) with { Date = new(2025, 3, 1) };
        var strong = Hour(DialysisSolution.Glucose386, 2450) with { Date = new DateOnly(2025, 3, 1).AddDays(days), InstilledVolume = Volume.FromMilliliters(fill) };
        var pair = PairedTest.Of(weak, strong);

        Assert.NotNull(pair.OsmoticConductance);
        Assert.Equal(code, pair.Findings.SingleOrDefault()?.Code);
    }

    private static EquilibrationTest Hour(DialysisSolution solution, double drained)
    {
        var initial = 0.93 * solution.Glucose.MillimolesPerLiter;
        return Strong(0.70, 480, 7.5) with
        {
            Solution = solution,
            Dwell = TimeSpan.FromHours(1),
            DrainedVolume = Volume.FromMilliliters(drained),
            Dialysate = [new(TimeSpan.Zero) { Glucose = Millimolar(initial) }, new(TimeSpan.FromHours(1)) { Glucose = Millimolar(0.65 * initial) }],
        };
    }
}
