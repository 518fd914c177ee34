using static System.FormattableString;

namespace Transport;

/// <summary>The arithmetic behind <see cref="EquilibrationIndices"/>: one test, one pass; every index or the reason why not.</summary>
internal sealed class IndexArithmetic(EquilibrationTest test, EquilibrationIndicesOptions options)
{
    private const string RatioSource = "Twardowski et al., Perit Dial Bull 1987;7:138-147 (memory)";
    private const string SodiumSource = "Morelle et al., Perit Dial Int 2021;41:352-372 (memory)";
    private const string BalanceSource = "mass balance";

    private static readonly TimeSpan FourHours = TimeSpan.FromHours(4);
    private static readonly TimeSpan OneHour = TimeSpan.FromHours(1);

    private readonly MembraneThresholds limits = options.Thresholds;
    private readonly List<MissingIndex> missing = [];

    private bool IsAdult => test.Patient.AgeYears >= limits.AdultAge.Value;

    public EquilibrationIndices Compute()
    {
        var initialGlucose = InitialGlucose(out var isEstimated);
        var ratios = test.Dialysate.Select(sample => Ratios(sample, initialGlucose)).ToList();
        var four = Nearest(FourHours, limits.FourHourTolerance, sample => sample.Creatinine)
            ?? Nearest(FourHours, limits.FourHourTolerance, sample => sample.Urea ?? sample.Glucose ?? sample.Sodium);
        var final = four ?? test.Dialysate.LastOrDefault(sample => sample.Creatinine is not null) ?? (test.Dialysate.Count > 0 ? test.Dialysate[^1] : null);
        var atFinal = final is null ? null : Ratios(final, initialGlucose);
        ExplainMissingRatios(final, atFinal, initialGlucose);

        var indices = new EquilibrationIndices
        {
            Test = test,
            Options = options,
            Ratios = ratios,
            FinalSampleTime = final?.Time,
            IsFourHourSample = four is not null,
            DialysateToPlasmaCreatinine = atFinal?.DialysateToPlasmaCreatinine,
            UncorrectedDialysateToPlasmaCreatinine = atFinal?.UncorrectedDialysateToPlasmaCreatinine,
            DialysateToPlasmaUrea = atFinal?.DialysateToPlasmaUrea,
            DialysateToInitialGlucose = atFinal?.DialysateToInitialGlucose,
            InitialGlucose = initialGlucose,
            IsInitialGlucoseEstimated = isEstimated,
            FillStatement = FillStatement(),
            NotAvailable = missing,
        };
        indices = WithVolumes(indices);
        indices = WithGlucoseAbsorption(indices);
        indices = WithMassTransfer(indices, isEstimated);
        indices = WithSodium(indices);
        return indices with { Classification = Classify(indices) };
    }

    // ---- ratios

    private SampleRatios Ratios(DialysateSample sample, IndexValue? initialGlucose)
    {
        var creatinines = test.Plasma.Select(plasma => plasma.Creatinine?.MillimolesPerLiter).OfType<double>().ToList();
        Concentration? plasmaCreatinine = creatinines.Count == 0 ? null : Concentration.FromMillimolesPerLiter(creatinines.Average());
        return new(sample.Time)
        {
            DialysateToPlasmaCreatinine = CreatinineRatio(sample),
            UncorrectedDialysateToPlasmaCreatinine = Ratio(
                "D/P creatinine, uncorrected", sample.Creatinine, plasmaCreatinine, sample.Time, "D/P as measured"),
            DialysateToPlasmaUrea = Ratio("D/P urea", sample.Urea, test.PlasmaUrea, sample.Time, "D/P"),
            DialysateToInitialGlucose = sample.Glucose is { } glucose && initialGlucose is { Value: > 0 } d0
                    && sample.Time > Minutes(limits.EarlyTolerance)
                ? new("D/D0 glucose", glucose.MillimolesPerLiter / d0.Value, "",
                    Invariant($"D/D0 at {sample.Time.TotalMinutes:0} min = {glucose.MillimolesPerLiter:0.0} / {d0.Value:0.0} mmol/L, {d0.Formula}"),
                    RatioSource,
                    Math.Abs(glucose.MillimolesPerLiter) / d0.Value
                        * Math.Sqrt(Square(options.AssayVariation) + Square((d0.StandardDeviation ?? 0) / d0.Value)))
                : null,
        };
    }

