using System.Collections.Immutable;
using Parquet;
using Parquet.Schema;

namespace Transport.Analysis;

/// <summary>Rows of a study as a Parquet file of one row group, and back.</summary>
internal static class StrategyParquet
{
    // Fields belong to a schema; without one neither writer nor reader knows them.
    private static readonly ParquetSchema Schema = new([
        .. StrategyColumns.All.Select(column => column.IsText ? new DataField(column.Name, typeof(string), isNullable: false)
            : column.IsWhole ? new DataField<int>(column.Name)
            : (Field)new DataField<double>(column.Name)),
    ]);

    private static readonly ImmutableArray<DataField> Fields = [.. Schema.DataFields];

    public static byte[] Write(IReadOnlyList<StrategyRow> rows)
    {
        using var stream = new MemoryStream();

        // The library is asynchronous throughout; in memory nothing waits.
        Task.Run(() => WriteAsync(rows, stream)).GetAwaiter().GetResult();
        return stream.ToArray();
    }

    public static ImmutableArray<StrategyRow> Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return Task.Run(() => ReadAsync(stream)).GetAwaiter().GetResult();
    }

    private static async Task WriteAsync(IReadOnlyList<StrategyRow> rows, Stream stream)
    {
        await using var writer = await ParquetWriter.CreateAsync(Schema, stream);
        using var group = writer.CreateRowGroup();
        for (var c = 0; c < Fields.Length; c++)
        {
            var column = StrategyColumns.All[c];
            if (column.IsText)
            {
                await group.WriteAsync(Fields[c], [.. rows.Select(row => column.Text(row))]);
            }
            else if (column.IsWhole)
            {
                await group.WriteAsync<int>(Fields[c], rows.Select(row => (int)column.Number(row)).ToArray());
            }
            else
            {
                await group.WriteAsync<double>(Fields[c], rows.Select(row => column.Number(row)).ToArray());
            }
        }
    }

    private static async Task<ImmutableArray<StrategyRow>> ReadAsync(Stream stream)
    {
        await using var reader = await ParquetReader.CreateAsync(stream);
        using var group = reader.OpenRowGroupReader(0);
        var count = checked((int)group.RowCount);
        var values = new object[Fields.Length][];
        for (var c = 0; c < Fields.Length; c++)
        {
            var column = StrategyColumns.All[c];
            if (column.IsText)
            {
                var texts = new string[count];
                await group.ReadAsync(Fields[c], texts);
                values[c] = texts;
            }
            else if (column.IsWhole)
            {
                var whole = new int[count];
                await group.ReadAsync<int>(Fields[c], whole);
                values[c] = [.. whole.Cast<object>()];
            }
            else
            {
                var numbers = new double[count];
                await group.ReadAsync<double>(Fields[c], numbers);
                values[c] = [.. numbers.Cast<object>()];
            }
        }

        return [.. Enumerable.Range(0, count).Select(row => StrategyColumns.Row(name => values[StrategyColumns.PlaceOf(name)][row]))];
    }
}
