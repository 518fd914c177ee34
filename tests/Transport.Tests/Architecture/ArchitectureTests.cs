using System.Reflection;

namespace Transport.Tests.Architecture;

/// <summary>What holds the house up: which assembly may know which, and what a public type may look like.</summary>
public sealed class ArchitectureTests
{
    private static readonly Assembly Core = typeof(Volume).Assembly;

    private static readonly Dictionary<string, Assembly> Libraries = new[] { "Transport.Core", "Transport.Analysis", "Transport.Reporting" }
        .ToDictionary(name => name, name => Assembly.Load(new AssemblyName(name)));

    [Fact]
    public void Core_rests_on_the_base_class_library_alone()
    {
        var foreign = References(Core).Where(name => name is not ("netstandard" or "mscorlib") && !name.StartsWith("System.", StringComparison.Ordinal));
        Assert.Empty(foreign);
    }

    [Theory]
    [InlineData("Transport.Core", "Transport.Analysis", "Transport.Reporting", "Transport.Notebooks")]
    [InlineData("Transport.Analysis", "Transport.Reporting", "Transport.Notebooks")]
    [InlineData("Transport.Reporting", "Transport.Notebooks")]
    public void No_library_knows_what_rests_on_it(string library, params string[] above)
    {
        Assert.DoesNotContain(References(Libraries[library]), above.Contains);

        // A reference that no code uses yet is not in the assembly, but it is in the project.
        var project = File.ReadAllText(Path.Combine(Repository.Root, "src", library, library + ".csproj"));
        Assert.DoesNotContain(above, name => project.Contains(name + ".csproj", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Transport.Core")]
    [InlineData("Transport.Analysis")]
    [InlineData("Transport.Reporting")]
    public void A_public_class_is_sealed_static_or_abstract_and_a_public_struct_is_read_only(string library)
    {
        foreach (var type in Libraries[library].GetExportedTypes())
        {
            if (type.IsClass && !type.IsSubclassOf(typeof(Delegate)))
            {
                // A static class is abstract and sealed.
                Assert.True(type.IsSealed || type.IsAbstract, $"{type} can be inherited from.");
            }
            else if (type is { IsValueType: true, IsEnum: false })
            {
                Assert.True(
                    type.GetCustomAttributesData().Any(data => data.AttributeType.Name == "IsReadOnlyAttribute"), $"{type} is not a readonly struct.");
            }
        }
    }

    [Theory]
    [InlineData("Transport.Core")]
    [InlineData("Transport.Analysis")]
    [InlineData("Transport.Reporting")]
    public void No_name_says_nothing(string library)
    {
        string[] empty = ["Helper", "Manager", "Utils", "Service", "Info"];
        Assert.DoesNotContain(Libraries[library].GetTypes(), type => empty.Any(word => type.Name.EndsWith(word, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("Transport.Core")]
    [InlineData("Transport.Analysis")]
    [InlineData("Transport.Reporting")]
    public void Nothing_static_can_change(string library)
    {
        var changing =
            from type in Libraries[library].GetTypes()
            where !IsCompilers(type)
            from field in type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
            where !field.IsInitOnly && !field.IsLiteral && !IsCompilers(field)
            select $"{type}.{field.Name}";
        Assert.Empty(changing);
    }

    [Fact]
    public void Every_quantity_can_be_compared_added_and_scaled()
    {
        // The one-field structs of Quantities: equality, order, sum, difference, multiple, ratio, and the value with its unit as text.
        Assert.NotEmpty(Quantities);
        foreach (var type in Quantities)
        {
            Assert.True(typeof(IEquatable<>).MakeGenericType(type).IsAssignableFrom(type), $"{type} has no equality.");
            Assert.True(typeof(IComparable<>).MakeGenericType(type).IsAssignableFrom(type), $"{type} has no order.");
            foreach (var name in new[] { "op_LessThan", "op_GreaterThan", "op_LessThanOrEqual", "op_GreaterThanOrEqual", "op_Equality", "op_Inequality" })
            {
                Assert.Equal(typeof(bool), Operator(type, name, type, type)?.ReturnType);
            }

            Assert.Equal(type, Operator(type, "op_Addition", type, type)?.ReturnType);
            Assert.Equal(type, Operator(type, "op_Subtraction", type, type)?.ReturnType);
            Assert.Equal(type, Operator(type, "op_Multiply", type, typeof(double))?.ReturnType);
            Assert.Equal(typeof(double), Operator(type, "op_Division", type, type)?.ReturnType);
            Assert.Equal(type, type.GetMethod("ToString", BindingFlags.Public | BindingFlags.Instance, [])!.DeclaringType);
            Assert.Equal(3.0, type.GetProperty(Canonical(type))!.GetValue(Make(type, 3)));
        }
    }

    [Fact]
    public void The_operators_of_every_quantity_do_what_they_say()
    {
        foreach (var type in Quantities)
        {
            object two = Make(type, 2), three = Make(type, 3);
            Assert.Equal(Make(type, 5), Operator(type, "op_Addition", type, type)!.Invoke(null, [two, three]));
            Assert.Equal(Make(type, -1), Operator(type, "op_Subtraction", type, type)!.Invoke(null, [two, three]));
            Assert.Equal(Make(type, 6), Operator(type, "op_Multiply", type, typeof(double))!.Invoke(null, [two, 3.0]));
            Assert.Equal(1.5, Operator(type, "op_Division", type, type)!.Invoke(null, [three, two]));
            Assert.Equal(true, Operator(type, "op_LessThan", type, type)!.Invoke(null, [two, three]));
            Assert.Equal(false, Operator(type, "op_LessThan", type, type)!.Invoke(null, [three, three]));
            Assert.Equal(true, Operator(type, "op_LessThanOrEqual", type, type)!.Invoke(null, [three, three]));
            Assert.Equal(false, Operator(type, "op_GreaterThan", type, type)!.Invoke(null, [two, three]));
            Assert.Equal(false, Operator(type, "op_GreaterThanOrEqual", type, type)!.Invoke(null, [two, three]));
            Assert.Equal(true, Operator(type, "op_GreaterThanOrEqual", type, type)!.Invoke(null, [three, three]));
            Assert.True((int)Compare(two, three) < 0);
            Assert.Equal(two, Make(type, 2));
            Assert.Equal(two.GetHashCode(), Make(type, 2).GetHashCode());
            Assert.Equal(Make(type, 0), Activator.CreateInstance(type));
            Assert.IsType<ArgumentOutOfRangeException>(Record.Exception(() => Make(type, double.NaN)));
            Assert.IsType<ArgumentOutOfRangeException>(Record.Exception(() => Make(type, double.PositiveInfinity)));

            // Nor does a ratio that is no number get out.
            var divide = Operator(type, "op_Division", type, type)!;
            Assert.IsType<DivideByZeroException>(Record.Exception(() => divide.Invoke(null, [two, Make(type, 0)]))?.InnerException);
            Assert.IsType<DivideByZeroException>(Record.Exception(() => divide.Invoke(null, [Make(type, 0), Make(type, 0)]))?.InnerException);

            // What is no number cannot get in by a factor either.
            var multiply = Operator(type, "op_Multiply", type, typeof(double))!;
            Assert.IsType<ArgumentOutOfRangeException>(Record.Exception(() => multiply.Invoke(null, [two, double.NaN]))?.InnerException);
            Assert.IsType<ArgumentOutOfRangeException>(Record.Exception(() => multiply.Invoke(null, [two, double.NegativeInfinity]))?.InnerException);
        }

        static object Compare(object left, object right) => left.GetType().GetMethod("CompareTo", [right.GetType()])!.Invoke(left, [right])!;
    }

    [Fact]
    public void A_size_with_a_unit_is_a_quantity_or_says_its_unit()
    {
        // Public doubles of Core are dimensionless, or their name ends with the unit, or they are what a factory is named after.
        var bare =
            from type in Core.GetExportedTypes()
            where !OnlyPureNumbers.Contains(type.Name) && !CarriesUnit(type)
            from found in DoublesOf(type)
            where !SaysUnit(found.Name) && !IsDimensionless(found.Name)
            select $"{type.Name}: {found.Place} {found.Name}";
        Assert.True(!bare.Any(), string.Join("\n", bare.Distinct()));
    }

    private static IEnumerable<Type> Quantities => Core.GetExportedTypes().Where(
        type => type is { IsValueType: true, IsGenericType: false, IsEnum: false }
            && type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Any(property => property.PropertyType == typeof(double))
            && type.GetInterfaces().Any(one => one == typeof(IComparable<>).MakeGenericType(type)));

    private static IEnumerable<(string Place, string Name)> DoublesOf(Type type)
    {
        const BindingFlags own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (var property in type.GetProperties(own).Where(property => HoldsDouble(property.PropertyType) && property.Name != "EqualityContract"))
        {
            yield return ("property", property.Name);
        }

        foreach (var field in type.GetFields(own).Where(field => HoldsDouble(field.FieldType)))
        {
            yield return ("field", field.Name);
        }

        foreach (var constructor in type.GetConstructors())
        {
            foreach (var parameter in constructor.GetParameters().Where(parameter => HoldsDouble(parameter.ParameterType)))
            {
                yield return ("constructor parameter", parameter.Name!);
            }
        }

        foreach (var method in type.GetMethods(own).Where(method => !method.IsSpecialName && !IsCompilers(method) && method.Name != "Deconstruct"))
        {
            if (HoldsDouble(method.ReturnType))
            {
                yield return ("method", method.Name);
            }

            // From<Unit>(value) says it in its own name.
            foreach (var parameter in method.GetParameters().Where(parameter => HoldsDouble(parameter.ParameterType)))
            {
                yield return ("parameter", parameter.Name == "value" ? method.Name : parameter.Name!);
            }
        }
    }

    private static bool HoldsDouble(Type type) =>
        type == typeof(double)
        || type == typeof(double?)
        || (type.IsArray && HoldsDouble(type.GetElementType()!))
        || (type.IsGenericType && !typeof(Delegate).IsAssignableFrom(type) && type.Name is var name
            && (name.StartsWith("ImmutableArray", StringComparison.Ordinal) || name.StartsWith("IReadOnlyList", StringComparison.Ordinal))
            && HoldsDouble(type.GetGenericArguments()[0]));

    private static bool SaysUnit(string name) => Units.Any(unit => name.EndsWith(unit, StringComparison.OrdinalIgnoreCase));

    private static bool IsDimensionless(string name) => Dimensionless.Any(word => name.EndsWith(word, StringComparison.OrdinalIgnoreCase));

    private static readonly string[] Units =
    [
        "Milliliters", "Liters", "LitersPerWeek", "PerLiter", "PerDeciliter", "PerMole", "Grams", "Kilograms", "Milligrams", "Micromoles", "Millimoles", "Moles",
        "Centimeters", "Meters", "SquareMeters", "Angstrom", "PerMinute", "PerHour", "PerDay", "PerWeek", "PerMillimeterOfMercury", "MillimetersOfMercury",
        "CentimetersOfWater", "Minutes", "Hours", "Years", "Kilojoules", "Kilocalories", "Percent",
        "MilligramsPerDeciliter", "GramsPerLiter", "PerSquareMeter", "PerKilogram",
    ];

    // All doubles of these are D/P, D/D0, probabilities, Kt/V, factors or relative variations. ReferenceDistribution is a pair of numbers
    // in the unit of the index that it belongs to.
    private static readonly string[] OnlyPureNumbers =
    [
        "Probability", "CategoryCuts", "CategoryProbabilities", "TransportClassification", "EquilibrationIndicesOptions", "SodiumCalibration", "UreaDose",
        "ReferenceDistribution", "SerialTestsOptions",
    ];

    // A value whose unit lies beside it as data.
    private static bool CarriesUnit(Type type) => type.GetProperty("Value") is not null && type.GetProperty("Unit")?.PropertyType == typeof(string);

    // Pure numbers by nature; the last line is the ensemble's structure of arrays, whose units its documentation states.
    private static readonly string[] Dimensionless =
    [
        "Fraction", "Fractions", "Scale", "Scales", "Ratio", "Ratios", "Factor", "Factors", "Efficiency", "Coefficient", "Probability", "Probabilities", "Coverage", "Tolerance", "Amplitude", "Amplitudes",
        "Lambda", "Share", "Parts", "Percentile", "Weight", "Exponent", "DialysateToPlasmaAt", "SievingCoefficientAt", "DialysateToPlasma", "GlucoseToInitialAt", "GlucoseToInitial",
        "ChargeNumber", "UreaToCreatininePermeability", "KtOverV", "WeeklyKtOverV", "ZScore", "Confidence",
        "ultrafiltrationCoefficients", "diffusionAreas", "lymphaticRemovals", "sodiumPermeabilities",
    ];

    private static bool IsCompilers(MemberInfo member) =>
        member.Name.Contains('<', StringComparison.Ordinal)
        || member.GetCustomAttributesData().Any(data => data.AttributeType.Name == "CompilerGeneratedAttribute");

    private static IEnumerable<string> References(Assembly assembly) => assembly.GetReferencedAssemblies().Select(name => name.Name!);

    private static MethodInfo? Operator(Type type, string name, Type left, Type right) =>
        type.GetMethod(name, BindingFlags.Public | BindingFlags.Static, [left, right]);

    // The canonical unit is the one-argument factory that multiplies by nothing: From<Name of the property that returns the same number>.
    private static string Canonical(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .First(property => property.PropertyType == typeof(double)
            && Factory(type, property.Name) is { } factory
            && property.GetValue(factory.Invoke(null, [3.0])) is 3.0).Name;

    private static object Make(Type type, double value)
    {
        try
        {
            return Factory(type, Canonical(type))!.Invoke(null, [value])!;
        }
        catch (TargetInvocationException failure)
        {
            throw failure.InnerException!;
        }
    }

    private static MethodInfo? Factory(Type type, string unit) => type.GetMethod("From" + unit, [typeof(double)]);
}
