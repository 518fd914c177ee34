using System.Text;

namespace Transport.Tests.Records;

/// <summary>Books as they are typed.</summary>
internal static class Books
{
    /// <summary>9 h of five cycles of 2.27 %, and a dry day.</summary>
    public static Regimen DryDay { get; } = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227);

    /// <summary>The same with 2 L of it for the day.</summary>
    public static Regimen WetDay { get; } = DryDay with { DayFill = new(DialysisSolution.Glucose227, Volume.FromLiters(2)) };

    /// <summary>What is said of nights of a person whose test was at 2.27 %.</summary>
    public static RecordReview Review(Patient person, MembraneEnsemble ensemble, IReadOnlyList<NightRecord> nights) =>
        RecordReview.Run(person, ensemble, RecordBook.From(nights, "virtual"), new() { Tested = DialysisSolution.Glucose227 });

    /// <summary>A book of these lines, the header first.</summary>
    public static RecordBook Read(params IEnumerable<string> lines) => RecordBook.Read(new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', lines))), "book.csv");
}
