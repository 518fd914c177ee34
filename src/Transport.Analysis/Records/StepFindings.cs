using MathNet.Numerics.Statistics;
using static System.FormattableString;
using static Transport.Analysis.NurseFindings;

namespace Transport.Analysis;

/// <summary>Weight and pressure of the last two days beside those of the two weeks before: steps, which no trend of weeks shows in time.</summary>
internal static class StepFindings
{
    // A step of more than a week is among its own two weeks, and not among the four before these.
    private const int FourWeeks = 28;
    private const int FewestBefore = 3;

    // One value may be a slip, clothes or a cuff: it has to be further off (choices), less so where there is no second to speak against it.
    private const double OneOfTwo = 2;
    private const double OneAlone = 1.5;

    /// <returns>Whether a step of weight, and one of pressure, was told: no trend is told of it as well.</returns>
    public static (bool Weight, bool Pressure) Add(Patient patient, ReviewedNight[] reviewed, ReviewLimits limits, int today, List<Finding> findings)
    {
        var limit = limits.TargetDistance.Value * ReviewLimits.BodyShare(patient);
        var weight = Step.Of(reviewed.Select(night => (night.Record.Date.DayNumber, night.EmptyWeight?.Kilograms)), today, limits);
        var pressure = TargetAssessment.IsChild(patient) ? null : Step.Of(reviewed.Select(night => (night.Record.Date.DayNumber, (double?)night.Record.Sitting?.SystolicMillimetersOfMercury)), today, limits);
        var sign = Math.Sign(weight?.Shift ?? 0);

        // Two signs that go one way need half of each.
        var isTogether = pressure is { } other && Math.Sign(other.Shift) == sign && other.Least >= limits.PressureStep.Value / 2;
        var isWeight = weight?.Least >= (isTogether ? 0.5 : 1) * limit;
        if (isWeight)
        {
            // Kilograms of two days are fluid, a belly that was not empty, clothes or a scale, and not food.
            var beside = isTogether ? Invariant($" Systolic pressure has {(sign > 0 ? "risen" : "fallen")} beside it, from about {pressure!.Value.Usual:0} to about {pressure.Value.Lately:0} mmHg.") : "";
            Warn(findings, "record-weight-step", $"{(weight!.Value.IsOne ? "The last empty weight" : "Empty weight of the last two days")} is {weight.Value.Off:0.0} kg {(weight.Value.IsOne ? "" : "or more ")}{(sign > 0 ? "above" : "below")} the {weight.Value.Usual:0.0} kg of {weight.Value.Before}: compatible with {(sign > 0 ? "fluid that has built up" : "more fluid taken off, or lost by bowel or vomiting, than was drunk (dried out)")}, unless the scale{(sign > 0 ? ", clothes or a full belly explain it" : " or clothes explain it")}.{beside} Weigh again and ask the unit today{(sign > 0 ? "; with swelling or breathlessness at once" : ", before a strong bag is used; with dizziness, cramps or faintness at once")}.");
        }

        var isPressure = pressure?.Least >= limits.PressureStep.Value;
        if (isPressure && !(isWeight && isTogether))
        {
            var isFall = pressure!.Value.Shift < 0;
            Warn(findings, "record-pressure-step", $"{(pressure.Value.IsOne ? "The last systolic pressure" : "Systolic pressure of the last two days")} is about {pressure.Value.Lately:0} mmHg, {pressure.Value.Off:0}{(pressure.Value.IsOne ? "" : " or more")} {(isFall ? "below" : "above")} the {pressure.Value.Usual:0} of {pressure.Value.Before}: compatible with {(isFall ? "too much fluid removed (dried out), medicines, bleeding or an infection" : "fluid or salt that has built up, or with medicines that were changed or left out")}. Measure again at rest and ask the unit today{(isFall ? ", before a strong bag is used; with faintness, fever or confusion at once" : "; with headache, breathlessness or swelling at once")}.");
        }

        return (isWeight, isPressure || isWeight && isTogether);
    }

    /// <summary>Two last values that lie on one side of those before, or one that lies far off.</summary>
    /// <param name="Usual">The middle of those before.</param>
    /// <param name="Lately">The mean of the last, or the last.</param>
    /// <param name="Off">How far the nearer of them is off.</param>
    /// <param name="Before">Which days those before are.</param>
    /// <param name="Weight">By how much less than two values one counts; 1 of two.</param>
    private readonly record struct Step(double Usual, double Lately, double Off, string Before, double Weight)
    {
        public bool IsOne => Weight > 1;

        public double Shift => Lately - Usual;

        public double Least => Off / Weight;

        public static Step? Of(IEnumerable<(int Day, double? Value)> values, int today, ReviewLimits limits)
        {
            var now = (int)limits.NowDays.Value;
            var written = values.Where(one => one.Value is not null).Select(one => (one.Day, Value: one.Value!.Value)).ToList();
            var last = written.Where(one => one.Day > today - now).TakeLast(2).Select(one => one.Value).ToList();
            return last.Count == 0 ? null : Against(now, TwoWeeks, "the two weeks before").Concat(Against(TwoWeeks, FourWeeks, "the four weeks that ended two weeks ago"))
                .OrderByDescending(step => step.Least).Select(step => (Step?)step).FirstOrDefault();

            IEnumerable<Step> Against(int ended, int days, string name)
            {
                var before = written.Where(one => one.Day <= today - ended && one.Day > today - ended - days).Select(one => one.Value).ToList();
                if (before.Count < FewestBefore)
                {
                    yield break;
                }

                var usual = before.Median();
                yield return new(usual, last[^1], Math.Abs(last[^1] - usual), name, last.Count == 1 ? OneAlone : OneOfTwo);
                if (last.Count == 2 && Math.Sign(last[0] - usual) == Math.Sign(last[1] - usual))
                {
                    yield return new(usual, last.Average(), last.Min(value => Math.Abs(value - usual)), name, 1);
                }
            }
        }
    }
}
