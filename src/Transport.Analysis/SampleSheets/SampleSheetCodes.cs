using static Transport.Severity;

namespace Transport.Analysis;

/// <summary>Everything that reading a sheet can find. The same list, with what to do, is in docs/sample-sheet.md.</summary>
public static class SampleSheetCodes
{
#pragma warning disable CS1591 // each member's meaning is its third argument

    // The file
    public static SheetFindingKind FileNotFound { get; } = new("file-not-found", Error, "There is no such file.");
    public static SheetFindingKind FileUnreadable { get; } = new("file-unreadable", Error, "The file cannot be opened.");
    public static SheetFindingKind FileTooLarge { get; } = new("file-too-large", Error, "The file is larger than any sheet.");
    public static SheetFindingKind FileEmpty { get; } = new("file-empty", Error, "The file holds no rows.");
    public static SheetFindingKind FileNotText { get; } = new("file-not-text", Error, "The file is not text: a workbook, a picture, a damaged file.");
    public static SheetFindingKind MalformedQuotes { get; } = new("malformed-quotes", Error, "A quotation mark is opened and not closed, or stands inside a field.");
    public static SheetFindingKind TooManyRows { get; } = new("too-many-rows", Error, "The file has more rows than any sheet.");
    public static SheetFindingKind MissingColumn { get; } = new("missing-column", Error, "The header lacks a column that is needed.");
    public static SheetFindingKind DuplicateColumn { get; } = new("duplicate-column", Error, "The header has a column twice.");
    public static SheetFindingKind UnknownColumn { get; } = new("unknown-column", Note, "A column is not known and is left aside.");
    public static SheetFindingKind ExtraFields { get; } = new("extra-fields", Error, "A row has more fields than the header, or a number for a unit: often a decimal comma in a comma-separated file.");

    // The words and numbers
    public static SheetFindingKind UnknownSection { get; } = new("unknown-section", Error, "A section is not known.");
    public static SheetFindingKind UnknownItem { get; } = new("unknown-item", Error, "An item or analyte is not known in its section.");
    public static SheetFindingKind UnknownWord { get; } = new("unknown-word", Error, "A value is not one of the words that the item takes.");
    public static SheetFindingKind MissingUnit { get; } = new("missing-unit", Error, "A number has no unit.");
    public static SheetFindingKind UnknownUnit { get; } = new("unknown-unit", Error, "A unit is not known for the item.");
    public static SheetFindingKind PercentageWithoutConvention { get; } = new("percentage-without-convention", Error, "A glucose percentage does not say whether it means anhydrous glucose or the monohydrate.");
    public static SheetFindingKind NotANumber { get; } = new("not-a-number", Error, "A value is not a number.");
    public static SheetFindingKind AmbiguousNumber { get; } = new("ambiguous-number", Error, "A point or comma before three digits may mark decimals or thousands, and nothing in the file settles it.");
    public static SheetFindingKind MixedDecimalMarks { get; } = new("mixed-decimal-marks", Warning, "Some values have a decimal point, others a decimal comma.");
    public static SheetFindingKind NegativeValue { get; } = new("negative-value", Error, "A value is below zero.");
    public static SheetFindingKind ImpossibleValue { get; } = new("impossible-value", Error, "A value is outside what is possible.");
    public static SheetFindingKind UnitSwap { get; } = new("unit-swap", Error, "A value only makes sense in another unit than the one written.");
    public static SheetFindingKind NotADate { get; } = new("not-a-date", Warning, "The date cannot be read and is left out.");
    public static SheetFindingKind AmbiguousDate { get; } = new("ambiguous-date", Warning, "Day and month of the date may be swapped; it is left out.");
    public static SheetFindingKind NotATime { get; } = new("not-a-time", Error, "A time cannot be read.");
    public static SheetFindingKind MissingTime { get; } = new("missing-time", Error, "A dialysate value has no time.");
    public static SheetFindingKind TimeOfFact { get; } = new("time-of-fact", Warning, "A time stands beside a fact, which takes none; it is not read.");
    public static SheetFindingKind DuplicateFact { get; } = new("duplicate-fact", Error, "A fact is given twice.");
    public static SheetFindingKind DuplicateMeasurement { get; } = new("duplicate-measurement", Error, "The same analyte of the same sample is given twice.");

