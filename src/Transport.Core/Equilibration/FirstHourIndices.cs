namespace Transport;

/// <summary>Where the water of the first hour came from: free of sodium, or with it through small pores.</summary>
/// <remarks>
/// Rests on differences of sodium: 1 mmol/L moves free water by about 18 mL, see <see cref="Sensitivities"/>. Published means are of the
/// uncorrected form, which neglects diffusion and absorption; the corrected one stands beside it.
/// </remarks>
public sealed record FirstHourIndices
{
    /// <summary>Net ultrafiltration of the first hour, mL.</summary>
    public required IndexValue NetUltrafiltration { get; init; }

    /// <summary>Sodium removed in the first hour, mmol.</summary>
    public required IndexValue SodiumRemoved { get; init; }

    /// <summary>Fluid with plasma sodium, mL.</summary>
    public required IndexValue SmallPoreFluid { get; init; }

    /// <summary>Water without sodium, mL. May come out below zero or above the ultrafiltration by error of sodium; it is not clamped.</summary>
    public required IndexValue FreeWater { get; init; }

    /// <summary>Free water over net ultrafiltration; null where that is not positive.</summary>
    public IndexValue? FreeWaterFraction { get; init; }

    /// <summary>Small-pore fluid after subtraction of diffused sodium, mL.</summary>
    public required IndexValue CorrectedSmallPoreFluid { get; init; }

    /// <summary>Free water after subtraction of diffused sodium, mL.</summary>
    public required IndexValue CorrectedFreeWater { get; init; }

    /// <summary>How far free water moves when one input does.</summary>
    public required IReadOnlyList<IndexSensitivity> Sensitivities { get; init; }

    /// <summary>Whether the sodium at the start is the label's, which cannot be relied on.</summary>
    public bool IsFreshSodiumLabelled { get; init; }

    /// <summary>All of them, in the order of a report.</summary>
    public IReadOnlyList<IndexValue> All =>
    [
        .. new[] { NetUltrafiltration, SodiumRemoved, SmallPoreFluid, FreeWater, FreeWaterFraction, CorrectedSmallPoreFluid, CorrectedFreeWater }
            .OfType<IndexValue>(),
    ];
}
