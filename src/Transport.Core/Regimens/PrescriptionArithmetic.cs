using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>Makes the cycles of a night out of what its prescription states.</summary>
internal sealed class PrescriptionArithmetic
{
    // A prescription is written to the mL.
    private const double Rounding = 1;

    private readonly AutomatedPrescription stated;
    private readonly List<Finding> findings = [];
    private readonly double dayFill;
    private readonly bool isTidal;

    private PrescriptionArithmetic(AutomatedPrescription stated)
    {
        this.stated = stated;
        dayFill = stated.DayFill?.Volume.Milliliters ?? 0;
        isTidal = stated.TidalShare is not null;
    }

    /// <summary>The regimen, or none and every reason why.</summary>
    public static (Regimen? Regimen, IReadOnlyList<Finding> Findings) Of(AutomatedPrescription stated)
    {
        var arithmetic = new PrescriptionArithmetic(stated);
        var night = arithmetic.Night();
        var findings = arithmetic.findings;
        if (night.IsEmpty && stated.VolumePerCycle is { } volume)
        {
            // With cycles the regimen is asked.
            RegimenCheck.FillLimit(volume, stated.Settings, findings);
        }

        Regimen? regimen = null;
        try
        {
            ImmutableArray<Exchange> day = stated.DayFill is { } fill ? [new(fill.Solution, fill.Volume)] : [];
            regimen = new(stated.NightLength, night, day, stated.Settings, findings.Any(IsError) ? findings : []);
            regimen = regimen with { NightStart = stated.NightStart };
            findings.AddRange(regimen.Findings);
            findings.AddRange(BagCheck.Of(regimen, stated.Bags));
        }
        catch (RegimenException impossible)
        {
            findings = [.. findings.Union(impossible.Findings)];
        }

        return (findings.Any(IsError) ? null : regimen, [.. findings.OrderByDescending(finding => finding.Severity)]);
    }

    private ImmutableArray<Exchange> Night()
    {
        Stated();
        if (findings.Any(IsError))
        {
            return [];
        }

        var (cycles, fill) = (stated.Cycles ?? CyclesOfTheFluid(), stated.VolumePerCycle?.Milliliters ?? FillOfTheFluid());
        if (findings.Any(IsError))
        {
            return [];
        }

        if (stated.FluidInAll is { } fluid)
        {
            var spare = fluid.Milliliters - dayFill - FluidOf(cycles, fill);
            if (spare < -Rounding)
            {
                RegimenCheck.Error(
                    findings,
                    "fluid-does-not-add-up",
                    $"{cycles} cycles of {fill:0} mL{Tidal()}{Day(" and ")} take {fluid.Milliliters - spare:0} mL, and {fluid.Milliliters:0} mL are stated: {-spare:0} mL are missing.");
                return [];
            }

            if (IsMoreThanStated(cycles, fill, fluid.Milliliters))
            {
                RegimenCheck.Error(
                    findings,
                    "fluid-does-not-add-up",
                    $"{cycles} cycles of {fill:0} mL{Tidal()}{Day(" and ")} take {fluid.Milliliters - spare:0} mL, and {fluid.Milliliters:0} mL are stated, enough for {CyclesOfTheFluid()}: which of the three is meant?");
                return [];
            }

            if (spare > Rounding && stated.Spare == SpareFluid.Share)
            {
                fill *= (fluid.Milliliters - dayFill) / FluidOf(cycles, fill);
            }
            else if (spare > Rounding)
            {
                findings.Add(new(
                    Severity.Note,
                    "fluid-left-over",
                    Text($"{cycles} cycles of {fill:0} mL{Tidal()}{Day(" and ")} leave {spare:0} of {fluid.Milliliters:0} mL in the bags; shared out it would be {fill * (fluid.Milliliters - dayFill) / FluidOf(cycles, fill):0} mL a cycle.")));
            }
        }

        return [.. Exchanges(cycles, fill)];
    }

