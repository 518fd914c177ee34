namespace Transport;

/// <content>By which ways fluid and solutes go.</content>
public sealed partial class DwellCourse
{
    /// <summary>What has crossed the membrane so far, all paths together: transcapillary ultrafiltration, before any bulk removal.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume TranscapillaryUltrafiltrationAt(TimeSpan time)
    {
        var sum = 0.0;
        for (var path = 0; path < system.PathCount; path++)
        {
            sum += State(1 + Panel.Count + path, time);
        }

        return Volume.FromMilliliters(sum);
    }

    /// <summary>
    /// What has passed each pore class so far. Of the ultrasmall pores it is free water, of the small ones small-pore fluid: their courses, not an
    /// estimate from sodium.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">The membrane has no pores to tell apart.</exception>
    public PoreVolumes PoreVolumesAt(TimeSpan time)
    {
        RequirePores();
        var slot = 1 + Panel.Count;
        return new(
            Volume.FromMilliliters(State(slot, time)),
            Volume.FromMilliliters(State(slot + 1, time)),
            Volume.FromMilliliters(State(slot + 2, time)));
    }

    /// <summary>What passes each pore class at a moment. Large-pore flow in print: 0.112 ± 0.052 mL/min (Johansson and Haraldsson 2006, read).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">The membrane has no pores to tell apart.</exception>
    public PoreFlows PoreFlowsAt(TimeSpan time)
    {
        RequirePores();
        var flows = PathFlows(StateAt(time));
        return new(Flow(flows[0]), Flow(flows[1]), Flow(flows[2]));
    }

    /// <summary>What leaves the cavity as it is, at a moment: lymph and fluid lost into tissue, or a classical membrane's absorption.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public FlowRate BulkRemovalAt(TimeSpan time) => Flow(system.BulkRemoval(StateAt(time)));

    /// <summary>Osmotic conductance to glucose at a moment: the membrane's, with as much of it as the fluid is in contact with.</summary>
    /// <remarks>Without an area law it is the same throughout. LpS Σ α σ(glucose); 3.6 µL/min/mmHg in the three-pore papers (memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public HydraulicConductance OsmoticConductanceToGlucoseAt(TimeSpan time) =>
        Membrane.OsmoticConductanceToGlucose * system.ContactArea(StateAt(time)).Value;

    /// <summary>
    /// Sieving coefficient at a moment: what the ultrafiltrate carries of a solute by convection alone, over what it would carry if every path
    /// let all of it pass.
    /// </summary>
    /// <returns>
    /// Σ J (1 − σ) / Σ J, dimensionless. Between 0 and 1 while all paths flow one way; late in a dwell, when pores take fluid back while others still
    /// bring it, it can be any number.
    /// </returns>
    /// <remarks>Of small solutes 0.5 to 0.6 at first with strong glucose (Rippe et al. 1991 and 1992, read).</remarks>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">No fluid crosses the membrane at that moment.</exception>
    public double SievingCoefficientAt(Solute solute, TimeSpan time)
    {
        var index = IndexOf(solute);
        var flows = PathFlows(StateAt(time));
        double carried = 0, whole = 0;
        for (var path = 0; path < flows.Length; path++)
        {
            carried += flows[path].Value * system.Passed(path, index);
            whole += flows[path].Value;
        }

        return whole != 0
            ? carried / whole
            : throw new InvalidOperationException("No fluid crosses the membrane at that moment: nothing is sieved.");
    }

    /// <summary>By which ways the net amount of a solute has come: <see cref="RemovedAt"/>, taken apart.</summary>
    /// <exception cref="ArgumentException">The solute was not followed, or is a protein.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public RemovalParts RemovalPartsAt(Solute solute, TimeSpan time)
    {
        var slot = AmountSlot(solute);
        Require.InRange(time.TotalMinutes, 0, trajectory.End, "min", nameof(time));
        var (convection, diffusion, takenBack) = RemovalIntegral.Of(system, trajectory, slot - 1, time.TotalMinutes);
        return new(
            AmountOfSubstance.FromMicromoles(convection), AmountOfSubstance.FromMicromoles(diffusion), AmountOfSubstance.FromMicromoles(takenBack));
    }

    private void RequirePores()
    {
        if (Membrane is not ThreePoreMembrane)
        {
            throw new InvalidOperationException(
                $"This membrane has no pores to tell apart: ask for {nameof(TranscapillaryUltrafiltrationAt)}.");
        }
    }

    private Real[] StateAt(TimeSpan time)
    {
        var state = new Real[trajectory.Dimension];
        trajectory.At(time.TotalMinutes, state);
        return state;
    }

    private Real[] PathFlows(Real[] state)
    {
        var flows = new Real[system.PathCount];
        system.PathFlows(state, flows);
        return flows;
    }

    private static FlowRate Flow(Real flow) => FlowRate.FromMillilitersPerMinute(flow.Value);
}