    private IndexValue? CreatinineRatio(DialysateSample sample)
    {
        if (test.CorrectedDialysateCreatinine(sample) is not { } dialysate
            || test.CorrectedPlasmaCreatinine is not { MillimolesPerLiter: > 0 } plasma)
        {
            return null;
        }

        var how = test.CreatinineAssay switch
        {
            { Corrects: true } assay => Invariant($"both corrected for glucose, factor {assay.GlucoseFactor:0.#########}"),
            { Method: CreatinineMethod.Enzymatic } => "enzymatic, no correction needed",
            { Method: CreatinineMethod.Jaffe } => "Jaffe, not corrected for glucose: no factor given",
            _ => "not corrected for glucose: method not stated",
        };
        var glucoseShare = test.CreatinineAssay.Corrects && sample.Creatinine is { } measured ? measured - dialysate : default;
        var dialysateError = options.AssayVariation
            * Math.Sqrt(Square((dialysate + glucoseShare) / plasma) + Square(glucoseShare / plasma));
        var ratio = dialysate / plasma;
        return new("D/P creatinine", ratio, "",
            Invariant($"D/P at {sample.Time.TotalMinutes:0} min = {dialysate.MicromolesPerLiter:0.0} / {plasma.MicromolesPerLiter:0.0} µmol/L, {how}"),
            RatioSource,
            Math.Sqrt(Square(dialysateError) + Square(ratio * options.AssayVariation)));
    }

    private IndexValue? Ratio(string name, Concentration? dialysate, Concentration? plasma, TimeSpan time, string formula) =>
        dialysate is { } d && plasma is { MillimolesPerLiter: > 0 } p
            ? new(name, d / p, "",
                Invariant($"{formula} at {time.TotalMinutes:0} min = {d.MillimolesPerLiter:0.###} / {p.MillimolesPerLiter:0.###} mmol/L"),
                RatioSource,
                Math.Abs(d / p) * options.AssayVariation * Math.Sqrt(2))
            : null;

    private void ExplainMissingRatios(DialysateSample? final, SampleRatios? ratios, IndexValue? initialGlucose)
    {
        if (ratios?.DialysateToPlasmaCreatinine is null)
        {
            Missing("D/P creatinine",
                final is null ? "no dialysate sample"
                : final.Creatinine is null ? At(final, "dialysate creatinine")
                : test.CorrectedPlasmaCreatinine is not { MillimolesPerLiter: > 0 } ? "plasma creatinine not measured"
                : Invariant($"dialysate glucose at {final.Time.TotalMinutes:0} min not measured, so creatinine cannot be corrected for it"));
        }

        if (ratios?.DialysateToPlasmaUrea is null)
        {
            Missing("D/P urea", final is null ? "no dialysate sample"
                : final.Urea is null ? At(final, "dialysate urea") : "plasma urea not measured");
        }

        if (ratios?.DialysateToInitialGlucose is null)
        {
            Missing("D/D0 glucose", final is null ? "no dialysate sample"
                : final.Glucose is null ? At(final, "dialysate glucose")
                : initialGlucose is null ? "dialysate glucose at 0 min not measured, and without a glucose solution it cannot be estimated"
                : initialGlucose.Value <= 0 ? "no glucose at 0 min"
                : "no dialysate sample after the start");
        }
    }

