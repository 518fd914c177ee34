namespace Transport.Tests.Optimization;

/// <summary>Frequencies of one day in words: what is said of ten days is about ten days.</summary>
public sealed class OptionWordsTests
{
    private static readonly FluidTarget Range = FluidTarget.Between(Volume.FromMilliliters(200), Volume.FromMilliliters(700));

    [Theory]
    [InlineData(0.50, 0.05, "On about 5 days in 10 the ultrafiltration lies between 200 and 700 mL, on about 4 in 10 below and on about 1 in 10 above, when the patient may dry out.")]
    [InlineData(0.46, 0.08, "On about 4 days in 10 the ultrafiltration lies between 200 and 700 mL, on about 5 in 10 below and on about 1 in 10 above, when the patient may dry out.")]
    [InlineData(0.94, 0.03, "On more than 9 days in 10 the ultrafiltration lies between 200 and 700 mL.")]
    [InlineData(0.01, 0.99, "On fewer than 1 day in 10 the ultrafiltration lies between 200 and 700 mL, on more than 9 in 10 above, when the patient may dry out.")]
    public void The_days_of_a_sentence_add_up_to_ten(double within, double above, string expected)
    {
        // Largest remainder (Hamilton's way of sharing seats): 5.0, 4.5 and 0.5 days were told as 5, 5 and 1, which is eleven. Of equal remainders the harm, drying out, is rounded up.
        Assert.Equal(expected, OptionWords.SingleDay(new(within, Doubt.None), above, Range));
    }

    [Fact]
    public void Shares_of_one_whole_are_tenths_that_add_up_to_ten_and_each_is_its_share_to_within_one()
    {
        // Every triple of hundredths that adds up to one: 5,151 of them.
        for (var a = 0; a <= 100; a++)
        {
            for (var b = 0; a + b <= 100; b++)
            {
                double[] shares = [a / 100.0, b / 100.0, 1 - a / 100.0 - b / 100.0];
                var tenths = Probability.Tenths(shares);
                Assert.Equal(10, tenths.Sum());
                Assert.All(tenths.Zip(shares), pair => Assert.InRange(pair.First, 10 * pair.Second - 1, 10 * pair.Second + 1));
            }
        }
    }
}
