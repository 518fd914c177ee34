namespace Transport.Analysis;

/// <summary>The numbers of one barrier that a fit estimates.</summary>
public enum LumpedParameter
{
    /// <summary>Mass transfer area coefficient of creatinine, mL/min.</summary>
    CreatinineTransfer,

    /// <summary>Glucose's coefficient over creatinine's.</summary>
    GlucoseToCreatinine,

    /// <summary>Ultrafiltration for each mmHg of glucose's osmotic pressure, µL/min/mmHg.</summary>
    OsmoticConductance,

    /// <summary>What the ultrafiltrate carries of the mean concentration on both sides.</summary>
    SievingCoefficient,

    /// <summary>Mass transfer area coefficient of sodium, mL/min.</summary>
    SodiumTransfer,

    /// <summary>Total loss of fluid from the cavity, mL/min. No single test tells it from the conductance.</summary>
    FluidAbsorption,
}