    private IndexValue? InitialGlucose(out bool isEstimated)
    {
        isEstimated = false;
        if (Nearest(TimeSpan.Zero, limits.EarlyTolerance, sample => sample.Glucose) is { Glucose: { } measured })
        {
            return new("D0 glucose", measured.MillimolesPerLiter, "mmol/L", "D0 measured", BalanceSource,
                measured.MillimolesPerLiter * options.AssayVariation);
        }

        if (test.Solution.Agent != OsmoticAgent.Glucose)
        {
            return null;
        }

        isEstimated = true;
        var residual = test.ResidualVolume ?? options.AssumedResidualVolume ?? ResidualFluid.UsualVolume(test.Patient.BodySurface);
        var entered = test.EnteredVolume;
        var total = entered + residual;
        if (total.Milliliters <= 0)
        {
            isEstimated = false;
            return null;
        }

        var value = CavityMixing.InitialConcentration(entered, test.Solution.Glucose, residual, options.AssumedResidualGlucose).MillimolesPerLiter;
        var perMilliliter = (test.Solution.Glucose - options.AssumedResidualGlucose).MillimolesPerLiter * entered.Milliliters
            / Square(total.Milliliters);
        var fromVolume = test.ResidualVolume is null ? 100 * perMilliliter : 0.0;
        var fromGlucose = 20 * (residual / total);
        var known = test.ResidualVolume is null ? "assumed" : "known";
        return new("D0 glucose", value, "mmol/L",
            Invariant($"D0 estimated by mixing: {entered.Milliliters:0} mL of {test.Solution.Glucose.MillimolesPerLiter:0.0} mmol/L with a residual volume of {residual.Milliliters:0} mL ({known}) at {options.AssumedResidualGlucose.MillimolesPerLiter:0} mmol/L (assumed)"),
            BalanceSource,
            Math.Sqrt(Square(fromVolume) + Square(fromGlucose)));
    }

    // ---- volumes and glucose

    private string FillStatement() => (test.FillBasis, test.Overfill) switch
    {
        (FillBasis.Measured, _) => "The fill was measured, so overfill is inside it.",
        (_, { } overfill) => Invariant($"The fill is the label's plus a stated overfill of {overfill.Milliliters:0} mL."),
        _ => Invariant(
            $"The fill is the label's: net ultrafiltration may contain about {limits.UnknownOverfill.Value:0} mL of overfill."),
    };

    private EquilibrationIndices WithVolumes(EquilibrationIndices indices)
    {
        if (test.DrainedVolume is not { } drained || test.NetUltrafiltration is not { } net)
        {
            Missing("net ultrafiltration", "drained volume not measured");
            return indices;
        }

        return indices with
        {
            NetUltrafiltrationAsWritten = new("net ultrafiltration, as written", (drained - test.InstilledVolume).Milliliters, "mL",
                Invariant($"{drained.Milliliters:0} mL drained − {test.InstilledVolume.Milliliters:0} mL instilled"), BalanceSource),
            NetUltrafiltration = new("net ultrafiltration", net.Milliliters, "mL",
                Invariant($"{drained.Milliliters:0} mL drained − {test.EnteredVolume.Milliliters:0} mL entered. {indices.FillStatement}"), BalanceSource),
        };
    }

    private EquilibrationIndices WithGlucoseAbsorption(EquilibrationIndices indices)
    {
        var reason = test.Solution.Agent != OsmoticAgent.Glucose || test.Solution.Glucose.MillimolesPerLiter <= 0 ? "not a glucose solution"
            : test.DrainedVolume is null ? "drained volume not measured"
            : test.InstilledVolume.Milliliters <= 0 ? "no volume instilled"
            : AtEndOfDwell(sample => sample.Glucose) is null ? "dialysate glucose at the end of the dwell not measured"
            : null;
        if (reason is not null)
        {
            Missing("glucose absorbed", reason);
            return indices;
        }

        var end = AtEndOfDwell(sample => sample.Glucose)!.Glucose!.Value;
        var instilled = test.Solution.Glucose * test.EnteredVolume;
        var drained = end * test.DrainedVolume!.Value;
        var absorbed = instilled - drained;
        var spread = drained.Millimoles * options.AssayVariation;
        var grams = Solutes.Glucose.MolarMassGramsPerMole / 1000;
        var formula = Invariant(
            $"{test.EnteredVolume.Milliliters:0} mL × {test.Solution.Glucose.MillimolesPerLiter:0.0} mmol/L (label) − {test.DrainedVolume.Value.Milliliters:0} mL × {end.MillimolesPerLiter:0.0} mmol/L; residual volume left out");
        return indices with
        {
            GlucoseAbsorbed = new("glucose absorbed", absorbed.Millimoles, "mmol", formula, BalanceSource, spread),
            GlucoseAbsorbedFraction = new("glucose absorbed, fraction", absorbed / instilled, "",
                formula + Invariant($", over {instilled.Millimoles:0.0} mmol instilled"), BalanceSource, spread / instilled.Millimoles),
            GlucoseAbsorbedMass = new("glucose absorbed, mass", absorbed.Millimoles * grams, "g", formula, BalanceSource, spread * grams),
        };
    }

