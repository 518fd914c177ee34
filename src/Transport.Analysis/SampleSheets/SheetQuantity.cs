namespace Transport.Analysis;

/// <summary>A unit: its usual spelling, how much of the canonical unit it is, and other spellings (lower case, µ as u, no spaces).</summary>
internal sealed record SheetUnit(string Name, double Factor, params string[] Spellings)
{
    public bool IsSpelled(string normal) => SheetWords.NormalUnit(Name) == normal || Spellings.Contains(normal);
}

/// <summary>A kind of quantity with the units it is written in; the first is the one that messages use.</summary>
internal sealed record SheetQuantity(params SheetUnit[] Units)
{
    /// <summary>Whether a number without unit is in the first one.</summary>
    public bool UnitMayBeLeftOut { get; init; }

    private static SheetUnit[] MassUnits(Solute solute) =>
    [
        new("mg/dL", Concentration.FromMilligramsPerDeciliter(1, solute).MillimolesPerLiter, "mg/100ml", "mg%"),
        new("g/L", Concentration.FromGramsPerLiter(1, solute).MillimolesPerLiter),
    ];

    public static SheetQuantity Age { get; } = new(new SheetUnit("years", 1, "year", "y", "yr", "yrs", "a")) { UnitMayBeLeftOut = true };

    public static SheetQuantity Height { get; } = new(new SheetUnit("cm", 1), new SheetUnit("m", 100));

    public static SheetQuantity Weight { get; } = new(new SheetUnit("kg", 1), new SheetUnit("g", 0.001));

    public static SheetQuantity Volume { get; } = new(new SheetUnit("mL", 1, "cc", "cm3"), new SheetUnit("L", 1000, "liter", "litre", "liters", "litres"));

    /// <summary>A volume that may have been weighed: 1 g counts as 1 mL.</summary>
    public static SheetQuantity WeighedVolume { get; } = new([.. Volume.Units, new("g", 1), new("kg", 1000)]);

    /// <summary>An empty bag.</summary>
    public static SheetQuantity Tare { get; } = new(new SheetUnit("g", 1), new SheetUnit("kg", 1000));

    public static SheetQuantity DailyVolume { get; } = new(
        new SheetUnit("mL/day", 1, "ml/d", "ml/24h", "ml"), new SheetUnit("L/day", 1000, "l/d", "l/24h", "l"));

    public static SheetQuantity RenalClearance { get; } = new(
        new SheetUnit("mL/min", 1), new SheetUnit("L/week", 1000.0 / (7 * 1440), "l/wk"), new SheetUnit("L/day", 1000.0 / 1440, "l/d", "l/24h"));

    public static SheetQuantity Duration { get; } = new(
        new SheetUnit("min", 1, "minutes", "minute", "mins"), new SheetUnit("h", 60, "hours", "hour", "hr", "hrs"));

    public static SheetQuantity Hours { get; } = new(new SheetUnit("h", 1, "hours", "hour", "hr", "hrs"), new SheetUnit("min", 1 / 60.0, "minutes", "mins"));

    /// <summary>Twice the same: mg/dL of creatinine per mg/dL of glucose is a ratio of masses; µmol per mmol is not.</summary>
    public static SheetQuantity GlucoseFactor { get; } = new(
        new SheetUnit("mg/dL per mg/dL", 1, "(mg/dl)/(mg/dl)", "mg/dl/mg/dl", "mg/mg", "mgpermg", "g/lperg/l"),
        new SheetUnit(
            "µmol/L per mmol/L", 1e-3 * Solutes.Creatinine.MolarMassGramsPerMole / Solutes.Glucose.MolarMassGramsPerMole,
            "(umol/l)/(mmol/l)", "umol/l/mmol/l", "umol/mmol", "umolpermmol"));

    public static SheetQuantity Creatinine { get; } = new([
        new("µmol/L", 1e-3), new("mmol/L", 1), .. MassUnits(Solutes.Creatinine)]);

    public static SheetQuantity Urea { get; } = new([new("mmol/L", 1), .. MassUnits(Solutes.Urea)]);

    /// <summary>As urea: one molecule holds two nitrogen atoms, 28.014 g/mol.</summary>
    public static SheetQuantity UreaNitrogen { get; } = new(
        new SheetUnit("mg/dL", 10 / 28.014, "mg/100ml", "mg%"), new SheetUnit("g/L", 1000 / 28.014));

    public static SheetQuantity Glucose { get; } = new([new("mmol/L", 1), .. MassUnits(Solutes.Glucose)]);

    /// <summary>Proteins and markers.</summary>
    public static SheetQuantity MassConcentration { get; } = new(
        new SheetUnit("g/L", 1, "mg/ml"), new SheetUnit("mg/dL", 0.01, "mg/100ml", "mg%"), new SheetUnit("mg/L", 1e-3, "ug/ml"), new SheetUnit("g/dL", 10, "g/100ml", "g%"));

    public static SheetQuantity Sodium { get; } = new(new SheetUnit("mmol/L", 1), new SheetUnit("mEq/L", 1));

    /// <summary>Glucose of a bag. Mass units without a word mean anhydrous; a percentage needs the word.</summary>
    public static SheetQuantity Strength { get; } = new(
        new SheetUnit("mmol/L", 1),
        new SheetUnit("g/L", Anhydrous, "g/lanhydrous", "g/l(anhydrous)"),
        new SheetUnit("mg/dL", Anhydrous / 100, "mg/dlanhydrous", "mg/dl(anhydrous)"),
        new SheetUnit("% anhydrous", Anhydrous * 10, "%(anhydrous)", "percentanhydrous", "g/dlanhydrous", "g/100mlanhydrous"),
        new SheetUnit("g/L monohydrate", Monohydrate, "g/l(monohydrate)", "g/lhydrous"),
        new SheetUnit("mg/dL monohydrate", Monohydrate / 100, "mg/dl(monohydrate)", "mg/dlhydrous"),
        new SheetUnit("% monohydrate", Monohydrate * 10, "%(monohydrate)", "percentmonohydrate", "%hydrous", "g/dlmonohydrate", "g/100mlmonohydrate"));

    /// <summary>mmol per g of anhydrous glucose.</summary>
    private static double Anhydrous => 1000 / Solutes.Glucose.MolarMassGramsPerMole;

    /// <summary>mmol per g of glucose monohydrate, which weighs 18.015 g/mol more.</summary>
    private static double Monohydrate => 1000 / (Solutes.Glucose.MolarMassGramsPerMole + 18.015);
}
