using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Transport.Reporting;

namespace Transport.NotebookTests;

/// <summary>How values look.</summary>
public sealed partial class ViewTests
{
    public ViewTests() => NotebookViews.Register();

    private sealed record Night(string Label, double Liters, int Cycles, bool IsComplete, double? Sodium);

    private sealed record Sketch(string Spec, string Svg, string Words);

    private static string Html(object value) => value.ToDisplayString("text/html");

    [Fact]
    public void Records_become_a_table_with_numbers_to_the_right()
    {
        var html = Html(new[] { new Night("a < b", 1.25, 4, true, null), new Night("c", 10.5, 12, false, 0.00001) });

        Assert.Contains("<th scope=\"col\" style=\"text-align:right\">Liters</th>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"col\" style=\"text-align:left\">Is complete</th>", html, StringComparison.Ordinal);
        Assert.Contains("<td style=\"text-align:left\">a &lt; b</td>", html, StringComparison.Ordinal);
        Assert.Contains(">1.25</td>", html, StringComparison.Ordinal); // four digits for the largest: two decimals for all
        Assert.Contains(">10.50</td>", html, StringComparison.Ordinal);
        Assert.Contains(">yes</td>", html, StringComparison.Ordinal);
        Assert.Contains(">–</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_date_is_not_parted_by_a_narrow_column()
    {
        // The dates of notebook 06 broke at their hyphens: 2025-03-, 18.
        var html = Html(new[] { new { Day = new DateOnly(2025, 3, 18), Began = "2025-03-04 (02-26 to 03-04)", Words = "signalled on 2025-03-06, perhaps" } });

        foreach (var whole in new[] { "2025-03-18", "2025-03-04", "02-26", "03-04", "2025-03-06" })
            Assert.Contains($"<span style=\"white-space:nowrap\">{whole}</span>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_negative_number_has_the_minus_of_print_and_an_interval_is_not_parted()
    {
        // Notebook 13 showed -170 mL with a hyphen, notebook 06 parted "1168 (845 to 1490)" before its upper end. What rounds to nothing has no sign, and a date keeps its hyphens.
        var html = Html(new[] { new { Loss = -170.0, Count = -3, Sign = -0.0, Expected = "1168 (845 to 1490)", Day = new DateOnly(2025, 3, 18) }, new { Loss = 2103.0, Count = 4, Sign = 0.0, Expected = "", Day = new DateOnly(2025, 3, 19) } });
        Assert.Contains(">−170</td>", html, StringComparison.Ordinal);
        Assert.Contains(">−3</td>", html, StringComparison.Ordinal);
        Assert.DoesNotContain(">-", html, StringComparison.Ordinal);
        Assert.Contains(">0</td>", html, StringComparison.Ordinal);
        Assert.Contains(">1168\u00a0(845\u00a0to\u00a01490)</td>", html, StringComparison.Ordinal);
        Assert.Contains(">2025-03-18</span>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Nouns_of_the_library_show_units_and_no_dump_of_properties()
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult();
        Assert.Equal("330 mL", Volume.FromMilliliters(330.0000001).ToDisplayString("text/plain"));
        Assert.Equal("glucose 2.27 %", DialysisSolution.Glucose227.ToDisplayString("text/plain"));
        Assert.Contains("L/min/mmHg", Html(membrane), StringComparison.Ordinal);
        Assert.Contains("cm, kg", Html(Patient.Example), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d\.\d{6}", Html(membrane) + Html(Patient.Example));
        var curves = DwellCurves.Run(Patient.Example, MembraneEnsemble.Of(membrane));
        Assert.Contains("not tested", Html(curves), StringComparison.Ordinal);
    }

    // Each noun of an equilibration test shows words and numbers with units, no dump of properties.
    [Fact]
    public void Nouns_of_a_test_a_pair_a_series_and_a_collection_show_as_reports()
    {
        static SampleSheet Example(string name) => SampleSheet.Read(Path.Combine(Transport.Tests.Repository.Root, "reference-data", "examples", $"merrow-{name}.csv"));
        var drained = Example("05-temporary-drain").ToTest();
        var indices = EquilibrationIndices.Of(drained);
        var weak = drained with { Solution = DialysisSolution.Glucose136, TemporaryDrain = new(TimeSpan.FromHours(1), Volume.FromMilliliters(2050)), Dialysate = [.. drained.Dialysate.Select(sample => sample with { Glucose = sample.Glucose!.Value * 0.35 })] };
        var collection = CollectionIndices.Of(Example("06-collection").ToCollection());
        var earlier = EquilibrationIndices.Of(drained with { Date = new(2024, 5, 20), DrainedVolume = Volume.FromMilliliters(2900) });
        (object Noun, string Expected)[] views =
        [
            (collection, "weekly Kt/V urea, total"), (collection.Collection, "drain 3"), (PairedTest.Of(weak, drained), "Osmotic conductance to glucose"),
            (SerialTests.Of([earlier, indices]), "chance explains"), (indices.Classification!, "on a repeated test"), (indices.Comparison!, "Italy 2019"),
            (ReferencePopulations.All, "Madrid 2010"), (indices.FirstHour!, "more in dialysate sodium at 60"), (indices.ResidualByDilution!, "Disagreement ratio"),
            (indices.All, "net ultrafiltration"), (MembraneThresholds.Default, "low ultrafiltration strong"),
        ];
        foreach (var (noun, expected) in views)
        {
            Assert.Contains(expected, Html(noun), StringComparison.Ordinal);
            Assert.Contains(expected, noun.ToDisplayString("text/plain"), StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\d\.\d{6}", Html(noun));
            Assert.DoesNotContain("NotAvailable", Html(noun), StringComparison.Ordinal);
        }

        var page = Transport.Reporting.ReportPages.Of(Example("05-temporary-drain") is var sheet ? sheet : sheet, EquilibrationIndices.Of(sheet.ToTest()));
        Assert.Contains("sandbox", Html(page), StringComparison.Ordinal);
        Assert.DoesNotContain("<script", Html(page), StringComparison.Ordinal);
        Assert.Contains("# Equilibration test", page.ToDisplayString("text/plain"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_table_stands_in_a_terminal()
    {
        var text = new[] { new Night("a < b", 1.25, 4, true, null), new Night("c", 10.5, 12, false, 0.00001) }.ToDisplayString("text/plain");
        var lines = text.Split('\n');
        Assert.Equal(4, lines.Length);
        Assert.StartsWith("Label  Liters  Cycles  Is complete  ", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("a < b    1.25       4  yes          ", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("c       10.50      12  no           ", lines[2], StringComparison.Ordinal);
        Assert.Equal("[ 1, 2, 3 ]", new[] { 1, 2, 3 }.ToDisplayString("text/plain"));
    }

    [Fact]
    public void A_small_number_beside_a_large_one_keeps_three_digits_of_its_own()
    {
        var html = Html(new[] { new Night("", 28622, 0, true, null), new Night("", 0.3162, 0, true, null), new Night("", 1.879, 0, true, null) });

        Assert.Contains(">28622</td>", html, StringComparison.Ordinal);
        Assert.Contains(">0.316</td>", html, StringComparison.Ordinal);
        Assert.Contains(">1.88</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_durations_and_names_read_as_words()
    {
        var text = new[] { new { Day = new DateOnly(2025, 3, 6), Dwell = TimeSpan.FromMinutes(86), Break = TimeSpan.Zero, Channel = NightChannel.InitialDrain, Rows = new[] { 1.5, 2 }, None = Array.Empty<int>() } }.ToDisplayString("text/plain");
        Assert.Contains("2025-03-06  1 h 26 min  0 min  initial drain  1.500; 2", text, StringComparison.Ordinal);
        Assert.Contains("none", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_small_number_beside_a_large_one_does_not_read_as_zero()
    {
        var html = Html(new[] { new Night("", 2500.5, 0, true, null), new Night("", 0.0004, 0, true, null) });

        Assert.Contains(">4E-4</td>", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, false)]
    [InlineData(21, true)]
    public void A_long_table_is_folded_after_twenty_rows(int rows, bool isFolded)
    {
        var html = Html(Enumerable.Range(0, rows).Select(i => new Night($"row-{i}", i, i, true, null)).ToList());

        Assert.Equal(isFolded, html.Contains("<details", StringComparison.Ordinal));
        Assert.Equal(isFolded, html.Contains("1 more row<", StringComparison.Ordinal));
        Assert.Contains($"row-{rows - 1}<", html, StringComparison.Ordinal);
    }

    [Fact]
    public void An_endless_sequence_is_cut_and_says_so()
    {
        static IEnumerable<Night> Endless()
        {
            for (var i = 0; ; i++)
                yield return new Night($"row-{i}", i, i, true, null);
        }

        var html = Html(Endless());

        Assert.Contains("row-1999<", html, StringComparison.Ordinal);
        Assert.DoesNotContain("row-2000<", html, StringComparison.Ordinal);
        Assert.Contains("Only the first 2000 rows are shown.", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Sequences_of_plain_values_stay_plain()
    {
        Assert.Equal("<pre>[ 1, 2 ]</pre>", Html(new List<int> { 1, 2 }));
        Assert.DoesNotContain("<table", Html(new[] { "a", "b" }), StringComparison.Ordinal);
        Assert.DoesNotContain("<table", Html(Array.Empty<Night>()), StringComparison.Ordinal);
        Assert.Equal(["text/plain"], Formatter.GetPreferredMimeTypesFor(typeof(string)));
        Assert.Equal(["text/plain"], Formatter.GetPreferredMimeTypesFor(typeof(double)));
    }

    [Fact]
    public void A_noun_without_a_report_of_its_own_is_a_table_and_never_a_dump()
    {
        var html = Html(ReferenceMembranes.Textbook.Pores);
        Assert.Contains(">Ultrasmall fraction<", html, StringComparison.Ordinal);
        Assert.Contains(">0.02000<", html, StringComparison.Ordinal);
        Assert.DoesNotContain("{", html, StringComparison.Ordinal);
        var words = DwellOptions.Default.ToDisplayString("text/plain");
        Assert.Contains("Panel", words, StringComparison.Ordinal);
        Assert.DoesNotContain("DwellOptions {", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_public_noun_of_the_library_has_a_view()
    {
        // By default a value without a view is its ToString, which for a record is the compiler's dump and for a class its name.
        var nouns = new[] { typeof(Patient).Assembly, typeof(SampleSheet).Assembly, typeof(Figure).Assembly }.SelectMany(assembly => assembly.GetExportedTypes())
            .Where(type => !type.IsEnum && !type.IsInterface && !type.ContainsGenericParameters && !type.IsByRefLike && !(type.IsAbstract && type.IsSealed)
                && !type.IsAssignableTo(typeof(Delegate)) && !type.IsAssignableTo(typeof(Exception)) && !type.IsAssignableTo(typeof(System.Collections.IEnumerable)))
            .ToList();
        Assert.True(nouns.Count > 150);
        Assert.All(nouns, noun => Assert.NotEqual([], Formatter.GetPreferredMimeTypesFor(noun)));
    }

    // What a user meets who ends a cell with any part of a result: everything that real runs return, followed down its properties.
    [Fact]
    public async Task No_part_of_a_result_winces()
    {
        static string Example(string name) => Path.Combine(Transport.Tests.Repository.Root, "reference-data", "examples", name);
        var sheet = SampleSheet.Read(Example("programme/VP-05-sheet.csv"));
        var test = sheet.ToTest();
        var fit = MembraneFit.Run(test);
        var barrier = LumpedFit.Run(test);
        var ensemble = fit.ToGaussianEnsemble(20);
        var present = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136, new DayFill(DialysisSolution.Icodextrin, Volume.FromLiters(1.5)));
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(200), Volume.FromMilliliters(900)));
        var look = new OutlookOptions { Tested = test.Solution, EnsembleMembers = 20 };
        var space = new RegimenSpace { Cycles = [4, 5], VolumesPerCycle = [Volume.FromLiters(2)] };
        var dwell = new Dwell(DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), test.Patient.Plasma));
        object[] results =
        [
            sheet, test, EquilibrationIndices.Of(test), fit, barrier, ModelComparison.Run([new("pores", fit), new("barrier", barrier)]), ensemble, PopulationPrior.IncidentAdults(), LumpedMembrane.Typical, PlasmaComposition.Typical,
            RecordReview.Run(test.Patient, ensemble, RecordBook.Read(Example("programme/VP-05-book.csv")), new() { Tested = test.Solution }),
            RegimenSearch.Run(test.Patient, ensemble, goals, space, present, new() { Tested = test.Solution, EnsembleMembers = 10 }), goals, space,
            RegimenComparison.Run(test.Patient, ensemble, present, look), WhatIf.Run(test.Patient, ensemble, present, RegimenKnob.LostDwell, [0, 30], look),
            RegimenSimulation.Run(test.Patient, fit.Membrane, present, new() { Timeline = TimeSpan.FromMinutes(30) }), DwellSimulation.Run(test.Patient, fit.Membrane, dwell),
            DwellCurves.Run(test.Patient, ensemble), TestDesign.Run(fit, DesignTarget.LogarithmOf(MembraneParameter.DiffusionArea), options: new() { Membranes = 5 }), MembraneSampling.Run(fit, new() { DrawsPerChain = 100, EffectiveDraws = 0 }),
            CollectionIndices.Of(SampleSheet.Read(Example("merrow-06-collection.csv")).ToCollection()),
        ];

        var seen = new Dictionary<Type, string>();
        foreach (var result in results)
            await Task.Run(() => Follow(result, seen));
        Assert.True(seen.Count > 90, $"{seen.Count} nouns met");
        Assert.All(seen, noun => Assert.False(Wince().IsMatch(noun.Value), $"{noun.Key.Name}: {Wince().Match(noun.Value).Value} in\n{noun.Value}"));
    }

    private static void Follow(object? value, Dictionary<Type, string> seen)
    {
        if (value is System.Collections.IEnumerable values and not string)
        {
            foreach (var item in values.Cast<object?>().Take(2))
                Follow(item, seen);
            return;
        }

        if (value?.GetType() is not { IsEnum: false, IsGenericType: false } type || !type.Assembly.GetName().Name!.StartsWith("Transport.", StringComparison.Ordinal) || !seen.TryAdd(type, ""))
            return;
        var alone = value.ToDisplayString("text/plain");
        seen[type] = $"{alone}\n{(Formatter.GetPreferredMimeTypesFor(type).Contains("text/html") ? Html(value) : "")}\n{new[] { value, value }.ToDisplayString("text/plain")}";
        foreach (var property in type.GetProperties().Where(property => property.GetIndexParameters().Length == 0 && !property.PropertyType.IsByRefLike && !property.GetMethod!.IsStatic))
        {
            try
            {
                Follow(property.GetValue(value), seen);
            }
            catch (System.Reflection.TargetInvocationException)
            {
                // A property that this state does not have.
            }
        }
    }

    // Names of the platform's types, the compiler's dumps and its names, times with ticks, dates in one country's order, numbers with all their digits.
    [System.Text.RegularExpressions.GeneratedRegex(@"System\.\w|`\d|<>|&lt;&gt;|\w+ \{ \w+ =|\d:\d\d:\d\d|\b\d\d/\d\d/\d{4}|\d\.\d{7,}|\bNaN\b|Transport\.\w+\.\w")]
    private static partial System.Text.RegularExpressions.Regex Wince();

    private sealed record Course(string Fluid, double PeakHours, double LossMillilitersPerMinute, double Liters);

    [Fact]
    public void A_column_named_by_its_unit_shows_the_symbol()
    {
        var html = Html(new[] { new Course("", 1, 2, 3) });

        Assert.Contains(">Peak (h)<", html, StringComparison.Ordinal);
        Assert.Contains(">Loss (mL/min)<", html, StringComparison.Ordinal);
        Assert.Contains(">Liters<", html, StringComparison.Ordinal); // nothing would be left of it
    }

    [Fact]
    public void A_knob_needs_no_script_and_keeps_its_axes()
    {
        Figure Line(double height) => new("t", "", "a", new Panel(new("x", ""), new("y", "mL")) { Series = [new("s", [0, 1], [0, height])] });
        var steps = FigureSteps.Over("height", "mL", [1, 5, 9], 5, Line);

        // Common axis: 0 to 9 with 4 % of it on either side.
        Assert.All(steps.Steps, step => Assert.Equal((-0.36, 9.36), (Math.Round(step.Figure.Panels[0].YAxis.Range!.Value.Lower, 9), Math.Round(step.Figure.Panels[0].YAxis.Range!.Value.Upper, 9))));
        var html = Html(steps);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Equal(3, html.Split("type=\"radio\"").Length - 1);
        Assert.Single(html.Split(" checked").Skip(1));
        Assert.Throws<ArgumentException>(() => FigureSteps.Over("height", "mL", [1, 5, 9], 4, Line));
        Assert.Throws<ArgumentException>(() => FigureSteps.Over("height", "mL", [], 1, Line));
        Assert.Single(Html(FigureSteps.Over("height", "mL", [1], 1, Line)).Split("<img").Skip(1)); // a search may leave one option
    }

    [Fact]
    public void A_chart_offers_its_three_forms()
    {
        NotebookViews.RegisterChart<Sketch>(s => s.Spec, s => s.Svg, s => s.Words);

        var forms = FormattedValue.CreateManyFromObject(new Sketch("{}", "<svg/>", "words"));

        Assert.Equal(
            [("application/vnd.plotly.v1+json", "{}"), ("image/svg+xml", "<svg/>"), ("text/plain", "words")],
            forms.Select(form => (form.MimeType, form.Value)).Order());
    }

    [Fact]
    public void An_error_of_the_library_is_one_sentence_and_any_other_shows_where_it_arose()
    {
        static CellFailure FailureOf(Exception exception)
        {
            try
            {
                throw exception;
            }
            catch (Exception e)
            {
                return CellFailure.From(new CommandFailed(e, new SubmitCode("")), [], 1, "cell");
            }
        }

        // NotebookRunException lives in a Transport namespace, as do all exceptions of the library.
        var ours = FailureOf(new NotebookRunException(1, "The dwell is too long."));
        Assert.Equal("The dwell is too long.", ours.Message);
        Assert.Empty(ours.StackTrace);
        var refused = FailureOf(Record.Exception(() => Volume.FromLiters(double.NaN))!);
        Assert.EndsWith("L. Found: NaN.", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", refused.Message, StringComparison.Ordinal);
        var missing = CellFailure.From(new CommandFailed(Record.Exception(() => EquilibrationIndices.Of((EquilibrationTest)null!))!, new SubmitCode("")), [], 1, "cell");
        Assert.Equal(("test: Value cannot be null.", 0), (missing.Message, missing.StackTrace.Count));
        Assert.Equal("The dwell is too long.", FailureOf(new AggregateException(new NotebookRunException(1, "The dwell is too long."))).Message);
        Assert.NotEmpty(CellFailure.From(new CommandFailed(ParseFailure(), new SubmitCode("")), [], 1, "cell").StackTrace);
    }

    private static Exception ParseFailure() => Record.Exception(() => int.Parse("x", null))!;
}
