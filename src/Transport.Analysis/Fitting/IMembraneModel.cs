namespace Transport.Analysis;

/// <summary>A model of the membrane as estimation sees it: coordinates whose prior is a unit Gaussian, and a dwell at any point of them.</summary>
internal interface IMembraneModel
{
    /// <summary>How many coordinates.</summary>
    public int Count { get; }

    /// <summary>How a number of the membrane is written as one of them.</summary>
    public Coordinate this[int index] { get; }

    /// <summary>A workspace for one exchange's dwell over a lane.</summary>
    public IModelDwell<T> Dwell<T>(ObservedExchange exchange, SolutePanel panel)
        where T : struct, ILane<T>;
}
