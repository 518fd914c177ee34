using System.Diagnostics;
using static System.FormattableString;

namespace Transport.Studies;

/// <summary>How long it takes to review a year of nights of a thousand people, one regimen each, over all cores: books with cycles, and books with an initial drain, where a chart of drains runs.</summary>
public static class ReviewSpeed
{
    private const int People = 1000;
    private const int Nights = 365;

    /// <summary>Writes the books, which is not timed, and reviews them twice; the second time counts.</summary>
    public static string Run() => string.Join('\n', new[] { BookKind.WithCycles, BookKind.WithInitialDrain }.Select(Run));

    private static string Run(BookKind kind)
    {
        var tested = DialysisSolution.Glucose227;
        var books = Enumerable.Range(0, People).AsParallel().AsOrdered().Select(number =>
        {
            var (patient, truth, fitted) = VirtualPerson.Of(20261126, number);
            var regimen = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), tested, number % 2 == 0 ? null : new(tested, Volume.FromLiters(1.5)));
            return (Patient: patient, Fitted: fitted, Book: RecordBook.From(new VirtualBook(patient, truth, regimen).Write(number, Nights, 150, kind), "virtual"));
        }).ToArray();
        Review();
        var watch = Stopwatch.StartNew();
        var changes = Review();
        return Invariant($"{kind}: {People} books of {Nights} evenings, {books.Sum(one => one.Book.Nights.Count)} nights written, reviewed in {watch.Elapsed.TotalSeconds:0.0} s on {Environment.ProcessorCount} cores ({changes} changes signalled)");

        int Review() => books.AsParallel().Sum(one => RecordReview.Run(one.Patient, one.Fitted, one.Book, new() { Tested = tested }).Changes.Count);
    }
}
