using FsCheck;
using FsCheck.Fluent;

namespace Transport.Tests.Properties;

/// <summary>One pore class and what flows through it; |Pe| at most 5.</summary>
public sealed record PoreFlux(double Flow, double Passed, double PS, double Plasma, double Dialysate)
{
    public double Peclet => Flow * Passed / PS;
}

/// <summary>A membrane, a dwell and a plasma that a clinic could meet; so much fluid for so long that no cavity runs empty.</summary>
public sealed record PlausibleDwell(ThreePoreMembrane Membrane, Dwell Dwell, PlasmaComposition Plasma)
{
    public DwellCourse Run(double tolerance = 1e-9) => Run(Membrane, Dwell, tolerance);

    public DwellCourse Run(ThreePoreMembrane membrane, Dwell dwell, double tolerance = 1e-9) => DwellSimulation.Run(
        Patient.Example with { Plasma = Plasma },
        membrane,
        dwell,
        new() { Panel = SolutePanel.Full, Integration = new() { RelativeTolerance = tolerance } });
}

/// <summary>A membrane, a dwell and a plasma that only a careless program could meet, within what the types let through.</summary>
public sealed record HostileDwell(ThreePoreMembrane Membrane, Dwell Dwell, PlasmaComposition Plasma);

/// <summary>What property tests draw from.</summary>
public static class PlausibleArbitraries
{
    public static Arbitrary<PoreFlux> PoreFluxes() => (
        from peclet in Between(-5, 5)
        from passed in Between(0.01, 1)
        from ps in LogBetween(1e-4, 50)
        from plasma in Between(0, 150)
        from dialysate in Between(0, 300)
        select new PoreFlux(peclet * ps / passed, passed, ps, plasma, dialysate)).ToArbitrary();

    public static Arbitrary<PlausibleDwell> PlausibleDwells() => (
        from membrane in Membranes()
        from plasma in Plasmas()
        from residual in Between(0, 500)
        from glucose in Between(70, 250)
        from fill in Between(1500, 3000)
        from minutes in Between(30, 480)
        select new PlausibleDwell(
            membrane,
            new(
                DialysisSolution.OfGlucose(glucose),
                Volume.FromMilliliters(fill),
                TimeSpan.FromMinutes(minutes),
                ResidualFluid.Used(Volume.FromMilliliters(residual), plasma)),
            plasma)).ToArbitrary();

    public static Arbitrary<HostileDwell> HostileDwells() => (
        from small in Between(1, 100)
        from large in LogBetween(10, 1000)
        from ultrasmall in Edge(0, 1)
        from rest in Edge(0, 1)
        from lps in Edge(0, 2)
        from area in Edge(0, 1_000_000)
        from scale in LogBetween(1e-3, 1e3)
        from urea in LogBetween(1e-4, 1e3)
        from sodium in Edge(0, 500)
        from lymph in Edge(0, 10)
        from law in Gen.Elements(Enum.GetValues<AreaLaw>())
        from level in Gen.Elements(Enum.GetValues<PlasmaLevel>())
        from form in Gen.Elements(Enum.GetValues<HindranceForm>())
        from concentrations in Gen.ArrayOf(Edge(0, 500), 5)
        from volumes in Gen.ArrayOf(LogBetween(5, 10_000), 2)
        from minutes in LogBetween(0.01, 2880)
        from tissue in Edge(0, 5)
        select Hostile(
            new()
            {
                Pores = new(small, large, ultrasmall, rest * (1 - ultrasmall)),
                UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(lps),
                DiffusionArea = DiffusionArea.FromCentimeters(area),
                GlucosePermeabilityScale = scale,
                UreaToCreatininePermeability = urea,
                SodiumPermeability = Clearance.FromMillilitersPerMinute(sodium),
                LymphaticRemoval = FlowRate.FromMillilitersPerMinute(lymph),
                TissueConductance = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(tissue),
                AreaLaw = law,
                PlasmaLevel = level,
                HindranceForm = form,
            },
            concentrations,
            volumes,
            minutes)).ToArbitrary();

