namespace Transport.Tests.Dwells;

/// <summary>Flows, sieving, and by which ways a solute has come: limits by hand, and identities that need no quadrature.</summary>
public sealed class FlowTests
{
    private static readonly ThreePoreMembrane Textbook = ReferenceMembranes.Textbook;

    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);

    [Fact]
    public void The_first_flows_are_those_computed_elsewhere()
    {
        // The textbook's strong dwell on a used residual, at the start; seven digits computed elsewhere, half of the last.
        var flows = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Strong).PoreFlowsAt(TimeSpan.Zero);
        Assert.Equal(4.261795, flows.Ultrasmall.MillilitersPerMinute, 5e-7);
        Assert.Equal(6.105464, flows.Small.MillilitersPerMinute, 5e-7);
        Assert.Equal(0.061945, flows.Large.MillilitersPerMinute, 5e-7);
        Assert.Equal(10.129204 + 0.3, flows.Total.MillilitersPerMinute, 1e-6);
    }

    [Fact]
    public void A_flow_is_the_slope_of_its_volume()
    {
        // Central difference over 2 min of a smooth curve: 1e-4 mL/min.
        var course = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Medium);
        var (low, high) = (course.PoreVolumesAt(TimeSpan.FromMinutes(119)), course.PoreVolumesAt(TimeSpan.FromMinutes(121)));
        var flows = course.PoreFlowsAt(TimeSpan.FromMinutes(120));
        Assert.Equal((high.Ultrasmall - low.Ultrasmall).Milliliters / 2, flows.Ultrasmall.MillilitersPerMinute, 1e-4);
        Assert.Equal((high.Small - low.Small).Milliliters / 2, flows.Small.MillilitersPerMinute, 1e-4);
        Assert.Equal((high.Large - low.Large).Milliliters / 2, flows.Large.MillilitersPerMinute, 1e-4);
        var net = (course.Milliliters(121) - course.Milliliters(119)) / 2;
        Assert.Equal(net, (flows.Total - course.BulkRemovalAt(TimeSpan.FromMinutes(120))).MillilitersPerMinute, 1e-4);
        Assert.Equal(high.Total.Milliliters, course.TranscapillaryUltrafiltrationAt(TimeSpan.FromMinutes(121)).Milliliters, 1e-9);
    }

    [Fact]
    public void Conductance_to_glucose_is_3_6_and_follows_the_contact()
    {
        // 3.6 µL/min/mmHg in the three-pore papers (memory), 3.62 computed elsewhere. With the exponential law of contact (0.00077 per mL) it is less
        // in a cavity of 1500 mL, by (1 − e^(−0.00077 × 1500)) / (1 − e^(−0.00077 × 2300)) = 0.8254.
        var plain = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Medium);
        Assert.Equal(3.62, plain.OsmoticConductanceToGlucoseAt(Hour).MicrolitersPerMinutePerMillimeterOfMercury, 0.005);
        var law = TextbookDwells.OnUsedResidual(Textbook with { AreaLaw = AreaLaw.Exponential }, TextbookDwells.Medium, fill: 1200);
        Assert.Equal(0.8254, law.OsmoticConductanceToGlucoseAt(TimeSpan.Zero) / plain.OsmoticConductanceToGlucoseAt(TimeSpan.Zero), 5e-5);
    }

    [Theory]
    [InlineData(TextbookDwells.Weak)]
    [InlineData(TextbookDwells.Strong)]
    public void The_ways_add_up_to_what_was_removed_with_either_membrane(double glucose)
    {
        // Quadrature on the dense output against the computed amounts, at times within steps and over the turn of the small-pore flow: 1e-8 of what was in
        // the cavity, the integration's tolerance.
        foreach (var course in new[] { TextbookDwells.OnUsedResidual(Textbook, glucose), Lumped(glucose) })
        {
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                foreach (var minutes in new[] { 0, 1, 17.3, 60, 240, 480 })
                {
                    var time = TimeSpan.FromMinutes(minutes);
                    var size = course.DialysateAt(solute, time).MillimolesPerLiter * course.VolumeAt(time).Milliliters;
                    Assert.Equal(course.RemovedAt(solute, time).Micromoles, course.RemovalPartsAt(solute, time).Net.Micromoles, 1e-8 * size);
                }
            }
        }
    }

    [Fact]
    public void Convection_of_sodium_is_plasma_on_the_fluid_of_the_pores()
    {
        // While all fluid comes in, convection is plasma sodium times (1 − σ) of each pore's volume, which are states of their own: no quadrature. σ from a
        // table (0.01276 and 0.000392, five decimals): 1e-5. Diffusion is the smaller part: the reason why free water by sodium is low.
        var course = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Strong);
        var parts = course.RemovalPartsAt(Solutes.Sodium, Hour);
        var pores = course.PoreVolumesAt(Hour);
        var carried = 140 * ((1 - 0.01276) * pores.Small.Milliliters + (1 - 0.000392) * pores.Large.Milliliters);
        Assert.Equal(carried, parts.Convection.Micromoles, 1e-5 * carried);
        Assert.InRange(parts.Diffusion / parts.Convection, 0.01, 0.3);
    }

    [Fact]
    public void Without_permeability_nothing_diffuses_in_either_direction()
    {
        // Only convection: in with strong glucose; out, at dialysate's concentration, where oncotic pressure alone acts. Rounding.
        var closed = Textbook with { DiffusionArea = default, SodiumPermeability = default, UreaToCreatininePermeability = null };
        foreach (var course in new[]
        {
            TextbookDwells.OnUsedResidual(closed, TextbookDwells.Strong),
            TextbookDwells.OnUsedResidual(closed with { OncoticPressureDifference = Pressure.FromMillimetersOfMercury(2000) }, 1, minutes: 5),
        })
        {
            var end = course.Dwell.Duration;
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                var parts = course.RemovalPartsAt(solute, end);
                Assert.Equal(0, parts.Diffusion.Micromoles, 1e-9 * (1 + Math.Abs(parts.Convection.Micromoles)));
                Assert.NotEqual(0, parts.Convection.Micromoles, 1.0);
            }
        }
    }

    [Fact]
    public void Without_flow_all_is_diffusion()
    {
        // No conductance, no lymph, no transient: sodium by 6 mL/min through 2300 mL, V (P − D0)(1 − e^(−PS t/V)). 1e-7 of it.
        var still = (Textbook with { UltrafiltrationCoefficient = default, TransientAmplitude = 0 }).Lymph(0);
        var course = TextbookDwells.OnUsedResidual(still, TextbookDwells.Medium);
        var parts = course.RemovalPartsAt(Solutes.Sodium, Hour);
        var gradient = 140 - course.Dialysate(Solutes.Sodium, 0);
        var expected = 2300 * gradient * (1 - Math.Exp(-6 * 60 / 2300.0));
        Assert.Equal(expected, parts.Diffusion.Micromoles, 1e-7 * expected);
        Assert.Equal(0, parts.Convection.Micromoles);
        Assert.Equal(0, parts.TakenBack.Micromoles);
        Assert.Throws<InvalidOperationException>(() => course.SievingCoefficientAt(Solutes.Sodium, Hour));
    }

    [Fact]
    public void One_barrier_sieves_as_it_says_and_has_no_pores()
    {
        var course = Lumped(TextbookDwells.Strong);
        Assert.Equal(0.55, course.SievingCoefficientAt(Solutes.Sodium, Hour), 1e-12);
        Assert.Equal(3.0, course.OsmoticConductanceToGlucoseAt(Hour).MicrolitersPerMinutePerMillimeterOfMercury, 1e-9);
        Assert.Equal(1.5, course.BulkRemovalAt(Hour).MillilitersPerMinute);
        Assert.Throws<InvalidOperationException>(() => course.PoreVolumesAt(Hour));
        Assert.Throws<InvalidOperationException>(() => course.PoreFlowsAt(Hour));
    }

    private static DwellCourse Lumped(double glucose) => DwellSimulation.Run(
        Patient.Example with { Plasma = PlasmaComposition.Typical },
        LumpedMembrane.Typical,
        new(
            DialysisSolution.OfGlucose(glucose), Volume.FromLiters(2), TimeSpan.FromHours(8),
            ResidualFluid.Used(Volume.FromMilliliters(300), PlasmaComposition.Typical)));
}
