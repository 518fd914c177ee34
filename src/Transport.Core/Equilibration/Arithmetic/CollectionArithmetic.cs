using static System.FormattableString;

namespace Transport;

/// <summary>Sums over the bags of a day, over plasma where a clearance is asked for. A bag without a value leaves the sum out, not the bag.</summary>
internal sealed class CollectionArithmetic(CollectedDay day, EquilibrationIndicesOptions options)
{
    private const double NitrogenGramsPerMillimoleUrea = 0.028014;
    private const string Balance = "mass balance";
    private const string Noise = "; one collection varies by 4.0 % (Kt/V) and 4.7 % (creatinine) from day to day (read)";

    private readonly List<MissingIndex> missing = [];
    private readonly double perDay = 24 / day.Duration.TotalHours;

    public CollectionIndices Compute()
    {
        Measured? plasmaUrea = Plasma(CorrectedCreatinine.Mean(day.Plasma.Select(sample => sample.Urea)), options.AssayVariation);
        Measured? plasmaCreatinine = Plasma(CorrectedCreatinine.Of(day.CreatinineAssay, day.Plasma), options.AssayVariation);
        var urea = Drained("urea", sample => sample.Urea?.MillimolesPerLiter, options.AssayVariation);
        var creatinine = Drained("creatinine", sample => CorrectedCreatinine.Of(day.CreatinineAssay, sample)?.MillimolesPerLiter, options.AssayVariation);
        var urineUrea = Urine("urea", urine => urine.Urea?.MillimolesPerLiter, options.AssayVariation);
        var urineCreatinine = Urine("creatinine", urine => urine.Creatinine?.MillimolesPerLiter, options.AssayVariation);

        var water = day.Patient.BodyWater.Liters;
        var surface = 1.73 / day.Patient.BodySurface.SquareMeters;
        var (renalUrea, renalCreatinine) = (Over(urineUrea, plasmaUrea), Over(urineCreatinine, plasmaCreatinine));
        var renal = renalUrea is { } u && renalCreatinine is { } c ? (u + c) * 0.5 : (Measured?)null;
        var total = Sum(urea, urineUrea);
        var indices = new CollectionIndices { Collection = day, Options = options, NotAvailable = missing };
        var (proteinLoss, proteinClearance) = Protein();
        var glucose = Glucose();
        indices = indices with
        {
            WeeklyUreaDose = (
                Dose("weekly Kt/V urea, peritoneal", Over(urea, plasmaUrea), water),
                Dose("weekly Kt/V urea, renal", renalUrea, water),
                Dose("weekly Kt/V urea, total", Over(total, plasmaUrea), water)),
            WeeklyCreatinineClearance = (
                Weekly("weekly creatinine clearance, peritoneal", Over(creatinine, plasmaCreatinine), surface),
                Weekly("weekly creatinine clearance, renal", renal, surface),
                Weekly("weekly creatinine clearance, total", Sum(Over(creatinine, plasmaCreatinine), renal), surface)),
            RenalUreaClearance = PerMinute("renal urea clearance", renalUrea),
            RenalCreatinineClearance = PerMinute("renal creatinine clearance", renalCreatinine),
            ResidualFiltration = PerMinute("residual filtration, mean of the two", renal),
            CreatinineOutput = Index("creatinine output", Sum(creatinine, urineCreatinine),
                perDay * Solutes.Creatinine.MolarMassGramsPerMole / day.Patient.Weight.Kilograms, "mg/kg/day", "drains and urine, over body weight", Balance),
            NetUltrafiltration = Ultrafiltration(),
            SodiumRemoved = Sodium(),
            GlucoseAbsorbed = Index("glucose absorbed", glucose, perDay, "mmol/day", "Σ(filled × the bag's − drained × glucose)", Balance),
            GlucoseAbsorbedMass = glucose is null
                ? null
                : Index("glucose absorbed, mass", glucose, perDay * Solutes.Glucose.MolarMassGramsPerMole / 1000, "g/day", "the same in grams", Balance),
            ProteinLoss = Index("protein loss", proteinLoss, perDay, "g/day", "sum over the bags", Balance),
            ProteinClearance = Index("clearance of total protein", proteinClearance, 1000 * perDay, "mL/day", "protein loss over plasma protein", Balance),
        };
        return WithProteinCatabolism(indices, total, water);
    }

