using System.Runtime.Intrinsics;

namespace Transport.Tests.Kinetics;

/// <summary>The pools behind the membrane: what leaves them is what enters the cavity.</summary>
public sealed class BodySystemTests
{
    private static readonly SolutePanel Panel = SolutePanel.Small;

    private static readonly double[] Plasma = [20, 0.8, 6, 140];

    private static readonly BodyPool[] Pools =
    [
        new(SolutePanel.Urea, 38_500, 1.5, 0.14, 1 / 0.93, 20),
        new(SolutePanel.Creatinine, 38_500, 3.5, 0.007, 1 / 0.93, 0.8),
    ];

    [Theory]
    [InlineData(0, 0)]
    [InlineData(200, 0)]
    [InlineData(0, 150)]
    public void What_leaves_a_pool_enters_the_cavity(double inflow, double outflow)
    {
        // dA/dt + dM/dt + drained − infused = G − K c; two sums of a dozen terms, so a few roundings of the largest (infused, 2e3 µmol/min).
        var system = System<Real>(inflow, outflow);
        var state = State(system.Dimension, Real.Of);
        var rates = new Real[system.Dimension];
        system.Derivatives(30, state, rates);
        for (var k = 0; k < Pools.Length; k++)
        {
            var c = state[system.PoolSlot + k].Value / Pools[k].Volume;
            var all = rates[system.PoolSlot + k].Value + rates[1 + Pools[k].Solute].Value + rates[system.Cavity.DrainSlot + Pools[k].Solute].Value
                - inflow * system.Cavity.Fresh[Pools[k].Solute];
            Assert.Equal(Pools[k].Generation - Pools[k].OtherClearance * c, all, 1e-12 * 2000);
            Assert.Equal(c, rates[system.ExposureSlot + k].Value, 1e-15 * c);
        }
    }

    [Fact]
    public void The_cavity_faces_the_pools_at_the_membrane_s_plasma_level()
    {
        // Pools at 20 and 0.8 mmol/L, blood side over 0.93: the cavity's rates are those of a constant plasma of these, to rounding.
        var constant = Cavity<Real>(0, 0, PlasmaLevel.PlasmaWater);
        var body = new BodySystem<Real>(Cavity<Real>(0, 0, PlasmaLevel.PlasmaWater, [1, 1, 6, 140]), Pools);
        var state = State(body.Dimension, Real.Of);
        var (expected, found) = (new Real[constant.Dimension], new Real[body.Dimension]);
        constant.Derivatives(30, state.AsSpan(0, constant.Dimension), expected);
        body.Derivatives(30, state, found);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].Value, found[i].Value, 1e-13 * (1 + Math.Abs(expected[i].Value)));
        }
    }

    [Fact]
    public void A_closed_cavity_stands_still_while_the_body_goes_on()
    {
        var system = System<Real>(0, 0);
        system.IsClosed = true;
        var rates = new Real[system.Dimension];
        system.Derivatives(30, State(system.Dimension, Real.Of), rates);
        Assert.All(rates[..system.PoolSlot], rate => Assert.Equal(0, rate.Value));
        Assert.Equal(0.14 - 1.5 * 20, rates[system.PoolSlot].Value, 1e-13);
    }

    [Fact]
    public void Pools_that_are_held_do_not_move_and_are_still_counted()
    {
        var system = System<Real>(0, 0);
        system.HoldsPools = true;
        var rates = new Real[system.Dimension];
        system.Derivatives(30, State(system.Dimension, Real.Of), rates);
        Assert.Equal(0, rates[system.PoolSlot].Value);
        Assert.Equal(20, rates[system.ExposureSlot].Value, 1e-13);
    }

    [Fact]
    public void Every_lane_has_the_same_body()
    {
        // One text for all lanes: four patients and a value with derivatives give the plain number's rates; 1e-14 for vectors' own order of sums.
        var real = System<Real>(0, 150);
        var plain = new Real[real.Dimension];
        real.Derivatives(30, State(real.Dimension, Real.Of), plain);
        var lanes = new Lanes4[real.Dimension];
        System<Lanes4>(0, 150).Derivatives(30, State(real.Dimension, Lanes4.Of), lanes);
        var duals = new Dual[real.Dimension];
        System<Dual>(0, 150).Derivatives(30, State(real.Dimension, Dual.Of), duals);
        for (var i = 0; i < plain.Length; i++)
        {
            var tolerance = 1e-14 * (1 + Math.Abs(plain[i].Value)) * 100;
            Assert.Equal(plain[i].Value, lanes[i][2], tolerance);
            Assert.Equal(plain[i].Value, duals[i].Value, tolerance);
            Assert.Equal(Vector512<double>.Zero, duals[i].Slopes);
        }
    }

    private static BodySystem<T> System<T>(double inflow, double outflow)
        where T : struct, ILane<T> => new(Cavity<T>(inflow, outflow, PlasmaLevel.PlasmaWater), Pools);

    private static ThreePoreSystem<T> Cavity<T>(double inflow, double outflow, PlasmaLevel level, double[]? plasma = null)
        where T : struct, ILane<T>
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { PlasmaLevel = level };
        var system = new ThreePoreSystem<T>(membrane, FreeParameters<T>.From(membrane), Panel, plasma ?? Plasma)
        {
            CollectsDrain = true,
            Inflow = inflow,
            Outflow = outflow,
        };
        CavityContents.Of(DialysisSolution.Glucose227, Panel).CopyTo(system.Fresh);
        system.Fresh[SolutePanel.Urea] = 0.5;
        return system;
    }

    // 2 L half equilibrated, then pools at 20 and 0.8 mmol/L.
    private static T[] State<T>(int dimension, Func<double, T> of)
    {
        double[] cavity = [2000, 2000 * 9.0, 2000 * 0.3, 2000 * 60.0, 2000 * 131.0];
        var state = new T[dimension];
        for (var i = 0; i < dimension; i++)
        {
            state[i] = of(i < cavity.Length ? cavity[i] : 0);
        }

        state[^4] = of(20 * 38_500);
        state[^3] = of(0.8 * 38_500);
        return state;
    }
}
