using Transport.Reporting;
using Transport.Studies;

namespace Transport.Tests.Records;

/// <summary>The invented programme, read from its files: the stories are here and nowhere in what the review sees.</summary>
public sealed class ProgrammeTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "reference-data", "examples", "programme");

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
    public void What_happened_is_said(string code, string finding) =>
        Assert.Contains(Review(code).Findings, found => found.Code == finding);

    [Theory]
    [InlineData("VP-05")]
    [InlineData("VP-06")]
    public void A_drain_fault_is_named_first(string code) =>
        Assert.Equal(ChangeCause.DrainTrouble, Review(code).Changes[0].Explanations[0].Cause);

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
        Assert.True(review.Changes[0].Size.High.Milliliters < 0);
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

    private static RecordReview Review(string code)
    {
        var test = SampleSheet.Read(Path.Combine(Folder, code + "-sheet.csv")).ToTest();
        var book = RecordBook.Read(Path.Combine(Folder, code + "-book.csv"));
        Assert.DoesNotContain(book.Findings, finding => finding.Severity == Severity.Error);
        return RecordReview.Run(test.Patient, MembraneFit.Run(test).ToGaussianEnsemble(), book, new() { Tested = test.Solution });
    }
}
