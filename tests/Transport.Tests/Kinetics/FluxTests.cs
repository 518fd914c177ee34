using FsCheck;
using FsCheck.Xunit;
using Transport.Tests.Properties;

namespace Transport.Tests.Kinetics;

/// <summary>The flux of a solute through one pore class, N = w (P − D e^−Pe) / (1 − e^−Pe).</summary>
public sealed class FluxTests
{
    [Theory]
    [InlineData(6.1, 0.03204, 8.98845, 6, 188.7, -1126.014570, 5e-7)]
    [InlineData(-0.5, 0.03204, 8.98845, 6, 27, -196.788722, 5e-7)]
    [InlineData(6.1, 0.01276, 6, 140, 132, 870.977836, 5e-7)]
    [InlineData(0, 0.03, 9, 6, 75, -621.000000, 5e-7)]
    [InlineData(0.06, 0.08256, 0.00187, 1, 0, 0.055046400, 5e-10)]
    [InlineData(-0.06, 0.08256, 0.00187, 1, 0.02, -0.001100928, 5e-10)]
    [InlineData(3, 0.5, 0, 1, 0.2, 1.5, 0)]
    [InlineData(-3, 0.5, 0, 1, 0.2, -0.3, 1e-15)]
    public void The_flux_agrees_with_a_table_computed_elsewhere(
        double flow, double sigma, double ps, double plasma, double dialysate, double printed, double halfDigit) =>

        // Computed elsewhere from the equation as printed (computed). Tolerance: half a printed digit, at most 3e-9 relative.
        Assert.Equal(printed, Flux(flow, 1 - sigma, ps, plasma, dialysate), halfDigit);