    // ---- mass transfer

    private EquilibrationIndices WithMassTransfer(EquilibrationIndices indices, bool isInitialGlucoseEstimated)
    {
        const string creatinine = "mass transfer area coefficient of creatinine";
        const string urea = "mass transfer area coefficient of urea";
        const string glucose = "mass transfer area coefficient of glucose";
        return indices with
        {
            CreatinineMassTransfer = MassTransfer(creatinine, "creatinine", test.CorrectedPlasmaCreatinine, test.CorrectedDialysateCreatinine),
            UreaMassTransfer = MassTransfer(urea, "urea", test.PlasmaUrea, sample => sample.Urea),
            GlucoseMassTransfer = isInitialGlucoseEstimated
                ? Missing(glucose, "dialysate glucose at 0 min not measured")
                : MassTransfer(glucose, "glucose", test.PlasmaGlucose, sample => sample.Glucose),
        };
    }

    private IndexValue? MassTransfer(
        string name, string solute, Concentration? plasma, Func<DialysateSample, Concentration?> read)
    {
        var start = Nearest(TimeSpan.Zero, limits.EarlyTolerance, read);
        var end = AtEndOfDwell(read);
        var reason = test.DrainedVolume is not { Milliliters: > 0 } ? "drained volume not measured"
            : test.ResidualVolume is null ? "residual volume not known"
            : plasma is null ? $"plasma {solute} not measured"
            : start is null ? $"dialysate {solute} at 0 min not measured"
            : end is null || end.Time <= start.Time ? $"dialysate {solute} at the end of the dwell not measured"
            : null;
        if (reason is not null)
        {
            return Missing(name, reason);
        }

        var residual = test.ResidualVolume!.Value;
        var (V0, Vt) = (test.EnteredVolume + residual, test.DrainedVolume!.Value + residual);
        if (V0.Milliliters <= 0)
        {
            return Missing(name, "no volume instilled");
        }

        var choices = options.MassTransfer;
        if (MassTransferCoefficient.Of(plasma!.Value, read(start!)!.Value, read(end!)!.Value, V0, Vt, end!.Time - start!.Time, choices) is not { } value)
        {
            return Missing(name, $"dialysate and plasma {solute} have met, so no coefficient can be told");
        }

        var (P, D0, Dt) = (
            plasma.Value.MillimolesPerLiter / choices.PlasmaWaterFraction,
            read(start)!.Value.MillimolesPerLiter,
            read(end)!.Value.MillimolesPerLiter);
        var logError = options.AssayVariation * Math.Sqrt(
            Square(Dt / (P - Dt)) + Square(D0 / (P - D0)) + Square(P / (P - Dt) - P / (P - D0)));
        var meanVolume = (V0 + Vt).Milliliters / 2;
        var mean = choices.MeanVolume == MeanVolume.Logarithmic ? "logarithmic" : "arithmetic";
        var water = choices.PlasmaWaterFraction < 1 ? Invariant($"plasma water {choices.PlasmaWaterFraction:0.000}") : "plasma as measured";
        return new(name, value.MillilitersPerMinute, "mL/min",
            Invariant($"(Vm/t) ln[(P − D0) V0^(1−F) / ((P − Dt) Vt^(1−F))], F = {choices.ConvectionWeight:0.##}, {mean} mean of {V0.Milliliters:0} and {Vt.Milliliters:0} mL, {water}, {(end.Time - start.Time).TotalMinutes:0} min; the residual volume is taken to be the same before and after"),
            "integrated mass balance without absorption (computed); names and weights of the forms from memory",
            meanVolume / (end.Time - start.Time).TotalMinutes * logError);
    }

