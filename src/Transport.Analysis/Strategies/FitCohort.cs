using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>Fits of many people as a table, one row a person, and what was found wrong with it.</summary>
/// <remarks>
/// Membranes stand per 1.73 m². Needed are the columns <c>diffusion_area_cm</c> and <c>ultrafiltration_coefficient_mL_per_min_per_mmHg</c>; every other column may be left
/// out, and then the mean incident adult's value or the example patient's holds. No names: a code at most.
/// </remarks>
public sealed record FitCohort
{
    private static readonly ThreePoreMembrane Center = ReferenceMembranes.MeanIncidentAdult();
    private static readonly ImmutableArray<Column> Columns =
    [
        new("diffusion_area_cm", 100, 1e6, true, m => m.DiffusionArea.Centimeters),
        new("ultrafiltration_coefficient_mL_per_min_per_mmHg", 1e-4, 2, true, m => m.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury),
        new("glucose_permeability_scale", 0.05, 20, false, m => m.GlucosePermeabilityScale),
        new("transient_amplitude", 0, 20, false, m => m.TransientAmplitude),
        new("lymphatic_removal_mL_per_min", 0, 20, false, m => m.LymphaticRemoval.MillilitersPerMinute),
        new("ultrasmall_fraction", 0, 0.5, false, m => m.Pores.UltrasmallFraction),
        new("large_pore_fraction", 0, 0.5, false, m => m.Pores.LargeFraction),
        new("sodium_permeability_mL_per_min", 0, 100, false, m => m.SodiumPermeability.MillilitersPerMinute),
        new("age_years", 0.1, 120, false, null, p => p.AgeYears),
        new("height_cm", 40, 250, false, null, p => p.Height.Centimeters),
        new("weight_kg", 2, 400, false, null, p => p.Weight.Kilograms),
        new("renal_urea_clearance_mL_per_min", 0, 150, false, null, p => p.ResidualFunction.UreaClearance.MillilitersPerMinute),
        new("renal_creatinine_clearance_mL_per_min", 0, 150, false, null, p => p.ResidualFunction.CreatinineClearance.MillilitersPerMinute),
        new("urine_mL_per_day", 0, 10_000, false, null, p => p.ResidualFunction.UrineVolumePerDay.Milliliters),
    ];

    private FitCohort(ImmutableArray<CohortMember> members, ImmutableArray<Finding> findings) => (Members, Findings) = (members, findings);

    /// <summary>The people that could be read, in order.</summary>
    public ImmutableArray<CohortMember> Members { get; }

    /// <summary>Everything found in the file, in its order.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Whether an error keeps the cohort from being used.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>The cohort of some fits.</summary>
    public static FitCohort From(IEnumerable<FittedMembrane> fits) => new([.. fits.Select(fit => new CohortMember(fit.Patient, fit.Membrane))], []);