    // What is missing
    public static SheetFindingKind MissingPatientFact { get; } = new("missing-patient-fact", Error, "Sex, age, height or weight is missing: body water and surface need all four.");
    public static SheetFindingKind MissingStrength { get; } = new("missing-strength", Error, "The glucose concentration of the solution is missing.");
    public static SheetFindingKind MissingFill { get; } = new("missing-fill", Error, "The fill volume is missing.");
    public static SheetFindingKind MissingDwell { get; } = new("missing-dwell", Error, "The dwell time is missing.");
    public static SheetFindingKind MissingPlasmaCreatinine { get; } = new("missing-plasma-creatinine", Warning, "Plasma creatinine is missing: there is no D/P creatinine and no class.");
    public static SheetFindingKind MissingDialysateCreatinine { get; } = new("missing-dialysate-creatinine", Warning, "No dialysate creatinine is given: there is no D/P creatinine and no class.");
    public static SheetFindingKind MissingFinalSample { get; } = new("missing-final-sample", Warning, "No dialysate creatinine near the end of the dwell: D/P at its end is not given.");
    public static SheetFindingKind MissingInitialGlucose { get; } = new("missing-initial-glucose", Warning, "No dialysate glucose at 0 min: D/D0 is not given.");
    public static SheetFindingKind MissingDrainedVolume { get; } = new("missing-drained-volume", Warning, "The drained volume is missing: ultrafiltration and what rests on volumes is not given.");
    public static SheetFindingKind MissingFillBasis { get; } = new("missing-fill-basis", Warning, "It is not said whether the fill was weighed or read from the label; the label is assumed.");
    public static SheetFindingKind MissingCode { get; } = new("missing-code", Note, "The sheet has no patient code.");
    public static SheetFindingKind MissingDate { get; } = new("missing-date", Note, "The sheet has no date.");
    public static SheetFindingKind PlasmaNotMeasured { get; } = new("plasma-not-measured", Note, "A plasma value was not measured; simulations assume the typical one.");
    public static SheetFindingKind SolutionSodiumAssumed { get; } = new("solution-sodium-assumed", Note, "The sodium of the solution is not given; 132 mmol/L is assumed.");
    public static SheetFindingKind ResidualFunctionNotGiven { get; } = new("residual-function-not-given", Warning, "Nothing is said about urine; none is assumed.");
    public static SheetFindingKind ResidualClearanceMissing { get; } = new("residual-clearance-missing", Warning, "There is urine but a renal clearance is missing; zero is assumed for it.");

    // Times
    public static SheetFindingKind TimesOutOfOrder { get; } = new("times-out-of-order", Warning, "Samples are not in order of time in the file; they are sorted.");
    public static SheetFindingKind TimesNearlyEqual { get; } = new("times-nearly-equal", Warning, "Two dialysate samples are minutes apart: one sample with two times?");
    public static SheetFindingKind TimeBeforeDwell { get; } = new("time-before-dwell", Error, "A dialysate sample was taken before the end of inflow.");
    public static SheetFindingKind TimeBeyondDwell { get; } = new("time-beyond-dwell", Error, "A dialysate sample was taken after the end of the dwell.");
    public static SheetFindingKind PlasmaTimeFar { get; } = new("plasma-time-far", Warning, "Blood was drawn long before or after the dwell.");
    public static SheetFindingKind DwellDisagrees { get; } = new("dwell-disagrees", Warning, "The written dwell time and the clock times differ; the written one is used.");

    // The solution and the volumes
    public static SheetFindingKind NotAGlucoseTest { get; } = new("not-a-glucose-test", Warning, "The fluid is not a glucose solution: ratios of creatinine and urea are given, no class, no limit and no fit.");
    public static SheetFindingKind SolutionGlucoseUnusual { get; } = new("solution-glucose-unusual", Warning, "The glucose concentration is of no usual solution.");
    public static SheetFindingKind GlucoseLabelConvention { get; } = new("glucose-label-convention", Warning, "The glucose concentration may be that of the other labelling convention, 10 % off.");
    public static SheetFindingKind WrongStrength { get; } = new("wrong-strength", Warning, "The 0-min glucose belongs to a bag of another strength than the one written: nothing that rests on the strength is given.");
    public static SheetFindingKind InitialGlucoseUnexpected { get; } = new("initial-glucose-unexpected", Warning, "The 0-min glucose is too low or too high for the bag: large residual volume, late sample, or an undiluted bag sample.");
    public static SheetFindingKind SolutionSodiumUnusual { get; } = new("solution-sodium-unusual", Warning, "The sodium of the solution is outside that of usual solutions.");
    public static SheetFindingKind FillNotComparable { get; } = new("fill-not-comparable", Warning, "The fill is not the one that class tables hold for: the class is not comparable.");
    public static SheetFindingKind DwellNotComparable { get; } = new("dwell-not-comparable", Warning, "The dwell is not 4 hours: the class is not comparable.");
    public static SheetFindingKind Child { get; } = new("child", Warning, "The patient is a child: classes are those of children, limits of ultrafiltration are not used, body water is by Morgenstern's formula of children on peritoneal dialysis.");
    public static SheetFindingKind LabelWithoutOverfill { get; } = new("label-without-overfill", Warning, "The fill is the label's and the overfill is not known: it counts as ultrafiltration.");
    public static SheetFindingKind UltrafiltrationImplausible { get; } = new("ultrafiltration-implausible", Warning, "The net ultrafiltration is hardly possible: bag tare, overfill, incomplete drain?");

