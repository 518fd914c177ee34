namespace Transport.Analysis;

/// <summary>The thresholds of a review, each with its source: a local protocol replaces what it wants, from its file or with <c>with</c>.</summary>
public sealed record ReviewLimits
{
    private const double AdultKilograms = 70;
    private const string Ours = "no published figure found";

    /// <summary>What pages call these limits: the shipped ones, or a local protocol with its version.</summary>
    public string Name { get; init; } = "shipped limits";

    /// <summary>How many days before the last night count as now.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 28.</exception>
    public Threshold NowDays
    {
        get;
        init => field = Within(value, 1, 28, nameof(NowDays));
    }
    = new(3, "days", Evidence.Choice, Ours);

    /// <summary>How many days after a peritonitis nights stay out of the charts, as for tests.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 365.</exception>
    public Threshold PeritonitisDays
    {
        get;
        init => field = Within(value, 0, 365, nameof(PeritonitisDays));
    }
    = new(28, "days", Evidence.Choice, "as for tests, whose four weeks were read");

    /// <summary>A drain below this share of what was in is low.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.1 to 1.</exception>
    public Threshold LowDrainShare
    {
        get;
        init => field = Within(value, 0.1, 1, nameof(LowDrainShare));
    }
    = new(0.85, "", Evidence.Memory, "practice");

    /// <summary>On so many of the last seven nights a thing is repeated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 7.</exception>
    public Threshold RepeatedNights
    {
        get;
        init => field = Within(value, 1, 7, nameof(RepeatedNights));
    }
    = new(3, "nights", Evidence.Choice, Ours);

    /// <summary>Cavity volume over the fill that is worth a warning.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 5.</exception>
    public Threshold OverfillShare
    {
        get;
        init => field = Within(value, 1, 5, nameof(OverfillShare));
    }
    = new(1.5, "", Evidence.Memory, "practice");

    /// <summary>The same where it is high.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 5.</exception>
    public Threshold HighOverfillShare
    {
        get;
        init => field = Within(value, 1, 5, nameof(HighOverfillShare));
    }
    = new(2.0, "", Evidence.Memory, "practice");

    /// <summary>Lost dwell of a night that counts, share of the planned.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.01 to 1.</exception>
    public Threshold LostDwellShare
    {
        get;
        init => field = Within(value, 0.01, 1, nameof(LostDwellShare));
    }
    = new(0.10, "", Evidence.Choice, Ours);

    /// <summary>Rise of nights with the strongest bag, of the last 28 against the 28 before, that counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 28.</exception>
    public Threshold StrongestRise
    {
        get;
        init => field = Within(value, 1, 28, nameof(StrongestRise));
    }
    = new(6, "nights", Evidence.Choice, Ours);

    /// <summary>Body temperature that counts as fever.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 37 to 40.</exception>
    public Threshold Fever
    {
        get;
        init => field = Within(value, 37, 40, nameof(Fever));
    }
    = new(38, "°C", Evidence.Memory, "practice");

    /// <summary>Body temperature that is near a fever: on two days, or with a complaint beside it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 36.5 to 40.</exception>
    public Threshold NearFever
    {
        get;
        init => field = Within(value, 36.5, 40, nameof(NearFever));
    }
    = new(37.5, "°C", Evidence.Choice, Ours);

    /// <summary>Potassium of the blood, in words, that counts as high.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 5 to 9.</exception>
    public Threshold HighPotassium
    {
        get;
        init => field = Within(value, 5, 9, nameof(HighPotassium));
    }
    = new(6, "mmol/L", Evidence.Read, "a health board's handbook after the UK Kidney Association, 2023: an electrocardiogram at once from 6.0, the renal doctor at once where somebody is on dialysis; severe from 6.5");

    /// <summary>Potassium of the blood, in words, that counts as low.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1.5 to 4.</exception>
    public Threshold LowPotassium
    {
        get;
        init => field = Within(value, 1.5, 4, nameof(LowPotassium));
    }
    = new(3, "mmol/L", Evidence.Memory, "practice: moderate from 3.0 down, severe below 2.5");

