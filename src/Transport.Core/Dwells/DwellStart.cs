namespace Transport;

/// <summary>The state at the start of a dwell with an instantaneous, perfectly mixed fill.</summary>
internal static class DwellStart
{
    /// <summary>V = fill + residual; each amount is the sum of the two fluids'. Pore flows start at zero.</summary>
    public static void Write<T>(Span<T> state, double fill, ReadOnlySpan<double> fresh, T residual, ReadOnlySpan<double> residualConcentrations)
        where T : struct, ILane<T>
    {
        state.Fill(T.Of(0));
        state[0] = T.Of(fill) + residual;
        for (var i = 0; i < fresh.Length; i++)
        {
            state[1 + i] = T.Of(fill * fresh[i]) + residualConcentrations[i] * residual;
        }
    }
}
