using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Any number of regimens side by side in one patient, the present one first.</summary>
/// <remarks>
/// All run on the same members of the ensemble and with the same draws of what the model misses, so that their differences pair. An estimate for
/// licensed prescribers: options, in the order in which they were given, and no ranking.
/// </remarks>
public sealed class RegimenComparison
{
    /// <summary>What the present regimen is called.</summary>
    public const string PresentName = "now";

    private RegimenComparison(Patient patient, OutlookOptions options, int members, ImmutableArray<RegimenOutlook> rows) =>
        (Patient, Options, EnsembleMembers, Rows) = (patient, options, members, rows);

    /// <summary>Whose plasma, kidneys and size.</summary>
    public Patient Patient { get; }

    /// <summary>How it was looked at.</summary>
    public OutlookOptions Options { get; }

    /// <summary>How many members of the ensemble were used.</summary>
    public int EnsembleMembers { get; }

    /// <summary>The regimens, the present one first.</summary>
    public ImmutableArray<RegimenOutlook> Rows { get; }

    /// <summary>The present regimen.</summary>
    public RegimenOutlook Present => Rows[0];

    /// <summary>One regimen by itself, every day.</summary>
    /// <exception cref="RegimenException">It cannot be carried out.</exception>
    /// <exception cref="ArgumentException">A plasma level is missing.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static RegimenOutlook Run(
        Patient patient, MembraneEnsemble ensemble, Regimen regimen, OutlookOptions? options = null, RunControl? control = null) =>
        Run(patient, ensemble, regimen, [], options, control).Present;

    /// <summary>One week by itself.</summary>
    /// <exception cref="RegimenException">A regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">A plasma level is missing.</exception>
    /// <exception cref="IntegrationException">A week could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static RegimenOutlook Run(
        Patient patient, MembraneEnsemble ensemble, RegimenWeek week, OutlookOptions? options = null, RunControl? control = null) =>
        Run(patient, ensemble, week, [], options, control).Present;

    /// <summary>Regimens side by side, each every day.</summary>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="present">What the patient does now.</param>
    /// <param name="others">What could be done instead, with a name each.</param>
    /// <param name="options">How to look at it.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="RegimenException">A regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">A plasma level is missing, or two regimens have one name.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static RegimenComparison Run(
        Patient patient,
        MembraneEnsemble ensemble,
        Regimen present,
        IEnumerable<(string Name, Regimen Regimen)> others,
        OutlookOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(others);
        return Run(patient, ensemble, EveryDay(present), others.Select(other => (other.Name, EveryDay(other.Regimen))), options, control);
    }

    /// <summary>Weeks side by side: fewer nights against more, days that differ, weeks that alternate.</summary>
    /// <remarks>
    /// Where days differ, all rows run with a body behind the membrane (<see cref="RegimenOptions.Body"/>, by default urea and creatinine), of the generation that the
    /// present regimen needs: five nights are solved anew, not five sevenths of seven.
    /// </remarks>
    /// <inheritdoc cref="Run(Patient, MembraneEnsemble, Regimen, IEnumerable{ValueTuple{string, Regimen}}, OutlookOptions, RunControl)"/>
    public static RegimenComparison Run(
        Patient patient,
        MembraneEnsemble ensemble,
        RegimenWeek present,
        IEnumerable<(string Name, RegimenWeek Week)> others,
        OutlookOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(others);
        options ??= OutlookOptions.Default;
        (string, Patient, RegimenWeek)[] all = [(PresentName, patient, present), .. others.Select(other => (other.Name, patient, other.Week))];
        var unlike = all.GroupBy(one => one.Item1).FirstOrDefault(group => group.Count() > 1);
        if (unlike is not null)
        {
            throw new ArgumentException($"Two regimens are called '{unlike.Key}'.", nameof(others));
        }

        foreach (var regimen in all.SelectMany(one => one.Item3.Days).OfType<Regimen>().Distinct())
        {
            regimen.OrThrow();
        }

        return new(patient, options, Math.Min(ensemble.Count, options.EnsembleMembers), OutlookStage.Run(all, ensemble, options, control ?? RunControl.None));
    }

    // OfNights refuses null.
    internal static RegimenWeek EveryDay(Regimen regimen) => RegimenWeek.OfNights(regimen, 7);
}
