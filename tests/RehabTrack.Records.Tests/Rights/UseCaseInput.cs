using System.Collections;
using System.Linq.Expressions;
using System.Reflection;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>Makes what a use case is asked, of its type alone: every id in it is the one that is given, everything else is plain.</summary>
internal static class UseCaseInput
{
    private const int Deepest = 6;

    /// <summary>The input; null where the type cannot be made.</summary>
    /// <param name="type">Its type.</param>
    /// <param name="id">What stands for every id but the command's.</param>
    /// <param name="isNew">Whether it asks for a new record: then it names no record of its own, and the given id stands beside.</param>
    public static object? Make(Type type, Guid id, bool isNew) => Value(type, "", id, isNew, 0);

    private static object? Value(Type type, string name, Guid id, bool isNew, int depth)
    {
        if (name.Equals("CommandId", StringComparison.OrdinalIgnoreCase))
        {
            return Guid.NewGuid();
        }

        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            bool isOwn = name is "Id" or "Version" or "id" or "version";
            return inner == typeof(Guid) && !(isNew && isOwn) ? id : null;
        }

        if (type == typeof(string))
        {
            return name.EndsWith("Hash", StringComparison.OrdinalIgnoreCase) ? $"{Guid.NewGuid():N}{Guid.NewGuid():N}" : "plain";
        }

        return type switch
        {
            _ when type == typeof(Guid) => id,
            _ when type == typeof(DateOnly) => new DateOnly(2026, 11, 24),
            _ when type == typeof(byte[]) => new byte[] { 1 },
            { IsEnum: true } => Enum.GetValues(type).GetValue(0),
            { IsValueType: true } => Activator.CreateInstance(type),
            _ when typeof(Delegate).IsAssignableFrom(type) => Nothing(type),
            _ when typeof(IEnumerable).IsAssignableFrom(type) => Many(type, id),
            { IsAbstract: true } => null,
            _ => depth > Deepest ? null : Whole(type, id, isNew, depth),
        };
    }

    private static object Whole(Type type, Guid id, bool isNew, int depth)
    {
        if (type.GetProperty("Value", BindingFlags.Public | BindingFlags.Static) is { } only && only.PropertyType == type)
        {
            return only.GetValue(null)!;
        }

        ConstructorInfo way = type.GetConstructors()
            .Where(made => made.GetParameters() is not [{ ParameterType: var copied }] || copied != type)
            .MaxBy(made => made.GetParameters().Length)!;
        object whole = way.Invoke([
            .. way.GetParameters().Select(parameter => Value(parameter.ParameterType, parameter.Name!, id, isNew, depth + 1)),
        ]);
        foreach (PropertyInfo property in type.GetProperties().Where(property => property.CanWrite))
        {
            object? value = Value(property.PropertyType, property.Name, id, isNew, depth + 1);
            if (value is not null || property.GetValue(whole) is Guid)
            {
                property.SetValue(whole, value);
            }
        }

        return whole;
    }

    private static object? Many(Type type, Guid id)
    {
        if (!type.IsGenericType)
        {
            return null;
        }

        Type[] of = type.GetGenericArguments();
        if (of.Length == 2)
        {
            return Activator.CreateInstance(typeof(Dictionary<,>).MakeGenericType(of));
        }

        Array many = Array.CreateInstance(of[0], of[0] == typeof(Guid) ? 1 : 0);
        if (many is Guid[] ids)
        {
            ids[0] = id;
        }

        return many;
    }

    private static Delegate Nothing(Type type)
    {
        MethodInfo call = type.GetMethod("Invoke")!;
        return Expression
            .Lambda(
                type,
                Expression.Default(call.ReturnType),
                call.GetParameters().Select(parameter => Expression.Parameter(parameter.ParameterType))
            )
            .Compile();
    }
}
