using System.Diagnostics;
using System.Text.Json;

namespace Transport.Tests.Dwells;

/// <summary>The same equations written a second time, in Python, and solved by SciPy: Dwells/independent_three_pore.py.</summary>
/// <remarks>Needs /usr/bin/python3 with SciPy (Debian: python3-scipy); skipped, with the reason, where it is missing.</remarks>
public sealed class IndependentSolverTests
{
    private const string Python = "/usr/bin/python3";

    private static readonly double[] Minutes = [0, 15, 60, 120, 240, 480, 840];

    private static readonly Dictionary<string, (ThreePoreMembrane Membrane, double Glucose, double Fill, double Residual)> Cases = new()
    {
        ["textbook, strong glucose"] = (ReferenceMembranes.Textbook, 214.0, 2000, 300),
        ["mean adult, weak glucose, fourteen hours"] = (ReferenceMembranes.MeanIncidentAdult(), 75.5, 2000, 250),
        ["plasma water, supine pressure, two-thirds area"] = (
            ReferenceMembranes.MeanIncidentAdult(PlasmaLevel.PlasmaWater) with
            {
                AreaLaw = AreaLaw.TwoThirds,
                VolumePerPressure = Volume.FromMilliliters(680),
                LymphaticRemoval = FlowRate.FromMillilitersPerMinute(1.0),
            },
            126.0, 1500, 200),
        ["other pores, no transient, exponential area, constant pressure"] = (
            ReferenceMembranes.Textbook with
            {
                Pores = new(47, 230, 0.035, 0.05),
                TransientAmplitude = 0,
                AreaLaw = AreaLaw.Exponential,
                VolumePerPressure = null,
                GlucosePermeabilityScale = 1.7,
                SodiumPermeability = Clearance.FromMillilitersPerMinute(9),
            },
            214.3, 2500, 0),
    };

    [SkippableFact]
    public void An_independent_program_and_another_method_give_the_same_dwells()
    {
        // Tolerance 1e-8 relative: SciPy's DOP853 at 1e-12 and ours at 1e-12, with the kink of the two-thirds law. SciPy's LSODA, a multistep method with
        // nothing in common but the equations, delivers about 1e-9 at its tightest: 1e-8 too.
        var found = RunPeer([.. Cases.Select(pair => Describe(pair.Key, pair.Value))]);
        foreach (var (name, (membrane, glucose, fill, residual)) in Cases)
        {
            var course = DwellSimulation.Run(
                Patient.Example,
                membrane,
                new(
                    DialysisSolution.OfGlucose(glucose),
                    Volume.FromMilliliters(fill),
                    TimeSpan.FromMinutes(Minutes[^1]),
                    ResidualFluid.Used(Volume.FromMilliliters(residual), PlasmaComposition.Typical)),
                new() { Integration = new() { RelativeTolerance = 1e-12 } });
            AssertSame(name, course, found[name], _ => []);
        }
    }

