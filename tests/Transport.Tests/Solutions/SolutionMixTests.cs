using System.Text;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Solutions;

/// <summary>Two bags mixed by a machine into a strength: what runs in, what bags it takes, what a machine cannot mix, and how files say it. Arithmetic by hand.</summary>
public sealed class SolutionMixTests
{
    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    private static readonly DialysisSolution Strong = DialysisSolution.Glucose227;

    private static readonly DialysisSolution Mixed = new SolutionMix(Weak, 5, Strong, 3).ToSolution();

    [Fact]
    public void A_mix_holds_the_mean_by_volume_and_does_what_such_a_bag_would_do()
    {
        // (5 · 75.5 + 3 · 126.0)/8 = 94.4375 mmol/L; of sodium 125 and 132 likewise 127.625; an ion in one of them alone is diluted.
        Assert.Equal(94.4375, Mixed.Glucose.MillimolesPerLiter, 1e-12);
        Assert.Equal(132, Mixed.Sodium.MillimolesPerLiter);
        Assert.Equal("mix 5:3 of glucose 1.36 % and glucose 2.27 %", Mixed.Name);
        var low = new DialysisSolution("low sodium", Concentration.FromMillimolesPerLiter(126), Concentration.FromMillimolesPerLiter(125));
        var other = new SolutionMix(low, 5, Weak, 3).ToSolution();
        Assert.Equal(127.625, other.Sodium.MillimolesPerLiter, 1e-12);
        Assert.Equal(40 * 3 / 8.0, other.Others[Solutes.Lactate].MillimolesPerLiter, 1e-12);
        Assert.Null((other with { Others = DialysisSolution.LactateBuffer }).Mix);

        RegimenOutcome Night(DialysisSolution solution) =>
            RegimenSimulation.Run(Patient.Example, ReferenceMembranes.Textbook, Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), solution));
        Assert.Equal(Night(DialysisSolution.OfGlucose(94.4375)).Ultrafiltration.Milliliters, Night(Mixed).Ultrafiltration.Milliliters, 1e-9);
    }

    [Fact]
    public void It_takes_its_share_of_two_bags()
    {
        // 4 × 2 L of 5:3 are 5 L of the one and 3 L of the other.
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), Mixed);
        var covers = BagCover.Of(night);
        Assert.Equal([(Weak, 5_000.0), (Strong, 3_000)], covers.Select(cover => (cover.Solution, Math.Round(cover.Needed.Milliliters, 6))));
        Assert.All(covers, cover => Assert.Equal(0, cover.LeftOver.Milliliters, 1e-6));

        var stated = new AutomatedPrescription(TimeSpan.FromHours(9), Mixed) { VolumePerCycle = Milliliters(2_000), Cycles = 4 };
        Assert.Empty((stated with { Bags = [new(Weak, Milliliters(5_000)), new(Strong, Milliliters(3_000))] }).Findings);
        var lacking = Assert.Single((stated with { Bags = [new(Weak, Milliliters(5_000)), new(Strong, Milliliters(2_500))] }).Findings);
        Assert.Equal("bags-do-not-add-up", lacking.Code);
        Assert.Contains("500 mL are missing", lacking.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_mixes_two_solutions_and_no_hand_does()
    {
        var hour = TimeSpan.FromHours(9);
        Exchange Of(DialysisSolution solution) => new(solution, Milliliters(2_000));
        var unmixed = new Regimen(hour, [Of(Mixed), Of(Weak), Of(Strong)], new DayFill(DialysisSolution.Glucose386, Milliliters(2_000)));
        Assert.DoesNotContain(unmixed.Findings, finding => finding.Severity == Severity.Error);
        foreach (var third in new Func<Regimen>[]
        {
            () => new(hour, [Of(Mixed), Of(DialysisSolution.Glucose386)]),
            () => new(hour, [Of(Weak)], [Of(new SolutionMix(Strong, 1, DialysisSolution.Glucose386, 1).ToSolution())]),
            () => Regimen.Ambulatory([new(new(8, 0), Mixed, Milliliters(2_000)), new(new(20, 0), Weak, Milliliters(2_000))]),
        })
        {
            Assert.Equal("mix-not-possible", Assert.Single(Assert.Throws<RegimenException>(third).Findings, finding => finding.Severity == Severity.Error).Code);
        }

        Assert.Throws<ArgumentException>(() => new SolutionMix(Weak, 1, DialysisSolution.Icodextrin, 1));
        Assert.Throws<ArgumentException>(() => new SolutionMix(Weak, 1, Mixed, 1));
        Assert.Throws<ArgumentException>(() => new SolutionMix(Weak, 1, Weak, 1));
        Assert.All([0, -1, double.NaN, double.PositiveInfinity], parts => Assert.Throws<ArgumentOutOfRangeException>(() => new SolutionMix(Weak, parts, Strong, 1)));
    }

    [Theory]
    [InlineData("mix 5:3 of glucose 1.36 % and glucose 2.27 %", 94.4375)]
    [InlineData("Mix 2.5 : 1.5 of 75.5 mmol/L and glucose 2.27 %", 94.4375)]
    [InlineData("mix 1:1 of soft and low and glucose 2.27 %", 113)]
    public void A_file_says_it_in_words(string words, double glucose)
    {
        // (100 + 126)/2 = 113: the name "soft and low" holds the word that stands between the two.
        var file = Read($"item,value,unit,solution\nnight length,9,h,\nvolume per cycle,2,L,\ncycles,4,,\nnight solution,{words},,\nsolution,100,mmol/L,soft and low\n");
        Assert.Empty(file.Findings);
        var solution = file.ToRegimen().Night[0].Solution;
        Assert.Equal(glucose, solution.Glucose.MillimolesPerLiter, 1e-12);
        Assert.NotNull(solution.Mix);
        Assert.All([file.ToCsv(), file.ToJson()], text => Assert.Equal(file.ToRegimen(), Read(text).ToRegimen()));
    }

    [Theory]
    [InlineData("mix 5:3 of glucose 1.36 %")]
    [InlineData("mix 0:3 of glucose 1.36 % and glucose 2.27 %")]
    [InlineData("mix a:3 of glucose 1.36 % and glucose 2.27 %")]
    [InlineData("mix 1:1 of glucose 1.36 % and icodextrin")]
    [InlineData("mix 1:1 of glucose 1.36 % and mix 1:1 of glucose 1.36 % and glucose 2.27 %")]
    public void What_is_no_mix_is_no_solution(string words) => Assert.Equal(
        "regimen-solution-unknown",
        Assert.Single(Read($"item,value\nnight length,540\nvolume per cycle,2000\ncycles,4\nnight solution,{words}\n").Findings).Code);

    private static RegimenFile Read(string text) => RegimenFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));
}
