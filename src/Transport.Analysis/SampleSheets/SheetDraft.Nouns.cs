namespace Transport.Analysis;

/// <content>The test or the collection that a draft without error findings becomes.</content>
internal sealed partial class SheetDraft
{
    /// <summary>The test. Only for a draft without error findings.</summary>
    public EquilibrationTest ToTest()
    {
        var patient = Patient();
        var test = new EquilibrationTest
        {
            Patient = patient,
            Date = Date(SheetWords.Date),
            Solution = Solution(item => Number(item)),
            InstilledVolume = Fill!.Value,
            FillBasis = Basis,
            Overfill = Overfill,
            DrainedVolume = Drained,
            ResidualVolume = Milliliters(SheetWords.Residual),
            ResidualVolumeAfter = Milliliters(SheetWords.ResidualAfter),
            TemporaryDrain = TemporaryDrained is { Milliliters: > 0 } drained ? new(TimeSpan.FromHours(1), drained) : null,
            PrecedingDrain = Of(SampledFluid.PrecedingDrain).Any() ? Sample(TimeSpan.Zero, Of(SampledFluid.PrecedingDrain)) : null,
            Conditions = new()
            {
                DialysisStart = Date(SheetWords.DialysisStart),
                LastPeritonitis = Date(SheetWords.LastPeritonitis),
                PrecedingDwell = Minutes(SheetWords.PrecedingDwell),
                PrecedingAgent = Choice<OsmoticAgent>(SheetWords.PrecedingAgent),
                Instillation = Minutes(SheetWords.Instillation),
            },
            NamedForm = NamedForm,
            Dwell = TimeSpan.FromMinutes(DwellMinutes!.Value),
            CreatinineAssay = Assay,
            Dialysate = Dialysate,
            Plasma = Plasma,
        };
        return test with { Patient = patient with { Plasma = Composition(test.PlasmaUrea, test.CorrectedPlasmaCreatinine, test.PlasmaGlucose, test.PlasmaSodium) } };
    }

    /// <summary>The collection. Only for a draft without error findings.</summary>
    public CollectedDay ToCollection()
    {
        var patient = Patient();
        var creatinine = CorrectedCreatinine.Of(Assay, Plasma);
        return new()
        {
            Patient = patient with
            {
                Plasma = Composition(Plasma.Select(sample => sample.Urea).FirstOrDefault(value => value is not null), creatinine,
                    Plasma.Select(sample => sample.Glucose).FirstOrDefault(value => value is not null),
                    Plasma.Select(sample => sample.Sodium).FirstOrDefault(value => value is not null)),
            },
            Date = Date(SheetWords.Date),
            Duration = TimeSpan.FromHours(Number(SheetWords.CollectionTime) ?? 24),
            CreatinineAssay = Assay,
            Drains = [.. Bags.Select(Drain)],
            Urine = Urine(),
            Plasma = Plasma,
            PlasmaClock = Number(SheetWords.BloodTime) is { } clock ? TimeOnly.FromTimeSpan(TimeSpan.FromMinutes(clock)) : null,
        };
    }

    private CollectedDrain Drain(string bag) => new(bag, Volume.FromMilliliters(OfBag(bag, SheetWords.Drained) ?? 0))
    {
        Fill = OfBag(bag, SheetWords.Fill) is { } fill ? Volume.FromMilliliters(fill) : null,
        Solution = OfBag(bag, SheetWords.SolutionGlucose) is not null || OfBag(bag, SheetWords.Agent) is not null ? Solution(item => OfBag(bag, item)) : null,
        Sample = Sample(TimeSpan.Zero, Of(SampledFluid.CollectedDrain).Where(measured => measured.Bag == bag)),
    };

    private CollectedUrine? Urine()
    {
        var bag = bags.Keys.FirstOrDefault(key => key.Item == SheetWords.Urine).Bag;
        if ((bag is null ? Number(SheetWords.Urine) : bags[(bag, SheetWords.Urine)].Value) is not { } volume)
        {
            return null;
        }

        var urine = Of(SampledFluid.Urine).ToList();
        return new(Volume.FromMilliliters(volume))
        {
            Creatinine = Value(urine, Analyte.Creatinine),
            Urea = Value(urine, Analyte.Urea) ?? Value(urine, Analyte.UreaNitrogen),
            Sodium = Value(urine, Analyte.Sodium),
            Protein = urine.Find(measured => measured.Analyte == Analyte.TotalProtein)?.Mass,
        };
    }

    private Patient Patient() => new(
        Code ?? "",
        Choice<Sex>(SheetWords.Sex)!.Value,
        Number(SheetWords.Age)!.Value,
        Length.FromCentimeters(Number(SheetWords.Height)!.Value),
        Mass.FromKilograms(Number(SheetWords.Weight)!.Value),
        PlasmaComposition.Typical,
        new(Clearance(SheetWords.RenalUreaClearance), Clearance(SheetWords.RenalCreatinineClearance), Milliliters(SheetWords.Urine) ?? default)
        {
            IsUrineStated = Number(SheetWords.Urine) is not null,
        });

    // For simulations: what was not measured is the typical value, which a note of the sheet says.
    private static PlasmaComposition Composition(Concentration? urea, Concentration? creatinine, Concentration? glucose, Concentration? sodium)
    {
        var typical = PlasmaComposition.Typical;
        return new(urea ?? typical.Urea, creatinine ?? typical.Creatinine, glucose ?? typical.Glucose, sodium ?? typical.Sodium);
    }

    private static DialysisSolution Solution(Func<SheetItem, double?> number)
    {
        var agent = number(SheetWords.Agent) is { } value ? (OsmoticAgent)(int)value : OsmoticAgent.Glucose;
        var sodium = number(SheetWords.SolutionSodium);
        if (agent != OsmoticAgent.Glucose)
        {
            return new(agent.ToString().ToLowerInvariant(), default, Concentration.FromMillimolesPerLiter(sodium ?? 132), agent);
        }

        var usual = DialysisSolution.OfGlucose(number(SheetWords.SolutionGlucose)!.Value);
        return sodium is { } given ? new(usual.Name, usual.Glucose, Concentration.FromMillimolesPerLiter(given)) { Others = usual.Others } : usual;
    }
}
