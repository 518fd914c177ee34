using System.Collections.Immutable;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>An ensemble four members at a time.</summary>
internal static class EnsembleLanes
{
    /// <summary>What was drawn of four members from one on. Lanes beyond the last member repeat it.</summary>
    public static FreeParameters<Lanes4> FourFrom(MembraneEnsemble ensemble, int first)
    {
        return new()
        {
            UltrafiltrationCoefficient = Four(ensemble.UltrafiltrationCoefficients),
            DiffusionArea = Four(ensemble.DiffusionAreas),
            GlucosePermeabilityScale = Four(ensemble.GlucosePermeabilityScales),
            TransientAmplitude = Four(ensemble.TransientAmplitudes),
            LymphaticRemoval = Four(ensemble.LymphaticRemovals),
            UltrasmallFraction = Four(ensemble.UltrasmallFractions),
            LargeFraction = Four(ensemble.LargeFractions),
            SodiumPermeability = Four(ensemble.SodiumPermeabilities),
        };

        Lanes4 Four(ImmutableArray<double> values) => new(Vector256.Create(At(values, 0), At(values, 1), At(values, 2), At(values, 3)));

        double At(ImmutableArray<double> values, int lane) => values[Math.Min(first + lane, values.Length - 1)];
    }
}
