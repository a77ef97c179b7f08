using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;

namespace Splitter.Tests.Architecture;

/// <summary>
/// What the compiled code of a type names: in its declaration, its members and the bodies of its methods. Read from the
/// code and not from the source, so that no alias or short name hides a reference.
/// </summary>
internal static class CompiledCode
{
    private const BindingFlags Everything =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    private static readonly ImmutableDictionary<int, OpCode> OpCodes = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToImmutableDictionary(code => (int)(ushort)code.Value);

    /// <summary>Types that a type names, generic arguments and elements of arrays taken apart.</summary>
    internal static HashSet<Type> TypesNamedBy(Type type)
    {
        var found = new HashSet<Type>();
        Add(found, type.BaseType);
        foreach (var contract in type.GetInterfaces())
            Add(found, contract);
        foreach (var field in type.GetFields(Everything))
            Add(found, field.FieldType);
        foreach (var member in MembersNamedBy(type))
            Add(found, member as Type ?? member.DeclaringType);
        foreach (var method in Methods(type))
        {
            if (method is MethodInfo info)
                Add(found, info.ReturnType);
            foreach (var parameter in method.GetParameters())
                Add(found, parameter.ParameterType);
            foreach (var local in method.GetMethodBody()?.LocalVariables ?? [])
                Add(found, local.LocalType);
        }
        return found;
    }

    /// <summary>Types, methods and fields that the bodies of its methods name.</summary>
    internal static IEnumerable<MemberInfo> MembersNamedBy(Type type) => Methods(type).SelectMany(Body);

    private static IEnumerable<MethodBase> Methods(Type type) =>
        type.GetMethods(Everything).Concat<MethodBase>(type.GetConstructors(Everything));

    private static IEnumerable<MemberInfo> Body(MethodBase method)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } code)
            yield break;
        var typeArguments = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        var methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
        for (var at = 0; at < code.Length; )
        {
            // ECMA-335, II.24 and III.1.2: codes of two bytes begin with 0xFE.
            var op = code[at] == 0xFE ? OpCodes[0xFE00 | code[at + 1]] : OpCodes[code[at]];
            at += op.Size;
            if (
                op.OperandType
                is OperandType.InlineMethod
                    or OperandType.InlineType
                    or OperandType.InlineField
                    or OperandType.InlineTok
            )
                yield return method.Module.ResolveMember(
                    BitConverter.ToInt32(code, at),
                    typeArguments,
                    methodArguments
                )!;
            at += op.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
        }
    }

    private static void Add(HashSet<Type> found, Type? type)
    {
        if (type is null)
            return;
        if (type.HasElementType)
            Add(found, type.GetElementType());
        else if (!type.IsGenericParameter && found.Add(type.IsGenericType ? type.GetGenericTypeDefinition() : type))
            foreach (var argument in type.GetGenericArguments())
                Add(found, argument);
        else if (type.IsGenericType)
            foreach (var argument in type.GetGenericArguments().Where(a => !found.Contains(a)))
                Add(found, argument);
    }
}
