using System.Globalization;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>The value of one row: number and unit, word, date or clock time, each judged on its own.</summary>
internal sealed class SheetCells(List<Finding> findings, char? decimalMark)
{
    /// <summary>The value of a fact in its canonical unit; null where it cannot be read, which is then a finding.</summary>
    public double? ReadFact(SheetRow row, SheetItem item)
    {
        double? value = null;
        switch (item.Kind)
        {
            case SheetValueKind.Number when ReferenceEquals(item, SheetWords.Dwell) && SheetTime.Clock(row.Value) is { } duration:
                value = InRange(row, item.Name, duration, item.Quantity!.Units[0], new(item.Quantity.Units[0]), item.Range!);
                break;
            case SheetValueKind.Number:
                value = ReadQuantity(row, item.Name, item.Quantity!, item.Range!, out _);
                break;
            case SheetValueKind.Choice when item.Choices!.TryGetValue(SheetWords.Normal(row.Value), out var choice):
                value = choice;
                break;
            case SheetValueKind.Choice:
                findings.Add(SampleSheetCodes.UnknownWord.Finding(
                    $"'{item.Name}' does not take this word; use one of those expected.", row.Row, item.Name, row.Value,
                    string.Join(", ", item.Choices!.GroupBy(pair => pair.Value).Select(group => group.First().Key))));
                break;
            case SheetValueKind.Date:
                value = ReadDate(row, item.Name);
                break;
            case SheetValueKind.Clock:
                value = SheetTime.Clock(row.Value);
                if (value is null)
                {
                    findings.Add(SampleSheetCodes.NotATime.Finding("This clock time cannot be read; correct it.", row.Row, item.Name, row.Value, "a clock time such as 08:15"));
                }

                break;
        }

        return value;
    }

    public double? ReadQuantity(SheetRow row, string field, SheetQuantity quantity, PlausibleRange range, out SheetUnit? unit)
    {
        unit = FindUnit(row, field, quantity);
        if (!SheetNumber.TryRead(row.Value, decimalMark, out var number, out var ambiguous))
        {
            findings.Add(ambiguous
                ? SampleSheetCodes.AmbiguousNumber.Finding(
                    "This mark may be decimal or for thousands, and no other value settles it. Write a whole number without marks, decimals with one digit more or less.",
                    row.Row, field, row.Value)
                : SampleSheetCodes.NotANumber.Finding(
                    row.Value is ['<' or '>', ..]
                        ? "A limit of detection is not a value: leave the value blank and write the limit in the remark."
                        : "This is not a number. Write the number alone; the unit has its own column.",
                    row.Row, field, row.Value));
            return null;
        }

        if (number < 0 && range.Low >= 0)
        {
            findings.Add(SampleSheetCodes.NegativeValue.Finding("This value cannot be below zero; correct it.", row.Row, field, row.Value));
            return null;
        }

        return unit is null ? null : InRange(row, field, number, unit, quantity, range);
    }

    private double? InRange(SheetRow row, string field, double number, SheetUnit unit, SheetQuantity quantity, PlausibleRange range)
    {
        var value = number * unit.Factor;
        if (range.Contains(value))
        {
            return value;
        }

        var expected = $"{Short(range.Low / unit.Factor)} to {Short(range.High / unit.Factor)} {unit.Name}";
        var meant = quantity.Units.FirstOrDefault(other => other != unit && range.Contains(number * other.Factor));
        findings.Add(meant is not null
            ? SampleSheetCodes.UnitSwap.Finding(
                Invariant($"{number:G6} {unit.Name} is not possible, {number:G6} {meant.Name} is. Correct the unit or the value."),
                row.Row, field, $"{row.Value} {row.Unit}", expected)
            : SampleSheetCodes.ImpossibleValue.Finding(
                "This value is not possible; correct the value or its unit.", row.Row, field, $"{row.Value} {row.Unit}".TrimEnd(), expected));
        return null;
    }

    private static string Short(double limit) => limit.ToString(Math.Abs(limit) < 1000 ? "G3" : "0", CultureInfo.InvariantCulture);

    private SheetUnit? FindUnit(SheetRow row, string field, SheetQuantity quantity)
    {
        var normal = SheetWords.NormalUnit(row.Unit);
        var expected = string.Join(", ", quantity.Units.Select(unit => unit.Name));
        if (normal.Length == 0)
        {
            if (quantity.UnitMayBeLeftOut)
            {
                return quantity.Units[0];
            }

            findings.Add(SampleSheetCodes.MissingUnit.Finding("The unit is missing; write it in the unit column.", row.Row, field, expected: expected));
            return null;
        }

        var unit = quantity.Units.FirstOrDefault(unit => unit.IsSpelled(normal));
        if (unit is null && ReferenceEquals(quantity, SheetQuantity.Strength) && normal.StartsWith('%'))
        {
            findings.Add(SampleSheetCodes.PercentageWithoutConvention.Finding(
                SheetNumber.TryRead(row.Value, decimalMark, out var percent, out _)
                    ? Invariant($"A percentage can mean two solutions: {percent:0.##} % anhydrous is {percent * Factor("% anhydrous"):0.0} mmol/L, {percent:0.##} % monohydrate is {percent * Factor("% monohydrate"):0.0} mmol/L. Look at the bag's list of contents and write one of the two.")
                    : "A percentage can mean two solutions. Write '% anhydrous' or '% monohydrate'.",
                row.Row, field, $"{row.Value} {row.Unit}", "% anhydrous, % monohydrate or mmol/L"));
        }
        else if (unit is null && normal.All(char.IsAsciiDigit))
        {
            findings.Add(SampleSheetCodes.ExtraFields.Finding(
                "The unit is a number: a decimal comma has probably split the value. In a comma-separated file a value with a decimal comma needs quotation marks.",
                row.Row, field, $"{row.Value},{row.Unit}", expected));
        }
        else if (unit is null)
        {
            findings.Add(SampleSheetCodes.UnknownUnit.Finding("This unit is not known for this item; write one of those expected.", row.Row, field, row.Unit, expected));
        }

        return unit;

        static double Factor(string name) => SheetQuantity.Strength.Units.First(unit => unit.Name == name).Factor;
    }

    private double? ReadDate(SheetRow row, string field)
    {
        switch (SheetDate.Read(row.Value, order: null, out var other))
        {
            case { } one when other is { } second:
                findings.Add(SampleSheetCodes.AmbiguousDate.Finding(
                    Invariant($"This date may be {one:yyyy-MM-dd} or {second:yyyy-MM-dd} and is left out; write year-month-day."),
                    row.Row, field, row.Value, "such as 2025-03-11"));
                return null;
            case { } date:
                return date.DayNumber;
            default:
                findings.Add(SampleSheetCodes.NotADate.Finding(
                    "This date cannot be read and is left out; write year-month-day.", row.Row, field, row.Value, "such as 2025-03-11"));
                return null;
        }
    }
}
