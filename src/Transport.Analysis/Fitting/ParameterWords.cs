namespace Transport.Analysis;

/// <summary>What a table calls a parameter, and in which unit it prints it.</summary>
internal static class ParameterWords
{
    public static string Name(this MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => "A0/Δx",
        MembraneParameter.GlucosePermeabilityScale => "glucose permeability scale",
        MembraneParameter.OsmoticConductance => "osmotic conductance to glucose",
        MembraneParameter.TransientAmplitude => "initial transient F0",
        MembraneParameter.LymphaticRemoval => "lymphatic removal",
        MembraneParameter.UltrasmallFraction => "share of the ultrasmall pores",
        MembraneParameter.SodiumPermeability => "sodium permeability",
        _ => "share of the large pores",
    };

    public static string Unit(this MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => "cm per 1.73 m²",
        MembraneParameter.OsmoticConductance => "µL/min/mmHg per 1.73 m²",
        MembraneParameter.LymphaticRemoval or MembraneParameter.SodiumPermeability => "mL/min per 1.73 m²",
        MembraneParameter.UltrasmallFraction or MembraneParameter.LargePoreFraction => "%",
        _ => "",
    };

    /// <summary>From the unit of the kinetics, of one person, to the printed one.</summary>
    public static double PerUnit(this MembraneParameter parameter, double surfaceFactor) => parameter switch
    {
        MembraneParameter.OsmoticConductance => 1000 / surfaceFactor,
        MembraneParameter.DiffusionArea or MembraneParameter.LymphaticRemoval or MembraneParameter.SodiumPermeability => 1 / surfaceFactor,
        MembraneParameter.UltrasmallFraction or MembraneParameter.LargePoreFraction => 100,
        _ => 1,
    };

    public static string Name(this LumpedParameter parameter) => parameter switch
    {
        LumpedParameter.CreatinineTransfer => "mass transfer area coefficient of creatinine",
        LumpedParameter.GlucoseToCreatinine => "glucose's coefficient over creatinine's",
        LumpedParameter.OsmoticConductance => "osmotic conductance to glucose",
        LumpedParameter.SievingCoefficient => "sieving coefficient",
        LumpedParameter.SodiumTransfer => "mass transfer area coefficient of sodium",
        _ => "fluid absorption",
    };

    public static string Unit(this LumpedParameter parameter) => parameter switch
    {
        LumpedParameter.OsmoticConductance => "µL/min/mmHg per 1.73 m²",
        LumpedParameter.GlucoseToCreatinine or LumpedParameter.SievingCoefficient => "",
        _ => "mL/min per 1.73 m²",
    };

    /// <summary>From the unit of the equations, of one person, to the printed one.</summary>
    public static double PerUnit(this LumpedParameter parameter, double surfaceFactor) => parameter switch
    {
        LumpedParameter.OsmoticConductance => 1000 / surfaceFactor,
        LumpedParameter.GlucoseToCreatinine or LumpedParameter.SievingCoefficient => 1,
        _ => 1 / surfaceFactor,
    };
}
