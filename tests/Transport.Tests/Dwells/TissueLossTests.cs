using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Dwells;

/// <summary>The optional loss of fluid into tissue by pressure.</summary>
public sealed class TissueLossTests
{
    // 0.2 mL/min/cmH2O.
    private static readonly HydraulicConductance Some = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.2 / 0.7356);

    private static readonly ThreePoreMembrane Textbook = ReferenceMembranes.Textbook;

    [Fact]
    public void It_is_off_by_default_and_its_threshold_alone_does_nothing()
    {
        // To the bit: the golden dwells hold the default's values.
        Assert.Equal(default, Textbook.TissueConductance);
        var plain = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Medium);
        var other = TextbookDwells.OnUsedResidual(Textbook with { TissueThreshold = Pressure.FromCentimetersOfWater(0.5) }, TextbookDwells.Medium);
        Assert.Equal(plain.Milliliters(480), other.Milliliters(480));
        Assert.Equal(0.3, plain.BulkRemovalAt(TimeSpan.FromHours(1)).MillilitersPerMinute);
    }

    [Fact]
    public void It_takes_back_what_a_larger_fill_gains()
    {
        // 42 people, two hours of 2.3 %: one litre more fill cost 61 mL (131 against 192 mL, Enferm Nefrol 2016;19(4), read), where the model gains 84 to 150 mL: a miss, stated.
        // 0.2 mL/min for each cmH2O and 2.6 cmH2O over 120 min are 62 mL (computed); the slope of 490 mL/mmHg makes 2.77 cmH2O of the litre, 67 mL, less
        // what the emptier cavity draws more. It narrows the gap and does not close it.
        var plain = Gain(Textbook);
        var with = Gain(Textbook with { TissueConductance = Some });
        Assert.InRange(plain, 84, 150);
        Assert.InRange(plain - with, 55, 67);
        Assert.True(with > -61);
    }

    [Fact]
    public void Alone_it_lets_the_volume_fall_exponentially_and_keeps_concentrations()
    {
        // No conductance, no diffusion: dV/dt = −L − k (V − Vt) with k = κ/C and Vt = P0 C; closed solution by hand, 1e-6 mL.
        var membrane = Textbook with
        {
            UltrafiltrationCoefficient = default,
            DiffusionArea = default,
            SodiumPermeability = default,
            TissueConductance = Some,
        };
        var course = TextbookDwells.OnUsedResidual(membrane, TextbookDwells.Medium);
        double k = 0.2 / 0.7356 / 490, threshold = 2 * 0.7356 * 490, floor = threshold - 0.3 / k;
        Assert.Equal(floor + (2300 - floor) * Math.Exp(-k * 480), course.Milliliters(480), 1e-6);
        Assert.Equal(0.3 + k * (2300 - threshold), course.BulkRemovalAt(TimeSpan.Zero).MillilitersPerMinute, 1e-9);
        foreach (var solute in SolutePanel.Small.Solutes)
        {
            Assert.Equal(course.OverPlasma(solute, 0), course.OverPlasma(solute, 480), 1e-6);
        }
    }

    [Fact]
    public void It_belongs_to_the_pressure()
    {
        // Where the pressure does not rise with volume nothing is lost; lying, where it rises less, less is.
        double Volume(Volume? slope) =>
            TextbookDwells.OnUsedResidual(Textbook with { TissueConductance = Some, VolumePerPressure = slope }, TextbookDwells.Medium).Milliliters(240);
        double Without(Volume? slope) =>
            TextbookDwells.OnUsedResidual(Textbook with { VolumePerPressure = slope }, TextbookDwells.Medium).Milliliters(240);
        Assert.Equal(Without(null), Volume(null));
        Assert.True(Without(PressureSlopes.Supine) - Volume(PressureSlopes.Supine) < Without(PressureSlopes.Sitting) - Volume(PressureSlopes.Sitting));
    }

    [Fact]
    public void A_regimen_says_how_much_was_lost()
    {
        // Balance of fluid. What is lost is missing in the drains, but for what its glucose would have drawn and what the emptier cavity draws: 5 %.
        RegimenOutcome Outcome(ThreePoreMembrane membrane) => RegimenSimulation.Run(Patient.Example, membrane, Night(5));
        var (plain, lossy) = (Outcome(Textbook), Outcome(Textbook with { TissueConductance = Some }));
        Assert.Equal(default, plain.TissueLoss);
        Assert.InRange((plain.Ultrafiltration - lossy.Ultrafiltration) / lossy.TissueLoss, 0.95, 1.05);
        Assert.InRange(lossy.TissueLoss.Milliliters, 50, 600);
    }

    private static double Gain(ThreePoreMembrane membrane) =>
        TextbookDwells.OnUsedResidual(membrane, TextbookDwells.Medium, fill: 2500, residual: 200).Ultrafiltration(120)
        - TextbookDwells.OnUsedResidual(membrane, TextbookDwells.Medium, fill: 1500, residual: 200).Ultrafiltration(120);
}
