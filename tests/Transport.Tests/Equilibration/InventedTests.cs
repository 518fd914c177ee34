namespace Transport.Tests.Equilibration;

/// <summary>Invented tests, complete unless a case takes something away.</summary>
internal static class InventedTests
{
    /// <summary>2 L of 3.86 % for 4 h, sodium at 0, 60 and 240 min; the four numbers that a case turns on are given.</summary>
    public static EquilibrationTest Strong(double dialysateToPlasma, double ultrafiltration, double dip) => new()
    {
        Patient = Patient.Example,
        Solution = DialysisSolution.Glucose386,
        InstilledVolume = Volume.FromMilliliters(2000),
        FillBasis = FillBasis.Measured,
        DrainedVolume = Volume.FromMilliliters(2000 + ultrafiltration),
        ResidualVolume = Volume.FromMilliliters(250),
        Dwell = TimeSpan.FromHours(4),
        CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
        Dialysate =
        [
            new(TimeSpan.Zero) { Creatinine = Micromolar(45), Urea = Millimolar(1.5), Glucose = Millimolar(185), Sodium = Millimolar(132) },
            new(TimeSpan.FromMinutes(60)) { Sodium = Millimolar(132 - dip) },
            new(TimeSpan.FromMinutes(240))
            {
                // Urea, the smaller, is never behind.
                Creatinine = Micromolar(800 * dialysateToPlasma), Urea = Millimolar(20 * Math.Clamp(dialysateToPlasma, 0.9, 1)), Glucose = Millimolar(50), Sodium = Millimolar(130),
            },
        ],
        Plasma =
        [
            new(TimeSpan.FromMinutes(120)) { Creatinine = Micromolar(800), Urea = Millimolar(20), Glucose = Millimolar(6), Sodium = Millimolar(138) },
        ],
    };

    /// <summary>2 L of 2.27 % for 4 h with the D/P creatinine and D/D0 glucose given.</summary>
    public static EquilibrationTest Middle(double dialysateToPlasma, double dialysateToInitial, double ultrafiltration = 350)
    {
        var strong = Strong(dialysateToPlasma, ultrafiltration, 3);
        return strong with
        {
            Solution = DialysisSolution.Glucose227,
            Dialysate =
            [
                strong.Dialysate[0] with { Glucose = Millimolar(110) },
                strong.Dialysate[1],
                strong.Dialysate[2] with { Glucose = Millimolar(110 * dialysateToInitial) },
            ],
        };
    }

    public static Concentration Millimolar(double value) => Concentration.FromMillimolesPerLiter(value);

    public static Concentration Micromolar(double value) => Concentration.FromMicromolesPerLiter(value);
}
