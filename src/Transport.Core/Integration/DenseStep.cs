namespace Transport;

/// <summary>One accepted step with its dense output, a polynomial of order 7 that is computed when first asked for.</summary>
internal ref struct DenseStep<T>
    where T : struct, ILane<T>
{
    /// <summary>How many polynomial terms a component has besides its start value.</summary>
    public const int TermCount = 7;

    private readonly IDenseSource<T> source;
    private bool prepared;

    internal DenseStep(
        IDenseSource<T> source, double start, double end, double length, ReadOnlySpan<T> startState, ReadOnlySpan<T> endState)
    {
        this.source = source;
        Start = start;
        End = end;
        Length = length;
        StartState = startState;
        EndState = endState;
    }

    /// <summary>Start of the step, min.</summary>
    public double Start { get; }

    /// <summary>Length of the step, min.</summary>
    public double Length { get; }

    /// <summary>End of the step, min: of the last one to the bit the end that was asked for, which start plus length may miss by a rounding.</summary>
    public double End { get; }

    /// <summary>State at the start.</summary>
    public ReadOnlySpan<T> StartState { get; }

    /// <summary>State at the end.</summary>
    public ReadOnlySpan<T> EndState { get; }

    /// <summary>The terms, component after component within each of the seven.</summary>
    public ReadOnlySpan<T> Terms()
    {
        if (!prepared)
        {
            source.PrepareDense(Start, Length);
            prepared = true;
        }

        return source.DenseTerms;
    }

    /// <summary>One component at a time within the step.</summary>
    public T Component(int index, double minutes) =>
        Evaluate(Terms(), StartState, index, (minutes - Start) / Length);

    /// <summary>The state at a time within the step.</summary>
    public void State(double minutes, Span<T> state)
    {
        var terms = Terms();
        var fraction = (minutes - Start) / Length;
        for (var i = 0; i < state.Length; i++)
        {
            state[i] = Evaluate(terms, StartState, i, fraction);
        }
    }

    /// <summary>y0 + x(F1 + (1−x)(F2 + x(F3 + (1−x)(F4 + x(F5 + (1−x)(F6 + x F7)))))).</summary>
    internal static T Evaluate(ReadOnlySpan<T> terms, ReadOnlySpan<T> start, int index, double x)
    {
        var n = start.Length;
        var y = x * terms[6 * n + index];
        for (var term = TermCount - 2; term >= 0; term--)
        {
            y = ((term & 1) == 0 ? x : 1 - x) * (y + terms[term * n + index]);
        }

        return start[index] + y;
    }
}
