namespace Transport;

/// <summary>The numbers of one barrier over a lane, for one person: all that its equations know of it.</summary>
/// <remarks>Units: mL/min; none; mL/min/mmHg; mL/min.</remarks>
internal readonly struct LumpedParameters<T>
    where T : struct, ILane<T>
{
    /// <summary>K of each solute, in the order of a panel.</summary>
    public required T[] MassTransfer { get; init; }

    public required T SievingCoefficient { get; init; }

    public required T ConductanceToGlucose { get; init; }

    public required T ConductanceToSodium { get; init; }

    public required T FluidAbsorption { get; init; }

    /// <exception cref="ArgumentException">The membrane has no mass transfer coefficient of a solute.</exception>
    public static LumpedParameters<T> From(LumpedMembrane membrane, SolutePanel panel) => new()
    {
        MassTransfer =
        [
            .. panel.Solutes.Select(solute => T.Of(membrane.MassTransfer.TryGetValue(solute, out var found)
                ? found.MillilitersPerMinute
                : throw new ArgumentException($"The membrane has no mass transfer coefficient of {solute}.", nameof(membrane)))),
        ],
        SievingCoefficient = T.Of(membrane.SievingCoefficient),
        ConductanceToGlucose = T.Of(membrane.OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury),
        ConductanceToSodium = T.Of(membrane.OsmoticConductanceToSodium.MillilitersPerMinutePerMillimeterOfMercury),
        FluidAbsorption = T.Of(membrane.FluidAbsorption.MillilitersPerMinute),
    };
}
