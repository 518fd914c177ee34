namespace Transport.Analysis;

/// <summary>Which goal no regimen meets, and by how much the nearest misses it.</summary>
/// <param name="Goal">"fluid floor", "fluid ceiling", "clearance", "fluid floor and clearance", or "limits" where nothing could be simulated.</param>
/// <param name="ByHowMuch">In words, with numbers.</param>
/// <param name="Nearest">The regimen that comes nearest without exceeding the fluid ceiling; null where there is none.</param>
public sealed record UnmetGoal(string Goal, string ByHowMuch, Regimen? Nearest);