    // ---- sums; amounts in mmol or g of the collected time

    private static Measured? Plasma(Concentration? value, double variation) =>
        value is { MillimolesPerLiter: > 0 } p ? new(p.MillimolesPerLiter, variation * p.MillimolesPerLiter) : null;

    private Measured? Drained(string what, Func<DialysateSample, double?> read, double variation)
    {
        if (day.Drains.Count == 0 || day.Drains.Any(drain => drain.Drained.Milliliters > 0 && read(drain.Sample) is null))
        {
            missing.Add(new($"{what} in the drains", day.Drains.Count == 0 ? "no drain given" : $"{what} not measured in every drain"));
            return null;
        }

        return day.Drains.Select(drain => VolumeOf(drain.Drained) * Assayed(read(drain.Sample) ?? 0, variation)).Aggregate((a, b) => a + b);
    }

    private Measured? Urine(string what, Func<CollectedUrine, double?> read, double variation)
    {
        if (day.Urine is { Volume.Milliliters: 0 })
        {
            return new(0, 0);
        }

        if (day.Urine is not { } urine || read(urine) is not { } value)
        {
            missing.Add(new($"{what} in the urine", day.Urine is null ? "urine not collected, nor said to be none" : $"urine {what} not measured"));
            return null;
        }

        return VolumeOf(urine.Volume) * Assayed(value, variation);
    }

    private Measured VolumeOf(Volume volume) => new(volume.Liters, volume.Milliliters > 0 ? options.VolumeDeviation.Liters : 0);

    private static Measured Assayed(double value, double variation) => new(value, variation * Math.Abs(value));

    private static Measured? Sum(Measured? a, Measured? b) => a is { } x && b is { } y ? x + y : null;

    private static Measured? Over(Measured? amount, Measured? plasma) => amount is { } x && plasma is { } p ? x / p : null;

    // ---- indices; a cleared volume is in L of the collected time

    private IndexValue? Index(string name, Measured? measured, double factor, string unit, string formula, string source)
    {
        if (measured is not { } value)
        {
            missing.Add(new(name, "a value that it needs was not measured"));
            return null;
        }

        return new(name, value.Value * factor, unit, formula + Invariant($", {day.Duration.TotalHours:0.#} h collected"), source, value.Deviation * Math.Abs(factor));
    }

    private IndexValue? Dose(string name, Measured? cleared, double water) =>
        water > 0
            ? Index(name, cleared, 7 * perDay / water, "", Invariant($"7 × Σ(volume × urea) / plasma urea / body water {water:0.0} L ({day.Patient.BodyWaterFormula})"), Balance + Noise)
            : Index(name, null, 1, "", "", Balance);

    private IndexValue? Weekly(string name, Measured? cleared, double surface) =>
        Index(name, cleared, 7 * perDay * surface, "L/week/1.73 m²", Invariant($"7 × Σ(volume × creatinine) / plasma creatinine × {surface:0.000} (1.73 m² over body surface)"), Balance + Noise);

    private IndexValue? PerMinute(string name, Measured? cleared) =>
        Index(name, cleared, 1000 * perDay / 1440, "mL/min", "urine volume × urine / plasma", Balance);

    private IndexValue? Ultrafiltration()
    {
        Measured? net = day.Drains.Count > 0 && day.Drains.All(drain => drain.Fill is not null)
            ? day.Drains.Select(drain => VolumeOf(drain.Drained) - VolumeOf(drain.Fill!.Value)).Aggregate((a, b) => a + b)
            : null;
        return Index("net ultrafiltration", net, 1000 * perDay, "mL/day", "Σ(drained − filled)", Balance);
    }

