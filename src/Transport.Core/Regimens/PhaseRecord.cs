namespace Transport;

/// <summary>What one phase did, in mL, min and µmol.</summary>
internal struct PhaseRecord
{
    public RegimenPhase Kind;

    /// <summary>Which exchange of the night.</summary>
    public int Cycle;

    public double Start;
    public double End;

    /// <summary>How long the cavity was open, min: all the time but where it had emptied.</summary>
    public double Open;

    public double Drained;
    public double DrainedUrea;
    public double DrainedCreatinine;
    public double DrainedGlucose;
    public double DrainedSodium;

    /// <summary>Mass of polymer, µg.</summary>
    public double DrainedPolymer;

    public double Ultrasmall;
    public double Small;
    public double Large;
    public double Peak;
    public double PeakTime;
    public double Minimum;
}
