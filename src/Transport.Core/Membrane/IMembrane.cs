namespace Transport;

/// <summary>A model of the peritoneal membrane that a dwell can be simulated with: three kinds of pores, or one barrier.</summary>
/// <remarks>
/// Charts and derived outputs read the same <see cref="DwellCourse"/> from either. The equations are this library's own, so nobody else can
/// implement it.
/// </remarks>
public interface IMembrane
{
    /// <summary>Osmotic conductance to glucose: ultrafiltration for each mmHg of glucose's osmotic pressure.</summary>
    public HydraulicConductance OsmoticConductanceToGlucose { get; }

    /// <exception cref="IntegrationException">The dwell could not be integrated to its end.</exception>
    internal DwellCourse Run(Patient patient, Dwell dwell, DwellOptions options);
}
