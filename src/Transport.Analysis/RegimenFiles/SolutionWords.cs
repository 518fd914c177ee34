using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>Solutions as a regimen file names them.</summary>
/// <remarks>
/// A percentage needs its word, anhydrous or monohydrate, because two labelling conventions differ by 10 %. The names of the three usual solutions are
/// this project's and mean anhydrous.
/// </remarks>
internal static partial class SolutionWords
{
    // A strength from a label this near a usual one, mmol/L, is that one: what rounding leaves between the conventions. In mmol/L it is what it says.
    private const double Near = 0.3;

    private static readonly ImmutableArray<(string Word, Solute Solute)> Ions =
    [
        ("potassium", Solutes.Potassium), ("calcium", Solutes.Calcium), ("magnesium", Solutes.Magnesium), ("lactate", Solutes.Lactate),
        ("bicarbonate", Solutes.Bicarbonate), ("phosphate", Solutes.Phosphate),
    ];

    private static readonly DialysisSolution[] Usual = [.. DialysisSolution.UsualGlucose, DialysisSolution.Icodextrin];

    public static string Expected => "glucose 1.36 %, glucose 2.27 %, glucose 3.86 %, icodextrin, a number with mmol/L, g/L, % anhydrous or % monohydrate, the name of a solution that the file describes, or a mix: mix 1:1 of one and another";

    /// <summary>The solution that a word means; null where it means none.</summary>
    public static DialysisSolution? Read(string word, IReadOnlyDictionary<string, DialysisSolution> described, char? decimalMark)
    {
        var normal = SheetWords.Normal(word);
        if (described.TryGetValue(word.Trim(), out var own))
        {
            return own;
        }

        if (Array.Find(Usual, solution => solution.Name == normal) is { } usual)
        {
            return usual;
        }

        if (normal is "icodextrin" or "polyglucose")
        {
            return DialysisSolution.Icodextrin;
        }

        if (Mix().Match(word.Trim()) is { Success: true } mix)
        {
            return MixOf(mix.Groups["first"].Value, mix.Groups["second"].Value, mix.Groups["of"].Value, described, decimalMark);
        }

        var match = Strength().Match(word.Trim());
        return match.Success && SheetNumber.TryRead(match.Groups["number"].Value, decimalMark, out var number, out _)
            && Array.Find(SheetQuantity.Strength.Units, unit => unit.IsSpelled(SheetWords.NormalUnit(match.Groups["unit"].Value))) is { } unit && number > 0
            ? unit.Factor == 1 ? DialysisSolution.OfGlucose(number) : OfLabel(number * unit.Factor)
            : null;
    }

    /// <summary>Whether a word asks for a mix of two bags.</summary>
    public static bool IsMix(string word) => Mix().IsMatch(word.Trim());

    /// <summary>A word that means this solution.</summary>
    public static string Of(DialysisSolution solution) => solution.Mix is { } mix
        ? string.Create(CultureInfo.InvariantCulture, $"mix {mix.FirstParts:R}:{mix.SecondParts:R} of {Of(mix.First)} and {Of(mix.Second)}")
        : IsDescribed(solution) || Usual.Contains(solution)
        ? solution.Name
        : string.Create(CultureInfo.InvariantCulture, $"{solution.Glucose.MillimolesPerLiter:R} mmol/L");

    /// <summary>What describes a solution that no word means by itself.</summary>
    /// <exception cref="ArgumentException">It holds what the format has no word for.</exception>
    public static IEnumerable<RegimenRow> Described(DialysisSolution solution)
    {
        if (!IsDescribed(solution))
        {
            return [];
        }

        if (solution.Agent != OsmoticAgent.Glucose || solution.Others.Keys.Except(Ions.Select(ion => ion.Solute)).Any()
            || Usual.Any(usual => usual.Name == solution.Name))
        {
            throw new ArgumentException($"The format has no words for {solution.Name}: glucose, sodium, the usual ions and a name of its own.", nameof(solution));
        }

        return [
            Row(RegimenItem.Solution, solution.Glucose), Row("solution sodium", solution.Sodium),
            .. Ions.Where(ion => solution.Others.ContainsKey(ion.Solute)).Select(ion => Row($"solution {ion.Word}", solution.Others[ion.Solute])),
        ];

        RegimenRow Row(string item, Concentration value) => new("", item, value.MillimolesPerLiter.ToString("R", CultureInfo.InvariantCulture), "mmol/L") { Solution = solution.Name };
    }

    /// <summary>The solution of a description; an ion that is not stated is that of the usual buffer, if none is.</summary>
    public static DialysisSolution Make(string name, double glucose, double? sodium, IReadOnlyDictionary<string, double> ions) => new(
        name, Concentration.FromMillimolesPerLiter(glucose), Concentration.FromMillimolesPerLiter(sodium ?? 132))
    {
        Others = OthersOf(ions),
    };

    // The usual buffer is one instance, so that solutions that hold it are equal.
    private static ImmutableDictionary<Solute, Concentration> OthersOf(IReadOnlyDictionary<string, double> ions)
    {
        var stated = ions.ToImmutableDictionary(ion => Ions.First(known => known.Word == ion.Key).Solute, ion => Concentration.FromMillimolesPerLiter(ion.Value));
        var usual = DialysisSolution.LactateBuffer;
        return stated.IsEmpty || (stated.Count == usual.Count && stated.All(ion => usual.TryGetValue(ion.Key, out var same) && same == ion.Value)) ? usual : stated;
    }

    // "and" may stand in a name as well: wherever both sides mean something.
    private static DialysisSolution? MixOf(
        string first, string second, string of, IReadOnlyDictionary<string, DialysisSolution> described, char? decimalMark)
    {
        const string and = " and ";
        if (!SheetNumber.TryRead(first, decimalMark, out var firstParts, out _) || !SheetNumber.TryRead(second, decimalMark, out var secondParts, out _))
        {
            return null;
        }

        for (var at = of.IndexOf(and, StringComparison.OrdinalIgnoreCase); at >= 0; at = of.IndexOf(and, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            if (Read(of[..at], described, decimalMark) is { } one && Read(of[(at + and.Length)..], described, decimalMark) is { } other)
            {
                try
                {
                    return new SolutionMix(one, firstParts, other, secondParts).ToSolution();
                }
                catch (ArgumentException)
                {
                    return null;
                }
            }
        }

        return null;
    }

    private static bool IsDescribed(DialysisSolution solution) => !Usual.Contains(solution) && solution != DialysisSolution.OfGlucose(solution.Glucose.MillimolesPerLiter);

    private static DialysisSolution OfLabel(double millimolesPerLiter) =>
        DialysisSolution.UsualGlucose.FirstOrDefault(usual => Math.Abs(usual.Glucose.MillimolesPerLiter - millimolesPerLiter) < Near)
        ?? DialysisSolution.OfGlucose(millimolesPerLiter);

    [GeneratedRegex(@"^mix\s+(?<first>[^\s:]+)\s*:\s*(?<second>[^\s:]+)\s+of\s+(?<of>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex Mix();

    [GeneratedRegex(@"^(glucose|dextrose)?\s*(?<number>[\d.,]+)\s*(?<unit>[^\d\s].*)$", RegexOptions.IgnoreCase)]
    private static partial Regex Strength();
}