    [SkippableFact]
    public void An_independent_program_gives_the_same_dwell_of_icodextrin()
    {
        // The peer makes the fractions itself, from Mn, Mw and the cuts. With a regular user's plasma and scission, so that every term counts; the same tolerance.
        const double perHour = 0.03;
        const string name = "icodextrin";
        var plasma = PlasmaComposition.Typical with { Others = PolymerDistribution.Icodextrin.InPlasmaOfRegularUser() };
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250), PlasmaComposition.Typical);
        var membrane = ReferenceMembranes.MeanIncidentAdult();
        var course = DwellSimulation.Run(
            Patient.Example with { Plasma = plasma },
            membrane,
            new(DialysisSolution.Icodextrin, Volume.FromMilliliters(2000), TimeSpan.FromMinutes(Minutes[^1]), residual),
            new() { PolymerScissionPerHour = perHour, Integration = new() { RelativeTolerance = 1e-12 } });
        var found = RunPeer([Describe(name, (membrane, 0, 2000, 250), new
        {
            mn = 5700,
            mw = 16_400,
            g_per_l = 75,
            cuts = new[] { 1000, 2000, 4000, 7000, 12_000, 20_000, 35_000, 60_000 },
            efficiency = membrane.PolymerOsmoticEfficiency,
            uptake = membrane.PolymerTissueUptake.MillilitersPerMinute,
            scission = perHour / 60,
            plasma = PolymerDistribution.Icodextrin.Fractions.Select(fraction => plasma.Others.GetValueOrDefault(fraction.Solute).MillimolesPerLiter),
        })]);
        AssertSame(name, course, found[name], time => [course.PolymerAt(time).Grams]);
    }

    private static void AssertSame(string name, DwellCourse course, Dictionary<string, double[][]> found, Func<TimeSpan, double[]> more)
    {
        foreach (var (method, rows) in found)
        {
            for (var row = 0; row < Minutes.Length; row++)
            {
                var time = TimeSpan.FromMinutes(Minutes[row]);
                var pores = course.PoreVolumesAt(time);
                double[] ours =
                [
                    course.VolumeAt(time).Milliliters,
                    .. SolutePanel.Small.Solutes.Select(solute => course.DialysateAt(solute, time).MillimolesPerLiter),
                    pores.Ultrasmall.Milliliters, pores.Small.Milliliters, pores.Large.Milliliters,
                    .. more(time),
                ];
                Assert.Equal(ours.Length, rows[row].Length);
                for (var column = 0; column < ours.Length; column++)
                {
                    var theirs = rows[row][column];

                    // Pore volumes pass through zero where fluid turns back: 1e-6 mL beside.
                    var room = 1e-8 * Math.Abs(theirs) + (column >= 5 ? 1e-6 : 0);
                    Assert.True(
                        Math.Abs(ours[column] - theirs) <= room,
                        $"{name}, {method}, {time.TotalMinutes} min, column {column}: ours {ours[column]:R}, theirs {theirs:R}");
                }
            }
        }
    }

    private static Dictionary<string, Dictionary<string, double[][]>> RunPeer(object[] cases)
    {
        Skip.IfNot(File.Exists(Python), $"{Python} is missing.");
        Skip.If(Call(["-c", "import scipy"], "").Code != 0, $"SciPy is missing in {Python}.");
        var script = Path.Combine(Repository.Root, "tests", "Transport.Tests", "Dwells", "independent_three_pore.py");
        var request = JsonSerializer.Serialize(new { methods = new[] { "DOP853", "LSODA" }, cases });
        var (code, output, error) = Call([script], request);
        Assert.True(code == 0, error);
        return JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, double[][]>>>(output)!;
    }

    private static object Describe(string name, (ThreePoreMembrane Membrane, double Glucose, double Fill, double Residual) at, object? polymer = null)
    {
        var m = at.Membrane;
        var plasma = PlasmaComposition.Typical;
        return new
        {
            name,
            polymer,
            times = Minutes,
            fill = at.Fill,
            residual_ml = at.Residual,
            fresh = new { urea = 0, creatinine = 0, glucose = at.Glucose, sodium = 132 },
            residual = new
            {
                urea = 0.9 * plasma.Urea.MillimolesPerLiter,
                creatinine = 0.9 * plasma.Creatinine.MillimolesPerLiter,
                glucose = 20,
                sodium = 134,
            },
            plasma = new
            {
                urea = plasma.Urea.MillimolesPerLiter,
                creatinine = plasma.Creatinine.MillimolesPerLiter,
                glucose = plasma.Glucose.MillimolesPerLiter,
                sodium = plasma.Sodium.MillimolesPerLiter,
            },
            membrane = new
            {
                alpha_c = m.Pores.UltrasmallFraction,
                alpha_l = m.Pores.LargeFraction,
                r_s = m.Pores.SmallRadiusAngstrom,
                r_l = m.Pores.LargeRadiusAngstrom,
                lps = m.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury,
                a0 = m.DiffusionArea.Centimeters,
                glucose_scale = m.GlucosePermeabilityScale,
                urea_ratio = m.UreaToCreatininePermeability,
                ps_na = m.SodiumPermeability.MillilitersPerMinute,
                lymph = m.LymphaticRemoval.MillilitersPerMinute,
                dp = m.HydrostaticPressureDifference.MillimetersOfMercury,
                dpi = m.OncoticPressureDifference.MillimetersOfMercury,
                v_ref = m.ReferenceVolume.Milliliters,
                ml_per_mmhg = m.VolumePerPressure?.Milliliters,
                f0 = m.TransientAmplitude,
                tau = m.TransientTime.TotalMinutes,
                area = m.AreaLaw switch { AreaLaw.TwoThirds => "two-thirds", AreaLaw.Exponential => "exponential", _ => "constant" },
                plasma_water = m.PlasmaLevel == PlasmaLevel.PlasmaWater ? 0.93 : 1.0,
            },
        };
    }

    private static (int Code, string Output, string Error) Call(string[] arguments, string input)
    {
        var start = new ProcessStartInfo(Python, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        using var process = Process.Start(start)!;
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
