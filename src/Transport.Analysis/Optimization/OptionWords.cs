using System.Globalization;

namespace Transport.Analysis;

/// <summary>Sentences about options. They state differences and frequencies; they order nothing.</summary>
internal static class OptionWords
{
    /// <summary>"On about 5 days in 10 the ultrafiltration lies between 200 and 500 mL, on about 2 in 10 below and on about 3 in 10 above, when the patient may dry out."</summary>
    public static string SingleDay(Probability within, double above, FluidTarget range)
    {
        // Rounded one by one the three may add up to nine or eleven: what lies between takes what the two dangers leave, so that "below" agrees with what is said of the floor elsewhere.
        var (tooLittle, tooMuch) = (10 - Probability.Tenths(within.Value + above), Probability.Tenths(above));
        List<string> outside = [];
        if (tooLittle > 0)
        {
            outside.Add($"on {Probability.InTen(tooLittle)} below");
        }

        if (tooMuch > 0)
        {
            outside.Add($"on {Probability.InTen(tooMuch)} above, when the patient may dry out");
        }

        var sentence = Text($"On {Probability.InTen(10 - tooLittle - tooMuch, "day")} the ultrafiltration lies between {range.Floor.Milliliters:0} and {range.Ceiling.Milliliters:0} mL");
        return outside.Count == 0 ? $"{sentence}." : $"{sentence}, {Join(outside)}.";
    }

    /// <summary>What a dose of urea may be called: without the kidneys' part it is the peritoneum's.</summary>
    public static string Dose(ResidualFunction kidneys) => kidneys.IsUreaClearanceKnown ? "weekly Kt/V" : $"weekly peritoneal Kt/V ({kidneys.Missing} not stated)";

    /// <summary>"On about 6 days in 10 ultrafiltration at least 800 mL; the mean of many days with a probability of 0.93."</summary>
    public static string Answer(GoalAnswer answer)
    {
        var mean = Text($"the mean of many days with a probability of {answer.ProbabilityOfMean}");
        var range = answer.Bound.Range(answer.Kidneys);
        return answer.ProbabilityOfSingleDay is { } day
            ? Text($"On {day.InTen("day")}: {range}; {mean}.")
            : Text($"{Wording.Capital(range)}: {mean}; expected {answer.Expected:0.##}.");
    }

    /// <summary>What an option gains and gives up against the one before it in order of glucose, and what it goes without that the one after it gives.</summary>
    public static string Why(Candidate? before, Candidate option, Candidate? after) => (before, after) switch
    {
        (null, null) => "The only option: the others do not differ by more than the noise, are matched in everything, or miss a goal.",
        (null, { } next) => "Least absorbed glucose." + Without(option, next),
        ({ } last, null) => Against(last, option),
        ({ } last, { } next) => Against(last, option) + Without(option, next),
    };

    // The next one's own sentence says what that costs.
    private static string Without(Candidate option, Candidate next) => Compare(option, next).Gains is { Count: > 0 } gains
        ? $" It goes without what the option after it gives: {Join(gains)}."
        : "";

    private static string Against(Candidate last, Candidate option)
    {
        var (gains, costs) = Compare(last, option);
        return "Against the option before it: " + (gains.Count, costs.Count) switch
        {
            (0, 0) => "the ultrafiltration differs.",
            (0, _) => $"{Join(costs)}; it is kept because it differs in fluid or dose.",
            (_, 0) => $"{Join(gains)}.",
            _ => $"{Join(gains)}, for {Join(costs)}.",
        };
    }

    private static (List<string> Gains, List<string> Costs) Compare(Candidate a, Candidate b)
    {
        List<string> gains = [];
        List<string> costs = [];
        var glucose = b.Glucose - a.Glucose;
        if (Math.Abs(glucose) >= 0.5)
        {
            (glucose > 0 ? costs : gains).Add(Text($"{Math.Abs(glucose):0} g {(glucose > 0 ? "more" : "less")} absorbed glucose"));
        }

        Add(b.UreaDose - a.UreaDose, 0.05, (value, more) => Text($"Kt/V {value:0.00} {(more ? "higher" : "lower")}"));
        Add(b.Sodium - a.Sodium, 3, (value, more) => Text($"{value:0} mmol {(more ? "more" : "less")} sodium removed"));
        Cost(b.Regimen.NightLength.TotalMinutes - a.Regimen.NightLength.TotalMinutes, 1, (value, more) => Text($"a night {value:0} min {(more ? "longer" : "shorter")}"));
        Cost(b.Regimen.Cycles - a.Regimen.Cycles, 1, (value, more) => Text($"{value:0} {(value == 1 ? "cycle" : "cycles")} {(more ? "more" : "fewer")}"));
        Cost((b.FluidUsed - a.FluidUsed) / 1000, 0.25, (value, more) => Text($"{value:0.0} L {(more ? "more" : "less")} fluid"));
        Cost(b.Strongest - a.Strongest, 1, (value, more) => Text($"{value:0} strongest {(value == 1 ? "bag" : "bags")} {(more ? "more" : "fewer")}"));
        return (gains, costs);

        void Add(double difference, double least, Func<double, bool, string> words)
        {
            if (Math.Abs(difference) >= least)
            {
                (difference > 0 ? gains : costs).Add(words(Math.Abs(difference), difference > 0));
            }
        }

        void Cost(double difference, double least, Func<double, bool, string> words)
        {
            if (Math.Abs(difference) >= least)
            {
                (difference > 0 ? costs : gains).Add(words(Math.Abs(difference), difference > 0));
            }
        }
    }

    private static string Join(List<string> parts) => parts.Count switch
    {
        1 => parts[0],
        _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} and {parts[^1]}",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
