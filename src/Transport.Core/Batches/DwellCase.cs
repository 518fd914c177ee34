namespace Transport;

/// <summary>One dwell of a batch: whose plasma, which membrane, what goes in.</summary>
public readonly struct DwellCase
{
    /// <summary>A dwell with a membrane.</summary>
    /// <param name="patient">Whose plasma it is.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="dwell">What goes in, and for how long.</param>
    public DwellCase(Patient patient, ThreePoreMembrane membrane, Dwell dwell)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(dwell);
        Patient = patient;
        Membrane = membrane;
        Dwell = dwell;
        Free = FreeParameters<Real>.From(membrane);
    }

    /// <summary>A dwell with a member of an ensemble, for which no membrane has to be made.</summary>
    /// <param name="patient">Whose plasma it is.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="member">Which of them.</param>
    /// <param name="dwell">What goes in, and for how long.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such member.</exception>
    public DwellCase(Patient patient, MembraneEnsemble ensemble, int member, Dwell dwell)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(dwell);
        Require.InRange(member, 0, ensemble.Count - 1, "");
        Patient = patient;
        Membrane = ensemble.Center;
        Dwell = dwell;
        Free = FreeParameters<Real>.From(ensemble, member);
    }

    /// <summary>Whose plasma it is.</summary>
    public Patient Patient { get; }

    /// <summary>What goes in, and for how long.</summary>
    public Dwell Dwell { get; }

    /// <summary>The membrane but for what is free.</summary>
    internal ThreePoreMembrane Membrane { get; }

    internal FreeParameters<Real> Free { get; }
}
