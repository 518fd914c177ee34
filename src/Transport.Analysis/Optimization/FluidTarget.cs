using static System.FormattableString;

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

    /// <summary>
    /// "1500 mL taken in by drink and food, less 720 mL of urine and 500 mL of other losses, ± 200 mL", and what of it was not stated; empty where the range was given as such.
    /// </summary>
    public string Basis { get; private init; } = "";

    /// <summary>By how much the losses exceed what is taken in; zero where they do not. The need counts as none then.</summary>
    public Volume LossesBeyondIntake { get; private init; }

    /// <summary>What to be careful about with the range itself.</summary>
    public IReadOnlyList<Finding> Findings => LossesBeyondIntake.Milliliters <= 0 ? [] :
    [
        new(
            Severity.Warning,
            "losses-exceed-intake",
            Invariant($"Urine and other losses exceed what is taken in by {LossesBeyondIntake.Milliliters:0} mL: by these numbers the body loses fluid without any ultrafiltration. The range of {this} counts the need as none; check the numbers.")),
    ];

    /// <summary>A range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ceiling is not above the floor.</exception>
    public static FluidTarget Between(Volume floor, Volume ceiling) => ceiling > floor
        ? new(floor, ceiling)
        : throw new ArgumentOutOfRangeException(nameof(ceiling), ceiling.Milliliters, $"Expected more than the floor of {floor}.");

    /// <summary>What is taken in less what leaves otherwise, with a margin to both sides.</summary>
    /// <remarks>A need below zero counts as zero, which <see cref="Findings"/> say.</remarks>
    /// <param name="intake">Fluid taken in in 24 h: what is drunk, and the water of food.</param>
    /// <param name="kidneys">Whose urine leaves; where it was not stated it counts as none, which the basis says.</param>
    /// <param name="otherLosses">Through skin, lungs and bowel, less the water of metabolism.</param>
    /// <param name="margin">To both sides; the floor is never below zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin is not positive, or another volume is negative.</exception>
    public static FluidTarget From(Volume intake, ResidualFunction kidneys, Volume otherLosses, Volume margin)
    {
        ArgumentNullException.ThrowIfNull(kidneys);
        NotNegative(intake, nameof(intake));
        NotNegative(otherLosses, nameof(otherLosses));
        var urine = kidneys.UrineVolumePerDay;
        var need = (intake - urine - otherLosses).Milliliters;
        var counted = Math.Max(0, need);
        var words = kidneys.IsUrineStated ? Invariant($"{urine.Milliliters:0} mL of urine") : "no urine (urine not stated, taken as 0)";
        return Between(Volume.FromMilliliters(Math.Max(0, counted - margin.Milliliters)), Volume.FromMilliliters(counted + margin.Milliliters)) with
        {
            Basis = Invariant($"{intake.Milliliters:0} mL taken in by drink and food, less {words} and {otherLosses.Milliliters:0} mL of other losses, ± {margin.Milliliters:0} mL")
                + (need < 0 ? Invariant($"; the losses are {-need:0} mL more than the intake, and the need counts as none") : ""),
            LossesBeyondIntake = Volume.FromMilliliters(Math.Max(0, -need)),
        };
    }

    /// <summary>The same with urine that was measured.</summary>
    /// <inheritdoc cref="From(Volume, ResidualFunction, Volume, Volume)"/>
    /// <param name="intake">Fluid taken in in 24 h: what is drunk, and the water of food.</param>
    /// <param name="urine">Urine in 24 h.</param>
    /// <param name="otherLosses">Through skin, lungs and bowel, less the water of metabolism.</param>
    /// <param name="margin">To both sides; the floor is never below zero.</param>
    public static FluidTarget From(Volume intake, Volume urine, Volume otherLosses, Volume margin) =>
        From(intake, ResidualFunction.None with { UrineVolumePerDay = urine }, otherLosses, margin);

    /// <summary>Whether an ultrafiltration lies in the range, its ends included.</summary>
    public bool Contains(Volume ultrafiltration) => ultrafiltration >= Floor && ultrafiltration <= Ceiling;

    /// <summary>"200 to 500 mL".</summary>
    public override string ToString() => Invariant($"{Floor.Milliliters:0} to {Ceiling.Milliliters:0} mL");

    private static void NotNegative(Volume value, string name)
    {
        if (value.Milliliters < 0)
        {
            throw new ArgumentOutOfRangeException(name, value.Milliliters, "Expected zero or more mL.");
        }
    }
}
