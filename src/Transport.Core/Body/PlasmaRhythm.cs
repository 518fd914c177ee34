using System.Collections.Immutable;

namespace Transport;

/// <summary>What plasma does in a rhythm that repeats itself: its mean, its level at any clock time, and what fills and empties the body.</summary>
public sealed class PlasmaRhythm
{
    private const double MinutesPerDay = 1440;

    private readonly ImmutableArray<PoolLevel> pools;
    private readonly PlasmaCourse course;
    private readonly TimeOnly nightStart;
    private readonly int days;

    internal PlasmaRhythm(ImmutableArray<PoolLevel> pools, PlasmaCourse course, TimeOnly nightStart, int days)
    {
        this.pools = pools;
        this.course = course;
        this.nightStart = nightStart;
        this.days = days;
    }

    /// <summary>The solutes that have a pool.</summary>
    public IEnumerable<Solute> Pooled => pools.Select(pool => pool.Pool.Solute);

    /// <summary>Those of them whose level is a clinical figure.</summary>
    internal IEnumerable<Solute> Predicted => pools.Where(pool => !pool.Pool.IsForResearch).Select(pool => pool.Pool.Solute);

    /// <summary>Length of the rhythm.</summary>
    public TimeSpan Period => TimeSpan.FromDays(days);

    /// <summary>Mean over the rhythm: the level over which its clearance is formed.</summary>
    /// <exception cref="ArgumentException">The solute has no pool, or one for research.</exception>
    public Concentration MeanOf(Solute solute) => Concentration.FromMillimolesPerLiter(Mean(ForClinics(solute)));

    /// <summary>Level at a clock time.</summary>
    /// <param name="solute">Urea, creatinine or β2-microglobulin.</param>
    /// <param name="time">Clock time.</param>
    /// <param name="day">Day of the rhythm, from 0; a day begins with its night.</param>
    /// <exception cref="ArgumentException">The solute has no pool, or one for research.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rhythm has no such day.</exception>
    public Concentration LevelAt(Solute solute, TimeOnly time, int day = 0) => Level(ForClinics(solute), time, day);

    /// <summary>Level of a pool made <see cref="SolutePool.ForResearch"/>. No prediction of a patient's level.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rhythm has no such day.</exception>
    public Concentration ResearchLevelAt(Solute solute, TimeOnly time, int day = 0) => Level(IndexOf(solute), time, day);

    /// <summary>Generation in 24 h, given or found.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    public AmountOfSubstance GenerationPerDay(Solute solute) =>
        AmountOfSubstance.FromMicromoles(pools[IndexOf(solute)].GenerationPerMinute * MinutesPerDay);

    /// <summary>What the kidneys took out in the whole rhythm.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    public AmountOfSubstance RemovedByKidneys(Solute solute) =>
        pools[IndexOf(solute)] is var pool ? AmountOfSubstance.FromMicromoles(pool.RenalPerMinute * pool.Exposure) : default;

    /// <summary>What left in the whole rhythm neither by membrane nor by kidneys.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    public AmountOfSubstance RemovedOtherwise(Solute solute) =>
        pools[IndexOf(solute)] is var pool ? AmountOfSubstance.FromMicromoles(pool.OtherPerMinute * pool.Exposure) : default;

    /// <summary>What the body held at the end more than at the start; zero in a rhythm that repeats itself.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    public AmountOfSubstance Change(Solute solute) => AmountOfSubstance.FromMicromoles(pools[IndexOf(solute)].Change);

    /// <summary>Size of the pool.</summary>
    /// <exception cref="ArgumentException">The solute has no pool.</exception>
    public Volume VolumeOf(Solute solute) => pools[IndexOf(solute)].Volume;

    /// <summary>Whether a pool of the solute was simulated.</summary>
    public bool Has(Solute solute) => pools.Any(pool => pool.Pool.Solute == solute);

    internal double Mean(int pool) => pools[pool].Exposure / (days * MinutesPerDay);

    internal int IndexOf(Solute solute)
    {
        for (var k = 0; k < pools.Length; k++)
        {
            if (pools[k].Pool.Solute == solute)
            {
                return k;
            }
        }

        throw new ArgumentException($"Plasma of {solute} was constant.", nameof(solute));
    }

    /// <summary>Minutes from the start of the night to a clock time after it.</summary>
    internal static double MinutesTo(TimeOnly time, TimeOnly nightStart) => (time - nightStart).TotalMinutes;

    private int ForClinics(Solute solute) => IndexOf(solute) is var index && !pools[index].Pool.IsForResearch
        ? index
        : throw new ArgumentException($"Plasma of {solute} is not predicted; its pool is for research.", nameof(solute));

    private Concentration Level(int pool, TimeOnly time, int day)
    {
        Require.InRange(day, 0, days - 1, "", nameof(day));
        return Concentration.FromMillimolesPerLiter(course.At(pool, day * MinutesPerDay + MinutesTo(time, nightStart)));
    }
}