    internal static Gen<double> Between(double low, double high) =>
        Gen.Choose(0, 1_000_000).Select(i => low + (high - low) * i / 1_000_000);

    internal static Gen<double> LogBetween(double low, double high) =>
        Between(Math.Log(low), Math.Log(high)).Select(Math.Exp);

    // Ends are where programs break.
    private static Gen<double> Edge(double low, double high) => Gen.Frequency(
        (1, Gen.Constant(low)), (1, Gen.Constant(high)), (4, Between(low, high)));

    private static Gen<PlasmaComposition> Plasmas() =>
        from urea in Between(5, 45)
        from creatinine in Between(0.15, 1.5)
        from glucose in Between(3, 25)
        from sodium in Between(125, 150)
        select new PlasmaComposition(
            Concentration.FromMillimolesPerLiter(urea),
            Concentration.FromMillimolesPerLiter(creatinine),
            Concentration.FromMillimolesPerLiter(glucose),
            Concentration.FromMillimolesPerLiter(sodium));

    private static Gen<ThreePoreMembrane> Membranes() =>
        from small in Between(38, 50)
        from large in Between(200, 300)
        from ultrasmall in Between(0, 0.06)
        from largeShare in Between(0.02, 0.12)
        from lps in LogBetween(0.02, 0.12)
        from area in LogBetween(8000, 60_000)
        from scale in Between(0.7, 2.5)
        from urea in Gen.OneOf(Gen.Constant<double?>(null), Between(1.1, 3).Select(ratio => (double?)ratio))
        from sodium in Between(2, 12)
        from lymph in Between(0, 1.5)
        from hydrostatic in Between(7, 11)
        from oncotic in Between(20, 26)
        from slope in Gen.OneOf(Gen.Constant<Volume?>(null), Between(300, 900).Select(ml => (Volume?)Volume.FromMilliliters(ml)))
        from amplitude in Between(0, 1.2)
        from time in Between(10, 120)
        from law in Gen.Elements(Enum.GetValues<AreaLaw>())
        from level in Gen.Elements(Enum.GetValues<PlasmaLevel>())
        select new ThreePoreMembrane
        {
            Pores = new(small, large, ultrasmall, largeShare),
            UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(lps),
            DiffusionArea = DiffusionArea.FromCentimeters(area),
            GlucosePermeabilityScale = scale,
            UreaToCreatininePermeability = urea,
            SodiumPermeability = Clearance.FromMillilitersPerMinute(sodium),
            LymphaticRemoval = FlowRate.FromMillilitersPerMinute(lymph),
            HydrostaticPressureDifference = Pressure.FromMillimetersOfMercury(hydrostatic),
            OncoticPressureDifference = Pressure.FromMillimetersOfMercury(oncotic),
            VolumePerPressure = slope,
            TransientAmplitude = amplitude,
            TransientTime = TimeSpan.FromMinutes(time),
            AreaLaw = law,
            PlasmaLevel = level,
        };

    private static HostileDwell Hostile(ThreePoreMembrane membrane, double[] concentrations, double[] volumes, double minutes)
    {
        var plasma = new PlasmaComposition(
            Concentration.FromMillimolesPerLiter(concentrations[0]),
            Concentration.FromMillimolesPerLiter(concentrations[1] + 1e-6),
            Concentration.FromMillimolesPerLiter(concentrations[2]),
            Concentration.FromMillimolesPerLiter(concentrations[3] + 1e-6));
        var residual = ResidualFluid.Used(Volume.FromMilliliters(volumes[1] < 100 ? 0 : volumes[1]), plasma);
        var solution = DialysisSolution.OfGlucose(concentrations[4]);
        return new(membrane, new(solution, Volume.FromMilliliters(volumes[0]), TimeSpan.FromMinutes(minutes), residual), plasma);
    }
}
