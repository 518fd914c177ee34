namespace Transport;

/// <summary>How much a cylindrical pore hinders a sphere, by λ = solute radius / pore radius.</summary>
/// <remarks>
/// The pair of the three-pore literature; attributed to Rippe and Haraldsson, Physiol Rev 1994;74:163 (memory). Checked: together
/// they reproduce all sixteen reflection coefficients and all relative permeabilities of a published table (Sci Rep 2020;
/// s41598-020-75687-1, Table 1, read).
/// </remarks>
public static class Hindrance
{
    /// <summary>Restricted-diffusion factor A/A0: 1 for a point, 0 where the solute fills the pore.</summary>
    /// <exception cref="ArgumentOutOfRangeException">λ is negative or NaN.</exception>
    public static double DiffusionFactor(double lambda)
    {
        Require.NotNegative(lambda, "");
        return lambda >= 1
            ? 0
            : Math.Pow(1 - lambda, 4.5) / (1 - 0.3956 * lambda + 1.0616 * lambda * lambda);
    }

    /// <summary>Reflection coefficient σ: 0 for a point, 1 where the solute cannot enter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">λ is negative or NaN.</exception>
    public static double ReflectionCoefficient(double lambda)
    {
        Require.NotNegative(lambda, "");
        if (lambda >= 1)
        {
            return 1;
        }

        var partition = (1 - lambda) * (1 - lambda);
        return 1 - partition * (2 - partition) * (1 - lambda / 3) / (1 - lambda / 3 + 2.0 / 3.0 * lambda * lambda);
    }
}
