using System.Reflection;
using System.Reflection.Emit;

namespace Confectio.Tests.Consistency;

/// <summary>One type of the library knowing another type, and where it says so.</summary>
public sealed record TypeArrow(Type From, Type To, string Where);

/// <summary>
/// Every type that the types of an assembly know: by base type, interface, member signature, generic argument, attribute,
/// local variable, and by what the instructions of their methods touch.
/// </summary>
public static class AssemblyArrows
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> s_opCodes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    public static IReadOnlyCollection<TypeArrow> Of(Assembly assembly)
    {
        HashSet<TypeArrow> arrows = [];
        foreach (Type type in assembly.GetTypes())
            Read(type, arrows);
        return arrows;
    }

    /// <summary>The types of an assembly, the outermost of those nested, in whose method bodies a member is called or read.</summary>
    public static IReadOnlyCollection<Type> CallersOf(Assembly assembly, MemberInfo called) =>
    [
        .. assembly.GetTypes().Where(type => type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared))
            .Concat(type.TypeInitializer is ConstructorInfo first ? [first] : []).Any(method => Members(method).Contains(called)))
            .Select(Outermost).Distinct(),
    ];

    private static void Read(Type type, HashSet<TypeArrow> arrows)
    {
        void Know(Type? known, string where)
        {
            foreach (Type part in Parts(known))
            {
                if (Outermost(part) != Outermost(type))
                    arrows.Add(new TypeArrow(type, part, where));
            }
        }

        void KnowAttributes(IEnumerable<CustomAttributeData> attributes, string where)
        {
            foreach (CustomAttributeData attribute in attributes)
            {
                Know(attribute.AttributeType, where + " attribute");
                foreach (CustomAttributeTypedArgument argument in attribute.ConstructorArguments.Concat(attribute.NamedArguments.Select(named => named.TypedValue)))
                    Know(argument.Value as Type ?? argument.ArgumentType, where + " attribute argument");
            }
        }

        Know(type.BaseType, "base type");
        foreach (Type implemented in type.GetInterfaces())
            Know(implemented, "interface");
        KnowAttributes(type.GetCustomAttributesData(), "type");
        foreach (Type parameter in type.GetGenericArguments().Where(argument => argument.IsGenericParameter))
        {
            foreach (Type constraint in parameter.GetGenericParameterConstraints())
                Know(constraint, "constraint");
        }
        foreach (FieldInfo field in type.GetFields(Declared))
        {
            Know(field.FieldType, "field " + field.Name);
            KnowAttributes(field.GetCustomAttributesData(), "field " + field.Name);
        }
        foreach (PropertyInfo property in type.GetProperties(Declared))
        {
            Know(property.PropertyType, "property " + property.Name);
            KnowAttributes(property.GetCustomAttributesData(), "property " + property.Name);
        }
        foreach (EventInfo happening in type.GetEvents(Declared))
            Know(happening.EventHandlerType, "event " + happening.Name);
        foreach (MethodBase method in type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared)))
        {
            string where = "signature of " + method.Name;
            Know((method as MethodInfo)?.ReturnType, where);
            KnowAttributes(method.GetCustomAttributesData(), where);
            foreach (ParameterInfo parameter in method.GetParameters())
            {
                Know(parameter.ParameterType, where);
                KnowAttributes(parameter.GetCustomAttributesData(), where);
            }
            if (method.IsGenericMethodDefinition)
            {
                foreach (Type constraint in method.GetGenericArguments().SelectMany(argument => argument.GetGenericParameterConstraints()))
                    Know(constraint, where);
            }
            ReadBody(method, known => Know(known, "body of " + method.Name));
        }
    }

    private static void ReadBody(MethodBase method, Action<Type?> know)
    {
        if (method.GetMethodBody() is not MethodBody body)
            return;
        foreach (LocalVariableInfo local in body.LocalVariables)
            know(local.LocalType);
        foreach (ExceptionHandlingClause clause in body.ExceptionHandlingClauses.Where(clause => clause.Flags == ExceptionHandlingClauseOptions.Clause))
            know(clause.CatchType);
        foreach (MemberInfo? member in Members(method))
            Know(member, know);
    }

    /// <summary>What the instructions of a method touch.</summary>
    private static IEnumerable<MemberInfo?> Members(MethodBase method)
    {
        if (method.GetMethodBody() is not MethodBody body)
            yield break;
        Type[]? ofType = method.DeclaringType is { IsGenericType: true } owner ? owner.GetGenericArguments() : null;
        Type[]? ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        byte[] code = body.GetILAsByteArray()!;
        for (int at = 0; at < code.Length;)
        {
            short value = code[at++];
            if (value == 0xFE)
                value = (short)(0xFE00 | code[at++]);
            OpCode operation = s_opCodes[value];
            switch (operation.OperandType)
            {
                case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                    yield return method.Module.ResolveMember(BitConverter.ToInt32(code, at), ofType, ofMethod);
                    at += 4;
                    break;
                case OperandType.InlineSwitch:
                    at += 4 + 4 * BitConverter.ToInt32(code, at);
                    break;
                case OperandType.InlineNone:
                    break;
                case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                    at += 1;
                    break;
                case OperandType.InlineVar:
                    at += 2;
                    break;
                case OperandType.InlineI8 or OperandType.InlineR:
                    at += 8;
                    break;
                default: // branch targets, 32-bit numbers, strings and stand-alone signatures
                    at += 4;
                    break;
            }
        }
    }

    private static void Know(MemberInfo? member, Action<Type?> know)
    {
        switch (member)
        {
            case Type type:
                know(type);
                break;
            case FieldInfo field:
                know(field.DeclaringType);
                know(field.FieldType);
                break;
            case MethodBase method:
                know(method.DeclaringType);
                know((method as MethodInfo)?.ReturnType);
                foreach (Type argument in method.IsGenericMethod ? method.GetGenericArguments() : [])
                    know(argument);
                break;
        }
    }

    /// <summary>A type without its array, pointer and reference wrapping, and each of its generic arguments.</summary>
    private static IEnumerable<Type> Parts(Type? type)
    {
        while (type is { HasElementType: true })
            type = type.GetElementType();
        if (type is null || type.IsGenericParameter)
            yield break;
        if (type.IsFunctionPointer)
        {
            foreach (Type part in type.GetFunctionPointerParameterTypes().Append(type.GetFunctionPointerReturnType()).SelectMany(Parts))
                yield return part;
            yield break;
        }
        yield return type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        foreach (Type part in type.GetGenericArguments().SelectMany(Parts))
            yield return part;
    }

    private static Type Outermost(Type type)
    {
        while (type.DeclaringType is Type outer)
            type = outer;
        return type;
    }
}
