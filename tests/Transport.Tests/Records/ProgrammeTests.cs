using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using Transport.Reporting;
using Transport.Studies;

namespace Transport.Tests.Records;

/// <summary>The invented programme, read from its files: the stories are here and nowhere in what the review sees.</summary>
public sealed class ProgrammeTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "reference-data", "examples", "programme");

    // A review is immutable: one of each person for all tests.
    private static readonly ConcurrentDictionary<string, Lazy<RecordReview>> Reviews = new();

    // What has to be said of a story, and nothing of the membrane where the story is of the book.
    [Theory]
    [InlineData("VP-05", "record-change-found")]
    [InlineData("VP-06", "record-change-found")]
    [InlineData("VP-07", "record-lost-dwell")]
    [InlineData("VP-08", "record-change-found")]
    [InlineData("VP-09", "record-cloudy-now")]
    [InlineData("VP-12", "record-strongest-rising")]
    [InlineData("VP-13", "record-pain-or-fever-now")]
    [InlineData("VP-14", "record-glucose-high")]
    [InlineData("VP-15", "record-change-found")]
    public void What_happened_is_said(string code, string finding) =>
        Assert.Contains(Review(code).Findings, found => found.Code == finding);

    [Theory]
    [InlineData("VP-05")]
    [InlineData("VP-06")]
    public void A_drain_fault_is_named_first(string code) =>
        Assert.Equal(ChangeCause.DrainTrouble, Review(code).Changes[0].Explanations[0].Cause);

    [Fact]
    public void Dwell_that_is_lost_beside_what_the_book_says_of_it_is_named_first_and_dated()
    {
        // VP-15 loses 90 min a night from the 62nd evening on (4 March), 18 in each of five dwells; its column of dwell deviation goes on as before, its average dwell does not.
        var review = Review("VP-15");
        var change = Assert.Single(review.Changes);
        Assert.Equal(ChangeCause.LostDwell, change.Explanations[0].Cause);
        Assert.Equal((NightChannel.AverageDwell, true), (change.Channel, change.IsDownward));
        Assert.InRange(new DateOnly(2025, 3, 4), change.BeganEarliest, change.BeganLatest);
        Assert.InRange(change.SignalledOn.DayNumber - new DateOnly(2025, 3, 4).DayNumber, 0, 3); // 18 min where a night differs by 3: the first or second night written
        var sentence = review.Findings.Single(found => found.Code == "record-change-found").Message;
        Assert.Contains("The average dwell is shorter than was expected", sentence, StringComparison.Ordinal);
        Assert.Contains("Most compatible: dwell time lost that is not written down", sentence, StringComparison.Ordinal);

        // The book itself notes it on each such night: the plan less what is written as lost is not the average dwell.
        var noted = review.Book.Findings.Where(found => found.Code == "book-dwell-differs").Select(found => review.Nights.Single(night => night.Record.Row == found.Row).Record.Date).ToList();
        Assert.True(noted.Count(date => date >= new DateOnly(2025, 3, 4)) > 20);
        Assert.True(noted.Count(date => date < new DateOnly(2025, 3, 4)) <= 1); // a clock that differs by 2 min is 5 off in one night of eighty
    }

    [Fact]
    public void A_change_that_begins_at_once_is_dated_to_the_night_and_what_is_said_of_it_points_one_way()
    {
        // VP-05's and VP-06's drains leave a further tenth behind from the 62nd evening on (4 March): more before the first fill, and less of a night, in one sentence with signs.
        // Four weeks of nights after it leave hardly a night open, with the initial drain alone (VP-05) as with drain times and cycles (VP-06). Sizes: beside the mean of the nights since, less that of the
        // four weeks before (computed apart, from the files; its standard error is 38, 20, 35 and 25 mL), within two of those.
        foreach (var (code, night, initial, errors) in new[] { ("VP-05", -284, 235, (76, 40)), ("VP-06", -174, 4, (70, 50)) })
        {
            var change = Review(code).Changes[0];
            Assert.InRange(new DateOnly(2025, 3, 4), change.BeganEarliest, change.BeganLatest);
            Assert.True(change.BeganLatest.DayNumber - change.BeganEarliest.DayNumber <= 2);
            Assert.Equal(night, change.Size!.Value.Median.Milliliters, (double)errors.Item1);
            Assert.Equal(initial, change.InitialDrainSize!.Value.Median.Milliliters, (double)errors.Item2);
        }

        var sentence = Review("VP-05").Findings.Single(found => found.Code == "record-change-found").Message;
        Assert.StartsWith("The initial drain is larger than was expected", sentence, StringComparison.Ordinal);
        Assert.Matches("the initial drain had changed by about \\+[0-9]+ mL \\(\\+[0-9]+ to \\+[0-9]+ mL\\), a night's ultrafiltration by about −[0-9]+ mL \\(−[0-9]+ to −[0-9]+ mL\\)", sentence);
    }

    [Fact]
    public void A_cloudy_bag_or_fever_of_these_days_stands_first()
    {
        Assert.Equal("record-cloudy-now", Review("VP-09").Findings[0].Code);
        Assert.Equal("record-pain-or-fever-now", Review("VP-13").Findings[0].Code);
    }

    [Fact]
    public void Habits_of_the_book_are_no_findings_of_the_membrane()
    {
        // From night 40 the total counts the whole initial drain, from night 60 weight is taken full (2 kg of day fill).
        var review = Review("VP-11");
        Assert.Empty(review.Changes);
        Assert.Contains(review.Findings, found => found.Code == "record-uf-counts-otherwise" && found.Message.Contains("2025-02-1", StringComparison.Ordinal));
        Assert.Contains(review.Findings, found => found.Code == "record-weighed-otherwise" && found.Message.Contains("2025-03-0", StringComparison.Ordinal));
        Assert.DoesNotContain(review.Findings, found => found.Code == "record-weight-against-uf");
        Assert.InRange(review.Nights[^1].EmptyWeight!.Value.Kilograms, 66, 70);
    }

    [Fact]
    public void A_weight_that_rises_after_a_loss_was_signalled_is_said_to_rise_beside_that_loss()
    {
        // VP-03 loses conductance from night 35 on; its weight rises from night 45 on by 0.03 kg a day, and the loss is signalled on the way.
        var review = Review("VP-03");
        Assert.True(review.Changes[0].Size!.Value.High.Milliliters < 0);
        var weight = review.Findings.Single(found => found.Code == "record-weight-against-uf");
        Assert.Contains("while nights return less than expected", weight.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_peritonitis_fortnight_leaves_no_drift_behind()
    {
        var review = Review("VP-10");
        Assert.Empty(review.Changes);
        Assert.Contains(review.Nights, night => night.LeftOut.Length > 0);
        Assert.Contains(review.Findings, found => found.Code == "record-cloudy-past" && found.Severity == Severity.Note);
        Assert.DoesNotContain(review.Findings, found => found.Code == "record-cloudy-now");
    }

    [Fact]
    public void Every_page_is_one_file_says_that_no_flag_is_not_safety_and_that_its_data_are_invented()
    {
        foreach (var person in VirtualProgramme.People)
        {
            var page = RecordPage.Of(Review(person.Code), new DateOnly(2024, 12, 10));
            Assert.Contains("No flag is not safety", page, StringComparison.Ordinal);
            Assert.Contains("invented data", page, StringComparison.Ordinal);
            Assert.Contains(person.Code, page, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Letters_of_the_chart_are_eight_points_or_more_on_paper_and_stand_apart()
    {
        // A picture is as wide as the print area, 210 mm less two margins of 13 mm; a point is 1/72 of 25.4 mm. Below 8 points small print begins (the page's own smallest letters).
        foreach (var person in VirtualProgramme.People)
        {
            var picture = Regex.Match(RecordPage.Of(Review(person.Code)), "<svg.*?</svg>", RegexOptions.Singleline).Value;
            var width = double.Parse(Regex.Match(picture, "viewBox=\"0 0 (?<width>[0-9.]+)").Groups["width"].Value, CultureInfo.InvariantCulture);
            var sizes = Regex.Matches(picture, "font-size=\"(?<size>[0-9.]+)").Select(size => double.Parse(size.Groups["size"].Value, CultureInfo.InvariantCulture)).ToList();
            Assert.NotEmpty(sizes);
            Assert.InRange(sizes.Min() * (210 - 2 * 13) / 25.4 * 72 / width, 8, 12);

            // And the first date stands clear of the numbers beside it.
            var texts = Regex.Matches(picture, "text-anchor=\"(?<anchor>[a-z]+)\" transform=\"translate\\((?<x>[-0-9.]+),[-0-9.]+\\)\"[^>]*>(?<text>[^<]*)<")
                .Select(text => (Anchor: text.Groups["anchor"].Value, X: double.Parse(text.Groups["x"].Value, CultureInfo.InvariantCulture), Text: text.Groups["text"].Value)).ToList();
            var numbers = texts.Where(text => text.Anchor == "end").Max(text => text.X);
            var date = texts.First(text => Regex.IsMatch(text.Text, "^[0-9]+ [A-Z][a-z]{2}$"));
            Assert.True(date.X - new TextMeasure().Width(date.Text, ChartText.FontSize) / 2 > numbers + 2, $"{person.Code}: {date.Text} at {date.X} begins beside the numbers that end at {numbers}");
        }
    }

    [Fact]
    public void The_files_are_what_their_command_makes()
    {
        var made = Directory.CreateTempSubdirectory("programme-");
        try
        {
            VirtualProgramme.Write(made.FullName);
            var files = made.GetFiles();
            Assert.Equal(2 * VirtualProgramme.People.Count, files.Length);
            Assert.All(files, file => Assert.Equal(File.ReadAllText(file.FullName).ReplaceLineEndings("\n"), File.ReadAllText(Path.Combine(Folder, file.Name)).ReplaceLineEndings("\n")));
        }
        finally
        {
            made.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_page_of_an_invented_sheet_says_so_though_its_book_does_not()
    {
        var review = Review("VP-01");
        var plain = RecordBook.From(review.Book.Nights, "book");
        Assert.False(plain.IsInvented);
        var bare = RecordReview.Run(review.Patient, MembraneFit.Run(SampleSheet.Read(Path.Combine(Folder, "VP-01-sheet.csv")).ToTest()).ToGaussianEnsemble(10), plain);
        Assert.DoesNotContain("invented data", RecordPage.Of(bare), StringComparison.Ordinal);
        Assert.Contains("invented data", RecordPage.Of(bare, sheet: SampleSheet.Read(Path.Combine(Folder, "VP-01-sheet.csv"))), StringComparison.Ordinal);
    }

    private static RecordReview Review(string code) => Reviews.GetOrAdd(code, _ => new(() =>
    {
        var test = SampleSheet.Read(Path.Combine(Folder, code + "-sheet.csv")).ToTest();
        var book = RecordBook.Read(Path.Combine(Folder, code + "-book.csv"));
        Assert.DoesNotContain(book.Findings, finding => finding.Severity == Severity.Error);
        return RecordReview.Run(test.Patient, MembraneFit.Run(test).ToGaussianEnsemble(), book, new() { Tested = test.Solution });
    })).Value;
}
