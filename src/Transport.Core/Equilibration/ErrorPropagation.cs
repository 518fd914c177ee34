namespace Transport;

/// <summary>How far a result moves when its inputs do: central differences, for arithmetic that is smooth where it is asked.</summary>
internal static class ErrorPropagation
{
    /// <summary>Partial derivatives at the inputs.</summary>
    public static double[] Sensitivities(Func<double[], double> formula, IReadOnlyList<double> inputs)
    {
        var slopes = new double[inputs.Count];
        for (var i = 0; i < inputs.Count; i++)
        {
            // A step of 1e-6 of the value leaves about nine digits of the slope.
            var step = 1e-6 * Math.Max(Math.Abs(inputs[i]), 1e-3);
            double At(double shift)
            {
                var moved = inputs.ToArray();
                moved[i] += shift;
                return formula(moved);
            }

            slopes[i] = (At(step) - At(-step)) / (2 * step);
        }

        return slopes;
    }

    /// <summary>Value and standard deviation, for independent errors; the deviation is null where the formula breaks down beside the inputs.</summary>
    public static (double Value, double? Deviation) Of(Func<double[], double> formula, params IReadOnlyList<(double Value, double Deviation)> inputs)
    {
        double[] values = [.. inputs.Select(input => input.Value)];
        var slopes = Sensitivities(formula, values);
        var deviation = Math.Sqrt(slopes.Zip(inputs).Sum(pair => Math.Pow(pair.First * pair.Second.Deviation, 2)));
        return (formula(values), double.IsFinite(deviation) ? deviation : null);
    }
}
