using FsCheck.Xunit;

namespace Transport.Tests.Properties;

/// <summary>What is true of every dwell, whatever the membrane: conservation, scaling, symmetry, order.</summary>
public sealed class DwellPropertyTests
{
    private const double Milliliter = 1e-6;

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Volume_is_what_came_through_the_pores_minus_lymph(PlausibleDwell at)
    {
        // Conservation. A Runge-Kutta solution keeps sums that the equations keep, to rounding: 1e-6 mL of some thousand.
        var course = at.Run();
        foreach (var time in Times(at.Dwell.Duration))
        {
            var lymph = at.Membrane.LymphaticRemoval.MillilitersPerMinute * time.TotalMinutes;
            Assert.Equal(
                course.PoreVolumesAt(time).Total.Milliliters - lymph, course.NetUltrafiltrationAt(time).Milliliters, Milliliter);
        }
    }

    [Property(MaxTest = 50, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Each_solute_is_the_integral_of_its_flux(PlausibleDwell at)
    {
        // Conservation, and the dense output in one: the rates at the computed states, summed by Gauss and Legendre's five points over pieces of at
        // most 2 min, give the amounts computed. 1e-6 of the amount in the cavity: a hundred of the integration's tolerance of 1e-9 and the kink of
        // the two-thirds law. Small solutes: proteins turn with the flow of their pore, too sharply for such a sum.
        var course = at.Run();
        var panel = SolutePanel.Small;
        var system = new ThreePoreSystem<Real>(
            at.Membrane, FreeParameters<Real>.From(at.Membrane), panel, CavityContents.Of(at.Plasma, panel));
        var end = at.Dwell.Duration.TotalMinutes;
        var pieces = (int)Math.Ceiling(end / 2);
        var sums = new double[panel.Count];
        for (var piece = 0; piece < pieces; piece++)
        {
            for (var node = 0; node < GaussNodes.Length; node++)
            {
                var minutes = (piece + 0.5 + 0.5 * GaussNodes[node]) * end / pieces;
                var rates = Rates(system, course, TimeSpan.FromMinutes(minutes));
                for (var i = 0; i < sums.Length; i++)
                {
                    sums[i] += GaussWeights[node] * rates[1 + i].Value * 0.5 * end / pieces;
                }
            }
        }

        for (var i = 0; i < panel.Count; i++)
        {
            var before = Amount(course, panel.Solutes[i], TimeSpan.Zero);
            var after = Amount(course, panel.Solutes[i], at.Dwell.Duration);
            Assert.Equal(after - before, sums[i], 1e-6 * Math.Max(before, after) + 1e-9);
        }
    }

    [Property(MaxTest = 50, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void The_reported_flows_fill_the_cavity(PlausibleDwell at)
    {
        // Balance from results alone: the flows that a course reports, less what it says it loses as it is, summed by Gauss and Legendre's five points over
        // pieces of at most 2 min, against the volumes. 1e-6 of the fluid.
        var course = at.Run();
        var end = at.Dwell.Duration.TotalMinutes;
        var pieces = (int)Math.Ceiling(end / 2);
        var sum = 0.0;
        for (var piece = 0; piece < pieces; piece++)
        {
            for (var node = 0; node < GaussNodes.Length; node++)
            {
                var time = TimeSpan.FromMinutes((piece + 0.5 + 0.5 * GaussNodes[node]) * end / pieces);
                sum += GaussWeights[node] * (course.PoreFlowsAt(time).Total - course.BulkRemovalAt(time)).MillilitersPerMinute * 0.5 * end / pieces;
            }
        }

        Assert.Equal(course.NetUltrafiltrationAt(at.Dwell.Duration).Milliliters, sum, 1e-6 * course.VolumeAt(TimeSpan.Zero).Milliliters);
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Convection_alone_carries_what_passes_the_pores(PlausibleDwell at)
    {
        // Without diffusion and lymph, while fluid comes in, each pore brings plasma times (1 − σ) per volume: a sum over the reported pore volumes.
        // σ of sodium from a table (0.01276 at 43 Å, 0.000392 at 250 Å; five and six decimals) gives the tolerance: 1e-5 of what came.
        var membrane = at.Membrane with
        {
            Pores = new(43, 250, at.Membrane.Pores.UltrasmallFraction, at.Membrane.Pores.LargeFraction),
            DiffusionArea = default,
            SodiumPermeability = default,
            LymphaticRemoval = default,
            HydrostaticPressureDifference = Pressure.FromMillimetersOfMercury(30),
            VolumePerPressure = null,
            UreaToCreatininePermeability = null,

            // Sodium is what plasma says it is: not so with Donnan's correction.
            PlasmaLevel = PlasmaLevel.AsMeasured,
        };
        var dwell = at.Dwell with { Duration = TimeSpan.FromMinutes(Math.Min(60, at.Dwell.Duration.TotalMinutes)) };
        var course = at.Run(membrane, dwell);
        var pores = course.PoreVolumesAt(dwell.Duration);
        var carried = at.Plasma.Sodium.MillimolesPerLiter
            * ((1 - 0.01276) * pores.Small.Milliliters + (1 - 0.000392) * pores.Large.Milliliters);
        Assert.Equal(carried, course.RemovedAt(Solutes.Sodium, dwell.Duration).Micromoles, 1e-5 * carried);
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Ultrasmall_pores_alone_only_dilute(PlausibleDwell at)
    {
        // All conductance in ultrasmall pores, no lymph: every amount stays, exactly but for rounding (1e-12 of the amount).
        var membrane = at.Membrane with { Pores = new(43, 250, 1, 0), LymphaticRemoval = default, DiffusionArea = default, SodiumPermeability = default };
        if (at.Membrane.UreaToCreatininePermeability is not null)
        {
            membrane = membrane with { UreaToCreatininePermeability = null };
        }

        var dwell = at.Dwell with { Duration = TimeSpan.FromMinutes(Math.Min(120, at.Dwell.Duration.TotalMinutes)) };
        var course = at.Run(membrane, dwell);
        foreach (var solute in SolutePanel.Small.Solutes)
        {
            var before = Amount(course, solute, TimeSpan.Zero);
            Assert.Equal(0, course.RemovedAt(solute, dwell.Duration).Micromoles, 1e-12 * before);
        }
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_person_of_another_size_has_the_same_concentrations(PlausibleDwell at)
    {
        // Everything extensive times 0.7, fluid too: the same equations in other units, so the same steps, but for
        // roundings where a step over the kink of the two-thirds law is just accepted: a hundred of the tolerance of 1e-11, relative or of 1 % of plasma.
        const double factor = 0.7;
        var other = at.Membrane.ScaledTo(Area.FromSquareMeters(factor * 1.73));
        var dwell = at.Dwell with
        {
            Fill = at.Dwell.Fill * factor,
            Residual = at.Dwell.Residual with { Volume = at.Dwell.Residual.Volume * factor },
        };
        var (one, two) = (at.Run(1e-11), at.Run(other, dwell, 1e-11));
        foreach (var time in Times(at.Dwell.Duration))
        {
            Assert.Equal(factor, two.VolumeAt(time) / one.VolumeAt(time), 1e-9);
            foreach (var solute in SolutePanel.Full.Solutes)
            {
                var ratio = one.DialysateToPlasmaAt(solute, time);
                Assert.Equal(ratio, two.DialysateToPlasmaAt(solute, time), 1e-9 * (ratio + 0.01));
            }
        }
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Twice_the_membrane_is_twice_as_fast(PlausibleDwell at)
    {
        // A0/Δx, LpS, sodium's permeability and lymph doubled, no transient: the state at t is that at 2t. Steps differ, so: fifty tolerances of 1e-11
        // with the kink of the two-thirds law, 1e-8.
        var membrane = at.Membrane with { TransientAmplitude = 0 };
        var doubled = membrane with
        {
            UltrafiltrationCoefficient = membrane.UltrafiltrationCoefficient * 2,
            DiffusionArea = membrane.DiffusionArea * 2,
            SodiumPermeability = membrane.SodiumPermeability * 2,
            LymphaticRemoval = membrane.LymphaticRemoval * 2,
        };
        var slow = at.Run(membrane, at.Dwell, 1e-11);
        var fast = at.Run(doubled, at.Dwell with { Duration = at.Dwell.Duration / 2 }, 1e-11);
        foreach (var time in Times(at.Dwell.Duration / 2 - TimeSpan.FromTicks(1)))
        {
            Assert.Equal(1, fast.VolumeAt(time) / slow.VolumeAt(2 * time), 1e-8);
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                var ratio = slow.DialysateToPlasmaAt(solute, 2 * time);
                Assert.Equal(ratio, fast.DialysateToPlasmaAt(solute, time), 1e-8 * ratio);
            }
        }
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Without_gradients_fluid_stays_and_only_creatinine_moves(PlausibleDwell at)
    {
        // Glucose and sodium at plasma's concentrations, no urea anywhere, no pressures, no lymph. Creatinine, which no fresh fluid holds, diffuses but does not
        // draw water. 1e-9 mL of some thousand is rounding.
        var plasma = at.Plasma with { Urea = default, Sodium = Concentration.FromMillimolesPerLiter(132) };
        var membrane = at.Membrane with
        {
            HydrostaticPressureDifference = default,
            OncoticPressureDifference = default,
            VolumePerPressure = null,
            LymphaticRemoval = default,
            PlasmaLevel = PlasmaLevel.AsMeasured,
        };
        var residual = at.Dwell.Residual with { Urea = default, Creatinine = default, Glucose = plasma.Glucose, Sodium = plasma.Sodium };
        var dwell = at.Dwell with { Solution = DialysisSolution.OfGlucose(plasma.Glucose.MillimolesPerLiter), Residual = residual };
        var course = (at with { Plasma = plasma }).Run(membrane, dwell);
        Assert.Equal(0, course.NetUltrafiltrationAt(dwell.Duration).Milliliters, 1e-9);
        Assert.Equal(0, course.RemovedAt(Solutes.Sodium, dwell.Duration).Micromoles, 1e-6);
        Assert.Equal(0, course.RemovedAt(Solutes.Glucose, dwell.Duration).Micromoles, 1e-6);
        Assert.Equal(0, course.RemovedAt(Solutes.Urea, dwell.Duration).Micromoles);
        Assert.True(course.RemovedAt(Solutes.Creatinine, dwell.Duration).Micromoles > 0);
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Sodium_dips_with_ultrasmall_pores_and_not_without(PlausibleDwell at)
    {
        // Plasma 140, strong glucose, fresh fluid 132 mmol/L. Without ultrasmall pores the ultrafiltrate has 0.98 of plasma sodium or more, above the cavity's.
        var plasma = at.Plasma with { Sodium = Concentration.FromMillimolesPerLiter(140), Glucose = Concentration.FromMillimolesPerLiter(6) };
        var dwell = at.Dwell with
        {
            Solution = DialysisSolution.Glucose386,
            Fill = Volume.FromMilliliters(2000),
            Duration = TimeSpan.FromMinutes(60),
            Residual = ResidualFluid.Used(Volume.FromMilliliters(200), plasma),
        };
        var pores = at.Membrane.Pores;
        var patient = at with { Plasma = plasma };
        var without = patient.Run(
            at.Membrane with { Pores = new(pores.SmallRadiusAngstrom, pores.LargeRadiusAngstrom, 0, pores.LargeFraction) }, dwell);
        Assert.Equal(0, without.SodiumMinimum().Time.TotalMinutes, 0.01);
        var with = patient.Run(
            at.Membrane with
            {
                Pores = new(pores.SmallRadiusAngstrom, pores.LargeRadiusAngstrom, 0.01 + pores.UltrasmallFraction, pores.LargeFraction),
                SodiumPermeability = Clearance.FromMillilitersPerMinute(2),
                UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.074),
            },
            dwell);
        Assert.True(with.SodiumMinimum().Time.TotalMinutes > 1);
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Urea_leads_creatinine_and_glucose_falls(PlausibleDwell at)
    {
        // Urea is the smaller and faster. Near equilibrium, and while fluid is reabsorbed, creatinine, reflected more by 0.005, is concentrated more: at most by
        // about that. Glucose above plasma's falls all the way.
        var dwell = at.Dwell with { Solution = DialysisSolution.OfGlucose(Math.Max(75, at.Dwell.Solution.Glucose.MillimolesPerLiter)) };
        var course = at.Run(at.Membrane, dwell);
        var glucose = double.PositiveInfinity;
        foreach (var time in Times(dwell.Duration))
        {
            Assert.True(
                course.DialysateToPlasmaAt(Solutes.Urea, time) >= course.DialysateToPlasmaAt(Solutes.Creatinine, time) - (time == TimeSpan.Zero ? 1e-12 : 0.005));
            var now = course.DialysateAt(Solutes.Glucose, time).MillimolesPerLiter;
            Assert.True(now <= glucose);
            glucose = now;
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void The_volume_stays_positive_and_the_result_does_not_depend_on_the_tolerance(PlausibleDwell at)
    {
        // 1e-6 against 1e-12: a hundred tolerances, as the dense output may have (see the known problems), in the norm in which steps are controlled (relative, plus 1 % of the reference volume);
        // a concentration is a quotient of two such numbers, hence two hundred.
        var rough = at.Run(1e-6);
        var fine = at.Run(1e-12);
        foreach (var time in Times(at.Dwell.Duration))
        {
            Assert.True(fine.VolumeAt(time).Milliliters > 0);
            Assert.Equal(fine.VolumeAt(time).Milliliters, rough.VolumeAt(time).Milliliters, 100e-6 * (fine.VolumeAt(time).Milliliters + 23));
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                var expected = fine.DialysateAt(solute, time).MillimolesPerLiter;
                Assert.Equal(expected, rough.DialysateAt(solute, time).MillimolesPerLiter, 200e-6 * (expected + 0.01));
            }
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_dwell_may_be_asked_for_longer_without_changing_its_start(PlausibleDwell at)
    {
        // The same equations; other steps only at the end: a hundred tolerances of 1e-9 (dense output).
        var longer = at.Run(at.Membrane, at.Dwell with { Duration = at.Dwell.Duration + TimeSpan.FromMinutes(17) });
        var course = at.Run();
        foreach (var time in Times(at.Dwell.Duration))
        {
            Assert.Equal(course.VolumeAt(time).Milliliters, longer.VolumeAt(time).Milliliters, 100e-9 * (course.VolumeAt(time).Milliliters + 23));
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void More_glucose_draws_more_and_more_conductance_draws_more_at_first(PlausibleDwell at)
    {
        var time = TimeSpan.FromMinutes(15);
        at = at with { Dwell = at.Dwell with { Duration = TimeSpan.FromHours(1) } };
        var stronger = at.Dwell with { Solution = DialysisSolution.OfGlucose(at.Dwell.Solution.Glucose.MillimolesPerLiter + 20) };
        var wider = at.Membrane with { UltrafiltrationCoefficient = at.Membrane.UltrafiltrationCoefficient * 1.5 };
        var transcapillary = at.Run().PoreVolumesAt(time).Total.Milliliters;
        Assert.True(at.Run(at.Membrane, stronger).PoreVolumesAt(time).Total.Milliliters > transcapillary);

        // Where glucose wins over urea and oncotic pressure at all.
        if (transcapillary > 0)
        {
            Assert.True(at.Run(wider, at.Dwell).PoreVolumesAt(time).Total.Milliliters > transcapillary);
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_larger_area_never_peaks_later_or_higher(PlausibleDwell at)
    {
        // Direction in print (Rippe et al. 1991, read) for a dwell of six hours with strong glucose; plasma as in the textbook, no area law, so that it
        // is the area alone that changes.
        var patient = at with { Plasma = PlasmaComposition.Typical };
        var membrane = at.Membrane with { AreaLaw = AreaLaw.Constant };
        var dwell = at.Dwell with
        {
            Solution = DialysisSolution.Glucose386,
            Duration = TimeSpan.FromHours(6),
            Residual = ResidualFluid.Used(at.Dwell.Residual.Volume, PlasmaComposition.Typical),
        };
        var one = patient.Run(membrane, dwell).PeakUltrafiltration();
        var two = patient.Run(membrane with { DiffusionArea = membrane.DiffusionArea * 2 }, dwell).PeakUltrafiltration();
        Assert.True(two.Time <= one.Time + TimeSpan.FromSeconds(1));
        Assert.True(two.NetUltrafiltration.Milliliters <= one.NetUltrafiltration.Milliliters + Milliliter);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_hostile_dwell_is_either_computed_in_full_or_refused(HostileDwell at)
    {
        // Nothing partial, no NaN, no negative volume: finite numbers that conserve volume, or an IntegrationException.
        DwellCourse course;
        try
        {
            course = DwellSimulation.Run(
                Patient.Example with { Plasma = at.Plasma }, at.Membrane, at.Dwell, new() { Integration = new() { MaximumSteps = 1000 } });
        }
        catch (IntegrationException failure)
        {
            Assert.InRange(failure.Time, TimeSpan.Zero, at.Dwell.Duration);
            return;
        }

        // Lymph alone where nothing is lost into tissue; more where something is.
        var lymph = at.Membrane.LymphaticRemoval.MillilitersPerMinute;
        var lossy = at.Membrane.TissueConductance != default;
        foreach (var time in Times(at.Dwell.Duration))
        {
            var volume = course.VolumeAt(time).Milliliters;
            Assert.True(volume > 0);
            var pores = course.PoreVolumesAt(time);
            var size = volume + Math.Abs(pores.Ultrasmall.Milliliters) + Math.Abs(pores.Small.Milliliters) + Math.Abs(pores.Large.Milliliters);
            var lost = pores.Total.Milliliters - lymph * time.TotalMinutes - course.NetUltrafiltrationAt(time).Milliliters;
            Assert.InRange(lost, -1e-9 * size - Milliliter, lossy ? double.MaxValue : 1e-9 * size + Milliliter);
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                Assert.True(double.IsFinite(course.DialysateAt(solute, time).MillimolesPerLiter));
            }
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void The_ways_of_a_hostile_dwell_add_up(HostileDwell at)
    {
        // Convection, diffusion and what was taken back, from the reported flows by quadrature, against the amounts: 1e-6 of what went either way.
        if (TryRun(at.Membrane, at.Dwell, at.Plasma) is not { } course)
        {
            return;
        }

        foreach (var solute in SolutePanel.Small.Solutes)
        {
            var parts = course.RemovalPartsAt(solute, at.Dwell.Duration);
            var size = Held(course, solute) + Math.Abs(parts.Convection.Micromoles) + Math.Abs(parts.Diffusion.Micromoles) + parts.TakenBack.Micromoles;
            Assert.Equal(course.RemovedAt(solute, at.Dwell.Duration).Micromoles, parts.Net.Micromoles, 1e-6 * size + 1e-9);
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_hostile_dwell_of_another_size_has_the_same_concentrations(HostileDwell at)
    {
        // Everything extensive times 0.7. What is refused is refused at either size. 1e-6: roundings decide over steps where the equations are stiff.
        const double factor = 0.7;
        var dwell = at.Dwell with
        {
            Fill = at.Dwell.Fill * factor,
            Residual = at.Dwell.Residual with { Volume = at.Dwell.Residual.Volume * factor },
        };
        var one = TryRun(at.Membrane, at.Dwell, at.Plasma);
        var two = TryRun(at.Membrane.ScaledTo(Area.FromSquareMeters(factor * 1.73)), dwell, at.Plasma);
        Assert.Equal(one is null, two is null);
        if (one is not null && two is not null)
        {
            Assert.Equal(factor, two.VolumeAt(dwell.Duration) / one.VolumeAt(dwell.Duration), 1e-6);
            foreach (var solute in SolutePanel.Small.Solutes)
            {
                var level = one.DialysateAt(solute, dwell.Duration).MillimolesPerLiter;
                Assert.Equal(level, two.DialysateAt(solute, dwell.Duration).MillimolesPerLiter, 1e-6 * (level + 0.01));
            }
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Hostile_ultrasmall_pores_alone_only_dilute_and_nothing_alone_keeps_all(HostileDwell at)
    {
        // No path for solutes and no loss: every amount stays, to rounding, however strong the flow and small the cavity. Without conductance and
        // permeability the volume stays too.
        var shut = at.Membrane with
        {
            Pores = new(43, 250, 1, 0),
            LymphaticRemoval = default,
            TissueConductance = default,
            DiffusionArea = default,
            SodiumPermeability = default,
            UreaToCreatininePermeability = null,
        };
        foreach (var membrane in new[] { shut, shut with { UltrafiltrationCoefficient = default } })
        {
            if (TryRun(membrane, at.Dwell, at.Plasma) is { } course)
            {
                Assert.All(SolutePanel.Small.Solutes, solute => Assert.Equal(
                    0, course.RemovedAt(solute, at.Dwell.Duration).Micromoles, 1e-12 * Held(course, solute) + 1e-15));
                Assert.True(membrane.UltrafiltrationCoefficient != default || course.NetUltrafiltrationAt(at.Dwell.Duration) == default);
            }
        }
    }

    // µmol at the start; plasma may hold none of it.
    private static double Held(DwellCourse course, Solute solute) =>
        course.DialysateAt(solute, TimeSpan.Zero).MillimolesPerLiter * course.VolumeAt(TimeSpan.Zero).Milliliters;

    private static DwellCourse? TryRun(ThreePoreMembrane membrane, Dwell dwell, PlasmaComposition plasma)
    {
        try
        {
            return DwellSimulation.Run(
                Patient.Example with { Plasma = plasma }, membrane, dwell,
                new() { Integration = new() { MaximumSteps = 1000, RelativeTolerance = 1e-10 } });
        }
        catch (IntegrationException)
        {
            return null;
        }
    }

    private static readonly double[] GaussNodes = [-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640];

    private static readonly double[] GaussWeights =
        [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

    private static IEnumerable<TimeSpan> Times(TimeSpan duration) => Enumerable.Range(0, 25).Select(i => duration * (i / 24.0));

    private static double Amount(DwellCourse course, Solute solute, TimeSpan time) =>
        course.DialysateToPlasmaAt(solute, time) * PlasmaOf(course, solute) * course.VolumeAt(time).Milliliters;

    private static double PlasmaOf(DwellCourse course, Solute solute) =>
        CavityContents.Of(course.Patient.Plasma, course.Panel)[course.Panel.IndexOf(solute)];

    private static Real[] Rates(ThreePoreSystem<Real> system, DwellCourse course, TimeSpan time)
    {
        var state = new Real[system.Dimension];
        state[0] = Real.Of(course.VolumeAt(time).Milliliters);
        for (var i = 0; i < SolutePanel.Small.Count; i++)
        {
            state[1 + i] = Real.Of(Amount(course, SolutePanel.Small.Solutes[i], time));
        }

        var rates = new Real[system.Dimension];
        system.Derivatives(time.TotalMinutes, state, rates);
        return rates;
    }
}