    [Property(MaxTest = 500, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void The_flux_is_the_one_that_carries_plasma_into_dialysate(PoreFlux at)
    {
        // First principles: within the pore w c − PS dc/dx = N for every x, with c(0) = P. The right N, and only it, gives c(1) = D.
        // Tolerance 1e-9 of the concentrations: the integrator's 1e-12, amplified by at most e^|Pe| = 150.
        Assert.True(Math.Abs(at.Peclet) <= 5);
        var n = Flux(at.Flow, at.Passed, at.PS, at.Plasma, at.Dialysate);
        var state = new[] { Real.Of(at.Plasma) };
        var pore = new DormandPrince853<Real, Pore>(new(at.Flow * at.Passed, at.PS, n));
        var last = new StepCount();
        pore.Run(0, 1, state, new() { RelativeTolerance = 1e-12 }, ref last);
        Assert.Equal(at.Dialysate, state[0].Value, 1e-9 * (at.Plasma + at.Dialysate));
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Reversing_the_flow_and_swapping_the_sides_reverses_the_flux(PoreFlux at)
    {
        // Symmetry of the physics. 1e-13 of the largest term: the two directions round differently.
        var there = Flux(at.Flow, at.Passed, at.PS, at.Plasma, at.Dialysate);
        var back = Flux(-at.Flow, at.Passed, at.PS, at.Dialysate, at.Plasma);
        Assert.Equal(-there, back, 1e-13 * Size(at));
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void More_in_plasma_never_lowers_the_flux_and_more_in_dialysate_never_raises_it(PoreFlux at, PositiveInt more)
    {
        var step = 1e-3 * more.Get;
        var n = Flux(at.Flow, at.Passed, at.PS, at.Plasma, at.Dialysate);
        Assert.True(Flux(at.Flow, at.Passed, at.PS, at.Plasma + step, at.Dialysate) >= n - 1e-13 * Size(at));
        Assert.True(Flux(at.Flow, at.Passed, at.PS, at.Plasma, at.Dialysate + step) <= n + 1e-13 * Size(at));
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_vanishing_flow_leaves_diffusion_and_convection_of_the_mean(PoreFlux at)
    {
        // N = PS (P − D) + w (P + D)/2 + PS Pe²/12 (P − D) + O(Pe⁴): the third term bounds the difference for Pe up to 1e-3.
        // It passes through Pe = 0, so the flux is continuous there.
        var peclet = at.Peclet * 2e-4;
        var w = peclet * at.PS;
        var limit = at.PS * (at.Plasma - at.Dialysate) + w * (at.Plasma + at.Dialysate) / 2;
        var bound = at.PS * peclet * peclet / 12 * Math.Abs(at.Plasma - at.Dialysate);
        Assert.Equal(limit, Flux(w, 1, at.PS, at.Plasma, at.Dialysate), 1.001 * bound + 1e-14 * Size(at));
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_strong_flow_carries_the_upstream_side(PoreFlux at)
    {
        // |Pe| of 40 and more leaves e^-40 = 4e-18 of diffusion, below rounding; no PS at all is the limit itself.
        foreach (var ps in new[] { at.PS, 1e-3 * at.PS, 0 })
        {
            var flow = (ps == 0 ? 1 : 40 * ps) * (1 + Math.Abs(at.Flow));
            Assert.Equal(flow * at.Plasma, Flux(flow, 1, ps, at.Plasma, at.Dialysate), 1e-13 * flow * (at.Plasma + at.Dialysate));
            Assert.Equal(-flow * at.Dialysate, Flux(-flow, 1, ps, at.Plasma, at.Dialysate), 1e-13 * flow * (at.Plasma + at.Dialysate));
        }
    }

    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e-30)]
    [InlineData(1e-12)]
    [InlineData(1e12)]
    public void No_permeability_is_too_small_or_too_large(double ps)
    {
        // Hostile: a solute almost as large as the pore. Finite in both directions, and zero where nothing drives.
        foreach (var flow in new[] { -1e6, -1.0, -1e-12, 0.0, 1e-12, 1.0, 1e6 })
        {
            Assert.True(double.IsFinite(Flux(flow, 1, ps, 3, 2)));
            Assert.True(double.IsFinite(Flux(flow, 0, ps, 3, 2)));
        }

        Assert.Equal(0, Flux(0, 1, ps, 2, 2));
    }

    [Fact]
    public void A_solute_that_cannot_enter_does_not_pass() => Assert.Equal(0, Flux(5, 0, 0, 7, 3), 1e-29); // the floor under PS is 1e-30

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.25, 1.0819767068693265)]
    [InlineData(1, 1.3130352854993312)]
    [InlineData(1.0000000000001, 1.3130352854993607)]
    [InlineData(2.25, 1.657187089473768)]
    [InlineData(4, 2.0746294414550963)]
    [InlineData(4.0000000000001, 2.0746294414551185)]
    [InlineData(100, 10.000000041223073)]
    public void The_gain_of_diffusion_has_its_known_values(double z, double expected)
    {
        // √z coth √z: coth(1/2) / 2 = (e + 1) / (e − 1) / 2 and coth 1 = (e² + 1) / (e² − 1) are known constants; all were computed with 60 digits.
        // Forms meet at z = 1 and 16; each is exact to 3e-16.
        Assert.Equal(1, Gain(Math.Sqrt(z)) / expected, 4e-14);
    }

    [Property(MaxTest = 300, Replay = Seeds.Fixed)]
    public void The_slope_of_the_gain_is_its_difference_quotient(NormalFloat any)
    {
        // Central difference with step 1e-4: error 1e-9 by the third derivative, which is below 0.4; rounding 3e-11 for a gain up to 20.
        var y = any.Get % 20;
        const double step = 1e-4;
        var quotient = (Gain(y + step) - Gain(y - step)) / (2 * step);
        Assert.Equal(quotient, DiffusionGain.WithSlope(Real.Of(y)).Slope.Value, 1e-8);
    }

    [Property(MaxTest = 300, Replay = Seeds.Fixed)]
    public void Four_lanes_have_the_gain_of_each(NormalFloat a, NormalFloat b)
    {
        var z = new[] { Math.Abs(a.Get) % 4, Math.Abs(b.Get) % 4, Math.Abs(a.Get) % 40, 0 };
        foreach (var four in new[] { z, [z[0], z[1], z[0], z[3]], [1e3 * z[0], z[1], 1e80 * z[2], z[3]] })
        {
            var y = new Lanes4(System.Runtime.Intrinsics.Vector256.Create([.. four.Select(Math.Sqrt)]));
            var gains = Lanes4.DiffusionGains(Lanes4.Of(2), y, Lanes4.Of(3), Lanes4.Of(1) - y);
            for (var lane = 0; lane < Lanes4.Width; lane++)
            {
                // The order of operations is the same; a fused multiply-add may round once less, and the sum is over one denominator.
                var (here, other) = (y[lane], 1 - y[lane]);
                Assert.Equal(1, gains[lane] / (2 * Gain(here) + 3 * Gain(other)), 1e-14);
            }
        }
    }

    [Property(MaxTest = 300, Replay = Seeds.Fixed)]
    public void Eight_patients_have_the_gain_of_each_whatever_their_neighbours_need(NormalFloat a, NormalFloat b, NormalFloat c)
    {
        // Small and large pores by the polynomials, the quotient, doubling and |y|, alone and mixed: each form is exact to 3e-16, |y| from 16 on to 3e-14.
        var any = new[] { Math.Abs(a.Get) % 1, Math.Abs(b.Get) % 1, Math.Abs(c.Get) % 1 };
        foreach (var most in new[] { 0.1, 1.0, 4.0, 15.0, 1e3, 1e80 })
        {
            foreach (var least in new[] { 0, 0.999 * most })
            {
                var (y_S, y_L) = (Lanes(lane => least + (0.2 * most - least) * any[lane % 3]), Lanes(lane => least + (most - least) * any[(lane + 1) % 3]));
                var gains = Lanes8.DiffusionGains(Lanes8.Of(2), y_S, Lanes8.Of(3), y_L);
                for (var lane = 0; lane < Lanes8.Width; lane++)
                {
                    var expected = 2 * Gain(y_S[lane]) + 3 * Gain(y_L[lane]);
                    Assert.Equal(1, gains[lane] / expected, 2e-15);
                }
            }
        }

        static Lanes8 Lanes(Func<int, double> of) => new(System.Runtime.Intrinsics.Vector512.Create([.. Enumerable.Range(0, Lanes8.Width).Select(of)]));
    }

    [Fact]
    public void The_gain_is_right_to_the_last_digits_where_its_forms_meet()
    {
        // y coth y by the library's tanh, itself exact to two units in the last place, at 2000 places of each form; |y| from y = 16 on is off by 2 e^-32 = 3e-14.
        foreach (var (from, to, tolerance) in new[] { (1e-3, 0.5, 2e-15), (0.4, 1.2, 2e-15), (1, 4.5, 2e-15), (4, 16, 2e-15), (16, 17, 3e-14) })
        {
            for (var k = 0; k <= 2000; k++)
            {
                var y = from + (to - from) * k / 2000;
                Assert.Equal(1, Gain(y) * Math.Tanh(y) / y, tolerance);
            }
        }
    }

    private static double Gain(double y) => DiffusionGain.WithSlope(Real.Of(y)).Value.Value;

    // Through one of the two pore classes, in turn; the other is closed.
    private static double Flux(double flow, double passed, double ps, double plasma, double dialysate)
    {
        var (open, closed) = (PorePassage<Real>.Of(Real.Of(passed), Real.Of(ps)), PorePassage<Real>.Of(Real.Of(0), Real.Of(0)));
        var (one, none) = (Real.Of(flow), Real.Of(0));
        var small = new SoluteWays<Real>(Real.Of(plasma), open, closed).Flux((one, none), (one, none), Real.Of(1), Real.Of(dialysate)).Value;
        var large = new SoluteWays<Real>(Real.Of(plasma), closed, open).Flux((none, one), (none, one), Real.Of(1), Real.Of(dialysate)).Value;
        Assert.Equal(small, large, 1e-14 * (ps + Math.Abs(flow * passed)) * (plasma + dialysate));
        return small;
    }

    private static double Size(PoreFlux at) => (at.PS + Math.Abs(at.Flow * at.Passed)) * (at.Plasma + at.Dialysate);

    private readonly struct Pore(double w, double ps, double n) : IOdeSystem<Real>
    {
        public int Dimension => 1;

        public void Derivatives(double minutes, ReadOnlySpan<Real> state, Span<Real> rates) =>
            rates[0] = Real.Of((w * state[0].Value - n) / ps);

        public int KinkCount => 0;

        public Real Kink(int index, ReadOnlySpan<Real> state) => Real.Of(1);

        public Real Bend(ReadOnlySpan<Real> rates) => Real.Of(0);

        public void AbsoluteScale(Span<double> scale) => scale[0] = 1;
    }
}