    // ---- sodium

    private EquilibrationIndices WithSodium(EquilibrationIndices indices)
    {
        Missing("free water at 60 min", "volume at 60 min not measured: it needs a temporary drain");
        var start = Nearest(TimeSpan.Zero, limits.EarlyTolerance, sample => sample.Sodium);
        var hour = Nearest(OneHour, limits.EarlyTolerance, sample => sample.Sodium);
        if (start?.Sodium is not { } D0 || hour?.Sodium is not { } D60)
        {
            var reason = start is null ? "dialysate sodium at 0 min not measured" : "dialysate sodium at 60 min not measured";
            Missing("sodium dip", reason);
            Missing("sodium ratio dip", reason);
            Missing("sodium dip, corrected for diffusion", reason);
            return indices;
        }

        var dip = (D0 - D60).MillimolesPerLiter;
        var spread = options.SodiumAssayVariation * Math.Sqrt(Square(D0.MillimolesPerLiter) + Square(D60.MillimolesPerLiter));
        indices = indices with
        {
            SodiumDip = new("sodium dip", dip, "mmol/L",
                Invariant($"D(0) − D({hour.Time.TotalMinutes:0} min) = {D0.MillimolesPerLiter:0.0} − {D60.MillimolesPerLiter:0.0} mmol/L, both measured"),
                SodiumSource, spread),
        };
        if (test.PlasmaSodium is not { MillimolesPerLiter: > 0 } plasma)
        {
            Missing("sodium ratio dip", "plasma sodium not measured");
            Missing("sodium dip, corrected for diffusion", "plasma sodium not measured");
            return indices;
        }

        var (permeability, origin) = SodiumPermeability(indices);
        var residual = test.ResidualVolume ?? options.AssumedResidualVolume ?? ResidualFluid.UsualVolume(test.Patient.BodySurface);
        var end = test.DrainedVolume is { } drained ? drained : test.EnteredVolume;
        var volume = ((test.EnteredVolume + end) * 0.5 + residual).Milliliters;
        indices = indices with
        {
            SodiumRatioDip = new("sodium ratio dip", dip / plasma.MillimolesPerLiter, "",
                Invariant($"{dip:0.0} / {plasma.MillimolesPerLiter:0.0} mmol/L plasma sodium"), SodiumSource, spread / plasma.MillimolesPerLiter),
        };
        if (volume <= 0)
        {
            Missing("sodium dip, corrected for diffusion", "no volume instilled");
            return indices;
        }

        var course = test.Dialysate
            .Where(sample => sample.Sodium is not null && sample.Time >= start.Time && sample.Time <= hour.Time)
            .Select(sample => (sample.Time.TotalMinutes, sample.Sodium!.Value.MillimolesPerLiter))
            .ToList();
        var hidden = Transport.SodiumDip.HiddenByDiffusion(course, plasma.MillimolesPerLiter, permeability, volume);
        return indices with
        {
            CorrectedSodiumDip = new("sodium dip, corrected for diffusion", dip + hidden, "mmol/L",
                Invariant($"{dip:0.0} mmol/L + K ∫(P − D)dt / V with K = {permeability:0.0} mL/min ({origin}) and V = {volume:0} mL (mean of start and end, residual volume {residual.Milliliters:0} mL{(test.ResidualVolume is null ? " assumed" : "")})"),
                "mass balance; permeability from memory (4 to 8 mL/min), uncertain by a third", Math.Sqrt(Square(spread) + Square(hidden / 3))),
        };
    }

    private (double Value, string Origin) SodiumPermeability(EquilibrationIndices indices) =>
        options.SodiumPermeability is { } chosen ? (chosen.MillilitersPerMinute, "as chosen")
        : indices.CreatinineMassTransfer is { } creatinine ? (creatinine.Value / 2, "half that of creatinine")
        : (6.0, "middle of 4 to 8");

    // ---- class

