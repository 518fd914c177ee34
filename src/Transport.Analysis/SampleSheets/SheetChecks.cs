using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>What is missing, and what does not fit together. Each check looks at what is there and says nothing about what is not.</summary>
internal sealed class SheetChecks
{
    private const double CreatinineUnits = 88.4; // µmol/L per mg/dL
    private const double GlucoseUnits = 18.0; // mg/dL per mmol/L
    private const double UreaNitrogenInUrea = 2.14; // mass of urea per mass of its nitrogen

    private const double MonohydrateShare = 0.9091; // glucose in its monohydrate, by mass

    private readonly SheetDraft draft;
    private readonly HashSet<string> written;
    private readonly double? bag;
    private readonly string? strengthUnit;
    private readonly DialysateSample? initial;

    private SheetChecks(SheetDraft draft, IReadOnlyList<SheetFact> facts)
    {
        this.draft = draft;
        strengthUnit = facts.Where(fact => fact.Item == Words.SolutionGlucose.Name).Select(fact => Words.NormalUnit(fact.Unit)).FirstOrDefault();
        written = [.. facts.Select(fact => fact.Item)];
        bag = draft.Agent == OsmoticAgent.Glucose ? draft.Number(Words.SolutionGlucose) : null;
        initial = draft.Dialysate.FirstOrDefault(sample => sample.Time.TotalMinutes <= Limits.InitialSampleMinutes);
    }

    public static IEnumerable<Finding> Of(SheetDraft draft, IReadOnlyList<SheetFact> facts)
    {
        var checks = new SheetChecks(draft, facts);
        return [
            .. checks.MissingFacts(), .. checks.MissingMeasurements(), .. checks.Times(), .. checks.Solution(), .. checks.Volumes(),
            .. checks.Assay(), .. checks.Creatinine(), .. checks.Urea(), .. checks.Glucose(), .. checks.Sodium()];
    }

    private bool Lacks(SheetItem item) => !written.Contains(item.Name);

    private IEnumerable<Finding> MissingFacts()
    {
        foreach (var item in new[] { Words.Sex, Words.Age, Words.Height, Words.Weight }.Where(Lacks))
        {
            yield return Codes.MissingPatientFact.Finding(
                $"The patient's {item.Name} is missing; body water and body surface need it. Add it.", field: item.Name);
        }

        if (Lacks(Words.SolutionGlucose) && draft.Agent == OsmoticAgent.Glucose)
        {
            yield return Codes.MissingStrength.Finding(
                "The glucose concentration of the solution is missing. Add it from the bag's list of contents.", field: Words.SolutionGlucose.Name);
        }

        if (Lacks(Words.Fill))
        {
            yield return Codes.MissingFill.Finding("The fill volume is missing. Add what was instilled.", field: Words.Fill.Name);
        }
        else if (Lacks(Words.Basis))
        {
            yield return Codes.MissingFillBasis.Finding(
                "It is not said whether the fill was weighed or read from the label; the label is assumed. Add 'weighed' or 'label'.", field: Words.Basis.Name);
        }

        if (Lacks(Words.Dwell) && draft.ClockedDwellMinutes is null)
        {
            yield return Codes.MissingDwell.Finding(
                "The dwell time is missing. Add it, or the clock times of end of inflow and start of drain.", field: Words.Dwell.Name);
        }
        else if (draft.Number(Words.Dwell) is null && draft.ClockedDwellMinutes is { } clocked && !Limits.DwellMinutes.Contains(clocked))
        {
            yield return Codes.ImpossibleValue.Finding(
                "The clock times make a dwell that is not possible; correct one of them.",
                draft.RowOf(Words.StartOfDrain), Words.Dwell.Name, Invariant($"{clocked:0.#} min"), Text(Limits.DwellMinutes));
        }

        if (Lacks(Words.Drained))
        {
            yield return Codes.MissingDrainedVolume.Finding(
                "The drained volume is missing, so ultrafiltration and everything that rests on volumes is not given. Add it if it was measured.",
                field: Words.Drained.Name);
        }

        if (Lacks(Words.Code))
        {
            yield return Codes.MissingCode.Finding("The sheet has no patient code, so its pages cannot be filed. Add a code, never a name.", field: Words.Code.Name);
        }

        if (Lacks(Words.Date))
        {
            yield return Codes.MissingDate.Finding("The sheet has no date of test. Add it.", field: Words.Date.Name);
        }

        if (Lacks(Words.SolutionSodium))
        {
            yield return Codes.SolutionSodiumAssumed.Finding(
                "The sodium of the solution is not given: 132 mmol/L is assumed. Add it from the bag's list of contents.", field: Words.SolutionSodium.Name);
        }

        var renal = new[] { Words.RenalUreaClearance, Words.RenalCreatinineClearance };
        if (Lacks(Words.Urine) && renal.All(Lacks))
        {
            yield return Codes.ResidualFunctionNotGiven.Finding(
                "Nothing is said about urine: none is assumed. Write 'urine volume' 0 if that is so.", field: Words.Urine.Name);
        }

        foreach (var item in renal.Where(item => Lacks(item) && !(renal.All(Lacks) && draft.Number(Words.Urine) is null or 0)))
        {
            yield return Codes.ResidualClearanceMissing.Finding(
                $"There is residual kidney function but no {item.Name}: zero is assumed for it, which makes doses too low. Add it from a 24-h urine.", field: item.Name);
        }
    }

