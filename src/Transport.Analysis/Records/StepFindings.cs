using MathNet.Numerics.Statistics;
using static System.FormattableString;
using static Transport.Analysis.NurseFindings;

namespace Transport.Analysis;

/// <summary>Weight and pressure of the last two days beside those of the two weeks before: steps, which no trend of weeks shows in time.</summary>
internal static class StepFindings
{
    public static void Add(Patient patient, ReviewedNight[] reviewed, ReviewLimits limits, int today, List<Finding> findings)
    {
        var weight = Step.Of(reviewed.Select(night => (night.Record.Date.DayNumber, night.EmptyWeight?.Kilograms)), today, limits);
        var pressure = TargetAssessment.IsChild(patient) ? null : Step.Of(reviewed.Select(night => (night.Record.Date.DayNumber, (double?)night.Record.Sitting?.SystolicMillimetersOfMercury)), today, limits);
        var isWeight = weight?.Least >= limits.TargetDistance.Value * ReviewLimits.BodyShare(patient);
        var sign = Math.Sign(weight?.Shift ?? 0);
        if (isWeight)
        {
            // Kilograms of two days are fluid, a belly that was not empty, clothes or a scale, and not food.
            var beside = pressure is { } other && Math.Sign(other.Shift) == sign && other.Least >= limits.PressureSlope.Value
                ? Invariant($" Systolic pressure has {(sign > 0 ? "risen" : "fallen")} beside it, from about {other.Usual:0} to about {other.Lately:0} mmHg.") : "";
            Warn(findings, "record-weight-step", $"Empty weight of the last two days is {weight!.Value.Least:0.0} kg or more {(sign > 0 ? "above" : "below")} the {weight.Value.Usual:0.0} kg of the two weeks before: compatible with {(sign > 0 ? "fluid that has built up" : "more fluid taken off, or lost by bowel or vomiting, than was drunk (dried out)")}, unless the scale{(sign > 0 ? ", clothes or a full belly explain it" : " or clothes explain it")}.{beside} Weigh again and ask the unit today{(sign > 0 ? "; with swelling or breathlessness at once" : ", before a strong bag is used; with dizziness, cramps or faintness at once")}.");
        }

        if (pressure?.Least >= limits.PressureStep.Value && !(isWeight && Math.Sign(pressure.Value.Shift) == sign))
        {
            var isFall = pressure.Value.Shift < 0;
            Warn(findings, "record-pressure-step", $"Systolic pressure of the last two days is about {pressure.Value.Lately:0} mmHg, {pressure.Value.Least:0} or more {(isFall ? "below" : "above")} the {pressure.Value.Usual:0} of the two weeks before: compatible with {(isFall ? "too much fluid removed (dried out), medicines, bleeding or an infection" : "fluid or salt that has built up, or with medicines that were changed or left out")}. Measure again at rest and ask the unit today{(isFall ? ", before a strong bag is used; with faintness, fever or confusion at once" : "; with headache, breathlessness or swelling at once")}.");
        }
    }

    /// <summary>Two last values that lie on one side of those before.</summary>
    private readonly record struct Step(double Usual, double Lately, double Least)
    {
        public double Shift => Lately - Usual;

        public static Step? Of(IEnumerable<(int Day, double? Value)> values, int today, ReviewLimits limits)
        {
            var written = values.Where(one => one.Value is not null).Select(one => (one.Day, Value: one.Value!.Value)).ToList();
            var last = written.Where(one => one.Day > today - limits.NowDays.Value).TakeLast(2).Select(one => one.Value).ToList();
            var before = written.Where(one => one.Day <= today - limits.NowDays.Value && one.Day > today - limits.NowDays.Value - TwoWeeks).Select(one => one.Value).ToList();
            if (last.Count < 2 || before.Count < FewestOfTwoWeeks)
            {
                return null;
            }

            var usual = before.Median();
            return Math.Sign(last[0] - usual) == Math.Sign(last[1] - usual) ? new(usual, last.Average(), last.Min(value => Math.Abs(value - usual))) : null;
        }
    }
}
