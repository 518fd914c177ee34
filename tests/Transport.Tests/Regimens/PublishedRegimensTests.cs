using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>Published regimens against the model: directions and figures that the source specifies well enough, with its own spread, and the misses.</summary>
/// <remarks>
/// Elsewhere: six cycles of 2 L (RegimenSimulationTests), 30 L full or tidal (TidalTests), varied cycles and their missed gain (VariedCyclesTests), three
/// or four by hand and 5, 7, 9 cycles (ExchangeSequenceTests), icodextrin's courses (IcodextrinTests). The journal stands beside each figure;
/// all figures here were read in abstracts.
/// </remarks>
public sealed class PublishedRegimensTests
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    [Fact]
    public void More_fluid_lowered_ultrafiltration_in_people_and_raises_it_in_the_model()
    {
        // 42 people, two exchanges of 2 h and 2.3 % in a row (Enferm Nefrol 2016;19(4), abstract read): 131 ± 206 mL with 2.5 L, 192 ± 145 with 1.5 L, −61.
        // The model says +84 to +150 (computed before): a known miss of sign. If it is mended this test says so.
        RegimenOutcome Of(double fill) => Run(Regimen.Cycling(TimeSpan.FromMinutes(120 + fill / 200 + 12), 1, Milliliters(fill), DialysisSolution.Glucose227));
        var difference = Of(2_500).NightUltrafiltration - Of(1_500).NightUltrafiltration;
        Assert.InRange(difference.Milliliters, 60, 170);
    }

    [Fact]
    public void One_long_dwell_of_icodextrin_does_for_two_exchanges_of_glucose()
    {
        // A simulation (Front Physiol 2024;15:1339762, abstract read): with icodextrin for the long dwell and one exchange fewer, ultrafiltration equal or higher,
        // sodium higher, urea and creatinine slightly lower. Four by hand, 2.27 % overnight, against three with icodextrin overnight.
        HandExchange Hand(int hour, DialysisSolution? solution = null) => new(new(hour, 0), solution ?? Weak, Milliliters(2_000));
        var four = Run(Regimen.Ambulatory([Hand(7), Hand(12), Hand(17), Hand(22, DialysisSolution.Glucose227)]));
        var three = Run(Regimen.Ambulatory([Hand(8), Hand(15), Hand(22, DialysisSolution.Icodextrin)]));
        Assert.True(three.Ultrafiltration > four.Ultrafiltration);
        Assert.True(three.SodiumRemoved > four.SodiumRemoved);
        Assert.InRange(three.PeritonealUreaClearance / four.PeritonealUreaClearance, 0.72, 1.0);
        Assert.InRange(three.PeritonealCreatinineClearance / four.PeritonealCreatinineClearance, 0.8, 1.05);
    }

    [Theory]
    [InlineData(14_000, false)]
    [InlineData(40_000, true)]
    public void Fast_transfer_asks_for_short_dwells_and_slow_for_long_ones(double area, bool isFast)
    {
        // The rule of textbooks (read): 2.27 %, 2 L. In slow transfer 6 h remove more than 2, in fast transfer fewer.
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { DiffusionArea = DiffusionArea.FromCentimeters(area) };
        double Of(double hours) => RegimenSimulation.Run(
            Patient.Example, membrane, Regimen.Cycling(TimeSpan.FromHours(hours), 1, Milliliters(2_000), DialysisSolution.Glucose227)).NightUltrafiltration.Milliliters;
        Assert.Equal(isFast, Of(2.4) > Of(6.4));
    }

    [Fact]
    public void Short_dwells_of_two_hours_equilibrate_as_published_but_for_beta2_microglobulin()
    {
        // 4 × (2 to 2.5 L, 2 h), abstract: 2-h D/P creatinine 0.49 ± 0.11, urea 0.78 ± 0.05, β2-microglobulin 0.07 ± 0.03. Creatinine within one standard
        // deviation, urea within two, β2-microglobulin at half: the model's known miss (computed before: 0.034 to 0.036), still within 1.3 deviations.
        var night = Regimen.Cycling(TimeSpan.FromMinutes(4 * (120 + 10 + 12)), 4, Milliliters(2_000), DialysisSolution.Glucose227);
        var outcome = RegimenSimulation.Run(
            Patient.Example, Membrane, night, RegimenOptions.Default with { Panel = SolutePanel.Full });
        var third = outcome.Drains[2];
        var plasma = Patient.Example.Plasma;
        Assert.Equal(0.49, third.ConcentrationOf(Solutes.Creatinine) / plasma.Creatinine, 0.11);
        Assert.Equal(0.78, third.ConcentrationOf(Solutes.Urea) / plasma.Urea, 0.10);
        Assert.InRange(third.ConcentrationOf(Solutes.Beta2Microglobulin).MillimolesPerLiter, 0.02, 0.07);
    }

    [Fact]
    public void Six_cycles_of_weak_glucose_absorb_what_the_rule_of_thumb_says_in_the_mean_adult_and_less_in_the_textbook_membrane()
    {
        // The quick rule for a cycler is 40 % of the load (a nutrition manual, read). The mean incident adult, fitted to published absorption, comes to 41 %; the
        // textbook membrane to 27 to 29 % (computed before, with less residual). ± 5 % of the load.
        Assert.Equal(0.40, Run(Night(6)) is var adult ? adult.GlucoseAbsorbed / adult.GlucoseUsed : 0, 0.05);
        var textbook = RegimenSimulation.Run(Patient.Example, ReferenceMembranes.Textbook.ScaledTo(Patient.Example.BodySurface), Night(6));
        Assert.Equal(0.28, textbook.GlucoseAbsorbed / textbook.GlucoseUsed, 0.05);
    }

    [Fact]
    public void A_child_needs_more_fluid_for_tidal_cycles_to_clear_what_full_ones_do()
    {
        // Children (an abstract, read): tidal came up to cycling only above 40 mL/kg/h, 16 against 9 L. Here an invented child of 135 cm and 30 kg, fills of 1100 mL/m², 10 h:
        // at 30 mL/kg/h tidal clears less than 9 L of full cycles, above 40 mL/kg/h as much or more (5 %: whole cycles do not make the same litres).
        var child = Patient.Example with { AgeYears = 10, Height = Length.FromCentimeters(135), Weight = Mass.FromKilograms(30) };
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(child.BodySurface);
        var fill = 1_100 * child.BodySurface.SquareMeters;
        var night = TimeSpan.FromHours(10);
        Clearance Cleared(Regimen regimen) => RegimenSimulation.Run(child, membrane, regimen).PeritonealUreaClearance;
        Clearance Tidal(double liters) => Cleared(Regimen.Tidal(
            night, 1 + (int)Math.Round((1_000 * liters - fill) / (0.5 * fill)), new TidalPlan(Milliliters(fill), 0.5) { ExpectedUltrafiltration = Milliliters(300) }, Weak));
        var full = Cleared(Regimen.Cycling(night, 8, Milliliters(fill), Weak));
        Assert.True(Tidal(9) < full * 0.93);
        Assert.Equal(1, Tidal(12) / full, 0.05);
        Assert.True(Tidal(16) > full);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(24)]
    public void Of_the_same_fluid_tidal_clears_no_more_and_loses_least_where_it_cuts_the_slow_drain(int liters)
    {
        // A review (Kidney Int 2006, read in part): no gain of clearance by tidal cycles as such; a gain is possible where the slow part of the drain is cut. So never
        // above 1, and nearer to it with drains of 200 then 45 mL/min than at one rate.
        double Ratio(DrainProfile drain)
        {
            var settings = RegimenSettings.Default with { Drain = drain };
            var full = Run(Regimen.Cycling(TimeSpan.FromHours(9), liters / 2, Milliliters(2_000), Weak, null, settings));
            var plan = new TidalPlan(Milliliters(2_000), 0.5) { ExpectedUltrafiltration = full.NightUltrafiltration };
            return Run(Regimen.Tidal(TimeSpan.FromHours(9), liters - 1, plan, Weak, null, settings)).PeritonealCreatinineClearance / full.PeritonealCreatinineClearance;
        }

        var (oneRate, twoSlopes) = (Ratio(RegimenSettings.Default.Drain), Ratio(DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(200), FlowRate.FromMillilitersPerMinute(45), 0.8)));
        Assert.InRange(oneRate, 0.9, 1);
        Assert.InRange(twoSlopes, oneRate + 0.005, 1);
    }

    [Fact]
    public void A_long_day_with_icodextrin_removes_more_fluid_and_sodium_than_glucose_in_fast_transfer_and_more_than_published()
    {
        // 50 fast transporters (J Am Soc Nephrol 2003;14:2338, read in part): better ultrafiltration and sodium removal than 2.27 % over the long dwell. The direction holds.
        // A meta-analysis (Ren Replace Ther 2020;6:1, read): +187 mL a day, 95 % interval −47 to 421, over glucose of several strengths. The model's +700 to +950 lies above it: a
        // miss, since glucose takes up more in long dwells of the model than it does in people, and one patient is not compared with himself in most trials.
        var fast = Membrane with { DiffusionArea = DiffusionArea.FromCentimeters(1.6 * Membrane.DiffusionArea.Centimeters) };
        RegimenOutcome Of(ThreePoreMembrane membrane, DialysisSolution day) => RegimenSimulation.Run(
            Patient.Example, membrane, Regimen.Cycling(TimeSpan.FromHours(14), 4, Milliliters(2_000), Weak, new(day, Milliliters(2_000))));
        var (polymer, glucose) = (Of(fast, DialysisSolution.Icodextrin), Of(fast, DialysisSolution.Glucose227));
        Assert.True(polymer.Ultrafiltration > glucose.Ultrafiltration);
        Assert.True(polymer.SodiumRemoved > glucose.SodiumRemoved);
        var gain = (polymer.DayUltrafiltration - glucose.DayUltrafiltration).Milliliters;
        Assert.InRange(gain, 700, 950);
        Assert.True(gain > 421);
        Assert.InRange((Of(Membrane, DialysisSolution.Icodextrin).DayUltrafiltration - Of(Membrane, DialysisSolution.Glucose227).DayUltrafiltration).Milliliters, 450, 700);
    }

    [Fact]
    public void Ultrafiltration_and_removal_add_up_over_cycles()
    {
        // What the drains hold, one by one, is what the day removed; exact but for rounding.
        var outcome = Run(Night(5, Day(2_000)));
        foreach (var solute in new[] { Solutes.Urea, Solutes.Creatinine, Solutes.Glucose, Solutes.Sodium })
        {
            var removal = outcome.RemovalOf(solute);
            Assert.Equal(removal.Drained!.Value.Micromoles, outcome.Drains.Sum(drain => drain.AmountOf(solute).Micromoles), 1e-9 * removal.Drained.Value.Micromoles);
        }

        Assert.Equal(
            outcome.Ultrafiltration.Milliliters,
            outcome.Cycles.Concat(outcome.DayExchanges).Sum(exchange => exchange.Ultrafiltration.Milliliters),
            1e-9 * outcome.FluidUsed.Milliliters);

        // Infused + ultrafiltration = drained + (V end − V start); in the steady rhythm the last is zero.
        Assert.Equal(
            (outcome.FluidUsed + outcome.Ultrafiltration).Milliliters,
            outcome.Drains.Sum(drain => drain.Volume.Milliliters),
            1e-9 * outcome.FluidUsed.Milliliters);
    }

    private static RegimenOutcome Run(Regimen regimen) => RegimenSimulation.Run(Patient.Example, Membrane, regimen);
}
