using System.Globalization;

namespace Transport.Analysis;

/// <summary>An arterial pressure as a cuff shows it, both in mmHg.</summary>
public readonly record struct BloodPressure
{
    private BloodPressure(int systolic, int diastolic)
    {
        SystolicMillimetersOfMercury = systolic;
        DiastolicMillimetersOfMercury = diastolic;
    }

    /// <summary>The upper value.</summary>
    public int SystolicMillimetersOfMercury { get; }

    /// <summary>The lower value.</summary>
    public int DiastolicMillimetersOfMercury { get; }

    /// <summary>From two values in mmHg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 50 to 280 over 20 to 180, or the upper is not above the lower.</exception>
    public static BloodPressure FromMillimetersOfMercury(int systolic, int diastolic) => IsPossible(systolic, diastolic)
        ? new(systolic, diastolic)
        : throw new ArgumentOutOfRangeException(nameof(systolic), $"{systolic}/{diastolic}", "Expected 50 to 280 over 20 to 180 mmHg, the upper above the lower.");

    /// <summary>"128/76".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{SystolicMillimetersOfMercury}/{DiastolicMillimetersOfMercury}");

    internal static bool IsPossible(int systolic, int diastolic) => systolic is >= 50 and <= 280 && diastolic is >= 20 and <= 180 && systolic > diastolic;
}
