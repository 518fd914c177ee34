namespace Transport;

/// <summary>How a form is recognized, what it is called, and what it cannot give.</summary>
public static class TestForms
{
    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);

    /// <summary>The form that a test has by what was measured in it. A pair is told by its second test, never by one alone.</summary>
    public static TestForm Recognize(EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return Recognize(test.Dialysate, test.TemporaryDrain is not null, test.Dwell);
    }

    /// <summary>The same from its parts.</summary>
    /// <param name="dialysate">Samples in order of time.</param>
    /// <param name="hasTemporaryDrain">Whether the cavity was drained and filled again within the dwell.</param>
    /// <param name="dwell">Dwell time.</param>
    public static TestForm Recognize(IReadOnlyList<DialysateSample> dialysate, bool hasTemporaryDrain, TimeSpan dwell)
    {
        ArgumentNullException.ThrowIfNull(dialysate);
        var early = TimeSpan.FromMinutes(MembraneThresholds.Default.EarlyTolerance.Value);
        return dialysate.Any(sample => sample.Marker is not null) ? TestForm.Permeability
            : hasTemporaryDrain ? TestForm.TemporaryDrain
            : dwell <= Hour + 3 * early ? TestForm.OneHour
            : dialysate.Count == 1 && dialysate[0].Time > Hour + 3 * early ? TestForm.Fast
            : dialysate.Any(sample => sample.Sodium is not null && (sample.Time - Hour).Duration() <= early) ? TestForm.FourHourWithSodium
            : TestForm.FourHour;
    }

    /// <summary>The form in words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a form.</exception>
    public static string Name(this TestForm form) => form switch
    {
        TestForm.FourHour => "4-h test",
        TestForm.FourHourWithSodium => "4-h test with sodium at 60 min",
        TestForm.Fast => "fast test",
        TestForm.OneHour => "1-h test",
        TestForm.PairedOneHour => "one of two paired tests",
        TestForm.TemporaryDrain => "4-h test with temporary drain",
        TestForm.Permeability => "permeability analysis with volume marker",
        TestForm.Collection => "24-h collection",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "Not a test form."),
    };

    /// <summary>What the form cannot give however well it is carried out; empty where it gives all that a test of its dwell can.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a form.</exception>
    public static IReadOnlyList<MissingIndex> CannotGive(this TestForm form) => form switch
    {
        TestForm.FourHour =>
        [
            new("sodium dip", "needs dialysate sodium at 0 and 60 min"),
            new("free water at 60 min", "needs a temporary drain, or a 1-h test"),
        ],
        TestForm.FourHourWithSodium => [new("free water at 60 min", "needs a temporary drain, or a 1-h test")],
        TestForm.Fast =>
        [
            new("D/D0 glucose", "there is no sample at 0 min; the absolute glucose is read instead"),
            new("mass transfer area coefficients", "there is no sample at 0 min"),
            new("sodium dip", "there is no sample at 60 min"),
        ],
        TestForm.OneHour or TestForm.PairedOneHour =>
        [
            new("transport category", "the classes are for 240 min"),
            new("ultrafiltration capacity", "the limits are for 240 min"),
            .. form == TestForm.PairedOneHour ? new MissingIndex[] { new(PairedTest.Name, "needs both tests of the pair") } : [],
        ],
        TestForm.TemporaryDrain => [],
        TestForm.Permeability => [],
        TestForm.Collection =>
        [
            new("transport category", "a collection has no timed samples"),
            new("sodium dip", "a collection has no timed samples"),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "Not a test form."),
    };
}
