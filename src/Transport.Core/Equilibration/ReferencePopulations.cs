namespace Transport;

/// <summary>The published series that ship with the library. Each equals its folder under reference-data, which a test checks.</summary>
public static class ReferencePopulations
{
    // "2 L" where the source names no other: by protocol (memory). Whether overfill was taken off is read for Italy alone; elsewhere it is taken to count.
    private static readonly Volume TwoLiters = Volume.FromMilliliters(2000);

    /// <summary>North America 1987, 2.27 %: the series behind the classes. Its SD is 0.16 above and 0.15 below the mean; 0.16 is used.</summary>
    public static ReferencePopulation NorthAmerica1987 { get; } = new()
    {
        Name = "North America 1987, 2.27 %",
        GlucosePercent = 2.27,
        Count = 103,
        DialysateToPlasmaCreatinine = new(0.65, 0.16),
        DialysateToInitialGlucose = new(0.38, 0.12),
        NetUltrafiltrationMilliliters = new(320, 283),
        Fill = Volume.FromMilliliters(2050),
        Evidence = Evidence.Memory,
        Source = "Twardowski et al., Perit Dial Bull 1987;7:138-147",
        Folder = "twardowski-1987-categories",
    };

    /// <summary>Italy 2019, 3.86 %, incident patients; net ultrafiltration after correction for overfill.</summary>
    public static ReferencePopulation Italy2019 { get; } = new()
    {
        Name = "Italy 2019, 3.86 %",
        GlucosePercent = 3.86,
        Count = 758,
        DialysateToPlasmaCreatinine = new(0.73, 0.10),
        DialysateToInitialGlucose = new(0.25, 0.08),
        NetUltrafiltrationMilliliters = new(675, 308),
        Fill = TwoLiters,
        SodiumDipMillimolesPerLiter = new(8.4, 3.8),
        Evidence = Evidence.Read,
        Source = "Virga et al., Perit Dial Int 2019, doi 10.3747/pdi.2017.00004 (abstract; author and year from memory)",
        Folder = "virga-2019-strong-glucose",
    };

    /// <summary>Amsterdam 2003, 3.86 %, ultrafiltration failure left out. SD from the printed 95 % range 0.52 to 0.88.</summary>
    public static ReferencePopulation Amsterdam2003 { get; } = new()
    {
        Name = "Amsterdam 2003, 3.86 %",
        GlucosePercent = 3.86,
        Count = 154,
        DialysateToPlasmaCreatinine = new(0.70, 0.09),
        Evidence = Evidence.Read,
        Source = "Smit et al., Perit Dial Int 2003;23:440 (abstract, SD computed from the 95 % range)",
        Folder = "smit-2003-strong-glucose",
    };

    /// <summary>Madrid 2010, 3.86 %.</summary>
    public static ReferencePopulation Madrid2010 { get; } = new()
    {
        Name = "Madrid 2010, 3.86 %",
        GlucosePercent = 3.86,
        Count = 184,
        DialysateToPlasmaCreatinine = new(0.71, 0.09),
        NetUltrafiltrationMilliliters = new(759, 233),
        Fill = TwoLiters,
        IsOverfillCounted = true,
        SodiumDipMillimolesPerLiter = new(4.7, 2.3),
        Evidence = Evidence.Read,
        Source = "Nefrologia 2010;30:208-213 (abstract)",
        Folder = "madrid-2010-strong-glucose",
    };

    /// <summary>Cross-over 2003, its 2.27 % arm.</summary>
    public static ReferencePopulation CrossOver2003Middle { get; } = new()
    {
        Name = "cross-over 2003, 2.27 %",
        GlucosePercent = 2.27,
        Count = 23,
        DialysateToPlasmaCreatinine = new(0.67, 0.09),
        NetUltrafiltrationMilliliters = new(478, 175),
        Fill = TwoLiters,
        IsOverfillCounted = true,
        Evidence = Evidence.Read,
        Source = "congress abstract 2003 (CIN 2003), 23 patients tested with both strengths",
        Folder = "cross-over-2003-strengths",
    };

    /// <summary>Cross-over 2003, its 3.86 % arm.</summary>
    public static ReferencePopulation CrossOver2003Strong { get; } = new()
    {
        Name = "cross-over 2003, 3.86 %",
        GlucosePercent = 3.86,
        Count = 23,
        DialysateToPlasmaCreatinine = new(0.66, 0.10),
        NetUltrafiltrationMilliliters = new(936, 233),
        Fill = TwoLiters,
        IsOverfillCounted = true,
        Evidence = Evidence.Read,
        Source = "congress abstract 2003 (CIN 2003), 23 patients tested with both strengths",
        Folder = "cross-over-2003-strengths",
    };

    /// <summary>Japan, national registry; year and glucose strength were not shown.</summary>
    public static ReferencePopulation JapanRegistry { get; } = new()
    {
        Name = "Japan, registry",
        GlucosePercent = null,
        Count = 2486,
        DialysateToPlasmaCreatinine = new(0.66, 0.13),
        Evidence = Evidence.Read,
        Source = "Japanese dialysis registry, peritoneal section, figure 44 (year not shown)",
        Folder = "japan-registry-creatinine",
    };

    /// <summary>North American children 1996, 2.27 %, 1100 mL/m².</summary>
    public static ReferencePopulation Children1996 { get; } = new()
    {
        Name = "North American children 1996, 2.27 %",
        GlucosePercent = 2.27,
        Count = 95,
        IsOfChildren = true,
        DialysateToPlasmaCreatinine = new(0.64, 0.13),
        DialysateToInitialGlucose = new(0.33, 0.11),
        Evidence = Evidence.Memory,
        Source = "Warady et al., J Am Soc Nephrol 1996;7:2385-2391",
        Folder = "warady-1996-children",
    };

    /// <summary>Italian children 1993, 26 tests in 16 children, 40 mL/kg: such fills raise D/P in small children; the classes of 1996 do not hold.</summary>
    public static ReferencePopulation ItalianChildren1993 { get; } = new()
    {
        Name = "Italian children 1993, 40 mL/kg",
        GlucosePercent = null,
        Count = 26,
        IsOfChildren = true,
        DialysateToPlasmaCreatinine = new(0.696, 0.12),
        DialysateToInitialGlucose = new(0.344, 0.098),
        Evidence = Evidence.Read,
        Source = "Perit Dial Int 1993;13 Suppl 2:S260 (abstract)",
        Folder = "italy-1993-children",
    };

    /// <summary>Patients on manual exchanges, tested at the start; strength not shown.</summary>
    public static ReferencePopulation ManualExchangeCohort { get; } = new()
    {
        Name = "60 patients on manual exchanges, baseline",
        GlucosePercent = null,
        Count = 60,
        DialysateToPlasmaCreatinine = new(0.654, 0.141),
        Evidence = Evidence.Read,
        Source = "cohort of 60 adults on manual exchanges, tested at the start and after a year (abstract)",
        Folder = "manual-exchange-cohort",
    };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ReferencePopulation> All { get; } =
    [
        NorthAmerica1987, Italy2019, Amsterdam2003, Madrid2010, CrossOver2003Middle, CrossOver2003Strong, JapanRegistry, ManualExchangeCohort,
        Children1996, ItalianChildren1993,
    ];

    /// <summary>The series that a test is compared with unless another is chosen: of its age group, and of its strength where there is one.</summary>
    public static ReferencePopulation For(EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        var limits = MembraneThresholds.Default;
        return test.Patient.AgeYears < limits.AdultAge.Value ? Children1996
            : limits.IsStrongStrength(test.Solution) ? Italy2019
            : NorthAmerica1987;
    }
}
