namespace Transport.Analysis;

/// <summary>How far residual kidney function may fall before a regimen stops meeting the goals, everything else unchanged.</summary>
/// <remarks>Of an option of a search, by its goals with their noise; <see cref="ResidualFunctionNeeded"/> asks the same of any regimen, by figures that are given. The day comes from one
/// and the same <see cref="RenalDecline"/>.</remarks>
/// <param name="Share">
/// Share of today's function that is needed, 0 to 1; more than 1: the goals are not met today. Null where they are not met and there is no function today of which
/// a share could be needed.
/// </param>
/// <param name="FirstToFail">What fails first.</param>
/// <param name="Words">The same in a sentence, with urine and clearance, and the day where a decline was stated.</param>
/// <param name="Until">The last day on which it meets them, if the decline that was stated goes on; null where none was stated, or it never comes to that.</param>
public sealed record RenalReserve(double? Share, CenterGoal FirstToFail, string Words, DateOnly? Until = null);
