namespace Transport.Tests.Membrane;

/// <summary>Aggregate coefficients of the textbook membrane against print and against figures computed elsewhere.</summary>
public sealed class ThreePoreMembraneTests
{
    [Fact]
    public void Osmotic_conductance_to_glucose_is_the_published_3_6()
    {
        // Published three-pore value 3.6 µL/min/mmHg (memory, high confidence): half a digit. 3.62 (computed): half a digit.
        var found = ReferenceMembranes.Textbook.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury;
        Assert.Equal(3.6, found, 0.05);
        Assert.Equal(3.62, found, 0.005);
    }

    [Fact]
    public void The_modern_form_raises_the_osmotic_conductance_by_a_quarter()
    {
        // Computed elsewhere: 4.61 instead of 3.62 µL/min/mmHg, σ of glucose in the small pores 0.0469. Half a printed digit.
        var membrane = ReferenceMembranes.Textbook with { HindranceForm = HindranceForm.DechadilokDeen };
        Assert.Equal(4.61, membrane.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury, 0.005);
        Assert.Equal(0.0469, Hindrance.ReflectionCoefficient(3.7 / 43, HindranceForm.DechadilokDeen), 5e-5);
    }

    [Fact]
    public void A_simulation_uses_the_form_that_the_membrane_says()
    {
        // Where glucose alone draws water, the first flow through all pores is in proportion to the osmotic conductance: 4.61 to 3.62, both
        // computed elsewhere. Tolerance: half a digit of both; nothing has moved after 0.01 min.
        var moment = TimeSpan.FromMinutes(0.01);
        double First(HindranceForm form) => DwellSimulation.Run(
            Patient.Example with { Plasma = PlasmaComposition.Typical with { Urea = default, Sodium = Concentration.FromMillimolesPerLiter(132) } },
            ReferenceMembranes.Textbook with
            {
                HindranceForm = form,
                HydrostaticPressureDifference = default,
                OncoticPressureDifference = default,
                VolumePerPressure = null,
            },
            new(DialysisSolution.Glucose386, Volume.FromMilliliters(2000), moment, ResidualFluid.Used(default, PlasmaComposition.Typical)))
            .PoreVolumesAt(moment).Total.Milliliters;
        Assert.Equal(4.61 / 3.62, First(HindranceForm.DechadilokDeen) / First(HindranceForm.ThreePore), 0.003);
    }

    [Fact]
    public void The_named_pressure_slopes_are_those_that_were_measured()
    {
        // Twardowski et al., Kidney Int 1983;23:64-70 (read): 2.0, 2.7 and 2.8 cmH2O per litre; half a mL of rounding.
        const double perLiter = 1000 / 0.7356;
        Assert.Equal(perLiter / 2.0, PressureSlopes.Supine.Milliliters, 0.51);
        Assert.Equal(perLiter / 2.7, PressureSlopes.Upright.Milliliters, 0.51);
        Assert.Equal(perLiter / 2.8, PressureSlopes.Sitting.Milliliters, 0.51);
    }

    [Theory]
    [InlineData("urea", 0.01620, 0.000500, 0.0346)]
    [InlineData("creatinine", 0.02139, 0.000665, 0.0393)]
    [InlineData("glucose", 0.03204, 0.001010, 0.0489)]
    [InlineData("sodium", 0.01276, 0.000392, 0.0315)]
    [InlineData("anion", 0.01276, 0.000392, 0.0315)]
    [InlineData("beta2-microglobulin", 0.43512, 0.01853, 0.4131)]
    [InlineData("albumin", 0.96317, 0.08256, 0.8935)]
    [InlineData("immunoglobulin G", 1.0, 0.17610, 0.9341)]
    public void Reflection_of_each_solute_agrees_with_a_table_computed_elsewhere(string name, double small, double large, double whole)
    {
        // Computed elsewhere from the same radii; tolerance half a printed digit (σ large of small solutes has six decimals). The table
        // printed 0.17611 for IgG's large pores, a last digit too high: two programs give 0.176105.
        var solute = Known.Solute(name);
        Assert.Equal(small, Hindrance.ReflectionCoefficient(solute.RadiusAngstrom / 43), 5e-6);
        Assert.Equal(large, Hindrance.ReflectionCoefficient(solute.RadiusAngstrom / 250), large < 0.002 ? 5e-7 : 5e-6);
        Assert.Equal(whole, ReferenceMembranes.Textbook.ReflectionCoefficient(solute), 5e-5);
    }

