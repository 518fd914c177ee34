using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>What one exchange makes of what it finds, linear around what it usually finds.</summary>
/// <remarks>
/// <para>Found and left: how late it is, min; volume, mL; amounts, µmol. Besides, what comes of it: volume and amounts drained, and its fullest
/// moment. Only the residual is carried over, a tenth of the contents, so that the second order is a hundredth of a hundredth.</para>
/// <para>Numbers: a column of constants, then one for each thing found, each padded to whole vectors.</para>
/// </remarks>
internal sealed class CycleMap
{
    private readonly double[] numbers;
    private readonly int rows;

    /// <param name="solutes">How many solutes are followed.</param>
    public CycleMap(int solutes)
    {
        Carried = 2 + solutes;
        rows = RowsOf(solutes);
        numbers = new double[(1 + Carried) * rows];
    }

    /// <summary>How many things are carried from one exchange to the next.</summary>
    public int Carried { get; }

    /// <summary>Whether it holds: some exchanges are no such map, because the cavity empties or nothing drains.</summary>
    public bool Holds { get; set; }

    /// <summary>With how much it has to leave the cavity, mL, to hold for what was found: what is less than a residual does not drain, unless it comes to more.</summary>
    public (double Least, double Most) Left { get; set; } = AnyVolume;

    /// <summary>It drains completely, in the time that is planned for it or later.</summary>
    public static (double Least, double Most) AnyVolume => (double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Whether it drains completely; if not, the next exchange begins as soon as a drain would, and finds less.</summary>
    public bool Drains => Left == AnyVolume;

    /// <summary>Whether it holds where it leaves so much, mL.</summary>
    public bool Fits(double left) => left >= Left.Least && left <= Left.Most;

    /// <summary>Row of the drained volume; the drained amounts follow.</summary>
    public int DrainedRow => Carried;

    /// <summary>Row of the fullest moment, mL; of exchanges that are put together, of what they remove, each times its gain.</summary>
    public int PeakRow => 2 * Carried - 1;

    /// <summary>Rows with their padding, for so many solutes.</summary>
    public static int RowsOf(int solutes) => (2 * (2 + solutes) + 3) / 4 * 4;

    /// <summary>Writes the map from what it does at a point and its slopes there.</summary>
    /// <param name="at">What is found.</param>
    /// <param name="values">What comes of it.</param>
    /// <param name="slopes">How that changes with each thing found, column after column.</param>
    public void Set(ReadOnlySpan<double> at, ReadOnlySpan<double> values, ReadOnlySpan<double> slopes)
    {
        values.CopyTo(numbers);
        slopes.CopyTo(numbers.AsSpan(rows));
        for (var column = 0; column < Carried; column++)
        {
            for (var row = 0; row < rows; row++)
            {
                numbers[row] -= slopes[column * rows + row] * at[column];
            }
        }

        Holds = true;
    }

    /// <summary>Becomes what a given map does, if that drains, as the first of exchanges that are put together.</summary>
    /// <param name="given">The map.</param>
    /// <param name="gain">Of what it removes.</param>
    /// <param name="fill">What runs in, mL.</param>
    public void Set(CycleMap given, double gain, double fill)
    {
        given.numbers.CopyTo(numbers.AsSpan());
        for (var j = 0; j <= Carried; j++)
        {
            numbers[j * rows + PeakRow] = gain * (numbers[j * rows + DrainedRow] - (j == 0 ? fill : 0));
        }

        Holds = given.Holds && given.Drains;
    }

    /// <summary>Becomes a sum of maps that drain.</summary>
    /// <param name="maps">The first of them are summed.</param>
    /// <param name="weights">How much of each; together one.</param>
    /// <param name="sooner">By how much less it is late, min.</param>
    public void Set(ReadOnlySpan<CycleMap> maps, ReadOnlySpan<double> weights, double sooner)
    {
        ref var target = ref numbers[0];
        for (nuint i = 0; i < (nuint)numbers.Length; i += 4)
        {
            var sum = Vector256<double>.Zero;
            for (var k = 0; k < weights.Length; k++)
            {
                sum = Vector256.MultiplyAddEstimate(Vector256.LoadUnsafe(ref maps[k].numbers[0], i), Vector256.Create(weights[k]), sum);
            }

            sum.StoreUnsafe(ref target, i);
        }

        numbers[0] -= sooner;
        (Holds, Left) = (true, AnyVolume);
    }

    /// <summary>Another exchange comes after this: what is found is what this finds, what is left is what the other leaves, and what both drain is added up.
    /// The fullest moment of the two together is no linear map and is lost.</summary>
    /// <param name="next">The exchange that comes after.</param>
    /// <param name="gain">Of what it removes.</param>
    /// <param name="fill">What runs in, mL.</param>
    public void Append(CycleMap next, double gain, double fill)
    {
        Holds &= next.Holds && next.Drains;
        Span<double> column = stackalloc double[rows];
        for (var j = 0; j <= Carried; j++)
        {
            var here = numbers.AsSpan(j * rows, rows);
            here.CopyTo(column);
            for (var row = 0; row < rows; row += 4)
            {
                // A step in what is found moves the outcome by the slopes alone.
                var sum = j == 0 ? Vector256.Create(next.numbers.AsSpan(row, 4)) : Vector256<double>.Zero;
                for (var k = 0; k < Carried; k++)
                {
                    sum = Vector256.MultiplyAddEstimate(Vector256.Create(next.numbers.AsSpan((1 + k) * rows + row, 4)), Vector256.Create(column[k]), sum);
                }

                sum.CopyTo(here[row..]);
            }

            here[PeakRow] = column[PeakRow] + gain * (here[DrainedRow] - (j == 0 ? fill : 0));
            for (var row = DrainedRow; row < PeakRow; row++)
            {
                here[row] += column[row];
            }
        }
    }

    /// <summary>What comes of what is found.</summary>
    /// <param name="found">How late, volume, amounts.</param>
    /// <param name="into">The rows, with their padding.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Apply(ReadOnlySpan<double> found, Span<double> into)
    {
        ref var number = ref numbers[0];
        ref var target = ref into[0];
        for (nuint row = 0; row < (nuint)rows; row += 4)
        {
            var sum = Vector256.LoadUnsafe(ref number, row);
            for (var column = 0; column < Carried; column++)
            {
                sum = Vector256.MultiplyAddEstimate(
                    Vector256.LoadUnsafe(ref number, (nuint)((1 + column) * rows) + row), Vector256.Create(found[column]), sum);
            }

            sum.StoreUnsafe(ref target, row);
        }
    }
}
