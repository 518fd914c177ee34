namespace Transport;

/// <summary>The classical equations of one dwell, over a lane.</summary>
/// <remarks>
/// <para>State: V; M of each solute; ∫J. Units and signs as in <see cref="ThreePoreSystem{T}"/>.</para>
/// <para>J = RT [G_glu (D − P)_glu + G_Na (D − P)_Na]; dV/dt = J − A; dM/dt = K (P − D) + J S (P + D)/2 − A D.</para>
/// </remarks>
internal readonly struct LumpedSystem<T> : IDwellSystem<T>
    where T : struct, ILane<T>
{
    private readonly double[] plasma;
    private readonly double fill;
    private readonly LumpedParameters<T> numbers;
    private readonly T perGlucose;
    private readonly T perSodium;

    /// <summary>The equations of a membrane facing a plasma.</summary>
    /// <param name="numbers">The membrane.</param>
    /// <param name="plasma">Plasma of each solute, mmol/L.</param>
    /// <param name="fill">A volume that says how large errors may be, mL.</param>
    public LumpedSystem(in LumpedParameters<T> numbers, double[] plasma, double fill)
    {
        const double RT = PhysicalConstants.OsmoticPressurePerConcentration;
        this.plasma = plasma;
        this.fill = fill;
        this.numbers = numbers;
        perGlucose = RT * numbers.ConductanceToGlucose;
        perSodium = RT * numbers.ConductanceToSodium;
    }

    public int Dimension => 2 + plasma.Length;

    public void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        var v = state[0];
        if (!T.AllPositive(v))
        {
            // As in the three-pore model: no step can cross an empty cavity.
            rates.Fill(T.Of(double.NaN));
            return;
        }

        var perVolume = T.Of(1) / v;
        var flow = Flow(state, perVolume);
        var halfSieving = 0.5 * numbers.SievingCoefficient;
        for (var i = 0; i < plasma.Length; i++)
        {
            var p = T.Of(plasma[i]);
            var d = state[1 + i] * perVolume;
            rates[1 + i] = numbers.MassTransfer[i] * (p - d) + halfSieving * (flow * (p + d)) - numbers.FluidAbsorption * d;
        }

        rates[0] = flow - numbers.FluidAbsorption;
        rates[1 + plasma.Length] = flow;
    }

    public T PlasmaOf(int solute) => T.Of(plasma[solute]);

    public int PathCount => 1;

    public void PathFlows(ReadOnlySpan<T> state, Span<T> flows) => flows[0] = Flow(state, T.Of(1) / state[0]);

    public double Passed(int path, int solute) => T.Largest(numbers.SievingCoefficient);

    public T BulkRemoval(ReadOnlySpan<T> state) => numbers.FluidAbsorption;

    public T ContactArea(ReadOnlySpan<T> state) => T.Of(1);

    private T Flow(ReadOnlySpan<T> state, T perVolume) =>
        perGlucose * (state[1 + SolutePanel.Glucose] * perVolume - T.Of(plasma[SolutePanel.Glucose]))
        + perSodium * (state[1 + SolutePanel.Sodium] * perVolume - T.Of(plasma[SolutePanel.Sodium]));

    public int KinkCount => 0;

    public T Kink(int index, ReadOnlySpan<T> state) => T.Of(1);

    public T Bend(ReadOnlySpan<T> rates) => T.Of(0);

    public void AbsoluteScale(Span<double> scale)
    {
        scale[0] = 0.01 * fill;
        for (var i = 0; i < plasma.Length; i++)
        {
            scale[1 + i] = 1e-3 * fill * Math.Max(1e-6, plasma[i]);
        }

        scale[1 + plasma.Length] = 1e-3 * fill;
    }
}
