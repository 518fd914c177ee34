using System.Net;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>Which view each noun of the library has in a cell. Every view is a report or a figure of Transport.Reporting.</summary>
internal static class DomainViews
{
    public static void Register(bool live)
    {
        Chart<Figure>(figure => figure, live);
        Chart<DwellCourse>(CourseCharts.Of, live);
        Chart<ParameterProfile>(PosteriorCharts.Profile, live);
        NotebookViews.Register<FigureSteps>(FigureStepsHtml.Of, FigureStepsHtml.ToText);
        NotebookViews.Register<ReportBlock>(block => block.Html, block => block.Text);
        Report<SampleSheet>(Reports.Of);
        Report<EquilibrationIndices>(Reports.Of);
        Report<FittedMembrane>(Reports.Of);
        Report<FittedLumpedMembrane>(Reports.Of);
        Report<MembranePosterior>(PosteriorReports.Of);
        Report<ModelComparison>(ComparisonReports.Of);
        Report<TestAdvice>(DesignReports.Of);
        Report<IReadOnlyList<DwellCurve>>(Reports.Of);
        Report<RegimenOutcome>(Reports.Of);
        Report<WeekOutcome>(RegimenReports.Of);
        Report<RegimenOutlook>(RegimenReports.Of);
        Report<RegimenComparison>(RegimenReports.Of);
        Report<WhatIf>(RegimenReports.Of);
        Report<NightAccount>(RegimenReports.Of);
        Report<RegimenFile>(RegimenReports.Of);
        Report<RecordReview>(RecordReports.Of);
        Report<PolymerDistribution>(PolymerReports.Of);
        Report<CalibratedPolymer>(PolymerReports.Of);
        Report<IReadOnlyList<PublishedFigure>>(PolymerReports.Of);
        Report<ThreePoreMembrane>(Facts.Of);
        Report<EquilibrationTest>(Facts.Of);
        Report<Patient>(Facts.Of);
        EquilibrationViews();
        InWords<Regimen>();
        InWords<RegimenWeek>();
        InWords<GuidelineTarget>();
        InWords<ResidualFunctionNeeded>();
        InWords<OutcomeMeasure>();
        InWords<DialysisSolution>();
        InWords<Finding>();
        InWords<IndexValue>();
        InWords<Volume>();
        InWords<Concentration>();
        InWords<Pressure>();
        InWords<FlowRate>();
        InWords<Clearance>();
        InWords<HydraulicConductance>();
        InWords<AmountOfSubstance>();
        InWords<Mass>();
        InWords<Length>();
        InWords<Area>();
        InWords<DiffusionArea>();
        Report<RegimenFront>(Reports.Of);
        Report<StrategyStudyResult>(StrategyReports.Of);
    }

    // What surrounds the indices of a test.
    private static void EquilibrationViews()
    {
        Report<CollectionIndices>(EquilibrationReports.Of);
        Report<CollectedDay>(EquilibrationReports.Of);
        Report<PairedTest>(EquilibrationReports.Of);
        Report<SerialTests>(EquilibrationReports.Of);
        Report<TransportClassification>(EquilibrationReports.Of);
        Report<PopulationComparison>(EquilibrationReports.Of);
        Report<IReadOnlyList<ReferencePopulation>>(EquilibrationReports.Of);
        Report<FirstHourIndices>(EquilibrationReports.Of);
        Report<ResidualVolumeByDilution>(EquilibrationReports.Of);
        Report<MarkerKinetics>(EquilibrationReports.Of);
        Report<ProteinTransport>(EquilibrationReports.Of);
        Report<CreatinineCalibration>(EquilibrationReports.Of);
        Report<IReadOnlyList<IndexValue>>(EquilibrationReports.Of);
        Report<MembraneThresholds>(EquilibrationReports.Of);
        Report<LocalProtocol>(EquilibrationReports.Of);
        InWords<MissingIndex>();
        InWords<Threshold>();
        InWords<IndexSensitivity>();
        InWords<ReferencePopulation>();
        InWords<FluidComposition>();

        // A document of its own: its rules must not touch the page around it.
        NotebookViews.Register<ReportPage>(
            page => $"<iframe title=\"{WebUtility.HtmlEncode(page.Title)}\" sandbox style=\"width:100%;max-width:210mm;height:297mm;border:1px solid #8888\" srcdoc=\"{WebUtility.HtmlEncode(page.Html)}\"></iframe>",
            page => page.Markdown);
    }

    private static void Report<T>(Func<T, ReportBlock> report) =>
        NotebookViews.Register<T>(value => report(value).Html, value => report(value).Text);

    // What says itself in a line.
    private static void InWords<T>()
        where T : notnull
    {
        Formatter.Register<T>(value => value.ToString()!, MediaType.PlainText);
        Formatter.SetPreferredMimeTypesFor(typeof(T), MediaType.PlainText);
    }

    private static void Chart<T>(Func<T, Figure> chart, bool live)
    {
        NotebookViews.RegisterChart<T>(
            value => PlotlyRenderer.ToSpec(chart(value)), value => SvgRenderer.ToSvg(chart(value)), value => Words(chart(value)));
        if (!live)
            return;
        Formatter.Register<T>(value => LiveChart.Of(chart(value)), MediaType.Html);
        Formatter.SetPreferredMimeTypesFor(typeof(T), MediaType.Html, MediaType.PlotlySpec, MediaType.Svg, MediaType.PlainText);
    }

    // The alternative text, then the caption.
    private static string Words(Figure figure) => figure.Caption.Length == 0 ? figure.AltText : $"{figure.AltText}\n{figure.Caption}";
}