    [Fact]
    public void Glucose_is_reflected_half_as_much_again_as_sodium_where_one_membrane_measured_ten_percent_more()
    {
        // A miss, stated. Imholz et al., Kidney Int 1994 (read): effective single-membrane σ of glucose over sodium 0.032/0.029 = 1.10.
        // The textbook pores give 1.55 (computed, half a digit). The published ones mix convection and diffusion.
        var membrane = ReferenceMembranes.Textbook;
        var ratio = membrane.ReflectionCoefficient(Solutes.Glucose) / membrane.ReflectionCoefficient(Solutes.Sodium);
        Assert.Equal(1.55, ratio, 0.005);
        Assert.False(ratio is > 1.05 and < 1.15);
    }

    [Fact]
    public void The_pressure_slope_lies_between_upright_and_sitting()
    {
        // Twardowski et al., Kidney Int 1983;23:64-70 (read): 2.0 supine, 2.7 upright, 2.8 sitting cmH2O per L; 1 cmH2O = 0.7356 mmHg.
        var slope = ReferenceMembranes.Textbook.VolumePerPressure!.Value.Milliliters;
        Assert.InRange(slope, 1000 / (0.7356 * 2.8), 1000 / (0.7356 * 2.7));
        Assert.True(slope < 1000 / (0.7356 * 2.0));
    }

    [Theory]
    [InlineData("urea", 1.248)]
    [InlineData("creatinine", 1.082)]
    [InlineData("glucose", 0.877)]
    [InlineData("sodium", 1.411)]
    [InlineData("beta2-microglobulin", 0.200)]
    [InlineData("albumin", 0.0914)]
    [InlineData("immunoglobulin G", 0.0601)]
    public void Free_diffusion_agrees_with_a_table_computed_elsewhere(string name, double printed)
    {
        // Computed; unit 1e-5 cm²/s; half a printed digit.
        var halfDigit = printed < 0.1 ? 5e-5 : 5e-4;
        Assert.Equal(printed, 1e5 * PhysicalConstants.FreeDiffusion(Known.Solute(name).RadiusAngstrom), halfDigit);
    }

    [Fact]
    public void A_membrane_at_another_size_scales_what_is_extensive_and_nothing_else()
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult();
        var half = membrane.ScaledTo(Area.FromSquareMeters(1.73 / 2));
        Assert.Equal(0.5, half.UltrafiltrationCoefficient / membrane.UltrafiltrationCoefficient, 1e-15);
        Assert.Equal(0.5, half.DiffusionArea / membrane.DiffusionArea, 1e-15);
        Assert.Equal(0.5, half.SodiumPermeability / membrane.SodiumPermeability, 1e-15);
        Assert.Equal(0.5, half.LymphaticRemoval / membrane.LymphaticRemoval, 1e-15);
        Assert.Equal(0.5, half.ReferenceVolume / membrane.ReferenceVolume, 1e-15);
        Assert.Equal(0.5, half.VolumePerPressure!.Value / membrane.VolumePerPressure!.Value, 1e-15);
        Assert.Equal(membrane.GlucosePermeabilityScale, half.GlucosePermeabilityScale);
        Assert.Equal(membrane.UreaToCreatininePermeability, half.UreaToCreatininePermeability);
        Assert.Equal(membrane.HydrostaticPressureDifference, half.HydrostaticPressureDifference);
        Assert.Equal(membrane.OncoticPressureDifference, half.OncoticPressureDifference);
        Assert.Equal(membrane.TransientAmplitude, half.TransientAmplitude);
        Assert.Equal(membrane.TransientTime, half.TransientTime);
        Assert.Equal(membrane.Pores, half.Pores);
    }
}