    private IEnumerable<Finding> MissingMeasurements()
    {
        if (!draft.IsWritten(SampledFluid.Plasma, Analyte.Creatinine))
        {
            yield return Codes.MissingPlasmaCreatinine.Finding(
                "D/P cannot be computed without plasma creatinine. Add it.", field: "plasma creatinine", expected: "creatinine of blood drawn during the dwell");
        }

        if (!draft.IsWritten(SampledFluid.Dialysate, Analyte.Creatinine))
        {
            yield return Codes.MissingDialysateCreatinine.Finding(
                "D/P cannot be computed without dialysate creatinine. Add it.", field: "dialysate creatinine", expected: "creatinine at 0, 120 and 240 min");
        }
        else if (draft.DwellMinutes is { } dwell
            && !draft.IsWritten(Analyte.Creatinine, dwell - Limits.FinalSampleMinutes, double.PositiveInfinity))
        {
            yield return Codes.MissingFinalSample.Finding(
                Invariant($"There is no dialysate creatinine within {Limits.FinalSampleMinutes} min of the end of the dwell ({dwell:0.#} min), so D/P at its end is not given. Add the last sample if there is one."),
                field: "dialysate creatinine");
        }

        if (!draft.IsWritten(Analyte.Glucose, 0, Limits.InitialSampleMinutes))
        {
            yield return Codes.MissingInitialGlucose.Finding(
                "There is no dialysate glucose at 0 min, so D/D0 is not given (the bag's glucose would be about 15 % too high). Add it if it was measured.",
                field: "dialysate glucose");
        }

        var typical = PlasmaComposition.Typical;
        foreach (var (analyte, value) in new[] { (Analyte.Urea, typical.Urea), (Analyte.Glucose, typical.Glucose), (Analyte.Sodium, typical.Sodium) })
        {
            if (!draft.IsWritten(SampledFluid.Plasma, analyte) && !(analyte == Analyte.Urea && draft.IsWritten(SampledFluid.Plasma, Analyte.UreaNitrogen)))
            {
                yield return Codes.PlasmaNotMeasured.Finding(
                    Invariant($"Plasma {Words.Name(analyte)} not measured: {value.MillimolesPerLiter:0} mmol/L assumed in simulations only."),
                    field: $"plasma {Words.Name(analyte)}");
            }
        }
    }

