namespace Transport.Tests.Architecture;

/// <summary>What exists is valid, however it was made.</summary>
public sealed class NounTests
{
    private static readonly Volume NoVolume = Volume.FromMilliliters(0);
    private static readonly Volume LessThanNothing = Volume.FromMilliliters(-1);
    private static readonly Concentration Negative = Concentration.FromMillimolesPerLiter(-1);

    private static readonly Dwell Some = new(
        DialysisSolution.Glucose227, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(NoVolume, PlasmaComposition.Typical));

    [Fact]
    public void An_edit_is_checked_as_strictly_as_a_new_one()
    {
        // Each of these was refused by a constructor and let through by "with", or by nothing: a membrane with zero mL per mmHg, say, had infinite pressure.
        Func<object>[] edits =
        [
            () => Patient.Example with { AgeYears = double.NaN },
            () => Patient.Example with { Height = default },
            () => Patient.Example with { Weight = Mass.FromKilograms(-70) },
            () => ResidualFunction.None with { UrineVolumePerDay = LessThanNothing },
            () => new ResidualFunction(Clearance.FromMillilitersPerMinute(-1), default, default),
            () => PlasmaComposition.Typical with { Creatinine = default },
            () => PlasmaComposition.Typical with { Urea = Negative },
            () => Some.Residual with { Volume = LessThanNothing },
            () => Some.Residual with { Glucose = Negative },
            () => Some with { Fill = NoVolume },
            () => Some with { Duration = TimeSpan.FromHours(49) },
            () => Solutes.Urea with { MolarMassGramsPerMole = 0 },
            () => ReferenceMembranes.Textbook with { SodiumPermeability = Clearance.FromMillilitersPerMinute(-6) },
            () => ReferenceMembranes.Textbook with { VolumePerPressure = NoVolume },
            () => RegimenOptions.Default with { SupineVolumePerPressure = NoVolume },
            () => RegimenOptions.Default with { Timeline = TimeSpan.Zero },
        ];
        for (var i = 0; i < edits.Length; i++)
        {
            Assert.True(Record.Exception(() => edits[i]()) is ArgumentOutOfRangeException, $"Edit {i} was let through.");
        }
    }

    [Fact]
    public void A_dwell_cannot_be_edited_into_a_solution_that_is_not_simulated()
    {
        // Its glucose is zero: it would have been simulated as water with salt, and called amino acids.
        var aminoAcids = new DialysisSolution("amino acids", default, Concentration.FromMillimolesPerLiter(132), OsmoticAgent.AminoAcids);
        Assert.Throws<ArgumentException>(() => Some with { Solution = aminoAcids });
    }

    [Fact]
    public void What_lies_on_the_border_is_let_through()
    {
        Assert.Equal(NoVolume, (Some.Residual with { Volume = NoVolume }).Volume);
        Assert.Null((ReferenceMembranes.Textbook with { VolumePerPressure = null }).VolumePerPressure);
        Assert.Equal(default, (ReferenceMembranes.Textbook with { SodiumPermeability = default }).SodiumPermeability);
    }

    // A default ImmutableArray is no list: whoever reads it later fails far from the mistake.
    [Fact]
    public void A_list_that_was_never_made_is_refused_at_the_door()
    {
        var space = new RegimenSpace { VolumesPerCycle = [Volume.FromLiters(2)] };
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136);
        Func<object>[] edits =
        [
            () => space with { NightLengths = default }, () => space with { Cycles = default }, () => space with { VolumesPerCycle = default },
            () => space with { NightSolutions = default }, () => space with { StrongerFirstCycles = default }, () => space with { DayFills = default },
            () => night with { Night = default }, () => night with { Day = default },
        ];
        for (var i = 0; i < edits.Length; i++)
        {
            Assert.True(Record.Exception(() => edits[i]()) is ArgumentException, $"Edit {i} was let through.");
        }
    }
}
