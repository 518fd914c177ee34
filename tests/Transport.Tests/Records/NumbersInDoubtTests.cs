using System.Globalization;
using Transport.Studies;

namespace Transport.Tests.Records;

/// <summary>
/// Numbers that cannot be meant as they stand: another unit, a slipped decimal mark, two columns swapped, a century left out. They are set aside and told where nights are judged,
/// and none is put right. Books are invented; what is to be found was checked by hand for each line.
/// </summary>
public sealed class NumbersInDoubtTests
{
    private const string Header = "date,weight (kg),night fluid (mmol/L),volume per cycle (mL),cycles,night length (h),initial drain (mL),cycle drains (mL),uf (mL),remark";

    // Litres where the header says millilitres: a fraction below 8 of what is taken off, any drain below 20.
    [Theory]
    [InlineData("0.05", "2.2 2.2 2.2 2.2 2.2", "0.95", "uf")]
    [InlineData("40", "2.2 2.2 2.2 2.2 2.2", "1", "cycle drains")]
    [InlineData("0.05", "", "950", null)] // what a scale of millilitres may show
    [InlineData("40", "", "-0.3", "uf")]
    [InlineData("4", "2150 2100 2050 15 2100", "-1585", null)] // one that stopped
    [InlineData("40", "", "5.5", "uf")]
    [InlineData("300", "", "5.5", null)]
    [InlineData("0", "2200 2200 2200 2200 2200", "0", null)]
    [InlineData("4", "2200 2200 2200 2200 2200", "7", null)]
    public void Liters_in_a_column_of_millilitres_are_set_aside(string initial, string drains, string uf, string? field)
    {
        var book = Books.Read([Header, .. Plain(20), $"2026-02-21,70.0,,,,,{initial},{drains},{uf},"]);
        var found = book.Findings.SingleOrDefault(finding => finding.Code == "book-unit-doubtful");
        Assert.Equal((field, field is null ? (int?)null : 22), (found?.Field, found?.Row));
        Assert.Equal(field is null, book.Nights[^1].WrittenUltrafiltration is not null);
        Assert.Equal(field is null, book.Nights[^1].InitialDrain is not null);
        Assert.Equal(field is null && drains.Length > 0, book.Nights[^1].CycleDrains.Length > 0);
        var said = Said(book, "record-numbers-doubtful");
        Assert.Equal(field is null, said is null);
        Assert.Contains(field is null ? "" : $"{field} on 2026-02-21 (", said ?? "", StringComparison.Ordinal);

        // Nothing is claimed of five drains that would leave 10 L behind.
        Assert.Null(Said(book, "record-overfill-now"));
    }

