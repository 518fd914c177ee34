using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>The bag, the fill and the drain.</summary>
internal sealed class SolutionChecks(CheckInputs inputs)
{
    private const double MonohydrateShare = 0.9091; // glucose in its monohydrate, by mass

    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new SolutionChecks(inputs);
        return [.. checks.Solution(), .. checks.Volumes()];
    }

    private IEnumerable<Finding> Solution()
    {
        if (Draft.Agent != OsmoticAgent.Glucose)
        {
            yield return Codes.NotAGlucoseTest.Finding(
                "The classes, limits and series of an equilibration test are of glucose solutions. With this fluid D/P, ultrafiltration and the sodium dip are given as they are, and nothing is compared or fitted.",
                Draft.RowOf(Words.Agent), Words.Agent.Name, Draft.Agent.ToString(), "glucose");
        }

        if (inputs.Bag is { } glucose)
        {
            var row = Draft.RowOf(Words.SolutionGlucose);
            var grams = glucose * Solutes.Glucose.MolarMassGramsPerMole / 1000;
            var usual = Limits.Strengths.Any(strength => CheckInputs.Near(glucose, strength, Limits.StrengthTolerance));
            if (inputs.StrengthUnit is "g/l" or "mg/dl" && Limits.TwofoldLabels.Any(label => CheckInputs.Near(grams, label, 0.005)))
            {
                yield return Codes.GlucoseLabelConvention.Finding(
                    Invariant($"{grams:0.0} g/L was read as anhydrous glucose ({glucose:0.0} mmol/L), but some labels mean the monohydrate by it ({glucose * MonohydrateShare:0.0} mmol/L). Write the mmol/L, or add 'anhydrous' or 'monohydrate' to the unit."),
                    row, Words.SolutionGlucose.Name, Invariant($"{glucose:0.0} mmol/L"));
            }
            else if (!usual)
            {
                yield return Codes.SolutionGlucoseUnusual.Finding(
                    Invariant($"{glucose:0.0} mmol/L is the glucose of no usual solution. Compare it with the bag's list of contents."),
                    row, Words.SolutionGlucose.Name, Invariant($"{glucose:0.0} mmol/L"), string.Join(", ", Limits.Strengths.Select(value => Invariant($"{value:0.0}"))) + " mmol/L");
            }
        }

        if (Draft.Number(Words.SolutionSodium) is { } sodium && !Limits.UsualSolutionSodium.Contains(sodium))
        {
            yield return Codes.SolutionSodiumUnusual.Finding(
                "This is not the sodium of a usual solution. If the solution is a special one, dips of sodium are not comparable; otherwise correct it.",
                Draft.RowOf(Words.SolutionSodium), Words.SolutionSodium.Name, Invariant($"{sodium:0.#} mmol/L"), CheckInputs.Text(Limits.UsualSolutionSodium));
        }
    }

    private IEnumerable<Finding> Volumes()
    {
        foreach (var (volume, tare) in new[] { (Words.Fill, Words.FillTare), (Words.Drained, Words.DrainTare), (Words.TemporaryDrained, Words.DrainTare) })
        {
            if (inputs.UnitOf(volume) is "g" or "kg" && inputs.Lacks(tare))
            {
                yield return Codes.WeightWithoutTare.Finding(
                    $"This weight is taken as that of the fluid alone. If the bag was weighed with it, add '{tare.Name}', the weight of the empty bag.", Draft.RowOf(volume), volume.Name);
            }
        }

        if (Draft is { TemporaryDrained: { } early, Fill: { } filled } && !Limits.NetUltrafiltration.Contains((early - filled).Milliliters))
        {
            yield return Codes.TemporaryDrainImplausible.Finding(
                "The volume at 60 min is hardly possible. Check it, the tare, and whether the drain was complete.",
                Draft.RowOf(Words.TemporaryDrained), Words.TemporaryDrained.Name, $"{early - filled} of ultrafiltration in the first hour", CheckInputs.Text(Limits.NetUltrafiltration));
        }

        var isChild = Draft.Number(Words.Age) < Limits.AdultAgeYears;
        if (isChild)
        {
            yield return Codes.Child.Finding(
                "The patient is a child: class and series are those of children filled with 1100 mL/m². Limits of ultrafiltration are of adults and are not used; body water, and Kt/V with it, is by the formula of children on peritoneal dialysis (Morgenstern 2006).", Draft.RowOf(Words.Age), Words.Age.Name);
        }

        if (Draft.Fill is { } fill)
        {
            var row = Draft.RowOf(Words.Fill);
            double? surface = Draft.Number(Words.Height) is { } height && Draft.Number(Words.Weight) is { } weight
                ? BodySize.SurfaceByDuBois(Length.FromCentimeters(height), Mass.FromKilograms(weight)).SquareMeters
                : null;
            var (value, range) = isChild ? (fill.Milliliters / surface, Limits.ComparableChildFill) : (fill.Milliliters, Limits.ComparableFill);
            if (value is { } compared && !range.Contains(compared))
            {
                yield return Codes.FillNotComparable.Finding(
                    "Class tables hold for another fill: the class is not comparable. Indices are still given.",
                    row, Words.Fill.Name, Invariant($"{compared:0} {range.Unit}"), CheckInputs.Text(range));
            }

            if (Draft.Basis == FillBasis.Label && inputs.Lacks(Words.Overfill))
            {
                yield return Codes.LabelWithoutOverfill.Finding(
                    "Bags hold 2-5 % more than their label says, and about 100 mL then counts as ultrafiltration (mean effect 101 mL, 776 against 675 mL, in an Italian series). Weigh the bag, or add its overfill.",
                    row, Words.Overfill.Name);
            }

            var entered = Draft is { Basis: FillBasis.Label, Overfill: { } overfill } ? fill + overfill : fill;
            if (Draft.Drained - entered is { } ultrafiltration && !Limits.NetUltrafiltration.Contains(ultrafiltration.Milliliters))
            {
                yield return Codes.UltrafiltrationImplausible.Finding(
                    "This net ultrafiltration is hardly possible. Check both volumes, the tare of the bags, and whether the drain was complete.",
                    Draft.RowOf(Words.Drained), Words.Drained.Name, $"{ultrafiltration} of ultrafiltration", CheckInputs.Text(Limits.NetUltrafiltration));
            }
        }

        if (!inputs.IsOneHour && Draft.DwellMinutes is { } dwell && !Limits.ComparableDwell.Contains(dwell))
        {
            yield return Codes.DwellNotComparable.Finding(
                "Class tables hold for 4 h: the class is not comparable. Indices are still given.",
                Draft.RowOf(Words.Dwell) ?? Draft.RowOf(Words.StartOfDrain), Words.Dwell.Name, Invariant($"{dwell:0.#} min"), CheckInputs.Text(Limits.ComparableDwell));
        }
    }
}
