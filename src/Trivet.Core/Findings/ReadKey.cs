using System.Collections.Immutable;

namespace Trivet.Findings;

/// <summary>What a result was read from: two are the same where they go by the same name and every field that was looked at has the same value.</summary>
/// <param name="name">What was worked out, with its subject; all but settles which fields were looked at.</param>
/// <param name="used">As <see cref="Reading.Key"/> gives it.</param>
public readonly struct ReadKey(string name, ImmutableArray<KeyValuePair<string, object?>> used) : IEquatable<ReadKey>
{
    private readonly string _name = name;
    private readonly ImmutableArray<KeyValuePair<string, object?>> _used = used;

    public bool Equals(ReadKey other)
    {
        if (_name != other._name || _used.Length != other._used.Length) return false;
        for (int i = 0; i < _used.Length; i++)
            if (_used[i].Key != other._used[i].Key || !Equals(_used[i].Value, other._used[i].Value)) return false;
        return true;
    }

    public override bool Equals(object? obj) => obj is ReadKey other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(_name, StringComparer.Ordinal);
        foreach (var (_, value) in _used) hash.Add(value);
        return hash.ToHashCode();
    }

    public static bool operator ==(ReadKey a, ReadKey b) => a.Equals(b);
    public static bool operator !=(ReadKey a, ReadKey b) => !a.Equals(b);
}
