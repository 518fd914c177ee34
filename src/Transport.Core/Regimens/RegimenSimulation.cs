namespace Transport;

/// <summary>Simulates one night and day.</summary>
public static class RegimenSimulation
{
    /// <summary>Twenty-four hours of a regimen in its steady rhythm, in which every day ends as it began.</summary>
    /// <remarks>
    /// <para>Transport never stops: it goes on while fluid runs in, stays, and runs out. A drain ends at the residual volume. The clock is kept: a drain
    /// begins at its planned time, and what it takes longer the next dwell loses.</para>
    /// <para>Plasma stays at the patient's level, taken to be the mean of the day: a clearance is what the drains hold over that level. With
    /// <see cref="RegimenOptions.Body"/> plasma follows the body, and the mean is that of its rhythm.</para>
    /// <para>Potassium and phosphate: removal and clearance at the stated plasma. Their levels are not predicted.</para>
    /// <para>A dry day keeps the residual fluid in contact. Its glucose is soon gone, and lymph and capillaries take it up. When 10 mL (per 1.73 m²)
    /// are left the cavity is taken to be closed: nothing enters or leaves it until the next fill. What was taken up is missed in the first
    /// drain of the next night, which has to leave the residual behind again.</para>
    /// </remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="regimen">What is prescribed.</param>
    /// <param name="options">How to simulate.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">
    /// The patient has no plasma urea, over which no clearance can be formed; or a solute of the panel is not stated; or a pool lacks a level, a generation or
    /// a place in the panel.
    /// </exception>
    /// <exception cref="IntegrationException">The day could not be integrated, or did not settle; nothing partial is returned.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static RegimenOutcome Run(
        Patient patient, ThreePoreMembrane membrane, Regimen regimen, RegimenOptions? options = null, RunControl? control = null) =>
        new RegimenWorkspace().Run(patient, membrane, regimen, options ?? RegimenOptions.Default, control ?? RunControl.None);
}