    private IEnumerable<Finding> Times()
    {
        foreach (var series in new[] { SampledFluid.Dialysate, SampledFluid.Plasma }
            .SelectMany(draft.Of).Where(measured => measured.Time is not null).GroupBy(measured => (measured.Fluid, measured.Analyte)))
        {
            if (series.Zip(series.Skip(1)).FirstOrDefault(pair => pair.Second.Time < pair.First.Time).Second is { } early)
            {
                yield return Codes.TimesOutOfOrder.Finding(
                    "This sample is earlier than the one above it. Samples are sorted by time; check that no two were swapped.",
                    early.Row, Field(early.Fluid, early.Analyte), Minutes(early.Time!.Value));
            }
        }

        foreach (var (first, second) in draft.Dialysate.Zip(draft.Dialysate.Skip(1))
            .Where(pair => (pair.Second.Time - pair.First.Time).TotalMinutes < Limits.DistinctSampleMinutes))
        {
            yield return Codes.TimesNearlyEqual.Finding(
                "Two dialysate samples are only minutes apart. If they are one sample, give all its values the same time.",
                RowAt(second.Time), "time", $"{Minutes(first.Time)} and {Minutes(second.Time)}");
        }

        if (draft.DwellMinutes is not { } dwell)
        {
            yield break;
        }

        foreach (var sample in draft.Dialysate.Where(sample => sample.Time.TotalMinutes > dwell + Limits.LateSampleMinutes))
        {
            yield return Codes.TimeBeyondDwell.Finding(
                Invariant($"This sample would be {sample.Time.TotalMinutes - dwell:0.#} min after the end of the dwell. Correct its time or the dwell; 'h:mm' is a clock time exactly where 'end of inflow' is given."),
                RowAt(sample.Time), "time", Minutes(sample.Time), Invariant($"0 to {dwell:0.#} min"));
        }

        foreach (var sample in draft.Plasma.Where(sample =>
            sample.Time?.TotalMinutes is { } time && (time < -Limits.BloodMinutes || time > dwell + Limits.BloodMinutes)))
        {
            yield return Codes.PlasmaTimeFar.Finding(
                "Blood was drawn more than an hour outside the dwell; plasma may differ from that of the dwell. Check the time.",
                draft.Of(SampledFluid.Plasma).First(measured => measured.Time == sample.Time).Row, "time", Minutes(sample.Time!.Value), "about the middle of the dwell");
        }

        if (draft.Number(Words.Dwell) is { } stated && draft.ClockedDwellMinutes is { } clocked
            && Math.Abs(stated - clocked) > Limits.ClockDisagreementMinutes)
        {
            yield return Codes.DwellDisagrees.Finding(
                Invariant($"The written dwell is {stated:0.#} min, by the clock it is {clocked:0.#} min. The written one is used; correct the wrong one."),
                draft.RowOf(Words.Dwell), Words.Dwell.Name);
        }
    }

