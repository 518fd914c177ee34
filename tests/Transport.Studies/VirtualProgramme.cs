using System.Globalization;
using System.Text;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>An invented programme: fifteen people, the sheet of a test each, and ninety nights in a book. Their stories are not in the files.</summary>
public static class VirtualProgramme
{
    private const int Seed = 4711;
    private const int Nights = 90;

    private static readonly DialysisSolution Tested = DialysisSolution.Glucose227;
    private static readonly DateOnly First = new(2025, 1, 1);

    /// <summary>What happens to the person of a code.</summary>
    /// <param name="Code">Of sheet and book.</param>
    /// <param name="IsWet">Whether fluid stays in by day.</param>
    /// <param name="Kind">What is written down.</param>
    /// <param name="Story">What happens to the nights.</param>
    /// <param name="From">On which night it begins.</param>
    /// <param name="Size">How much.</param>
    /// <param name="Over">Over how many nights.</param>
    public sealed record Person(string Code, bool IsWet, BookKind Kind, BookStory Story = BookStory.Stable, int From = 0, double Size = 0, int Over = 0)
    {
        /// <summary>What the book itself tells beside the volumes.</summary>
        public string Told { get; init; } = "";
    }

    /// <summary>The people.</summary>
    public static IReadOnlyList<Person> People { get; } =
    [
        new("VP-01", false, BookKind.WithCycles),
        new("VP-02", true, BookKind.WithInitialDrain),
        new("VP-03", false, BookKind.WithCycles, BookStory.LowerConductance, 35, 0.35, 45),
        new("VP-04", true, BookKind.WithInitialDrain, BookStory.FasterTransfer, 35, 0.35, 45),
        new("VP-05", false, BookKind.WithInitialDrain, BookStory.DrainFault, 62, 0.1),
        new("VP-06", true, BookKind.WithCycles, BookStory.DrainFault, 62, 0.12),
        new("VP-07", false, BookKind.WithInitialDrain) { Told = "lost dwell" },
        new("VP-08", false, BookKind.WithCycles, BookStory.WeakerBags, 55, 1),
        new("VP-09", true, BookKind.WithInitialDrain) { Told = "cloudy" },
        new("VP-10", false, BookKind.WithCycles) { Told = "peritonitis" },
        new("VP-11", true, BookKind.WithInitialDrain) { Told = "habits" },
        new("VP-12", false, BookKind.NightAlone) { Told = "strongest" },
        new("VP-13", false, BookKind.WithInitialDrain) { Told = "fever" },
        new("VP-14", true, BookKind.WithInitialDrain) { Told = "glucose" },
        new("VP-15", false, BookKind.WithCycles, BookStory.LostDwell, 62, 90) { Told = "average dwell" },
    ];

    /// <summary>Writes sheets and books.</summary>
    /// <param name="directory">Where.</param>
    public static void Write(string directory)
    {
        Directory.CreateDirectory(directory);
        for (var i = 0; i < People.Count; i++)
        {
            var (truth, test, _, random) = Healthy(i);
            File.WriteAllText(Path.Combine(directory, People[i].Code + "-sheet.csv"), Sheet(People[i].Code, test));
            File.WriteAllText(Path.Combine(directory, People[i].Code + "-book.csv"), Book(People[i], truth, i, (RandomSource)random));
        }
    }

    // Somebody whose nights return enough to live on.
    private static VirtualTest Healthy(int person)
    {
        for (var index = 100 * person; ; index++)
        {
            var candidate = VirtualTest.Of(Seed, index, Tested, World.AsModelled);
            var night = RegimenSimulation.Run(Patient.Example, candidate.Membrane, RegimenOf(People[person])).NightUltrafiltration.Milliliters;
            if (night is > 650 and < 1500)
            {
                return candidate;
            }
        }
    }

