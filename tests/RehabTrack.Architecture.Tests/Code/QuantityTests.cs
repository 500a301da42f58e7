using System.Reflection;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Architecture.Tests.Code;

public sealed class QuantityTests
{
    private static readonly string[] Comparisons = ["op_LessThan", "op_GreaterThan", "op_LessThanOrEqual", "op_GreaterThanOrEqual"];

    private static readonly Type[] All =
    [
        .. typeof(Centimetres)
            .Assembly.GetExportedTypes()
            .Where(type => type is { IsValueType: true, IsEnum: false } && type.Namespace == typeof(Centimetres).Namespace)
            .Where(type => type.GetProperty("Value")?.PropertyType == typeof(double)),
    ];

    public static TheoryData<Type> Quantities => [.. All];

    [Fact]
    public void There_is_a_quantity_for_each_unit_of_the_trade() =>
        Assert.Equal(
            ["Centimetres", "CubicCentimetres", "Percent", "SquareCentimetres"],
            All.Select(type => type.Name).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Quantities))]
    public void A_quantity_adds_subtracts_scales_divides_and_compares(Type quantity)
    {
        Assert.Equal(quantity, Operator(quantity, "op_Addition", quantity, quantity)?.ReturnType);
        Assert.Equal(quantity, Operator(quantity, "op_Subtraction", quantity, quantity)?.ReturnType);
        Assert.Equal(quantity, Operator(quantity, "op_Multiply", typeof(double), quantity)?.ReturnType);
        Assert.Equal(typeof(double), Operator(quantity, "op_Division", quantity, quantity)?.ReturnType);
        Assert.All(Comparisons, name => Assert.Equal(typeof(bool), Operator(quantity, name, quantity, quantity)?.ReturnType));
        Assert.Contains(typeof(IComparable<>).MakeGenericType(quantity), quantity.GetInterfaces());
    }

    [Theory]
    [MemberData(nameof(Quantities))]
    public void The_operators_of_a_quantity_compute_on_its_value(Type quantity)
    {
        object three = Activator.CreateInstance(quantity, 3.0)!;
        object two = Activator.CreateInstance(quantity, 2.0)!;

        Assert.Equal(5, ValueOf(Operator(quantity, "op_Addition", quantity, quantity)!.Invoke(null, [three, two])!));
        Assert.Equal(1, ValueOf(Operator(quantity, "op_Subtraction", quantity, quantity)!.Invoke(null, [three, two])!));
        Assert.Equal(6, ValueOf(Operator(quantity, "op_Multiply", typeof(double), quantity)!.Invoke(null, [2.0, three])!));
        Assert.Equal(1.5, Operator(quantity, "op_Division", quantity, quantity)!.Invoke(null, [three, two]));
        Assert.Equal(
            [false, true, false, true],
            Comparisons.Select(name => (bool)Operator(quantity, name, quantity, quantity)!.Invoke(null, [three, two])!)
        );
        Assert.True(Compare(quantity, three, two) > 0);
    }

    private static int Compare(Type quantity, object left, object right) =>
        (int)quantity.GetMethod("CompareTo", [quantity])!.Invoke(left, [right])!;

    private static double ValueOf(object amount) => (double)amount.GetType().GetProperty("Value")!.GetValue(amount)!;

    private static MethodInfo? Operator(Type quantity, string name, Type left, Type right) => quantity.GetMethod(name, [left, right]);
}
