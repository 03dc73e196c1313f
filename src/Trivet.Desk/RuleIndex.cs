using System.Collections.Immutable;
using System.Reflection;
using Trivet.Findings;

namespace Trivet.Desk;

/// <summary>Every rule there is, by its id: all public static properties of type Rule that Trivet.Core has, wherever they stand.</summary>
public static class RuleIndex
{
    public static ImmutableSortedDictionary<string, Rule> All { get; } = typeof(Rule).Assembly.GetExportedTypes()
        .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static))
        .Where(p => p.PropertyType == typeof(Rule)).Select(p => (Rule)p.GetValue(null)!)
        .DistinctBy(r => r.Id).ToImmutableSortedDictionary(r => r.Id, r => r, StringComparer.Ordinal);
}