    private static Regimen RegimenOf(Person person) => Regimen.Cycling(
        TimeSpan.FromHours(9), 5, Volume.FromLiters(2), Tested, person.IsWet ? new(Tested, Volume.FromLiters(2)) : null);

    private static string Book(Person person, ThreePoreMembrane truth, int number, RandomSource random)
    {
        var regimen = RegimenOf(person);
        var nights = new VirtualBook(Patient.Example, truth, regimen).Write(Seed + number, Nights, 150, person.Kind, person.Story, person.From, person.Size, person.Over);
        var page = new StringBuilder("# Invented data: no real patient. Made by: dotnet run -c Release --project tests/Transport.Studies -- programme\n")
            .Append("date,patient,weight (kg),weighed,pressure sitting,blood glucose (mmol/L),temperature,urine (mL/day),effluent,symptoms,peritonitis,night fluid (mmol/L),volume per cycle (mL),cycles,night length (h),day fluid (mmol/L),day fill (mL),initial drain (mL),cycle drains (mL),uf (mL),uf counts,dwell deviation (min),")
            .Append(person.Told == "average dwell" ? "average dwell (min)," : "").Append("drain time (min),remark\n");
        double drift = 0;
        for (var n = 0; n < nights.Count; n++)
        {
            var night = nights[n];
            var t = night.Date.DayNumber - First.DayNumber;
            drift = 0.8 * drift + 0.25 * Normal.Sample(random, 0, 1);
            var weight = 68 + drift + (person.Story is BookStory.LowerConductance or BookStory.FasterTransfer && t > 45 ? 0.03 * (t - 45) : 0);
            var pressure = 132 + 7 * Normal.Sample(random, 0, 1);
            var told = new Dictionary<string, string> { ["glucose"] = "", ["temperature"] = "", ["symptoms"] = "", ["remark"] = "" };
            double uf = night.WrittenUltrafiltration!.Value.Milliliters, lost = night.LostDwell!.Value.TotalMinutes;
            var (effluent, peritonitis, fluid, initial) = ("clear", "", n == 0 ? "126" : "", night.InitialDrain?.Milliliters);
            switch (person.Told)
            {
                case "lost dwell" when t >= 78:
                    lost = 55 + Math.Round(20 * random.NextDouble());
                    uf -= 60;
                    break;
                case "cloudy" when t >= Nights - 2:
                    effluent = "cloudy";
                    break;
                case "peritonitis" when t is >= 48 and < 62:
                    uf -= 350;
                    effluent = t < 51 ? "cloudy" : "clear";
                    peritonitis = t == 48 ? "yes" : "";
                    break;
                case "habits":
                    uf += t >= 40 ? initial ?? 0 : 0;
                    weight += t >= 60 ? 2 : 0;
                    break;
                case "strongest" when t >= 62 && t % 2 == 0:
                    fluid = "214.3";
                    uf += 500;
                    break;
                case "strongest" when t >= 62:
                    fluid = "126";
                    break;
                case "fever" when t >= Nights - 2:
                    told["temperature"] = "38.6";
                    told["symptoms"] = "belly pain and shivering";
                    break;
                case "glucose" when t % 3 == 0:
                    told["glucose"] = Number(t > 55 ? 19 + 2 * Normal.Sample(random, 0, 1) : 7 + Normal.Sample(random, 0, 1), "0.0");
                    break;
            }

            var cycles = person.Told == "peritonitis" ? "" : string.Join(' ', night.CycleDrains.Select(drain => Number(drain.Milliliters)));
            page.AppendJoin(',', night.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), n == 0 ? person.Code : "", Number(weight, "0.0"), n == 0 ? "empty" : "",
                $"{Number(pressure)}/{Number(0.6 * pressure)}", told["glucose"], told["temperature"], t % 7 == 0 ? Number(500 + 60 * Normal.Sample(random, 0, 1)) : "", effluent, told["symptoms"], peritonitis,
                fluid, n == 0 ? "2000" : "", n == 0 ? "5" : "", n == 0 ? "9" : "", n > 0 ? "" : person.IsWet ? "126" : "dry", n == 0 && person.IsWet ? "2000" : "",
                initial is { } drained ? Number(drained) : "", cycles, Number(uf), n == 0 ? "night" : "", Number(lost) + (person.Told == "average dwell" ? "," + Number(night.AverageDwell!.Value.TotalMinutes) : ""), night.DrainTime is { } minutes ? Number(minutes.TotalMinutes, "0.0") : "", told["remark"]).Append('\n');
        }

