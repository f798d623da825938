using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>All that a state holds, as text: equal where two states are.</summary>
internal static class StateText
{
    private static readonly ConcurrentDictionary<Type, FieldInfo[]> Fields = new();

    public static string Of(VisitState state) => Text(state);

    private static string Text(object? value) => value switch
    {
        null => "null",
        string or bool or Enum => value.ToString()!,
        IFormattable number when value.GetType().IsPrimitive || value is decimal => number.ToString(null, CultureInfo.InvariantCulture),
        DateTimeOffset time => time.ToString("O", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("O", CultureInfo.InvariantCulture),
        TimeSpan time => time.ToString("c", CultureInfo.InvariantCulture),
        Fact fact => fact.Name,
        UnitOfMeasure unit => unit.Symbol,
        FactSet facts => Sorted(facts.Values),
        IDictionary pairs => Sorted(pairs),
        _ when IsSet(value) => Sorted((IEnumerable)value),
        IEnumerable all => $"[{string.Join(", ", all.Cast<object?>().Select(Text))}]",
        _ => Properties(value),
    };

    // In a set the order says nothing.
    private static bool IsSet(object value) => Array.Exists(value.GetType().GetInterfaces(), i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IReadOnlySet<>));

    private static string Sorted(IEnumerable all)
    {
        var texts = all is IDictionary pairs ? pairs.Keys.Cast<object>().Select(key => $"{Text(key)}: {Text(pairs[key])}") : all.Cast<object?>().Select(Text);
        return $"{{{string.Join(", ", texts.Order(StringComparer.Ordinal))}}}";
    }

    private static string Properties(object value)
    {
        var type = value.GetType();
        var members = Fields.GetOrAdd(type, t => [.. t.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).OrderBy(f => f.Name, StringComparer.Ordinal)]);
        return $"{type.Name}({string.Join(", ", members.Select(f => $"{f.Name}={Text(f.GetValue(value))}"))})";
    }
}