    private IEnumerable<Finding> Solution()
    {
        if (draft.Agent != OsmoticAgent.Glucose)
        {
            yield return Codes.NotAGlucoseTest.Finding(
                "An equilibration test is made with a glucose solution; with another fluid its indices mean nothing. The values can be read, but are no test.",
                draft.RowOf(Words.Agent), Words.Agent.Name, draft.Agent.ToString(), "glucose");
        }

        if (bag is { } glucose)
        {
            var row = draft.RowOf(Words.SolutionGlucose);
            var grams = glucose * Solutes.Glucose.MolarMassGramsPerMole / 1000;
            var usual = Limits.Strengths.Any(strength => Near(glucose, strength, Limits.StrengthTolerance));
            if (strengthUnit is "g/l" or "mg/dl" && Limits.TwofoldLabels.Any(label => Near(grams, label, 0.005)))
            {
                yield return Codes.GlucoseLabelConvention.Finding(
                    Invariant($"{grams:0.0} g/L was read as anhydrous glucose ({glucose:0.0} mmol/L), but some labels mean the monohydrate by it ({glucose * MonohydrateShare:0.0} mmol/L). Write the mmol/L, or add 'anhydrous' or 'monohydrate' to the unit."),
                    row, Words.SolutionGlucose.Name, Invariant($"{glucose:0.0} mmol/L"));
            }
            else if (!usual)
            {
                yield return Codes.SolutionGlucoseUnusual.Finding(
                    Invariant($"{glucose:0.0} mmol/L is the glucose of no usual solution. Compare it with the bag's list of contents."),
                    row, Words.SolutionGlucose.Name, Invariant($"{glucose:0.0} mmol/L"), string.Join(", ", Limits.Strengths.Select(value => Invariant($"{value:0.0}"))) + " mmol/L");
            }
        }

        if (draft.Number(Words.SolutionSodium) is { } sodium && !Limits.UsualSolutionSodium.Contains(sodium))
        {
            yield return Codes.SolutionSodiumUnusual.Finding(
                "This is not the sodium of a usual solution. If the solution is a special one, dips of sodium are not comparable; otherwise correct it.",
                draft.RowOf(Words.SolutionSodium), Words.SolutionSodium.Name, Invariant($"{sodium:0.#} mmol/L"), Text(Limits.UsualSolutionSodium));
        }
    }

    private IEnumerable<Finding> Volumes()
    {
        var isChild = draft.Number(Words.Age) < Limits.AdultAgeYears;
        if (isChild)
        {
            yield return Codes.Child.Finding(
                "The patient is a child: adult classes and the adult formula for body water do not hold. Read both with care.", draft.RowOf(Words.Age), Words.Age.Name);
        }

        if (draft.Fill is { } fill)
        {
            var row = draft.RowOf(Words.Fill);
            double? surface = draft.Number(Words.Height) is { } height && draft.Number(Words.Weight) is { } weight
                ? BodySize.SurfaceByDuBois(Length.FromCentimeters(height), Mass.FromKilograms(weight)).SquareMeters
                : null;
            var (value, range) = isChild ? (fill.Milliliters / surface, Limits.ComparableChildFill) : (fill.Milliliters, Limits.ComparableFill);
            if (value is { } compared && !range.Contains(compared))
            {
                yield return Codes.FillNotComparable.Finding(
                    "Class tables hold for another fill: the class is not comparable. Indices are still given.",
                    row, Words.Fill.Name, Invariant($"{compared:0} {range.Unit}"), Text(range));
            }

            if (draft.Basis == FillBasis.Label && Lacks(Words.Overfill))
            {
                yield return Codes.LabelWithoutOverfill.Finding(
                    "Bags hold 2-5 % more than their label says, and about 100 mL then counts as ultrafiltration (mean effect 101 mL, 776 against 675 mL, in an Italian series). Weigh the bag, or add its overfill.",
                    row, Words.Overfill.Name);
            }

            var entered = draft is { Basis: FillBasis.Label, Overfill: { } overfill } ? fill + overfill : fill;
            if (draft.Drained - entered is { } ultrafiltration && !Limits.NetUltrafiltration.Contains(ultrafiltration.Milliliters))
            {
                yield return Codes.UltrafiltrationImplausible.Finding(
                    "This net ultrafiltration is hardly possible. Check both volumes, the tare of the bags, and whether the drain was complete.",
                    draft.RowOf(Words.Drained), Words.Drained.Name, $"{ultrafiltration} of ultrafiltration", Text(Limits.NetUltrafiltration));
            }
        }

        if (draft.DwellMinutes is { } dwell && !Limits.ComparableDwell.Contains(dwell))
        {
            yield return Codes.DwellNotComparable.Finding(
                "Class tables hold for 4 h: the class is not comparable. Indices are still given.",
                draft.RowOf(Words.Dwell) ?? draft.RowOf(Words.StartOfDrain), Words.Dwell.Name, Invariant($"{dwell:0.#} min"), Text(Limits.ComparableDwell));
        }
    }