    // The creatinine assay
    public static SheetFindingKind AssayNotStated { get; } = new("assay-not-stated", Warning, "The creatinine method is not stated: glucose may be read as creatinine.");
    public static SheetFindingKind JaffeWithoutFactor { get; } = new("jaffe-without-factor", Warning, "An alkaline-picrate method without its glucose factor: creatinine is too high, most in early samples.");
    public static SheetFindingKind InitialRatioHigh { get; } = new("initial-ratio-high", Warning, "D/P creatinine at 0 min is higher than carry-over explains.");
    public static SheetFindingKind FactorContradictsMethod { get; } = new("factor-contradicts-method", Error, "A glucose factor is given with an enzymatic method.");
    public static SheetFindingKind MissingGlucoseForCorrection { get; } = new("missing-glucose-for-correction", Warning, "A creatinine cannot be corrected because glucose of the same sample is missing.");
    public static SheetFindingKind CorrectedCreatinineBelowZero { get; } = new("corrected-creatinine-below-zero", Warning, "The corrected creatinine is below zero, within the spread of the assay.");
    public static SheetFindingKind CorrectedCreatinineNegative { get; } = new("corrected-creatinine-negative", Error, "The corrected creatinine is below zero by more than the spread of the assay.");

    // The curves
    public static SheetFindingKind UreaOrUreaNitrogen { get; } = new("urea-or-urea-nitrogen", Warning, "A urea value looks like urea nitrogen, or the other way round.");
    public static SheetFindingKind RatioAboveOne { get; } = new("ratio-above-one", Warning, "A D/P is between 1.00 and 1.10.");
    public static SheetFindingKind RatioImpossible { get; } = new("ratio-impossible", Error, "A D/P is above 1.10.");
    public static SheetFindingKind RatioNotRising { get; } = new("ratio-not-rising", Warning, "A D/P does not rise from one sample to the next, by no more than assay spread explains.");
    public static SheetFindingKind RatioFalling { get; } = new("ratio-falling", Error, "A D/P falls from one sample to the next by more than assay spread explains.");
    public static SheetFindingKind GlucoseNotFalling { get; } = new("glucose-not-falling", Warning, "D/D0 glucose does not fall from one sample to the next, by no more than assay spread explains.");
    public static SheetFindingKind GlucoseRising { get; } = new("glucose-rising", Error, "D/D0 glucose rises from one sample to the next by more than assay spread explains.");
    public static SheetFindingKind GlucoseBelowPlasma { get; } = new("glucose-below-plasma", Error, "Dialysate glucose is below plasma's.");
    public static SheetFindingKind SodiumNotFalling { get; } = new("sodium-not-falling", Warning, "Dialysate sodium does not fall in the first hour of a strong glucose solution.");

    // The form and what went before
    public static SheetFindingKind MissingMeasurements { get; } = new("missing-measurements", Error, "Nothing was measured, or a collection has no drain.");
    public static SheetFindingKind FormDiffers { get; } = new("form-differs", Warning, "The sheet is named one form of test and holds another.");
    public static SheetFindingKind EarlyTest { get; } = new("early-test", Warning, "The test was made in the first four weeks of dialysis: preliminary.");
    public static SheetFindingKind RecentPeritonitis { get; } = new("recent-peritonitis", Warning, "The test was made within four weeks of a peritonitis: preliminary.");
    public static SheetFindingKind DateAfterTest { get; } = new("date-after-test", Warning, "A date that should lie before the test lies after it.");
    public static SheetFindingKind PrecedingDwellShort { get; } = new("preceding-dwell-short", Warning, "The dwell before the test was shorter than 3 h: preliminary.");
    public static SheetFindingKind PrecedingIcodextrin { get; } = new("preceding-icodextrin", Warning, "The dwell before the test was of icodextrin: preliminary.");
    public static SheetFindingKind InstillationSlow { get; } = new("instillation-slow", Warning, "Instillation took longer than 15 min.");
    public static SheetFindingKind WeightWithoutTare { get; } = new("weight-without-tare", Note, "A weight has no tare and is taken as that of the fluid alone.");
    public static SheetFindingKind TemporaryDrainImplausible { get; } = new("temporary-drain-implausible", Warning, "The volume at 60 min is hardly possible.");
    public static SheetFindingKind InitialSodiumUnexpected { get; } = new("initial-sodium-unexpected", Warning, "Sodium at 0 min is far from the bag's.");

