namespace Transport.Tests.References;

/// <summary>The public reader of reference tables.</summary>
public sealed class ReferenceTableTests
{
    [Fact]
    public void A_figure_comes_with_its_spread_its_number_and_its_mark()
    {
        // As the file stands: net_ultrafiltration_4h,3.86 % corrected for overfill,mL,675,308,,,758,read.
        var table = ReferenceTable.Read(Path.Combine(ReferenceData.Folder, "virga-2019-strong-glucose"));
        Assert.Equal(new("net_ultrafiltration_4h", "3.86 % corrected for overfill", "mL", 675, 308, null, null, 758, Evidence.Read), table["net_ultrafiltration_4h"]);
        var problem = Assert.Throws<ArgumentException>(() => table["net_ultrafiltration_5h"]);
        Assert.Contains("dp_creatinine_4h", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_table_of_published_figures_is_read()
    {
        // Golden dwells and the like have columns of their own; those with an item have these nine.
        var read = Directory.GetDirectories(ReferenceData.Folder)
            .Where(folder => File.Exists(Path.Combine(folder, "values.csv")) && File.ReadLines(Path.Combine(folder, "values.csv")).First() == "item,condition,unit,value,sd,low,high,n,mark")
            .Select(ReferenceTable.Read).ToList();
        Assert.True(read.Count >= 20);
        Assert.All(read, table => Assert.NotEmpty(table.Figures));
    }

    [Fact]
    public void Every_wrong_cell_is_named()
    {
        var folder = Directory.CreateTempSubdirectory("reference-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "values.csv"), "item,condition,unit,value,sd,low,high,n,mark\na,,,x,,,,,read\nb,,,1,,,,,heard\n");
            var problem = Assert.Throws<FormatException>(() => ReferenceTable.Read(folder));
            Assert.Contains("Row 2, value: \"x\"", problem.Message, StringComparison.Ordinal);
            Assert.Contains("Row 3, mark: \"heard\"", problem.Message, StringComparison.Ordinal);
            File.WriteAllText(Path.Combine(folder, "values.csv"), "a,b\n1,2\n");
            Assert.Contains("header", Assert.Throws<FormatException>(() => ReferenceTable.Read(folder)).Message, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