    private IEnumerable<Finding> Assay()
    {
        var (method, factor) = (draft.Assay.Method, draft.Assay.GlucoseFactor);
        if (method == CreatinineMethod.NotStated && !(written.Contains(Words.Method.Name) && draft.RowOf(Words.Method) is null))
        {
            yield return Codes.AssayNotStated.Finding(
                "The creatinine method is not stated. If it is an alkaline-picrate (Jaffe) method, early D/P are too high. Ask the laboratory and add it.",
                draft.RowOf(Words.Method), Words.Method.Name, expected: "enzymatic or Jaffe");
        }

        if (method == CreatinineMethod.Jaffe && Lacks(Words.Factor))
        {
            yield return Codes.JaffeWithoutFactor.Finding(
                "A Jaffe method reads glucose as creatinine, and no factor is given to correct for it: D/P creatinine is too high. Ask the laboratory for its factor and add it.",
                draft.RowOf(Words.Method), Words.Factor.Name);
        }

        if (method == CreatinineMethod.Enzymatic && factor > 0)
        {
            yield return Codes.FactorContradictsMethod.Finding(
                "An enzymatic method needs no glucose factor. Remove the factor, or correct the method.", draft.RowOf(Words.Factor), Words.Factor.Name);
        }

        foreach (var sample in draft.Assay.Corrects ? draft.Dialysate : [])
        {
            var row = draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, sample.Time)?.Row;
            if (sample is { Creatinine: not null, Glucose: null })
            {
                yield return Codes.MissingGlucoseForCorrection.Finding(
                    "This creatinine cannot be corrected without the glucose of the same sample, and is left out. Add the glucose.", row, "dialysate creatinine");
            }
            else if (Corrected(sample) is { } corrected && corrected < default(Concentration))
            {
                var beyond = -corrected.MillimolesPerLiter > Limits.Spread(Analyte.Creatinine).StandardDeviationAt(sample.Creatinine!.Value);
                yield return (beyond ? Codes.CorrectedCreatinineNegative : Codes.CorrectedCreatinineBelowZero).Finding(
                    beyond
                        ? "The factor takes more from this creatinine than there is. Check the factor and its unit, the creatinine and the glucose."
                        : "The corrected creatinine is slightly below zero, as the spread of the assay explains. Check the factor if it happens often.",
                    row, "dialysate creatinine", Invariant($"{corrected.MicromolesPerLiter:0.#} µmol/L after correction"), "zero or more");
            }
        }

