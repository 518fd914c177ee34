namespace Transport;

/// <summary>What one phase did, in mL and min. Its state at the start and what it drained of each solute are kept beside it.</summary>
internal struct PhaseRecord
{
    public double Start;
    public double End;

    /// <summary>How long the cavity was open, min: all the time but where it had emptied.</summary>
    public double Open;

    public double Drained;
    public double Ultrasmall;
    public double Small;
    public double Large;
    public double Peak;
    public double PeakTime;
    public double Minimum;
}