    // 70 kg for twenty days. A quarter more or less is nobody's week (choice); pounds are 2.2046 to the kilogram.
    [Theory]
    [InlineData("154.3", "it may be pounds")]
    [InlineData("7.01", "a decimal mark may have slipped")]
    [InlineData("95", "a slip, another unit, or another person")]
    [InlineData("31.8", "those before may be pounds")]
    [InlineData("86", null)]
    [InlineData("54", null)]
    public void A_weight_that_is_not_this_persons_is_set_aside(string weight, string? why)
    {
        var book = Books.Read([Header, .. Plain(20), $"2026-02-21,{weight},,,,,40,,950,"]);
        var found = book.Findings.SingleOrDefault(finding => finding.Code == "book-weight-doubtful");
        Assert.Equal(why is null, found is null);
        Assert.Equal(why is null, book.Nights[^1].Weight is not null);
        Assert.Contains(why ?? "", found?.Message ?? "", StringComparison.Ordinal);
        Assert.Contains(why ?? "", Said(book, "record-numbers-doubtful") ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_level_of_weight_is_not_set_aside_for_ever_where_it_came_by_and_by()
    {
        // 70 to 50 kg by half a kilogram a day: after the whole way the middle of the two weeks before is 53.5 kg, and no day was more than a tenth from its own.
        var book = Books.Read([Header, .. Plain(60, day => 70 - 0.5 * Math.Clamp(day - 15, 0, 40))]);
        Assert.DoesNotContain(book.Findings, finding => finding.Code == "book-weight-doubtful");
        Assert.All(book.Nights, night => Assert.NotNull(night.Weight));
    }

    // The drains make 1,000 mL where the book has its opposite: once is a slip in the list, three times are said on the page (a night of 50 mL off is none).
    [Theory]
    [InlineData(1, false)]
    [InlineData(3, true)]
    public void A_sum_that_does_not_add_up_again_and_again_is_said_where_nights_are_judged(int days, bool isSaid)
    {
        var book = Books.Read([Header, .. Plain(20), .. Enumerable.Range(21, days).Select(day => Day(day) + ",70.0,,,,,40,2200 2200 2200 2200 2200,-1000,")]);
        Assert.Equal(days, book.Findings.Count(finding => finding.Code == "book-sum-differs"));
        Assert.Equal(isSaid, Said(book, "record-numbers-doubtful")?.Contains("uf on 3 days, last on 2026-02-23 (Drains less fills make 1000 mL; the book has −1000 mL", StringComparison.Ordinal) == true);
    }

    // A strength of 386 mmol/L is none; what is believed to be run is that of the row before, which a reader has to know.
    [Fact]
    public void A_strength_that_cannot_be_read_is_said_where_nights_are_judged()
    {
        var book = Books.Read([Header, .. Plain(20), "2026-02-21,70.0,386,,,,40,,950,"]);
        Assert.Equal(book.Nights[0].Regimen, book.Nights[^1].Regimen);
        Assert.Contains("night fluid on 2026-02-21 (“386 mmol/L”: This value is not possible", Said(book, "record-numbers-doubtful"), StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_of_what_is_possible_are_written_as_people_write_them()
    {
        var found = Books.Read([Header, .. Plain(3), "2026-02-04,70.0,,,,,40,,-12000,"]).Findings.Single(finding => finding.Code == "impossible-value");
        Assert.Equal("-10000 to 6000 mL", found.Expected);
    }

    // Exchanges by hand of 2,000 mL that bring 2,200: on the last day the two columns change places, in all of the exchanges or in all but one.
    [Theory]
    [InlineData(4, true)]
    [InlineData(3, true)]
    [InlineData(1, false)]
    [InlineData(0, false)]
    public void Filled_and_drained_that_changed_places_are_set_aside(int swapped, bool isFound)
    {
        var rows = Enumerable.Range(1, 5).SelectMany(day => Enumerable.Range(1, 4).Select(exchange =>
            $"{Day(day)},{exchange},{4 + 4 * exchange:00}:00,75.5,{(day == 5 && exchange <= swapped ? $"{2200 + exchange},2000" : $"2000,{2200 + exchange}")}"));
        var book = Books.Read(["date,exchange,began,night fluid (mmol/L),filled (mL),drained (mL)", .. rows]);
        Assert.Equal(isFound, book.Findings.Any(finding => finding.Code == "book-fill-drain-swapped"));
        Assert.Equal(isFound, book.Nights[^1].Exchanges.All(exchange => exchange.Drained is null));
    }

    // Which of the three numbers is the year shows in all of them together: it stays, and a day does not.
    [Theory]
    [InlineData("dd/MM/yy")]
    [InlineData("MM/dd/yy")]
    [InlineData("yy-MM-dd")]
    [InlineData("d.M.yy")]
    public void A_year_of_two_digits_is_read_where_the_book_shows_which_number_it_is(string form)
    {
        DateOnly[] days = [.. Enumerable.Range(0, 40).Select(day => new DateOnly(2025, 12, 10).AddDays(day))];
        var book = Books.Read(["date,uf (mL)", .. days.Select(day => $"{day.ToString(form, CultureInfo.InvariantCulture)},900")]);
        Assert.Equal(days, book.Nights.Select(night => night.Date));
        Assert.Equal(["book-year-short"], book.Findings.Select(finding => finding.Code));
    }

    [Fact]
    public void Four_such_dates_show_nothing()
    {
        var book = Books.Read(["date,uf (mL)", "11/12/25,900", "12/12/25,900", "13/12/25,900", "14/12/25,900"]);
        Assert.Empty(book.Nights);
        Assert.Equal(4, book.Findings.Count(finding => finding.Code == "book-date-unreadable"));
    }

    // One comma too many at the end of a row whose cells stand under the columns of the row before; and one before the end, where they do not.
    [Theory]
    [InlineData("2026-02-21,70.0,,,,,40,,950,,", true)]
    [InlineData("2026-02-21,,70.0,,,,,40,,950,", false)]
    [InlineData("2026-02-21,70.0,,,,,,40,,950,", false)]
    public void A_stray_comma_at_the_end_costs_a_row_nothing(string row, bool isKept)
    {
        var book = Books.Read([Header, .. Plain(20), row]);
        Assert.Equal(isKept, book.Nights[^1].Row == 22);
        Assert.Equal(isKept, book.RowsInDoubt.Count == 0);
    }

    [Fact]
    public void Rows_that_slipped_one_after_the_other_show_no_place_of_their_own()
    {
        // A blank too many before the initial drain, twice: the second lies as the first does, which was refused.
        var book = Books.Read([Header, .. Plain(20), "2026-02-21,70.0,,,,,,40,,950,", "2026-02-22,70.0,,,,,,41,,960,"]);
        Assert.Equal([22, 23], book.RowsInDoubt.Select(row => row.Row));
    }

    [Fact]
    public void A_new_level_of_weight_is_believed_after_a_pause_and_after_five_that_agree()
    {
        // 70 kg for twenty days. After five months nobody knows what is usual; without a pause five weights of 50 kg are refused, and the sixth is the level.
        string Late(int day) => $"{new DateOnly(2026, 7, 1).AddDays(day):yyyy-MM-dd},50.0,,,,,40,,950,";
        Assert.DoesNotContain(Books.Read([Header, .. Plain(20), .. Enumerable.Range(0, 10).Select(Late)]).Findings, finding => finding.Code == "book-weight-doubtful");
        var book = Books.Read([Header, .. Plain(20), .. Enumerable.Range(21, 7).Select(day => Day(day) + ",50.0,,,,,40,,950,")]);
        Assert.Equal([22, 23, 24, 25, 26], book.Findings.Where(finding => finding.Code == "book-weight-doubtful").Select(finding => finding.Row!.Value));
        Assert.Equal(50, book.Nights[^1].Weight!.Value.Kilograms);
    }

    // Three days without a word of treatment, or with the word that there was none.
    [Theory]
    [InlineData(3, true)]
    [InlineData(2, false)]
    public void Days_in_a_row_without_treatment_are_said(int days, bool isSaid) =>
        Assert.Equal(isSaid, Said(Books.Read([Header, .. Plain(20), Day(21 + days) + ",70.0,,,,,40,,950,"]), "record-untreated") is not null);

    // 950 mL or so are usual: 1,500 more, three quarters of a fill of 2 L (choice), are more than nights scatter.
    [Theory]
    [InlineData(2600, true)]
    [InlineData(2200, false)]
    public void Far_more_than_was_expected_is_said(int milliliters, bool isSaid) =>
        Assert.Equal(isSaid, Said(Books.Read([Header, .. Plain(20), $"2026-02-21,70.0,,,,,40,,{milliliters},"]), "record-uf-far-above") is not null);

    // Four days of 900 mL more in than out hide in two weeks of 950.
    [Theory]
    [InlineData(-900, "about 900 mL a day in the last 4 days, 3600 mL in all")]
    [InlineData(-200, null)]
    public void What_a_few_days_keep_is_not_hidden_by_two_weeks(int milliliters, string? expected)
    {
        var said = Said(Books.Read([Header, .. Plain(20), .. Enumerable.Range(21, 4).Select(day => $"{Day(day)},70.0,,,,,40,,{milliliters},")]), "record-removal-low");
        Assert.Equal(expected is not null, said?.Contains(expected ?? "in all", StringComparison.Ordinal) == true);
    }

    private static string Day(int day) => new DateOnly(2026, 1, 31).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Plain(int days, Func<int, double>? weight = null) => Enumerable.Range(1, days).Select(day => string.Create(
        CultureInfo.InvariantCulture, $"{Day(day)},{weight?.Invoke(day) ?? 70:0.0},{(day == 1 ? "126,2000,5,9" : ",,,")},{40 + day % 3},,{900 + 10 * (day % 7)},"));

    private static string? Said(RecordBook book, string code)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        return RecordReview.Run(person with { Weight = Mass.FromKilograms(70) }, ensemble, book, new() { Tested = DialysisSolution.Glucose227 }).Findings.SingleOrDefault(finding => finding.Code == code)?.Message;
    }
}