    /// <summary>Systolic pressure of an adult that counts as low on any of the last days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 50 to 130.</exception>
    public Threshold LowSystolic
    {
        get;
        init => field = Within(value, 50, 130, nameof(LowSystolic));
    }
    = new(90, "mmHg", Evidence.Memory, "practice");

    /// <summary>Systolic pressure of an adult that counts as very high on any of the last days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 120 to 260.</exception>
    public Threshold HighSystolic
    {
        get;
        init => field = Within(value, 120, 260, nameof(HighSystolic));
    }
    = new(180, "mmHg", Evidence.Memory, "guidelines on hypertension: severe from 180/120 on");

    /// <summary>The same of the diastolic pressure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 70 to 160.</exception>
    public Threshold HighDiastolic
    {
        get;
        init => field = Within(value, 70, 160, nameof(HighDiastolic));
    }
    = new(120, "mmHg", Evidence.Memory, "guidelines on hypertension: severe from 180/120 on");

    /// <summary>Fall of systolic pressure from sitting to standing that counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 5 to 80.</exception>
    public Threshold StandingDrop
    {
        get;
        init => field = Within(value, 5, 80, nameof(StandingDrop));
    }
    = new(20, "mmHg", Evidence.Memory, "consensus on orthostatic hypotension (from lying; from sitting it falls less)");

    /// <summary>Blood glucose that counts as low on any of the last days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 2 to 8.</exception>
    public Threshold LowGlucose
    {
        get;
        init => field = Within(value, 2, 8, nameof(LowGlucose));
    }
    = MembraneThresholds.Default.LowPlasmaGlucose;

    /// <summary>Blood glucose that counts as very high on any day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 11 to 60.</exception>
    public Threshold VeryHighGlucose
    {
        get;
        init => field = Within(value, 11, 60, nameof(VeryHighGlucose));
    }
    = MembraneThresholds.Default.VeryHighPlasmaGlucose;

    /// <summary>Pulse of an adult that counts as slow on any of the last days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 25 to 60.</exception>
    public Threshold LowPulse
    {
        get;
        init => field = Within(value, 25, 60, nameof(LowPulse));
    }
    = new(40, "/min", Evidence.Memory, "early-warning scores");

    /// <summary>Pulse of an adult that counts as fast on any of the last days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 90 to 220.</exception>
    public Threshold HighPulse
    {
        get;
        init => field = Within(value, 90, 220, nameof(HighPulse));
    }
    = new(130, "/min", Evidence.Memory, "early-warning scores");

    /// <summary>Fall of urine that counts, share of the weeks before.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.1 to 0.95.</exception>
    public Threshold UrineFall
    {
        get;
        init => field = Within(value, 0.1, 0.95, nameof(UrineFall));
    }
    = new(0.5, "", Evidence.Choice, Ours);

    /// <summary>And at least so much.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 2000.</exception>
    public Threshold LeastUrineFall
    {
        get;
        init => field = Within(value, 0, 2000, nameof(LeastUrineFall));
    }
    = new(200, "mL/day", Evidence.Choice, Ours);

    /// <summary>Urine below which there is as good as none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 500.</exception>
    public Threshold NoUrine
    {
        get;
        init => field = Within(value, 0, 500, nameof(NoUrine));
    }
    = new(100, "mL/day", Evidence.Memory, "practice");

    /// <summary>Ultrafiltration of an adult's whole days that is low without urine.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 2000.</exception>
    public Threshold LowUltrafiltration
    {
        get;
        init => field = Within(value, 0, 2000, nameof(LowUltrafiltration));
    }
    = new(750, "mL/day", Evidence.Read, "Perit Dial Int 2006;26:458-465: without urine, more deaths below it, for many reasons");

