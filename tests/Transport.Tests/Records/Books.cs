using System.Text;

namespace Transport.Tests.Records;

/// <summary>Books as they are typed.</summary>
internal static class Books
{
    /// <summary>A book of these lines, the header first.</summary>
    public static RecordBook Read(params IEnumerable<string> lines) => RecordBook.Read(new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', lines))), "book.csv");
}
