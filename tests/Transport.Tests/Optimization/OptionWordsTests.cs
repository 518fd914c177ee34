using System.Text.RegularExpressions;

namespace Transport.Tests.Optimization;

/// <summary>Frequencies of one day in words: what is said of ten days is about ten days.</summary>
public sealed partial class OptionWordsTests
{
    private static readonly FluidTarget Range = FluidTarget.Between(Volume.FromMilliliters(200), Volume.FromMilliliters(700));

    [Theory]
    [InlineData(0.49, 0.06, "On about 5 days in 10 the ultrafiltration lies between 200 and 700 mL, on about 4 in 10 below and on about 1 in 10 above, when the patient may dry out.")]
    [InlineData(0.46, 0.08, "On about 4 days in 10 the ultrafiltration lies between 200 and 700 mL, on about 5 in 10 below and on about 1 in 10 above, when the patient may dry out.")]
    [InlineData(0.725, 0.136, "On about 8 days in 10 the ultrafiltration lies between 200 and 700 mL, on about 1 in 10 below and on about 1 in 10 above, when the patient may dry out.")]
    [InlineData(0.94, 0.03, "On more than 9 days in 10 the ultrafiltration lies between 200 and 700 mL.")]
    [InlineData(0.01, 0.99, "On fewer than 1 day in 10 the ultrafiltration lies between 200 and 700 mL, on more than 9 in 10 above, when the patient may dry out.")]
    public void The_days_of_a_sentence_add_up_to_ten(double within, double above, string expected)
    {
        // 4.6, 4.6 and 0.8 days rounded one by one are 5, 5 and 1, which is eleven; 7.25, 1.39 and 1.36 are nine.
        Assert.Equal(expected, OptionWords.SingleDay(new(within, Doubt.None), above, Range));
    }

    [Fact]
    public void What_is_said_of_the_floor_agrees_wherever_it_is_said()
    {
        // Every triple of hundredths that adds up to one, 5,151 of them: "below" beside the sentence of the goal, which says how many days reach the floor.
        for (var a = 0; a <= 100; a++)
        {
            for (var b = 0; a + b <= 100; b++)
            {
                var (within, above) = (a / 100.0, b / 100.0);
                var sentence = OptionWords.SingleDay(new(within, Doubt.None), above, Range);
                var below = Tenths(Below().Match(sentence));
                var reached = Tenths(Counted().Match(new Probability(within + above, Doubt.None).InTen("day")));
                Assert.True(below + reached == 10, $"{within} {above}: {sentence} {reached}");
                Assert.Equal(10, Tenths(Counted().Match(sentence)) + below + Tenths(Above().Match(sentence)));
            }
        }

        static int Tenths(Match match) => !match.Success || match.Groups["fewer"].Success ? 0 : match.Groups["more"].Success ? 10 : int.Parse(match.Groups["count"].Value, null);
    }

    [GeneratedRegex("(?<fewer>fewer than )?(?<more>more than )?(about )?(?<count>[0-9]) days? in 10")]
    private static partial Regex Counted();

    [GeneratedRegex("on (?<more>more than )?(about )?(?<count>[0-9]) in 10 below")]
    private static partial Regex Below();

    [GeneratedRegex("on (?<more>more than )?(about )?(?<count>[0-9]) in 10 above")]
    private static partial Regex Above();
}