    /// <summary>Share of days with the strongest bag, of those treated in the last 28, that counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.05 to 1.</exception>
    public Threshold StrongestShare
    {
        get;
        init => field = Within(value, 0.05, 1, nameof(StrongestShare));
    }
    = new(0.7, "", Evidence.Choice, "twenty of twenty-eight; no published figure found");

    /// <summary>Slope of weight that counts, in 28 days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.1 to 20.</exception>
    public Threshold WeightSlope
    {
        get;
        init => field = Within(value, 0.1, 20, nameof(WeightSlope));
    }
    = new(1.5, "kg", Evidence.Choice, Ours);

    /// <summary>Distance of empty weight from the target that counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.2 to 20.</exception>
    public Threshold TargetDistance
    {
        get;
        init => field = Within(value, 0.2, 20, nameof(TargetDistance));
    }
    = new(2, "kg", Evidence.Choice, Ours);

    /// <summary>Age from which a target weight is asked about.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.5 to 24.</exception>
    public Threshold TargetMonths
    {
        get;
        init => field = Within(value, 0.5, 24, nameof(TargetMonths));
    }
    = new(3, "months", Evidence.Choice, Ours);

    /// <summary>Slope of systolic pressure that counts, in 28 days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 100.</exception>
    public Threshold PressureSlope
    {
        get;
        init => field = Within(value, 1, 100, nameof(PressureSlope));
    }
    = new(15, "mmHg", Evidence.Choice, Ours);

    /// <summary>Step of systolic pressure, last two days against two weeks, that counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 5 to 100.</exception>
    public Threshold PressureStep
    {
        get;
        init => field = Within(value, 5, 100, nameof(PressureStep));
    }
    = new(30, "mmHg", Evidence.Choice, Ours);

    /// <summary>How many standard errors a slope has to be away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 20.</exception>
    public Threshold SlopeErrors
    {
        get;
        init => field = Within(value, 1, 20, nameof(SlopeErrors));
    }
    = new(4, "", Evidence.Choice, Ours);

    /// <summary>Blood glucose that counts as high.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 5 to 60.</exception>
    public Threshold HighGlucose
    {
        get;
        init => field = Within(value, 5, 60, nameof(HighGlucose));
    }
    = new(15, "mmol/L", Evidence.Choice, "as for tests");

    /// <summary>Nights until the charts' signals count.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 7 to 365.</exception>
    public Threshold LearningNights
    {
        get;
        init => field = Within(value, 7, 365, nameof(LearningNights));
    }
    = new(30, "nights", Evidence.Choice, Ours);

    /// <summary>Nights after a signal in which the new level is learned and nothing is signalled.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 365.</exception>
    public Threshold RelearningNights
    {
        get;
        init => field = Within(value, 1, 365, nameof(RelearningNights));
    }
    = new(10, "nights", Evidence.Choice, Ours);

    /// <summary>Charts of each channel.</summary>
    public ReviewCharts Charts { get; init; } = ReviewCharts.Default;

    /// <summary>The defaults.</summary>
    public static ReviewLimits Default { get; } = new();

    /// <summary>The shipped limits with those of a local protocol's part <c>nights</c> in their place.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="findings">What is wrong with that part. A limit that has an error stays as shipped.</param>
    public static ReviewLimits From(LocalProtocol protocol, out IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var found = new List<Finding>();
        findings = found;
        return protocol.Nights is { } nights
            ? protocol.Over(new ReviewLimits { Name = $"{protocol.Name}, version {protocol.Version}" }, nights, found)
            : Default;
    }

    // Kilograms are those of an adult: of a child the same share of the body counts (choice).
    internal static double BodyShare(Patient patient) => TargetAssessment.IsChild(patient) ? patient.Weight.Kilograms / AdultKilograms : 1;

    private static Threshold Within(Threshold value, double low, double high, string name)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        Require.InRange(value.Value, low, high, value.Unit, name);
        return value;
    }
}
