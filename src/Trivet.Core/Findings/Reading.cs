using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Trivet.Findings;

/// <summary>
/// Reads a discipline's inputs out of a half-filled description. Each value taken is remembered with its pointer, so that a finding
/// declares what it used without a second list that could drift; each value needed but absent is remembered as missing.
/// </summary>
public sealed class Reading
{
    private readonly Dictionary<string, object?> _used;
    private readonly SortedSet<string> _missing;

    // Put in order only when someone asks, and only what came since: most readings begin as a copy of one that is in order already. Readings are asked by several threads at a time once nothing
    // is added any more, so nothing but the one reference changes then.
    private readonly List<string> _came = [];
    private Ordered _ordered;

    public Reading() => (_used, _missing, _ordered) = (new(StringComparer.Ordinal), new(StringComparer.Ordinal), Ordered.Nothing);

    /// <summary>Begins where another stands now; what either reads from here on is its own.</summary>
    public Reading(Reading other) => (_used, _missing, _ordered) = (new(other._used, StringComparer.Ordinal), new(other._missing, StringComparer.Ordinal), new(other.Inputs, 0));

    /// <summary>Takes a value the discipline cannot do without. Absent: not a number, and the pointer is listed as missing.</summary>
    public double Need(double? value, string pointer)
    {
        Used(pointer, value);
        if (value is { } v) return v;
        _missing.Add(pointer);
        return double.NaN;
    }

    /// <summary>Takes a choice or text the discipline cannot do without.</summary>
    public T Need<T>(T? value, string pointer, T fallback) where T : struct
    {
        Used(pointer, value);
        if (value is { } v) return v;
        _missing.Add(pointer);
        return fallback;
    }

    /// <summary>Takes a value that has a default. The pointer counts as used either way: stating it would change the result.</summary>
    public T Or<T>(T? value, string pointer, T fallback) where T : struct
    {
        Used(pointer, value);
        return value ?? fallback;
    }

    /// <summary>Notes a use that is not a plain value: the set of ids of a collection, a text.</summary>
    public void Used(string pointer, object? value)
    {
        ref object? held = ref CollectionsMarshal.GetValueRefOrAddDefault(_used, pointer, out bool known);
        held = value;
        if (!known) _came.Add(pointer);
    }

    /// <summary>Takes over all uses of another reading, and none of what it misses: that is another's matter, or has a way round.</summary>
    public void Used(Reading other)
    {
        foreach (var (pointer, value) in other._used) Used(pointer, value);
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
        Used(pointer, null);
        _missing.Add(pointer);
    }

    /// <summary>Everything that was looked at, with its SI value, sorted: the key under which a stage's result may be remembered.</summary>
    public ImmutableArray<KeyValuePair<string, object?>> Key => [.. Inputs.Select(p => KeyValuePair.Create(p, _used[p]))];

    public ImmutableArray<string> Inputs
    {
        get
        {
            var ordered = _ordered;
            if (ordered.Came != _came.Count) _ordered = ordered = ordered.With(_came);
            return ordered.Pointers;
        }
    }

    public ImmutableArray<string> MissingFields => [.. _missing];
    public bool Complete => _missing.Count == 0;

    /// <summary>Pointers in order.</summary>
    /// <param name="Came">How many of those that came are among them.</param>
    private sealed record Ordered(ImmutableArray<string> Pointers, int Came)
    {
        public static Ordered Nothing { get; } = new([], 0);

        public Ordered With(List<string> came)
        {
            string[] fresh = [.. came.Skip(Came)], all = new string[Pointers.Length + fresh.Length];
            Array.Sort(fresh, StringComparer.Ordinal);
            for (int i = 0, old = 0, next = 0; i < all.Length; i++)
                all[i] = next == fresh.Length || (old < Pointers.Length && string.CompareOrdinal(Pointers[old], fresh[next]) < 0) ? Pointers[old++] : fresh[next++];
            return new(ImmutableCollectionsMarshal.AsImmutableArray(all), came.Count);
        }
    }
}
