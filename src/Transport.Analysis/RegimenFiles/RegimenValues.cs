using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>Values of a regimen file, in this project's units; a value that is none becomes a finding.</summary>
internal sealed partial class RegimenValues(List<Finding> findings, char? decimalMark)
{
    private static readonly SheetQuantity Flow = new(new SheetUnit("mL/min", 1), new SheetUnit("L/h", 1000.0 / 60)) { UnitMayBeLeftOut = true };
    private static readonly SheetQuantity Share = new(new SheetUnit("", 1), new SheetUnit("%", 0.01, "percent", "percent"));

    private const string SlipOfTheUnit = "This is outside what is possible; look at the number and its unit.";

    // Refills of tidal cycles of the smallest children, mL (choice), and a buffer of 40 mmol/L with room (choice).
    private const double SmallestFill = 10;
    private const double MostOfAnIon = 100;

    private readonly HashSet<RegimenRow> unread = [];

    public char? DecimalMark => decimalMark;

    /// <summary>Whether something in this row could not be read: then nothing is known of what it states.</summary>
    public bool IsUnread(RegimenRow row) => unread.Contains(row);

    public static TimeSpan Minutes(double minutes) => TimeSpan.FromTicks((long)Math.Round(minutes * TimeSpan.TicksPerMinute));

    /// <summary>The number of a statement in its canonical unit: min, mL, mL/min, mmol/L, a fraction.</summary>
    public double? Number(RegimenItem item, RegimenRow row) => item.Kind switch
    {
        RegimenValueKind.Duration => Duration(row.Unit.Length > 0 ? $"{row.Value} {row.Unit}" : row.Value, row),
        RegimenValueKind.Share => Fraction(row),
        RegimenValueKind.Volume => InUnit(row.Value, row.Unit, SheetQuantity.Volume, row),
        RegimenValueKind.Flow => InUnit(row.Value, row.Unit, Flow, row),
        RegimenValueKind.Strength => InUnit(row.Value, row.Unit, SheetQuantity.Strength, row),
        RegimenValueKind.Ion => InUnit(row.Value, row.Unit, SheetQuantity.Sodium, row),
        _ => InUnit(row.Value, "", SheetQuantity.Volume, row),
    };

    public double? Positive(RegimenItem item, RegimenRow row) => Number(item, row) is not { } value ? null
        : Within(value > 0, value, row, "This has to be more than zero.", "more than zero");

    /// <summary>The volume of an exchange, mL: one that no belly holds, or that is a drop, is a slip of the unit.</summary>
    public double? Fill(RegimenItem item, RegimenRow row) => Positive(item, row) is not { } value ? null
        : Within(value >= SmallestFill && value <= SampleSheetLimits.FillMilliliters.High, value, row, SlipOfTheUnit, Range(SmallestFill, SampleSheetLimits.FillMilliliters.High, "mL"));

    /// <summary>A concentration of a fresh solution, mmol/L.</summary>
    public double? Concentration(RegimenItem item, RegimenRow row) => Number(item, row) is not { } value ? null
        : Within(value >= LowestOf(item) && value <= HighestOf(item), value, row, SlipOfTheUnit, Range(LowestOf(item), HighestOf(item), "mmol/L"));

    /// <summary>A solution that a word means, unless it, or a bag of its mix, holds more glucose than any: one that is described has been judged where it is.</summary>
    public DialysisSolution? Possible(DialysisSolution solution, RegimenRow row, string word)
    {
        if (solution.Bags.All(bag => bag.Solution.Glucose.MillimolesPerLiter <= SampleSheetLimits.SolutionGlucose.High))
        {
            return solution;
        }

        Bad(row, SlipOfTheUnit, Range(0, SampleSheetLimits.SolutionGlucose.High, "mmol/L"), word);
        return null;
    }

    private static double LowestOf(RegimenItem item) => item.Name == "solution sodium" ? SampleSheetLimits.SolutionSodium.Low : 0;

    private static double HighestOf(RegimenItem item) => item.Name == RegimenItem.Solution ? SampleSheetLimits.SolutionGlucose.High
        : item.Name == "solution sodium" ? SampleSheetLimits.SolutionSodium.High
        : MostOfAnIon;

    private static string Range(double low, double high, string unit) => string.Create(CultureInfo.InvariantCulture, $"{low} to {high} {unit}");

    private double? Within(bool isPossible, double value, RegimenRow row, string message, string expected)
    {
        if (isPossible)
        {
            return value;
        }

        Bad(row, message, expected, $"{row.Value} {row.Unit}".TrimEnd());
        return null;
    }

    public int? Count(RegimenItem item, RegimenRow row)
    {
        if (Number(item, row) is not { } value)
        {
            return null;
        }

        if (value == Math.Floor(value) && Math.Abs(value) < 1000)
        {
            return (int)value;
        }

        Bad(row, "This has to be a whole number, below 1000.", "a whole number");
        return null;
    }