    // All three are stated, and the fluid makes another cycle that is not: one of them is not meant. A smaller remainder is spare.
    private bool IsMoreThanStated(int cycles, double fill, double fluid) =>
        stated is { Cycles: not null, VolumePerCycle: not null, Spare: SpareFluid.Leave } && cycles < RegimenCheck.MostCycles
        && FluidOf(cycles + 1, fill) <= fluid - dayFill + 1e-6;

    // What can be said of each statement by itself, and of what is missing.
    private void Stated()
    {
        if (stated.Cycles is { } cycles)
        {
            RegimenCheck.Cycles(cycles, findings);
        }

        if (stated.VolumePerCycle is { } fill)
        {
            RegimenCheck.Fill(fill, findings);
        }

        if (stated.FluidInAll is { } fluid && !(fluid.Milliliters > dayFill))
        {
            RegimenCheck.Error(findings, "fluid-does-not-add-up", $"Of {fluid.Milliliters:0} mL in all{Day(", ")} nothing is left for the night.");
        }

        if (stated.TidalShare is { } share && share is not (>= 0.05 and <= 1))
        {
            RegimenCheck.Error(findings, "tidal-share", $"A tidal share of {100 * share:0.#} % is none; 5 to 100 % are possible.");
        }

        if (stated.ExpectedUltrafiltration < default(Volume) || stated.CompleteDrainEvery < 1)
        {
            RegimenCheck.Error(findings, "tidal-numbers", $"Expected ultrafiltration ({stated.ExpectedUltrafiltration.Milliliters:0} mL) has to be zero or more, and a complete drain comes every 1 or more cycles.");
        }

        var known = new object?[] { stated.FluidInAll, stated.VolumePerCycle, stated.Cycles }.Count(value => value is not null);
        if (isTidal && stated.VolumePerCycle is null)
        {
            RegimenCheck.Error(findings, "tidal-without-base-fill", $"A tidal share is one of the first fill, and no volume per cycle is stated.");
        }
        else if (known < 2)
        {
            RegimenCheck.Error(findings, "prescription-incomplete", $"Of fluid in all, volume per cycle and cycles two have to be stated, and {known} {(known == 1 ? "is" : "are")}.");
        }
    }

    private int CyclesOfTheFluid()
    {
        var (fluid, fill) = (stated.FluidInAll!.Value.Milliliters - dayFill, stated.VolumePerCycle!.Value.Milliliters);
        var cycles = 0;
        while (cycles < RegimenCheck.MostCycles && FluidOf(cycles + 1, fill) <= fluid + 1e-6)
        {
            cycles++;
        }

        if (cycles == 0)
        {
            RegimenCheck.Error(findings, "fluid-does-not-add-up", $"Of {stated.FluidInAll.Value.Milliliters:0} mL in all{Day(", ")} {fluid:0} mL are left for the night: not one cycle of {fill:0} mL.");
        }

        return cycles;
    }

    private double FillOfTheFluid() => stated.Cycles is > 0 and var cycles ? (stated.FluidInAll!.Value.Milliliters - dayFill) / cycles : 0;

    private double FluidOf(int cycles, double fill) =>
        cycles == 0 || !(fill > 0) ? 0 : isTidal ? Plan(fill).Exchanges(cycles, stated.Solution).Sum(exchange => exchange.Fill.Milliliters) : cycles * fill;

    private IEnumerable<Exchange> Exchanges(int cycles, double fill) => isTidal
        ? Plan(fill).Exchanges(cycles, stated.Solution)
        : Enumerable.Repeat(new Exchange(stated.Solution, Volume.FromMilliliters(fill)), cycles);

    private TidalPlan Plan(double fill) => new(Volume.FromMilliliters(fill), stated.TidalShare!.Value)
    {
        ExpectedUltrafiltration = stated.ExpectedUltrafiltration,
        CompleteDrainEvery = stated.CompleteDrainEvery,
    };

    private string Day(string joint) => dayFill > 0 ? Text($"{joint}a day fill of {dayFill:0} mL") : "";

    private string Tidal() => isTidal ? Text($", {100 * stated.TidalShare!.Value:0.#} % tidal,") : "";

    private static bool IsError(Finding finding) => finding.Severity == Severity.Error;

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);
}