    // A collection
    public static SheetFindingKind NotATest { get; } = new("not-a-test", Error, "A test was asked of a sheet that holds a 24-h collection.");
    public static SheetFindingKind NotACollection { get; } = new("not-a-collection", Error, "A collection was asked of a sheet that holds a test.");
    public static SheetFindingKind CollectionTimeAssumed { get; } = new("collection-time-assumed", Note, "It is not said how long was collected; 24 h are assumed.");
    public static SheetFindingKind CollectionPlasmaMissing { get; } = new("collection-plasma-missing", Warning, "Plasma urea or creatinine is missing: clearances are not given.");
    public static SheetFindingKind MissingBagVolume { get; } = new("missing-bag-volume", Error, "The drained volume of a bag is missing: no sum over the day would be right.");
    public static SheetFindingKind BagFillMissing { get; } = new("bag-fill-missing", Warning, "Fill or glucose of a bag is missing: the day's balances are not given.");

    // Several sheets together
    public static SheetFindingKind SheetsWithoutCode { get; } = new("sheets-without-code", Error, "Of several sheets one has no patient code.");
    public static SheetFindingKind SheetsOfDifferentPatients { get; } = new("sheets-of-different-patients", Error, "Several sheets carry different patient codes.");
    public static SheetFindingKind SheetsWithoutDate { get; } = new("sheets-without-date", Error, "A test of a series has no date.");

#pragma warning restore CS1591

    /// <summary>All of them, in the order of the documentation.</summary>
    public static IReadOnlyList<SheetFindingKind> All { get; } =
    [
        FileNotFound, FileUnreadable, FileTooLarge, FileEmpty, FileNotText, MalformedQuotes, TooManyRows, MissingColumn, DuplicateColumn,
        UnknownColumn, ExtraFields,
        UnknownSection, UnknownItem, UnknownWord, MissingUnit, UnknownUnit, PercentageWithoutConvention, NotANumber, AmbiguousNumber,
        MixedDecimalMarks, NegativeValue, ImpossibleValue, UnitSwap, NotADate, AmbiguousDate, NotATime, MissingTime, TimeOfFact,
        DuplicateFact, DuplicateMeasurement,
        MissingPatientFact, MissingStrength, MissingFill, MissingDwell, MissingPlasmaCreatinine, MissingDialysateCreatinine,
        MissingFinalSample, MissingInitialGlucose, MissingDrainedVolume, MissingFillBasis, MissingCode, MissingDate, PlasmaNotMeasured,
        SolutionSodiumAssumed, ResidualFunctionNotGiven, ResidualClearanceMissing,
        TimesOutOfOrder, TimesNearlyEqual, TimeBeforeDwell, TimeBeyondDwell, PlasmaTimeFar, DwellDisagrees,
        NotAGlucoseTest, SolutionGlucoseUnusual, GlucoseLabelConvention, WrongStrength, InitialGlucoseUnexpected, SolutionSodiumUnusual,
        FillNotComparable, DwellNotComparable, Child, LabelWithoutOverfill, UltrafiltrationImplausible,
        AssayNotStated, JaffeWithoutFactor, InitialRatioHigh, FactorContradictsMethod, MissingGlucoseForCorrection,
        CorrectedCreatinineBelowZero, CorrectedCreatinineNegative,
        UreaOrUreaNitrogen, RatioAboveOne, RatioImpossible, RatioNotRising, RatioFalling, GlucoseNotFalling, GlucoseRising,
        GlucoseBelowPlasma, SodiumNotFalling,
        MissingMeasurements, FormDiffers, EarlyTest, RecentPeritonitis, DateAfterTest, PrecedingDwellShort, PrecedingIcodextrin, InstillationSlow,
        WeightWithoutTare, TemporaryDrainImplausible, InitialSodiumUnexpected,
        NotATest, NotACollection, CollectionTimeAssumed, CollectionPlasmaMissing, MissingBagVolume, BagFillMissing,
        SheetsWithoutCode, SheetsOfDifferentPatients, SheetsWithoutDate,
    ];
}
