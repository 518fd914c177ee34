namespace Transport.Tests.Regimens;

/// <summary>Short cycles with small fills before long ones with large fills, against equal cycles of the same fluid: a published gain, missed.</summary>
public sealed class VariedCyclesTests
{
    private static readonly RegimenSettings Settings = RegimenSettings.Default with { Residual = Volume.FromMilliliters(200) };

    private static readonly RegimenOptions Options = new()
    {
        Transient = TransientUse.None,
        SupineVolumePerPressure = null,
        FirstNight = ResidualFluid.Used(Volume.FromMilliliters(200), Patient.Example.Plasma),
    };

    [Theory]
    [InlineData(AreaLaw.Constant, -43)]
    [InlineData(AreaLaw.Exponential, -14)]
    [InlineData(AreaLaw.TwoThirds, null)]
    public void The_gain_is_missed_whatever_the_law_of_contact(AreaLaw law, int? elsewhere)
    {
        // 9 h, 12 L, cross-over, 45 days each (Fischbach et al. 2011, read): 100 mL more ultrafiltrate, sodium 18 to 32 mmol a session. A miss, stated: the model has
        // less pressure at small fills and no other reason to gain. Computed elsewhere: −43 and −14 mL; the lengths of those cycles were not written down, here
        // 45 min: 20 mL. The two-thirds law was computed there without its break, with which 3 L are in no more contact than 2.4 L: no figure to compare.
        var (equal, varied) = (Run(law, Equal), Run(law, Varied));
        var gain = (varied.NightUltrafiltration - equal.NightUltrafiltration).Milliliters;
        Assert.InRange(gain, -65, 0);
        Assert.Equal(elsewhere ?? gain, gain, 20.0);
        Assert.InRange((varied.SodiumRemovedByModel - equal.SodiumRemovedByModel).Millimoles, -10, 10);
    }

    private static RegimenOutcome Run(AreaLaw law, Regimen regimen) =>
        RegimenSimulation.Run(Patient.Example, ReferenceMembranes.Textbook with { AreaLaw = law }, regimen, Options);

    private static Regimen Equal => Regimen.Cycling(TimeSpan.FromHours(9), 6, Volume.FromLiters(2), DialysisSolution.Glucose136, null, Settings);

    private static Regimen Varied
    {
        get
        {
            var brief = new Exchange(DialysisSolution.Glucose136, Volume.FromMilliliters(1500), TimeSpan.FromMinutes(45));
            var large = new Exchange(DialysisSolution.Glucose136, Volume.FromMilliliters(3000));
            return Equal with { Night = [brief, brief, large, large, large] };
        }
    }
}
