namespace Transport;

/// <summary>What a <see cref="DenseStep{T}"/> asks for its polynomial: the integrator that made the step.</summary>
internal interface IDenseSource<T>
    where T : struct, ILane<T>
{
    /// <summary>The terms, valid after <see cref="PrepareDense"/> and until the next step.</summary>
    public ReadOnlySpan<T> DenseTerms { get; }

    /// <summary>Evaluates the three further stages and forms the terms.</summary>
    public void PrepareDense(double start, double length);
}
