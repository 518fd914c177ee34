namespace Transport;

/// <summary>Simulates a week whose days need not be alike.</summary>
public static class WeekSimulation
{
    /// <summary>A week in its steady rhythm, in which every week ends as it began: cavity, and body where there is one.</summary>
    /// <remarks>
    /// Five nights a week are not five sevenths of seven: plasma rises between treatments, and the first night after a day off finds more. What is
    /// said of a day (<see cref="RegimenSimulation"/>) holds here too.
    /// </remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="week">What is prescribed.</param>
    /// <param name="options">How to simulate; null: the defaults with the body of urea and creatinine.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="RegimenException">A regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">The patient has no plasma urea, or a pool lacks a level, a generation or a place in the panel.</exception>
    /// <exception cref="IntegrationException">The week could not be integrated, or did not settle; nothing partial is returned.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static WeekOutcome Run(
        Patient patient, ThreePoreMembrane membrane, RegimenWeek week, RegimenOptions? options = null, RunControl? control = null) =>
        new RegimenWorkspace().Run(
            patient, membrane, week, options ?? RegimenOptions.Default with { Body = BodyKinetics.Default }, control ?? RunControl.None);
}