    private (IndexValue?, IndexValue?, IndexValue?) Sodium()
    {
        var drained = Drained("sodium", sample => sample.Sodium?.MillimolesPerLiter, options.SodiumAssayVariation);
        var filled = Filled(solution => solution.Sodium, options.SodiumAssayVariation);
        Measured? peritoneal = drained is { } d && filled is { } f ? d - f : null;
        var renal = Urine("sodium", urine => urine.Sodium?.MillimolesPerLiter, options.SodiumAssayVariation);
        return (
            Index("sodium removed, peritoneal", peritoneal, perDay, "mmol/day", "Σ(drained × sodium − filled × the bag's)", Balance),
            Index("sodium removed, renal", renal, perDay, "mmol/day", "urine volume × sodium", Balance),
            Index("sodium removed, total", Sum(peritoneal, renal), perDay, "mmol/day", "both", Balance));
    }

    private Measured? Glucose()
    {
        var isGlucose = day.Drains.All(drain => drain.Solution is null or { Agent: OsmoticAgent.Glucose });
        var drained = isGlucose ? Drained("glucose", sample => sample.Glucose?.MillimolesPerLiter, options.AssayVariation) : null;
        return drained is { } d && Filled(solution => solution.Glucose, 0) is { } f ? f - d : null;
    }

    private Measured? Filled(Func<DialysisSolution, Concentration> read, double variation) =>
        day.Drains.Count > 0 && day.Drains.All(drain => drain is { Fill: not null, Solution: not null })
            ? day.Drains.Select(drain => VolumeOf(drain.Fill!.Value) * Assayed(read(drain.Solution!).MillimolesPerLiter, variation)).Aggregate((a, b) => a + b)
            : null;

    private (Measured? Loss, Measured? Clearance) Protein()
    {
        var loss = Drained("protein", sample => sample.Of(Transport.Protein.Total)?.GramsPerLiter, options.AssayVariation);
        double[] plasma = [.. day.Plasma.Select(sample => sample.Of(Transport.Protein.Total)?.GramsPerLiter).OfType<double>()];
        return (loss, loss is { } lost && plasma.Length > 0 && plasma.Average() > 0 ? lost / Assayed(plasma.Average(), options.AssayVariation) : null);
    }

    // Only from measured urea: at a simulated steady state it would return the generation that was put in.
    private CollectionIndices WithProteinCatabolism(CollectionIndices indices, Measured? urea, double water)
    {
        const string name = "protein catabolic rate";
        var nitrogen = Index("urea nitrogen appearance", urea, perDay * NitrogenGramsPerMillimoleUrea, "g/day", "urea in drains and urine as nitrogen", Balance);
        if (nitrogen is null)
        {
            missing.Add(new(name, "urea in drains and urine not measured"));
            return indices;
        }

        var (una, deviation) = (nitrogen.Value, nitrogen.StandardDeviation!.Value);
        var bergstrom = indices.ProteinLoss is { } loss
            ? new IndexValue(name, 15.1 + 6.95 * una + loss.Value, "g/day",
                Invariant($"15.1 + 6.95 × {una:0.00} g/day of urea nitrogen + {loss.Value:0.0} g/day of protein lost"), "Bergström 1998 (memory)", double.Hypot(6.95 * deviation, loss.StandardDeviation ?? 0))
            : new IndexValue(name, 20.1 + 7.50 * una, "g/day",
                Invariant($"20.1 + 7.50 × {una:0.00} g/day of urea nitrogen; protein loss not measured, a mean one is inside"), "Bergström 1998 (memory)", 7.5 * deviation);
        var perMinute = 1000 / 1440.0;
        return indices with
        {
            UreaNitrogenAppearance = nitrogen,
            ProteinCatabolicRate = bergstrom,
            ProteinCatabolicRateByRanderson = new(name + ", Randerson", 10.76 * (una * perMinute + 1.46), "g/day",
                Invariant($"10.76 × ({una * perMinute:0.00} mg/min of urea nitrogen + 1.46)"), "Randerson 1981 (memory)", 10.76 * perMinute * deviation),
            NormalizedProteinCatabolicRate = water > 0
                ? new(name + ", normalized", bergstrom.Value / (water / 0.58), "g/kg/day", Invariant($"{bergstrom.Value:0.0} g/day over body water {water:0.0} L / 0.58"),
                    "normalizer read", bergstrom.StandardDeviation / (water / 0.58))
                : null,
        };
    }
}