    public TimeSpan? Time((RegimenItem Item, RegimenRow Row)? fact) => fact is { } given && Number(given.Item, given.Row) is { } minutes ? Minutes(minutes) : null;

    public double? NumberOf(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item) => facts.TryGetValue(item, out var fact) ? Number(fact.Item, fact.Row) : null;

    public Volume? VolumeOf(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item) => NumberOf(facts, item) is { } value ? Volume.FromMilliliters(value) : null;

    public int? CountOf(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item) => facts.TryGetValue(item, out var fact) ? Count(fact.Item, fact.Row) : null;

    public TimeOnly? ClockOf(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item) => facts.TryGetValue(item, out var fact) ? Clock(fact.Row.Value, fact.Row, item) : null;

    public SpareFluid SpareOf(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts)
    {
        if (!facts.TryGetValue("spare fluid", out var fact))
        {
            return SpareFluid.Leave;
        }

        if (SheetWords.Normal(fact.Row.Value) is not ("leave" or "share") and var word)
        {
            Bad(fact.Row, $"Spare fluid is left in the bag or shared out, not '{word}'.", "leave or share");
        }

        return SheetWords.Normal(fact.Row.Value) == "share" ? SpareFluid.Share : SpareFluid.Leave;
    }

    public TimeOnly? Clock(string text, RegimenRow row, string field)
    {
        if (TimeOnly.TryParseExact(text.Trim(), ["HH:mm", "H:mm", "HH:mm:ss", "HH:mm:ss.FFFFFFF"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var exact))
        {
            return exact;
        }

        if (SheetTime.Clock(text) is { } minutes)
        {
            return TimeOnly.FromTimeSpan(Minutes(minutes));
        }

        Bad(row, $"What {field} states is no clock time.", "hours:minutes, 00:00 to 23:59", text.Trim().Length > 0 ? text : "nothing");
        return null;
    }

    /// <summary>A cell that may be empty: its value, and whether all is well.</summary>
    public (double? Value, bool IsWell) Optional(string text, RegimenRow row, string field, RegimenValueKind kind)
    {
        if (text.Trim().Length == 0)
        {
            return (null, true);
        }

        var match = WithUnit().Match(text.Trim());
        var value = kind == RegimenValueKind.Duration ? Duration(text, row)
            : match.Success ? InUnit(match.Groups["number"].Value, match.Groups["unit"].Value, SheetQuantity.Volume, row)
            : InUnit(text, "", SheetQuantity.Volume, row);
        if (value is { } number && (kind == RegimenValueKind.Duration ? number <= 0 : number < 0))
        {
            Bad(row, $"The {field} has to be {(kind == RegimenValueKind.Duration ? "more than zero" : "zero or more")}.", "a positive number", text);
            value = null;
        }

        return (value, value is not null);
    }

    public void Bad(RegimenRow row, string message, string expected, string? found = null) =>
        Unread(row, new(Severity.Error, "regimen-value-bad", message) { Found = found ?? row.Value, Expected = expected });

    /// <summary>What keeps a row from being read, with its place; once, however many regimens the row holds for.</summary>
    public void Unread(RegimenRow row, Finding reason)
    {
        unread.Add(row);
        var placed = reason with { Row = row.Row, Field = RegimenDraft.Place(row) };
        if (!findings.Contains(placed))
        {
            findings.Add(placed);
        }
    }

    // "540", "540 min", "9 h", "9:00".
    private double? Duration(string text, RegimenRow row)
    {
        if (SheetTime.SinceInflow(text, null, decimalMark) is { } minutes)
        {
            return minutes;
        }

        Bad(row, "This is no length of time.", "minutes, or a number with h, or hours:minutes", text);
        return null;
    }

    // Without a unit a number up to 1 is a fraction and above it a percentage.
    private double? Fraction(RegimenRow row) => InUnit(row.Value, row.Unit, Share, row) is { } value
        ? row.Unit.Length == 0 && value > 1 ? value / 100 : value
        : null;

    private double? InUnit(string text, string unit, SheetQuantity quantity, RegimenRow row)
    {
        if (!SheetNumber.TryRead(text, decimalMark, out var number, out var isAmbiguous))
        {
            Bad(row, isAmbiguous ? "This number can be read in two ways; write it without a thousands mark." : "This is no number.", "a number", text);
            return null;
        }

        var normal = SheetWords.NormalUnit(unit);
        if ((normal.Length == 0 ? quantity.Units[0] : Array.Find(quantity.Units, known => known.IsSpelled(normal))) is { } known)
        {
            return number * known.Factor;
        }

        Unread(row, new(Severity.Error, "regimen-unit-unknown", "This unit is not known here.")
        {
            Found = unit,
            Expected = string.Join(", ", quantity.Units.Select(one => one.Name).Where(name => name.Length > 0)),
        });
        return null;
    }

    [GeneratedRegex(@"^(?<number>.*\d)\s*(?<unit>[A-Za-z]+)$")]
    private static partial Regex WithUnit();
}
