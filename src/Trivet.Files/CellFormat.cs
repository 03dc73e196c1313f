using System.Collections.Immutable;

namespace Trivet.Files;

/// <summary>
/// The versions of the document. Old files stay readable for ever: each change of the format adds a step, and reading applies the
/// steps from the file's version on. The same steps map pointers, so that a journal written against an old revision still finds
/// its fields. Steps rename members where they stand, which leaves the lines of the file true for its errors.
/// </summary>
public static class CellFormat
{
    public const int Oldest = 1;
    public const int Current = 1;

    internal static ImmutableArray<FormatStep> Steps => [];

    /// <summary>Where a field of an older version stands now.</summary>
    public static string MapPointer(string pointer, int fromVersion) => MapPointer(pointer, fromVersion, Steps);

    internal static string MapPointer(string pointer, int fromVersion, ImmutableArray<FormatStep> steps)
    {
        foreach (var step in steps)
        {
            if (step.From >= fromVersion) pointer = step.Map(pointer);
        }

        return pointer;
    }
}

/// <summary>From one version to the next: the members renamed in it.</summary>
internal sealed record FormatStep(int From, ImmutableArray<Renamed> Members)
{
    public string Map(string pointer)
    {
        string[] old = pointer.Split('/');
        string[] mapped = [.. old];
        foreach (var member in Members)
        {
            string[] place = member.Place.Split('/');
            if (place.Length > old.Length) continue;
            bool here = true;
            for (int i = 0; i < place.Length; i++) here &= place[i] == "*" || place[i] == old[i];
            if (here) mapped[place.Length - 1] = member.Name;
        }

        return string.Join('/', mapped);
    }
}

/// <summary>A member renamed: its place in the old version (<c>/stations/*/window</c>, the star for any id) and its name in the new one.</summary>
internal sealed record Renamed(string Place, string Name);
