namespace Transport;

/// <summary>Constants of physics, in the units of the kinetics: mL, min, µmol, mmol/L, mmHg.</summary>
internal static class PhysicalConstants
{
    /// <summary>RT at 37 °C, mmHg per mmol/L.</summary>
    public const double OsmoticPressurePerConcentration = 19.34;

    /// <summary>Water fraction of plasma by which <see cref="PlasmaLevel.PlasmaWater"/> divides (0.93 to 0.94, memory).</summary>
    public const double PlasmaWaterFraction = 0.93;

    /// <summary>
    /// Donnan ratio of a cation of charge one, fluid without protein over plasma water, by which <see cref="PlasmaLevel.PlasmaWaterDonnan"/>
    /// multiplies, to the power of the charge. 0.95 to 0.96 for cations, 1.04 to 1.05 for anions (memory); 0.95 is a choice: it makes sodium's
    /// product with plasma water the remembered 1.02.
    /// </summary>
    public const double DonnanRatio = 0.95;

    private const double BoltzmannErgPerKelvin = 1.380649e-16;
    private const double BodyTemperatureKelvin = 310.15;

    // Water at 37 °C is 0.0069 poise; the three-pore papers write 0.007.
    private const double ViscosityPoise = 0.0070;

    /// <summary>Free diffusion coefficient of a sphere by Stokes and Einstein, cm²/s.</summary>
    public static double FreeDiffusion(double radiusAngstrom) =>
        BoltzmannErgPerKelvin * BodyTemperatureKelvin / (6 * Math.PI * ViscosityPoise * radiusAngstrom * 1e-8);
}
