using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>Standard normal deviates of each layer: one for every draw and for every thing that errs on its own.</summary>
/// <remarks>
/// No random numbers but a grid of irrational steps, which fills the line evenly, so that few draws tell a quantile; the seed of the layer turns it. A draw's
/// deviate does not depend on how many there are, on the regimen, or on the other layers.
/// </remarks>
internal sealed class DoubtDraws
{
    // Members are repeated until this many draws carry the doubt that is not the membrane's.
    private const int Least = 1000;

    // Roots never fall into step with each other; those with small partial quotients fill the line most evenly, the golden ratio best.
    private static readonly double[] Steps = [Math.Sqrt(3), Math.Sqrt(2), 0.5 * (1 + Math.Sqrt(5)), Math.Sqrt(7), Math.Sqrt(11), Math.Sqrt(13), Math.Sqrt(6), Math.Sqrt(10), Math.Sqrt(15)];

    private readonly double[] turns;

    /// <param name="layers">Seeds of model form and nights.</param>
    /// <param name="seed">Seed of the parameters, the ensemble's.</param>
    public DoubtDraws(DoubtLayers layers, int seed) => turns =
    [
        .. Enum.GetValues<Part>().Select(part => Turn(part switch
        {
            Part.Night => layers.NightToNightSeed,
            Part.LyingArea or Part.LyingConductance => layers.PostureSeed,
            Part.Pressure => seed,
            _ => layers.ModelFormSeed,
        }, (int)part)),
    ];

    /// <summary>What errs on its own.</summary>
    public enum Part
    {
        Weak,
        Middle,
        Strong,
        Icodextrin,
        Sodium,
        Pressure,
        Night,
        LyingArea,
        LyingConductance,
    }

    /// <summary>How many draws each member of an ensemble gives.</summary>
    public static int PerMember(int members) => (Least + members - 1) / members;

    /// <summary>The part that a solution errs as.</summary>
    public static Part Of(DialysisSolution solution) => solution.Agent == OsmoticAgent.Icodextrin
        ? Part.Icodextrin
        : ModelDiscrepancies.StrengthOf(solution) switch
        {
            GlucoseStrength.Weak => Part.Weak,
            GlucoseStrength.Middle => Part.Middle,
            _ => Part.Strong,
        };

    public double this[Part part, int draw] => Normal.InvCDF(0, 1, Math.Clamp(Place(part, draw), 1e-6, 1 - 1e-6));

    /// <summary>The same as a place between 0 and 1.</summary>
    public double Place(Part part, int draw)
    {
        var place = (draw + 0.5) * Steps[(int)part] + turns[(int)part];
        return place - Math.Floor(place);
    }

    // A number from 0 to 1 from a seed and a part (SplitMix64: Steele, Lea and Flood 2014, memory).
    private static double Turn(int seed, int part)
    {
        var z = unchecked((ulong)seed * 0x9E3779B97F4A7C15 + (ulong)(part + 1) * 0xD1B54A32D192ED03);
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EB);
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
