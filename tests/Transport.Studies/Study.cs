using System.Globalization;
using CsvHelper;

namespace Transport.Studies;

/// <summary>A long computation whose table is committed: rows that can be made one by one, in any order, and a page that sums them up.</summary>
public abstract class Study
{
    /// <summary>Every study there is.</summary>
    public static IReadOnlyList<Study> All { get; } = [.. RecoveryStudy.All, new AgreementStudy(), new DwellStrategiesStudy(), new RecordReviewStudy(), new ModelComparisonStudy()];

    /// <summary>Name of its files, and what the command line calls it.</summary>
    public abstract string Name { get; }

    /// <summary>How many rows it has.</summary>
    public abstract int Count { get; }

    /// <summary>Makes the rows again and writes table and page.</summary>
    /// <param name="directory">Where.</param>
    /// <param name="progress">Rows done.</param>
    public abstract void Write(string directory, Action<int> progress);

    /// <summary>Rows of the committed table that differ from the same rows made now.</summary>
    /// <param name="directory">Where the table is.</param>
    /// <param name="numbers">Which rows.</param>
    public abstract IReadOnlyList<string> Differences(string directory, IReadOnlyList<int> numbers);
}

/// <summary>A study with rows of one shape.</summary>
/// <typeparam name="TRow">The row: a record of numbers; its first column is the row's number.</typeparam>
public abstract class Study<TRow> : Study
    where TRow : class
{
    // Other processors round otherwise; a changed model moves more than this.
    private const double Tolerance = 1e-5;

    /// <summary>Row number <paramref name="number"/>, whatever other rows are made.</summary>
    public abstract TRow Row(int number);

    /// <summary>The committed rows.</summary>
    /// <param name="directory">Where the table is.</param>
    public IReadOnlyList<TRow> Read(string directory)
    {
        using var csv = new CsvReader(new StreamReader(Table(directory)), CultureInfo.InvariantCulture);
        return [.. csv.GetRecords<TRow>()];
    }

    /// <summary>All rows, in order.</summary>
    /// <param name="directory">Where a study that can go on after a stop may keep what is done.</param>
    /// <param name="progress">Rows done.</param>
    protected virtual IReadOnlyList<TRow> Rows(string directory, Action<int> progress)
    {
        var done = 0;
        return
        [
            .. Enumerable.Range(0, Count).AsParallel().AsOrdered().Select(number =>
            {
                var row = Row(number);
                progress(Interlocked.Increment(ref done));
                return row;
            }),
        ];
    }

    /// <summary>What the rows say, in Markdown.</summary>
    protected abstract string Page(IReadOnlyList<TRow> rows);

    /// <summary>A picture of the rows, written beside the table; null where there is none.</summary>
    protected virtual Figure? Picture(IReadOnlyList<TRow> rows) => null;

    /// <inheritdoc/>
    public override void Write(string directory, Action<int> progress)
    {
        ArgumentNullException.ThrowIfNull(progress);
        var rows = Rows(directory, progress);
        Directory.CreateDirectory(directory);
        using (var csv = new CsvWriter(new StreamWriter(Table(directory)) { NewLine = "\n" }, new CsvHelper.Configuration.CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" }))
        {
            csv.WriteHeader<TRow>();
            csv.NextRecord();
            foreach (var row in rows)
            {
                csv.WriteRecord(row);
                csv.NextRecord();
            }
        }

        File.WriteAllText(Path.Combine(directory, Name + ".md"), Page(rows));
        if (Picture(rows) is { } picture)
        {
            File.WriteAllText(Path.Combine(directory, Name + ".svg"), SvgRenderer.ToSvg(picture));
        }
    }

    /// <inheritdoc/>
    public override IReadOnlyList<string> Differences(string directory, IReadOnlyList<int> numbers)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        var committed = Read(directory);
        if (committed.Count != Count)
        {
            return [$"{Name}: {committed.Count} rows, expected {Count}."];
        }

        return
        [
            .. from number in numbers
               let now = Row(number)
               from property in typeof(TRow).GetProperties()
               let was = property.GetValue(committed[number])
               let @is = property.GetValue(now)
               where !Same(was, @is)
               select string.Create(CultureInfo.InvariantCulture, $"{Name}, row {number}, {property.Name}: {was} in the table, {@is} now."),
        ];
    }

    private static bool Same(object? was, object? now) => was is double a && now is double b
        ? Math.Abs(a - b) <= Tolerance * Math.Max(1, Math.Max(Math.Abs(a), Math.Abs(b)))
        : Equals(was, now);

    private string Table(string directory) => Path.Combine(directory, Name + ".csv");
}
