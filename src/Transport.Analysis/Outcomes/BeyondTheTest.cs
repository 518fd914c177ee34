using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Where a regimen asks more of a test than it measured: fills, posture, kidneys. The same words for options of a search and for regimens side by side.</summary>
internal static class BeyondTheTest
{
    // Fluid cycles are given 1200 mL/m² in print, clearance cycles 1400 (Perit Dial Int 2021, doi 10.1177/08968608211010055, read).
    private const double LargeFillPerSquareMeter = 1200;

    /// <summary>Contact is complete at about 1400 mL/m² (Fischbach 2016, read), which is also the most that is given to children from two years on (1400 to 1500, a secondary page, read).</summary>
    internal const double FullContactPerSquareMeter = 1400;

    // Of infants 600 to 800 mL/m² (memory).
    private const double MostOfInfants = 800;
    private const double InfantYears = 2;

    // A tested fill of 2.0 L stands for 1.9 to 2.1 L: within 0.1 L classes of a test are compared as of one fill, bags hold 50 to 100 mL more than they say, and a tenth of a litre
    // raises the pressure by 0.2 cmH2O (2.0 cmH2O per litre lying, read). So a twentieth more is the same fill (choice).
    private const double SameFill = 1.05;

    /// <summary>A fill materially above every one that was tested in this patient.</summary>
    public static IEnumerable<Finding> FillAboveTested(IEnumerable<Regimen> regimens, Volume? largestTested)
    {
        var largest = regimens.SelectMany(regimen => regimen.Exchanges).Select(exchange => exchange.Fill).DefaultIfEmpty().Max();
        if (largestTested is { } tested && largest > tested * SameFill)
        {
            yield return new(
                Severity.Warning,
                "fill-above-tested",
                Invariant($"Its largest fill is {largest.Milliliters:0} mL, and the largest that was tested {tested.Milliliters:0} mL: above that nothing was measured in this patient, and the model overstates ultrafiltration."));
        }
    }

    /// <summary>A fill that is more than children are given, whatever was tested: a volume in mL says nothing before it is laid beside the child.</summary>
    public static IEnumerable<Finding> FillOfChild(Patient patient, IEnumerable<Regimen> regimens)
    {
        var largest = regimens.SelectMany(regimen => regimen.Exchanges).Select(exchange => exchange.Fill.Milliliters).DefaultIfEmpty().Max();
        var (perSquareMeter, isInfant) = (largest / patient.BodySurface.SquareMeters, patient.AgeYears < InfantYears);
        if (TargetAssessment.IsChild(patient) && perSquareMeter > (isInfant ? MostOfInfants : FullContactPerSquareMeter))
        {
            yield return new(
                Severity.Warning,
                "fill-large-for-child",
                Invariant($"Its largest fill is {largest:0} mL, {Math.Round(perSquareMeter / 10) * 10:0} mL per m² of body surface in a child of {patient.AgeYears:0.#} years and {patient.Weight.Kilograms:0.#} kg. ")
                    + (isInfant ? "Infants are given 600 to 800 (memory)." : "Usual are 800 to 1100, and 1400 the most (from two years on; read).")
                    + " Check the volume: too much is pain, leak, hernia and breath that is short.");
        }
    }

    /// <summary>A fill that the model thinks too well of.</summary>
    public static IEnumerable<Finding> LargeFills(Patient patient, IEnumerable<Regimen> regimens)
    {
        var large = LargeFillPerSquareMeter * patient.BodySurface.SquareMeters;
        if (regimens.SelectMany(regimen => regimen.Exchanges).Any(exchange => exchange.Fill.Milliliters > large))
        {
            yield return new(
                Severity.Note,
                "large-fills-overstated",
                Invariant($"Above {large:0} mL per fill the model overstates ultrafiltration: measured, a litre more lowered it, and the model raises it."));
        }
    }

    /// <summary>The test upright, the night lying: children had a surface of 29,400 cm lying where standing it was 21,900 (read).</summary>
    public static Finding NightIsSupine(DoubtLayers layers) => new(
        Severity.Note,
        "night-is-supine",
        "A clinic test is done upright and the night is spent lying, when the exchange surface may be up to a third larger (children, read): small solutes and glucose may then cross faster, and ultrafiltration peak earlier, than shown. "
            + (layers.Holds.HasFlag(Doubt.Posture) ? "The bands hold this, as posture." : "The bands do not hold this."));

    /// <summary>Urine of which nothing is known, so that zero stands for it.</summary>
    public static IEnumerable<Finding> Urine(Patient patient)
    {
        if (!patient.ResidualFunction.IsUrineStated)
        {
            yield return new(
                Severity.Warning,
                "urine-not-stated",
                "Urine was not stated and counts as none: kidneys add nothing to these figures, and what they ask of the peritoneum would dry out a patient who passes urine.");
        }
    }
}
