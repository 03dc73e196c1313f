using System.Collections.Immutable;

namespace Trivet.Findings;

/// <summary>
/// Reads a discipline's inputs out of a half-filled description. Each value taken is remembered with its pointer, so that a finding
/// declares what it used without a second list that could drift; each value needed but absent is remembered as missing.
/// </summary>
public sealed class Reading
{
    private readonly SortedDictionary<string, object?> _used;
    private readonly SortedSet<string> _missing;

    public Reading() => (_used, _missing) = (new(StringComparer.Ordinal), new(StringComparer.Ordinal));

    /// <summary>Begins where another stands now; what either reads from here on is its own.</summary>
    public Reading(Reading other) => (_used, _missing) = (new(other._used, StringComparer.Ordinal), new(other._missing, StringComparer.Ordinal));

    /// <summary>Takes a value the discipline cannot do without. Absent: not a number, and the pointer is listed as missing.</summary>
    public double Need(double? value, string pointer)
    {
        _used[pointer] = value;
        if (value is { } v) return v;
        _missing.Add(pointer);
        return double.NaN;
    }

    /// <summary>Takes a choice or text the discipline cannot do without.</summary>
    public T Need<T>(T? value, string pointer, T fallback) where T : struct
    {
        _used[pointer] = value;
        if (value is { } v) return v;
        _missing.Add(pointer);
        return fallback;
    }

    /// <summary>Takes a value that has a default. The pointer counts as used either way: stating it would change the result.</summary>
    public T Or<T>(T? value, string pointer, T fallback) where T : struct
    {
        _used[pointer] = value;
        return value ?? fallback;
    }

    /// <summary>Notes a use that is not a plain value: the set of ids of a collection, a text.</summary>
    public void Used(string pointer, object? value) => _used[pointer] = value;

    /// <summary>Takes over all uses of another reading, and none of what it misses: that is another's matter, or has a way round.</summary>
    public void Used(Reading other)
    {
        foreach (var (pointer, value) in other._used) _used[pointer] = value;
    }

    /// <summary>Takes over all that another reading used and misses: what was read apart, so that its own <see cref="Key"/> is known, belongs here too.</summary>
    public void Include(Reading other)
    {
        Used(other);
        _missing.UnionWith(other._missing);
    }

    /// <summary>Lists something as missing that no single value stands for (a collection with nothing in it).</summary>
    public void Missing(string pointer)
    {
        _used[pointer] = null;
        _missing.Add(pointer);
    }

    /// <summary>Everything that was looked at, with its SI value, sorted: the key under which a stage's result may be remembered.</summary>
    public ImmutableArray<KeyValuePair<string, object?>> Key => [.. _used];

    public ImmutableArray<string> Inputs => [.. _used.Keys];
    public ImmutableArray<string> MissingFields => [.. _missing];
    public bool Complete => _missing.Count == 0;
}