        return page.ToString();
    }

    private static string Sheet(string code, EquilibrationTest test)
    {
        var patient = test.Patient;
        var sheet = new StringBuilder("# Invented data: no real patient. Made by: dotnet run -c Release --project tests/Transport.Studies -- programme\nsection,item,time,value,unit,remark\n");
        Fact("patient", "code", code, "");
        Fact("patient", "sex", patient.Sex == Sex.Female ? "female" : "male", "");
        Fact("patient", "age", Number(patient.AgeYears), "years");
        Fact("patient", "height", Number(patient.Height.Centimeters), "cm");
        Fact("patient", "weight", Number(patient.Weight.Kilograms, "0.0"), "kg");
        Fact("patient", "urine volume", Number(patient.ResidualFunction.UrineVolumePerDay.Milliliters), "mL/day");
        Fact("patient", "renal urea clearance", Number(patient.ResidualFunction.UreaClearance.MillilitersPerMinute, "0.0"), "mL/min");
        Fact("patient", "renal creatinine clearance", Number(patient.ResidualFunction.CreatinineClearance.MillilitersPerMinute, "0.0"), "mL/min");
        Fact("test", "date", "2024-12-10", "");
        Fact("test", "solution glucose", "126", "mmol/L");
        Fact("test", "solution sodium", "132", "mmol/L");
        Fact("test", "osmotic agent", "glucose", "");
        Fact("test", "fill volume", "2000", "mL");
        Fact("test", "fill basis", "weighed", "");
        Fact("test", "dwell", "240", "min");
        Fact("test", "drained volume", Number(test.DrainedVolume!.Value.Milliliters), "mL");
        Fact("test", "creatinine method", "enzymatic", "");
        foreach (var sample in test.Dialysate)
        {
            var time = Number(sample.Time.TotalMinutes);
            Measured("dialysate", "creatinine", time, 1000 * sample.Creatinine!.Value.MillimolesPerLiter, "µmol/L", "0");
            Measured("dialysate", "urea", time, sample.Urea!.Value.MillimolesPerLiter, "mmol/L", "0.0");
            Measured("dialysate", "glucose", time, sample.Glucose!.Value.MillimolesPerLiter, "mmol/L", "0.0");
            Measured("dialysate", "sodium", time, sample.Sodium!.Value.MillimolesPerLiter, "mmol/L", "0");
        }

        Measured("plasma", "creatinine", "120", 1000 * patient.Plasma.Creatinine.MillimolesPerLiter, "µmol/L", "0");
        Measured("plasma", "urea", "120", patient.Plasma.Urea.MillimolesPerLiter, "mmol/L", "0.0");
        Measured("plasma", "glucose", "120", patient.Plasma.Glucose.MillimolesPerLiter, "mmol/L", "0.0");
        Measured("plasma", "sodium", "120", patient.Plasma.Sodium.MillimolesPerLiter, "mmol/L", "0");
        return sheet.ToString();

        void Fact(string section, string item, string value, string unit) => sheet.Append(CultureInfo.InvariantCulture, $"{section},{item},,{value},{unit},\n");

        void Measured(string section, string item, string time, double value, string unit, string format) =>
            sheet.Append(CultureInfo.InvariantCulture, $"{section},{item},{time},{Number(value, format)},{unit},\n");
    }

    private static string Number(double value, string format = "0") => value.ToString(format, CultureInfo.InvariantCulture);
}