    private TransportClassification? Classify(EquilibrationIndices indices)
    {
        const string name = "transport category";
        if (indices.DialysateToPlasmaCreatinine is not { } ratio || indices.FinalSampleTime is not { } time)
        {
            Missing(name, "D/P creatinine not available");
            return null;
        }

        if (test.Solution.Agent != OsmoticAgent.Glucose)
        {
            Missing(name, "the classes are for glucose solutions");
            return null;
        }

        if ((time - FourHours).Duration() > Minutes(limits.ClassTolerance))
        {
            Missing(name, Invariant($"the last sample was taken at {time.TotalMinutes:0} min, the classes are for 240 min"));
            return null;
        }

        var cuts = options.Cuts ?? (IsAdult ? CategoryCuts.Twardowski1987Creatinine : CategoryCuts.Warady1996Creatinine);
        var largest = Math.Min(cuts.LargestValue, limits.DialysateToPlasmaImpossible.Value);
        if (ratio.Value < 0 || ratio.Value > largest)
        {
            Missing(name, Invariant($"D/P creatinine {ratio.Value:0.00} is outside 0 to {largest:0.00}"));
            return null;
        }

        var population = options.Population ?? (IsAdult ? ReferencePopulations.NorthAmerica1987 : ReferencePopulations.Children1996);
        return TransportClassification.Of(ratio.Value, cuts, population, options.WithinPersonStandardDeviation) with
        {
            GlucoseCategory = GlucoseCategory(indices),
            Cautions = Cautions(indices),
        };
    }

    private TransportCategory? GlucoseCategory(EquilibrationIndices indices)
    {
        var cuts = options.GlucoseCuts ?? (IsAdult ? CategoryCuts.Twardowski1987Glucose : CategoryCuts.Warady1996Glucose);
        return limits.IsMiddleStrength(test.Solution)
            && !indices.IsInitialGlucoseEstimated
            && indices.DialysateToInitialGlucose is { Value: >= 0 } ratio
            && ratio.Value <= cuts.LargestValue
                ? cuts.Of(ratio.Value)
                : null;
    }

    private List<string> Cautions(EquilibrationIndices indices)
    {
        var cautions = new List<string>();
        if (!indices.IsFourHourSample)
        {
            cautions.Add(Invariant(
                $"The sample was taken at {indices.FinalSampleTime!.Value.TotalMinutes:0} min, not at 240 ± {limits.FourHourTolerance.Value:0} min."));
        }

        if ((test.Dwell - FourHours).Duration() > Minutes(limits.FourHourTolerance))
        {
            cautions.Add(Invariant($"The dwell was {test.Dwell.TotalMinutes:0} min, not 240 ± {limits.FourHourTolerance.Value:0} min."));
        }

        var (fill, low, high) = IsAdult
            ? (test.EnteredVolume.Milliliters, limits.AdultFillLow, limits.AdultFillHigh)
            : (test.EnteredVolume.Milliliters / test.Patient.BodySurface.SquareMeters, limits.ChildFillLow, limits.ChildFillHigh);
        if (fill < low.Value || fill > high.Value)
        {
            cautions.Add(Invariant($"The fill was {fill:0} {low.Unit}, outside {low.Value:0} to {high.Value:0} {low.Unit}."));
        }

        if (test.CreatinineAssay is { Corrects: false, Method: not CreatinineMethod.Enzymatic })
        {
            cautions.Add("Creatinine was not corrected for glucose, which may raise D/P.");
        }

        return cautions;
    }

    // ---- small things

    private DialysateSample? Nearest(TimeSpan time, Threshold tolerance, Func<DialysateSample, Concentration?> read) => test.Dialysate
        .Where(sample => read(sample) is not null && (sample.Time - time).Duration() <= Minutes(tolerance))
        .MinBy(sample => (sample.Time - time).Duration());

    private DialysateSample? AtEndOfDwell(Func<DialysateSample, Concentration?> read) => Nearest(test.Dwell, limits.FourHourTolerance, read);

    private IndexValue? Missing(string name, string reason)
    {
        missing.Add(new(name, reason));
        return null;
    }

    private static string At(DialysateSample sample, string what) => Invariant($"{what} at {sample.Time.TotalMinutes:0} min not measured");

    private static TimeSpan Minutes(Threshold threshold) => TimeSpan.FromMinutes(threshold.Value);

    private static double Square(double value) => value * value;
}
