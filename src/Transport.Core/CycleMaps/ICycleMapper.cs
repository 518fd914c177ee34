namespace Transport;

/// <summary>Finds the maps of exchanges, in lanes of whatever width.</summary>
internal interface ICycleMapper
{
    /// <summary>What a ring starts from where nothing better is known: used fluid, in time.</summary>
    public void UsualStart(Span<double> carried);

    /// <summary>Gets ready for a membrane.</summary>
    public void Prepare(ThreePoreMembrane of);

    /// <summary>The map of an exchange with the membrane at hand.</summary>
    /// <exception cref="IntegrationException">It could not be integrated.</exception>
    public void Map(in CycleKind kind, CycleMap into);
}
