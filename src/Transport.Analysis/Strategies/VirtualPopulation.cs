using System.Globalization;

namespace Transport.Analysis;

/// <summary>Virtual patients, each made when asked for: number i of a seed is the same whatever others are made.</summary>
public sealed class VirtualPopulation
{
    private readonly Func<int, int, (Patient Patient, ThreePoreMembrane Membrane)> person;

    private VirtualPopulation(string description, int? count, Func<int, int, (Patient Patient, ThreePoreMembrane Membrane)> person) =>
        (Description, Count, this.person) = (description, count, person);

    /// <summary>Where its people come from, in words.</summary>
    public string Description { get; }

    /// <summary>How many there are at most; null: as many as are asked for.</summary>
    public int? Count { get; }

    /// <summary>Membranes drawn from a prior; everybody has one size, plasma and kidneys.</summary>
    public static VirtualPopulation OfPrior(PopulationPrior prior, Patient patient)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(patient);
        return new(
            "membranes drawn from a prior, one size and plasma for all",
            null,
            // The test has a stream of its own.
            (seed, _) => (patient, prior.ToEnsemble(patient.BodySurface, 1, seed ^ 0x7E57)[0]));
    }

    /// <summary>Membranes drawn from means and standard deviations in print; everybody has one size, plasma and kidneys.</summary>
    /// <exception cref="InvalidOperationException">A share cannot have the standard deviation that is stated.</exception>
    public static VirtualPopulation OfPublished(PublishedPopulation published, Patient patient)
    {
        ArgumentNullException.ThrowIfNull(published);
        ArgumentNullException.ThrowIfNull(patient);
        published.Draw(patient.BodySurface, 0);
        return new($"membranes drawn from means and standard deviations in print ({published.Source}), one size and plasma for all", null, (seed, _) => (patient, published.Draw(patient.BodySurface, seed ^ 0x7E57)));
    }

    /// <summary>The people of a cohort in their order, each with the fitted membrane as the truth. Fits differ more than people do: they hold the errors of their tests.</summary>
    /// <exception cref="ArgumentException">The cohort has errors, all of which the message names, or nobody in it.</exception>
    public static VirtualPopulation OfCohort(FitCohort cohort)
    {
        ArgumentNullException.ThrowIfNull(cohort);
        if (cohort.HasErrors || cohort.Members.IsEmpty)
        {
            throw new ArgumentException(
                cohort.HasErrors ? string.Join(Environment.NewLine, cohort.Findings.Where(finding => finding.Severity == Severity.Error)) : "Expected a cohort with somebody in it.",
                nameof(cohort));
        }

        var members = cohort.Members;
        return new(
            string.Create(CultureInfo.InvariantCulture, $"the {members.Length} people of a cohort of fits"), members.Length, (_, number) => (members[number].Patient, members[number].Membrane));
    }

    /// <summary>One patient.</summary>
    /// <param name="seed">Seed of the study.</param>
    /// <param name="number">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such number.</exception>
    public VirtualPatient this[int seed, int number]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(number);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(number, Count ?? int.MaxValue);
            var own = SeedOf(seed, number);
            var (patient, membrane) = person(own, number);
            return new(number, own, patient, membrane);
        }
    }

    /// <summary>Seed of one patient: the study's and the number, far apart.</summary>
    internal static int SeedOf(int seed, int number) => unchecked(seed * 1_000_003 + number);
}
