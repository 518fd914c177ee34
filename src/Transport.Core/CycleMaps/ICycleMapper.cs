namespace Transport;

/// <summary>Finds the maps of exchanges, in lanes of whatever width.</summary>
internal interface ICycleMapper
{
    /// <summary>What a ring starts from where nothing better is known: used fluid, in time.</summary>
    public void UsualStart(Span<double> carried);

    /// <summary>Gets ready for a membrane.</summary>
    public void Prepare(ThreePoreMembrane of);

    /// <summary>Fill and dwell of the exchanges of a group.</summary>
    public CycleDwells Dwell(CycleGroup group, CycleDwells? into);

    /// <summary>The map of an exchange, from the dwells of its group.</summary>
    /// <param name="kind">The exchange.</param>
    /// <param name="dwells">The dwells of its group, with the membrane at hand.</param>
    /// <param name="member">Which of the group it is.</param>
    /// <param name="into">The map; it holds or says that it does not.</param>
    public void Map(in CycleKind kind, CycleDwells dwells, int member, CycleMap into);
}
