namespace Transport.Studies;

/// <summary>One virtual person of a recovery study: where the truth lies in what the fit says.</summary>
/// <remarks>
/// A place is the share of the posterior's draws below the truth: over many people it is even between 0 and 1 where the fit is calibrated. Empty where the truth has
/// no such number.
/// </remarks>
public sealed record RecoveryRow
{
    /// <summary>Number of the person.</summary>
    public required int Person { get; init; }

    /// <summary>The fit's own status.</summary>
    public required FitStatus Status { get; init; }

    /// <summary>Place of A0/Δx.</summary>
    public required double? DiffusionAreaPlace { get; init; }

    /// <summary>Place of the glucose scale.</summary>
    public required double? GlucoseScalePlace { get; init; }

    /// <summary>Place of the osmotic conductance to glucose.</summary>
    public required double OsmoticConductancePlace { get; init; }

    /// <summary>Place of F0.</summary>
    public required double? TransientPlace { get; init; }

    /// <summary>Place of the lymphatic removal.</summary>
    public required double? LymphPlace { get; init; }

    /// <summary>Place of the share of the ultrasmall pores.</summary>
    public required double? UltrasmallPlace { get; init; }

    /// <summary>Place of sodium's permeability.</summary>
    public required double? SodiumPermeabilityPlace { get; init; }

    /// <summary>ln(estimate / truth) of A0/Δx.</summary>
    public required double? DiffusionAreaLogError { get; init; }

    /// <summary>ln(estimate / truth) of the glucose scale.</summary>
    public required double? GlucoseScaleLogError { get; init; }

    /// <summary>ln(estimate / truth) of the osmotic conductance to glucose.</summary>
    public required double OsmoticConductanceLogError { get; init; }

    /// <summary>ln(estimate / truth) of F0.</summary>
    public required double? TransientLogError { get; init; }

    /// <summary>ln(estimate / truth) of the lymphatic removal.</summary>
    public required double? LymphLogError { get; init; }

    /// <summary>ln(estimate / truth) of the share of the ultrasmall pores.</summary>
    public required double? UltrasmallLogError { get; init; }

    /// <summary>ln(estimate / truth) of sodium's permeability.</summary>
    public required double? SodiumPermeabilityLogError { get; init; }

    /// <summary>Ultrafiltration of one dwell of 4 h at the tested strength, mL: the truth with the night's noise.</summary>
    public required double TestedMilliliters { get; init; }

    /// <summary>Lower end of its 90 % band.</summary>
    public required double TestedLow { get; init; }

    /// <summary>Upper end of its 90 % band.</summary>
    public required double TestedHigh { get; init; }

    /// <summary>Ultrafiltration of one dwell of 4 h at the other strength, mL: the truth with the discrepancy of the strength and the night's noise.</summary>
    public required double OtherMilliliters { get; init; }

    /// <summary>Lower end of its 90 % band.</summary>
    public required double OtherLow { get; init; }

    /// <summary>Upper end of its 90 % band.</summary>
    public required double OtherHigh { get; init; }
}
