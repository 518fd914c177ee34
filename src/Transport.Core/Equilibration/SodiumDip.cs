namespace Transport;

/// <summary>What diffusion hides of the sodium dip. Plain numbers: mmol/L, min, mL/min, mL.</summary>
internal static class SodiumDip
{
    /// <summary>How much a dip would be deeper without diffusion: K ∫ (P − D) dt / V, by the trapezoid rule over the samples.</summary>
    public static double HiddenByDiffusion(
        IReadOnlyList<(double Minutes, double Sodium)> course, double plasmaSodium, double permeability, double volume)
    {
        var integral = 0.0;
        for (var i = 1; i < course.Count; i++)
        {
            var gradients = plasmaSodium - course[i - 1].Sodium + (plasmaSodium - course[i].Sodium);
            integral += 0.5 * gradients * (course[i].Minutes - course[i - 1].Minutes);
        }

        return permeability * integral / volume;
    }
}
