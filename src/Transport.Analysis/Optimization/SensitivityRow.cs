namespace Transport.Analysis;

/// <summary>What becomes of a chosen regimen, and of the choice, if something is other than thought.</summary>
/// <param name="What">What is other: "the membrane as fast as 1 draw in 20".</param>
/// <param name="Outcome">The chosen regimen's day then; null where it could not be carried out.</param>
/// <param name="StillMeets">Whether it then lies in the fluid range and comes up to the clearance goal.</param>
/// <param name="WouldBe">The option with the least glucose that the search would then list; null: none.</param>
/// <param name="Words">The same in a sentence.</param>
public sealed record SensitivityRow(string What, RegimenOutcome? Outcome, bool StillMeets, Regimen? WouldBe, string Words);
