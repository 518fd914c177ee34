using static System.FormattableString;

namespace Transport;

/// <summary>What a series of tests shows. A single test never gets one of these.</summary>
internal static class SerialFindings
{
    // From 0.65 to 0.75 is a rise of 0.10, whatever binary fractions make of it.
    private const double Rounding = 1e-9;

    private static readonly string[] Watched = ["net ultrafiltration", "sodium dip", "free water at 60 min"];

    public static IReadOnlyList<Finding> Of(IReadOnlyList<EquilibrationIndices> tests, IReadOnlyList<SerialIndex> courses, MembraneThresholds limits) =>
        [.. Changes(courses), .. Named(courses, limits), .. LongOnDialysis(tests, courses, limits)];

    private static IEnumerable<Finding> Changes(IReadOnlyList<SerialIndex> courses)
    {
        foreach (var course in courses)
        {
            var change = course.IsReal(course.ChangeFromPrevious) ? course.ChangeFromPrevious : course.ChangeFromFirst;
            if (course.IsReal(change))
            {
                var unit = course.WithinPerson.Unit is { Length: > 0 } symbol ? " " + symbol : "";
                yield return new(Severity.Note, "change-beyond-noise", "This index changed by more than chance between two tests explains.")
                {
                    Field = course.Name,
                    Found = $"{(change.Value > 0 ? "+" : "")}{course.Digits(change.Value)}{unit}, {change.Formula}",
                    Expected = $"less than {course.Digits(course.MinimalDetectableChange.Value)}{unit} by chance ({course.WithinPerson.Source})",
                };
            }
        }
    }

    // Usual practice names these even where they are within the noise.
    private static IEnumerable<Finding> Named(IReadOnlyList<SerialIndex> courses, MembraneThresholds limits)
    {
        if (Find(courses, "D/P creatinine") is { } transfer && transfer.ChangeFromFirst.Value >= limits.RiseOfTransfer.Value - Rounding)
        {
            yield return new(Severity.Note, "transfer-rising",
                "Transfer of small solutes is faster than at the first test, which is compatible with a growing effective surface; inflammation and a recent peritonitis do the same.")
            {
                Field = transfer.Name,
                Found = transfer.ChangeFromFirst.Formula,
                Expected = $"a rise below {limits.RiseOfTransfer}",
            };
        }

        if (Find(courses, "sodium dip") is { } dip && -dip.ChangeFromFirst.Value >= limits.FallOfSodiumDip.Value - Rounding)
        {
            yield return new(Severity.Warning, "sodium-dip-falling",
                "The sodium dip is smaller than at the first test, which is compatible with falling osmotic conductance, or with faster transfer, which blunts it.")
            {
                Field = dip.Name,
                Found = dip.ChangeFromFirst.Formula,
                Expected = $"a fall below {limits.FallOfSodiumDip}",
            };
        }
    }

    private static IEnumerable<Finding> LongOnDialysis(IReadOnlyList<EquilibrationIndices> tests, IReadOnlyList<SerialIndex> courses, MembraneThresholds limits)
    {
        var isFalling = Watched
            .Select(name => Find(courses, name)).OfType<SerialIndex>()
            .Any(course => course.ChangeFromFirst.Value < 0 && course.IsReal(course.ChangeFromFirst));
        if (isFalling && tests[^1].Test is var last && last.Conditions.DialysisYears(last.Date) is { } years && years >= limits.LongOnDialysis.Value)
        {
            yield return new(Severity.Note, "falling-after-years",
                "Ultrafiltration or free water fell over years on dialysis. No peritoneal test screens for or predicts encapsulating sclerosis in one person; symptoms and the whole course are what a specialist looks at.")
            {
                Found = Invariant($"{years:0.0} years on dialysis"),
                Expected = $"said from {limits.LongOnDialysis} and a real fall",
            };
        }
    }

    private static SerialIndex? Find(IReadOnlyList<SerialIndex> courses, string name) => courses.FirstOrDefault(course => course.Name == name);
}
