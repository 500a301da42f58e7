using Mono.Cecil;
using Mono.Cecil.Cil;

namespace RehabTrack.Architecture.Tests.Edges;

/// <summary>Every type that a type names: in its base, members, attributes, signatures and method bodies.</summary>
internal static class UsedTypes
{
    public static IEnumerable<TypeReference> Of(TypeDefinition type) => Direct(type).SelectMany(Unfold);

    private static IEnumerable<TypeReference> Direct(TypeDefinition type)
    {
        if (type.BaseType is not null)
        {
            yield return type.BaseType;
        }

        IEnumerable<TypeReference> declared =
        [
            .. type.Interfaces.Select(one => one.InterfaceType),
            .. type.Fields.Select(field => field.FieldType),
            .. type.Properties.Select(property => property.PropertyType),
            .. type.CustomAttributes.Select(attribute => attribute.AttributeType),
            .. type.GenericParameters.SelectMany(parameter => parameter.Constraints).Select(constraint => constraint.ConstraintType),
            .. type.Methods.SelectMany(OfMethod),
        ];
        foreach (TypeReference one in declared)
        {
            yield return one;
        }
    }

    private static IEnumerable<TypeReference> OfMethod(MethodDefinition method) =>
        [
            method.ReturnType,
            .. method.Parameters.Select(parameter => parameter.ParameterType),
            .. method.CustomAttributes.Select(attribute => attribute.AttributeType),
            .. method.HasBody ? OfBody(method.Body) : [],
        ];

    private static IEnumerable<TypeReference> OfBody(MethodBody body) =>
        body
            .Variables.Select(variable => variable.VariableType)
            .Concat(body.Instructions.SelectMany(instruction => OfOperand(instruction.Operand)));

    private static IEnumerable<TypeReference> OfOperand(object? operand) =>
        operand switch
        {
            TypeReference type => [type],
            GenericInstanceMethod method => [method.DeclaringType, method.ReturnType, .. method.GenericArguments],
            MethodReference method => [method.DeclaringType, method.ReturnType, .. method.Parameters.Select(one => one.ParameterType)],
            FieldReference field => [field.DeclaringType, field.FieldType],
            _ => [],
        };

    private static IEnumerable<TypeReference> Unfold(TypeReference type) =>
        type switch
        {
            GenericInstanceType generic => [generic.ElementType, .. generic.GenericArguments.SelectMany(Unfold)],
            TypeSpecification wrapped => Unfold(wrapped.ElementType),
            _ => [type],
        };
}