    /// <summary>Reads a table of fits.</summary>
    /// <exception cref="IOException">The file cannot be opened; its content never makes this throw.</exception>
    public static FitCohort Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Parse(File.ReadAllText(path), Path.GetFileName(path));
    }

    /// <summary>Writes the members as <see cref="Read"/> takes them.</summary>
    public void Write(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        foreach (var name in Columns.Select(column => column.Name).Append("sex"))
        {
            csv.WriteField(name);
        }

        csv.NextRecord();
        foreach (var member in Members)
        {
            var perUnit = member.Membrane.ScaledTo(Area.FromSquareMeters(1.73 / member.Patient.SurfaceFactor));
            foreach (var column in Columns)
            {
                csv.WriteField(column.OfMembrane is { } of ? of(perUnit) : column.OfPatient!(member.Patient));
            }

            csv.WriteField(member.Patient.Sex == Sex.Male ? "male" : "female");
            csv.NextRecord();
        }

        csv.Flush();
        WholeFile.Write(path, text.ToString());
    }

    /// <summary>The cohort that a text holds.</summary>
    internal static FitCohort Parse(string text, string fileName)
    {
        List<Finding> findings = [];
        var delimiter = DelimitedText.DelimiterOf(text, name => IndexOf(name) >= 0);
        var rows = DelimitedText.Records(text, delimiter, findings).ToList();
        findings = [.. findings.Select(finding => finding with { Severity = Severity.Error, File = fileName })];
        if (rows.Count == 0)
        {
            Error(null, null, "The file holds no row.", null, "a header and a row for each person");
            return new([], [.. findings]);
        }

        var header = rows[0];
        var places = Places(header);
        var members = ImmutableArray.CreateBuilder<CohortMember>();
        if (findings.All(finding => finding.Severity != Severity.Error))
        {
            char? mark = delimiter == ',' ? '.' : rows.Skip(1).SelectMany(row => row.Fields).Select(SheetNumber.DecimalMarkShownBy).FirstOrDefault(shown => shown is not null);
            foreach (var (row, fields) in rows.Skip(1))
            {
                if (Member(row, fields, mark) is { } member)
                {
                    members.Add(member);
                }
            }
        }

        return new(members.ToImmutable(), [.. findings]);

        int[] Places((int Row, string[] Fields) head)
        {
            var found = Enumerable.Repeat(-1, Columns.Length + 1).ToArray();
            for (var at = 0; at < head.Fields.Length; at++)
            {
                var column = IndexOf(head.Fields[at]);
                if (column >= 0 && found[column] >= 0)
                {
                    Error(head.Row, head.Fields[at], "The header has this column twice; keep one.", null, null);
                }
                else if (column >= 0)
                {
                    found[column] = at;
                }
                else if (head.Fields[at].Length > 0)
                {
                    findings.Add(new(Severity.Warning, "cohort-unknown-column", "This column is not known and is left aside.") { File = fileName, Row = head.Row, Field = head.Fields[at] });
                }
            }

            foreach (var (column, i) in Columns.Select((column, i) => (column, i)).Where(pair => pair.column.IsNeeded && found[pair.i] < 0))
            {
                Error(head.Row, column.Name, "The header has to name this column.", string.Join(' ', head.Fields), null);
            }

            findings = [.. findings.OrderByDescending(finding => finding.Severity)];
            return found;
        }

        CohortMember? Member(int row, string[] fields, char? mark)
        {
            var before = findings.Count;
            if (fields.Skip(header.Fields.Length).Any(field => field.Length > 0))
            {
                Error(row, null, "The row has more fields than the header.", string.Join(delimiter, fields), null);
                return null;
            }

            var values = Columns.Select((column, i) => Value(column, i)).ToArray();
            var at = places[Columns.Length];
            var sex = at < 0 || at >= fields.Length || fields[at].Length == 0 ? Patient.Example.Sex : fields[at].ToLowerInvariant() switch
            {
                "male" or "m" => Sex.Male,
                "female" or "f" => Sex.Female,
                _ => Bad(),
            };
            if (values[5] + values[6] > 1)
            {
                Error(row, Columns[5].Name, "The fractions leave no small pores.", null, "a sum below 1");
            }

            if (findings.Count > before)
            {
                return null;
            }

            var patient = Patient.Example with
            {
                Code = "",
                Sex = sex,
                AgeYears = values[8],
                Height = Length.FromCentimeters(values[9]),
                Weight = Mass.FromKilograms(values[10]),
                ResidualFunction = new(Clearance.FromMillilitersPerMinute(values[11]), Clearance.FromMillilitersPerMinute(values[12]), Volume.FromMilliliters(values[13])),
            };
            var perUnit = Center with
            {
                DiffusionArea = DiffusionArea.FromCentimeters(values[0]),
                UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(values[1]),
                GlucosePermeabilityScale = values[2],
                TransientAmplitude = values[3],
                LymphaticRemoval = FlowRate.FromMillilitersPerMinute(values[4]),
                Pores = Center.Pores.WithFractions(values[5], values[6]),
                SodiumPermeability = Clearance.FromMillilitersPerMinute(values[7]),
            };
            return new(patient, perUnit.ScaledTo(patient.BodySurface));

            Sex Bad()
            {
                Error(row, "sex", "This is not a sex.", fields[at], "male or female");
                return default;
            }

            double Value(Column column, int i)
            {
                var place = places[i];
                var written = place >= 0 && place < fields.Length ? fields[place] : "";
                var usual = column.OfMembrane is { } of ? of(Center) : column.OfPatient!(Patient.Example);
                if (written.Length == 0)
                {
                    if (column.IsNeeded)
                    {
                        Error(row, column.Name, "This number is missing.", null, column.Range);
                    }

                    return usual;
                }

                if (!SheetNumber.TryRead(written, mark, out var value, out var ambiguous))
                {
                    Error(row, column.Name, ambiguous ? "A mark before three digits can mean decimals or thousands; write it otherwise." : "This is not a number.", written, column.Range);
                    return usual;
                }

                if (!(value >= column.Least && value <= column.Most))
                {
                    Error(row, column.Name, "This number is outside what a membrane or a person can have. Is it in the column's unit?", written, column.Range);
                    return usual;
                }

                return value;
            }
        }

        void Error(int? row, string? field, string message, string? found, string? expected) =>
            findings.Add(new(Severity.Error, "cohort-unreadable", message) { File = fileName, Row = row, Field = field, Found = found, Expected = expected });
    }

    private static int IndexOf(string name) => name.Equals("sex", StringComparison.OrdinalIgnoreCase)
        ? Columns.Length
        : Columns.ToList().FindIndex(column => column.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    private sealed record Column(string Name, double Least, double Most, bool IsNeeded, Func<ThreePoreMembrane, double>? OfMembrane, Func<Patient, double>? OfPatient = null)
    {
        public string Range => string.Create(CultureInfo.InvariantCulture, $"{Least} to {Most}");
    }
}
