using System.Text;

namespace Transport.Tests.SampleSheets;

/// <summary>One sheet without any finding, and ways to spoil it. Invented data.</summary>
internal static class Sheets
{
    public const string Clean = """
        section,item,time,value,unit,remark
        patient,code,,T-01,,
        patient,sex,,female,,
        patient,age,,50,years,
        patient,height,,165,cm,
        patient,weight,,65,kg,
        patient,urine volume,,500,mL/day,
        patient,renal urea clearance,,2,mL/min,
        patient,renal creatinine clearance,,3,mL/min,
        test,date,,2025-03-11,,
        test,solution glucose,,214.3,mmol/L,
        test,solution sodium,,132,mmol/L,
        test,osmotic agent,,glucose,,
        test,fill volume,,2040,mL,
        test,fill basis,,weighed,,
        test,dwell,,240,min,
        test,drained volume,,2640,mL,
        test,creatinine method,,enzymatic,,
        dialysate,creatinine,0,60,µmol/L,
        dialysate,creatinine,120,400,µmol/L,
        dialysate,creatinine,240,560,µmol/L,
        dialysate,urea,0,2.4,mmol/L,
        dialysate,urea,120,15.0,mmol/L,
        dialysate,urea,240,18.0,mmol/L,
        dialysate,glucose,0,185,mmol/L,
        dialysate,glucose,120,90,mmol/L,
        dialysate,glucose,240,55,mmol/L,
        dialysate,sodium,0,131,mmol/L,
        dialysate,sodium,60,124,mmol/L,
        dialysate,sodium,240,128,mmol/L,
        plasma,creatinine,120,800,µmol/L,
        plasma,urea,120,20,mmol/L,
        plasma,glucose,120,6,mmol/L,
        plasma,sodium,120,139,mmol/L,

        """;

    /// <summary>The clean sheet with the one row that begins so replaced; several rows with '|' between, and '' for none.</summary>
    public static string With(string beginning, string rows) => With(Clean, beginning, rows);

    public static string With(string text, string beginning, string rows)
    {
        var lines = text.Split('\n').ToList();
        var at = lines.FindIndex(line => line.StartsWith(beginning, StringComparison.Ordinal));
        Assert.True(at >= 0, $"No row begins with '{beginning}': the test would test nothing.");
        lines.RemoveAt(at);
        lines.InsertRange(at, rows.Length == 0 ? [] : rows.Split('|'));
        return string.Join('\n', lines);
    }

    public static SampleSheet Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    public static SampleSheet Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return SampleSheet.Read(stream, "sheet.csv");
    }

    public static string[] CodesOf(string text) => [.. Read(text).Findings.Select(finding => finding.Code)];

    /// <summary>A file of the repository, from wherever the tests run.</summary>
    public static string Repository(params string[] parts) => Path.Combine([Tests.Repository.Root, .. parts]);
}