        if (PlasmaCreatinine is { } plasma && plasma <= default(Concentration))
        {
            yield return Codes.CorrectedCreatinineNegative.Finding(
                "The factor takes more from plasma creatinine than there is. Check the factor and its unit.",
                draft.RowOf(Words.Factor), "plasma creatinine", Invariant($"{plasma.MicromolesPerLiter:0.#} µmol/L after correction"), "more than zero");
        }
    }

    private IEnumerable<Finding> Creatinine()
    {
        var corrected = draft.Dialysate.Select(sample => (sample.Time, Value: Corrected(sample))).Where(point => point.Value is not null)
            .Select(point => (point.Time, Value: point.Value!.Value)).ToList();
        if (PlasmaCreatinine is { MillimolesPerLiter: > 0 } plasma && corrected.Count > 0)
        {
            var last = corrected[^1].Value / plasma;
            if (last * CreatinineUnits is > 0.3 and < 1.1 || last / CreatinineUnits is > 0.3 and < 1.1)
            {
                yield return Codes.UnitSwap.Finding(
                    Invariant($"Dialysate and plasma creatinine differ by about 88.4, the number of µmol/L in 1 mg/dL (D/P {last:G3}). Correct the unit of one of them."),
                    draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, corrected[^1].Time)?.Row, "dialysate creatinine",
                    Invariant($"D/P {last:G3}"), "D/P between 0.3 and 1.1");
                yield break;
            }

            foreach (var finding in Ratios(Analyte.Creatinine, corrected, plasma))
            {
                yield return finding;
            }

            if (initial is not null && corrected[0].Time == initial.Time && !draft.Assay.Corrects && draft.Assay.Method != CreatinineMethod.Enzymatic
                && corrected[0].Value / plasma is > Limits.InitialCreatinineRatio and var first)
            {
                yield return Codes.InitialRatioHigh.Finding(
                    "So much creatinine at 0 min is probably glucose read as creatinine. Apply the laboratory's glucose factor.",
                    draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, initial.Time)?.Row, "dialysate creatinine",
                    Invariant($"D/P {first:0.00} at 0 min"), Invariant($"at most {Limits.InitialCreatinineRatio:0.00}"));
            }
        }

        foreach (var finding in Turns(Analyte.Creatinine, corrected))
        {
            yield return finding;
        }
    }

    private IEnumerable<Finding> Urea()
    {
        var points = Points(sample => sample.Urea);
        if (Mean(draft.Plasma.Select(sample => sample.Urea)) is { } plasma)
        {
            var row = draft.Row(SampledFluid.Plasma, Analyte.Urea)!;
            var isNitrogen = row.Analyte == Analyte.UreaNitrogen;
            if (isNitrogen ? plasma.MillimolesPerLiter > Limits.HighPlasmaUrea : plasma.MillimolesPerLiter < Limits.LowPlasmaUrea)
            {
                yield return Codes.UreaOrUreaNitrogen.Finding(
                    isNitrogen
                        ? "This urea nitrogen is so high that it may be urea. Ask the laboratory; 1 mg/dL of urea nitrogen is 2.14 mg/dL of urea."
                        : "This urea is so low that it may be urea nitrogen. Ask the laboratory; 1 mg/dL of urea nitrogen is 2.14 mg/dL of urea.",
                    row.Row, "plasma urea", $"{row.Text} {row.UnitText}");
            }

            if (points.Count > 0)
            {
                var last = points[^1].Value / plasma;
                var creatinine = draft.Dialysate.LastOrDefault(sample => sample.Time == points[^1].Time) is { } sample && PlasmaCreatinine is { } serum
                    ? Corrected(sample) / serum
                    : null;
                if (last / UreaNitrogenInUrea is > 0.8 and < 1.05 || (last < creatinine && last * UreaNitrogenInUrea is > 0.8 and < 1.05))
                {
                    yield return Codes.UreaOrUreaNitrogen.Finding(
                        "Dialysate and plasma urea fit each other if one of them is urea nitrogen. Ask the laboratory.",
                        draft.Row(SampledFluid.Dialysate, Analyte.Urea, points[^1].Time)?.Row, "dialysate urea", Invariant($"D/P {last:0.00}"));
                }

                foreach (var finding in Ratios(Analyte.Urea, points, plasma))
                {
                    yield return finding;
                }
            }
        }

        foreach (var finding in Turns(Analyte.Urea, points))
        {
            yield return finding;
        }
    }

    private IEnumerable<Finding> Glucose()
    {
        var points = Points(sample => sample.Glucose);
        if (bag is { } strength && initial?.Glucose is { } first)
        {
            var share = first.MillimolesPerLiter / strength;
            var row = draft.Row(SampledFluid.Dialysate, Analyte.Glucose, initial.Time)?.Row;
            var found = Invariant($"{first.MillimolesPerLiter:0.0} mmol/L, {share:0.00} of the bag's {strength:0.0}");
            var expected = Invariant($"{Limits.InitialGlucoseShareLow:0.00} to {Limits.InitialGlucoseShareHigh:0.00} of the bag's");
            if (share * GlucoseUnits is > 0.6 and < 1.1 || share / GlucoseUnits is > 0.6 and < 1.1)
            {
                yield return Codes.UnitSwap.Finding(
                    "Dialysate and bag glucose differ by about 18, the number of mg/dL in 1 mmol/L. Correct the unit of one of them.",
                    row, "dialysate glucose", found, expected);
                yield break;
            }

            if (share is < Limits.InitialGlucoseShareLow or > Limits.InitialGlucoseShareHigh)
            {
                var fitting = Limits.Strengths.MinBy(other => Math.Abs(first.MillimolesPerLiter / other - Limits.InitialGlucoseShareUsual));
                var fits = Math.Abs(first.MillimolesPerLiter / fitting - Limits.InitialGlucoseShareUsual) <= Limits.InitialGlucoseShareTolerance;
                yield return fits && !Near(fitting, strength, Limits.ConventionGap)
                    ? Codes.WrongStrength.Finding(
                        Invariant($"This glucose belongs to a bag of {fitting:0.0} mmol/L rather than {strength:0.0}. Correct the solution, or check the sample."),
                        row, "dialysate glucose", found, expected)
                    : Codes.InitialGlucoseUnexpected.Finding(
                        share > 1
                            ? "This is more glucose than mixing in the cavity leaves: an undiluted sample of the bag, or a bag labelled by the other convention (10 % more). D/D0 would be too low."
                            : "This is less glucose than mixing in the cavity leaves: a large residual volume, or a late sample. D/D0 would be too high.",
                        row, "dialysate glucose", found, expected);
            }
        }

        foreach (var finding in Turns(Analyte.Glucose, points))
        {
            yield return finding;
        }

        if (points.Count > 0 && draft.Plasma.Select(sample => sample.Glucose).Min() is { } lowest
            && lowest.MillimolesPerLiter - points[^1].Value.MillimolesPerLiter
                > Limits.TurnDeviations * Limits.Spread(Analyte.Glucose).StandardDeviationAt(lowest))
        {
            yield return Codes.GlucoseBelowPlasma.Finding(
                "Dialysate glucose cannot be below plasma's. Check the units, and whether a plasma value was entered as dialysate.",
                draft.Row(SampledFluid.Dialysate, Analyte.Glucose, points[^1].Time)?.Row, "dialysate glucose",
                Invariant($"{points[^1].Value.MillimolesPerLiter:0.0} mmol/L"), Invariant($"at least plasma's {lowest.MillimolesPerLiter:0.0} mmol/L"));
        }
    }

    private IEnumerable<Finding> Sodium()
    {
        var hour = draft.Dialysate.FirstOrDefault(sample =>
            sample.Sodium is not null && Math.Abs(sample.Time.TotalMinutes - 60) <= Limits.DipSampleMinutes);
        if (bag >= Limits.SievingStrength && initial?.Sodium is { } before && hour?.Sodium is { } after && after >= before)
        {
            yield return Codes.SodiumNotFalling.Finding(
                "With this solution sodium falls in the first hour, because water passes without it. Check for swapped samples, the assay and the fluid; if all is right, repeat it.",
                draft.Row(SampledFluid.Dialysate, Analyte.Sodium, hour.Time)?.Row, "dialysate sodium",
                Invariant($"{after.MillimolesPerLiter:0.#} mmol/L"), Invariant($"below {before.MillimolesPerLiter:0.#} mmol/L, that of 0 min"));
        }
    }

    private IEnumerable<Finding> Ratios(Analyte analyte, List<(TimeSpan Time, Concentration Value)> points, Concentration plasma)
    {
        var (time, value) = points.MaxBy(point => point.Value);
        var ratio = value / plasma;
        if (ratio > Limits.FullRatio)
        {
            var impossible = ratio > Limits.ImpossibleRatio;
            yield return (impossible ? Codes.RatioImpossible : Codes.RatioAboveOne).Finding(
                impossible
                    ? $"Dialysate {Words.Name(analyte)} cannot be so far above plasma's. Check for a wrong sample, a plasma swap, units, and glucose read as creatinine."
                    : $"Dialysate {Words.Name(analyte)} is a little above plasma's, which the spread of the assay can explain. Check both values.",
                draft.Row(SampledFluid.Dialysate, analyte, time)?.Row, $"dialysate {Words.Name(analyte)}",
                Invariant($"D/P {ratio:0.00} at {time.TotalMinutes:0.#} min"), Invariant($"at most {Limits.FullRatio:0.00}"));
        }
    }

    // D/P rises and D/D0 falls throughout a dwell; the common denominator cancels, so that the dialysate values decide.
    private IEnumerable<Finding> Turns(Analyte analyte, List<(TimeSpan Time, Concentration Value)> points)
    {
        var falls = analyte == Analyte.Glucose;
        foreach (var (before, after) in points.Zip(points.Skip(1)))
        {
            var turn = (falls ? 1 : -1) * (after.Value - before.Value).MillimolesPerLiter;
            if (turn < 0)
            {
                continue;
            }

            var spread = Limits.Spread(analyte);
            var beyond = turn > Limits.TurnDeviations
                * double.Hypot(spread.StandardDeviationAt(before.Value), spread.StandardDeviationAt(after.Value));
            var kind = (falls, beyond) switch
            {
                (true, true) => Codes.GlucoseRising,
                (true, false) => Codes.GlucoseNotFalling,
                (false, true) => Codes.RatioFalling,
                (false, false) => Codes.RatioNotRising,
            };
            yield return kind.Finding(
                $"Dialysate {Words.Name(analyte)} should {(falls ? "fall" : "rise")} from {Minutes(before.Time)} to {Minutes(after.Time)}. "
                + (beyond ? "Two samples are probably swapped, or one is of something else." : "The spread of the assay can explain it; check both values."),
                draft.Row(SampledFluid.Dialysate, analyte, after.Time)?.Row, $"dialysate {Words.Name(analyte)}",
                $"{Written(before.Time)} then {Written(after.Time)}{(analyte == Analyte.Creatinine && draft.Assay.Corrects ? " before correction" : "")}");
        }

        string Written(TimeSpan time) => draft.Row(SampledFluid.Dialysate, analyte, time) is { } row ? $"{row.Text} {row.UnitText}" : "";
    }

    private Concentration? Corrected(DialysateSample sample) =>
        !draft.Assay.Corrects ? sample.Creatinine
        : sample is { Creatinine: { } creatinine, Glucose: { } glucose } ? draft.Assay.Correct(creatinine, glucose)
        : null;

    private Concentration? PlasmaCreatinine
    {
        get
        {
            var glucose = Mean(draft.Plasma.Select(sample => sample.Glucose));
            return Mean(draft.Plasma.Select(sample => sample.Creatinine is { } creatinine && (sample.Glucose ?? glucose) is { } sugar
                ? draft.Assay.Correct(creatinine, sugar)
                : sample.Creatinine));
        }
    }

    private List<(TimeSpan Time, Concentration Value)> Points(Func<DialysateSample, Concentration?> read) =>
        [.. draft.Dialysate.Where(sample => read(sample) is not null).Select(sample => (sample.Time, read(sample)!.Value))];

    private static Concentration? Mean(IEnumerable<Concentration?> values) =>
        values.Average(value => value?.MillimolesPerLiter) is { } mean ? Concentration.FromMillimolesPerLiter(mean) : null;

    private int? RowAt(TimeSpan time) => draft.Of(SampledFluid.Dialysate).FirstOrDefault(measured => measured.Time == time)?.Row;

    private static bool Near(double value, double other, double share) => Math.Abs(value / other - 1) <= share;

    private static string Field(SampledFluid fluid, Analyte analyte) => $"{Words.Name(fluid)} {Words.Name(analyte)}";

    private static string Minutes(TimeSpan time) => Invariant($"{time.TotalMinutes:0.#} min");

    private static string Text(PlausibleRange range) => Invariant($"{range.Low:0.##} to {range.High:0.##} {range.Unit}");
}
