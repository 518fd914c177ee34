using System.Globalization;

namespace Transport.Analysis;

/// <summary>The ultrafiltration that a patient needs in 24 h, as a range. More is not better: above it the patient dries out and loses urine.</summary>
public sealed record FluidTarget
{
    private FluidTarget(Volume floor, Volume ceiling)
    {
        Floor = floor;
        Ceiling = ceiling;
    }

    /// <summary>Least 24-h ultrafiltration.</summary>
    public Volume Floor { get; }

    /// <summary>Most 24-h ultrafiltration.</summary>
    public Volume Ceiling { get; }

    /// <summary>"1500 mL drunk, less 720 mL of urine and 500 mL of other losses, ± 200 mL"; empty where the range was given as such.</summary>
    public string Basis { get; private init; } = "";

    /// <summary>A range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ceiling is not above the floor.</exception>
    public static FluidTarget Between(Volume floor, Volume ceiling) => ceiling > floor
        ? new(floor, ceiling)
        : throw new ArgumentOutOfRangeException(nameof(ceiling), ceiling.Milliliters, $"Expected more than the floor of {floor}.");

    /// <summary>What is drunk less what leaves otherwise, with a margin to both sides; a need below zero counts as zero.</summary>
    /// <param name="intake">Fluid taken in 24 h.</param>
    /// <param name="urine">Urine in 24 h.</param>
    /// <param name="otherLosses">Through skin, lungs and bowel, less the water of metabolism.</param>
    /// <param name="margin">To both sides; the floor is never below zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin is not positive, or another volume is negative.</exception>
    public static FluidTarget From(Volume intake, Volume urine, Volume otherLosses, Volume margin)
    {
        NotNegative(intake, nameof(intake));
        NotNegative(urine, nameof(urine));
        NotNegative(otherLosses, nameof(otherLosses));
        var need = Math.Max(0, (intake - urine - otherLosses).Milliliters);
        return Between(
            Volume.FromMilliliters(Math.Max(0, need - margin.Milliliters)), Volume.FromMilliliters(need + margin.Milliliters)) with
        {
            Basis = string.Create(
                CultureInfo.InvariantCulture,
                $"{intake.Milliliters:0} mL drunk, less {urine.Milliliters:0} mL of urine and {otherLosses.Milliliters:0} mL of other losses, ± {margin.Milliliters:0} mL"),
        };
    }

    /// <summary>Whether an ultrafiltration lies in the range, its ends included.</summary>
    public bool Contains(Volume ultrafiltration) => ultrafiltration >= Floor && ultrafiltration <= Ceiling;

    /// <summary>"200 to 500 mL".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Floor.Milliliters:0} to {Ceiling.Milliliters:0} mL");

    private static void NotNegative(Volume value, string name)
    {
        if (value.Milliliters < 0)
        {
            throw new ArgumentOutOfRangeException(name, value.Milliliters, "Expected zero or more mL.");
        }
    }
}
