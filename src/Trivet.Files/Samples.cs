using System.Collections.Immutable;

namespace Trivet.Files;

/// <summary>A sample cell that comes with the program, invented for it.</summary>
/// <param name="Name">Name of the file without ending: <c>jar-lids</c>.</param>
/// <param name="Title">What it shows, in one line.</param>
public sealed record Sample(string Name, string Title)
{
    /// <summary>The document as it stands in the samples folder, comments included.</summary>
    public string Text
    {
        get
        {
            using var stream = typeof(Sample).Assembly.GetManifestResourceStream($"samples/{Name}.json")
                ?? throw new InvalidOperationException($"the sample {Name} is not built in");
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }
    }
}

/// <summary>The samples in the order of the tour.</summary>
public static class Samples
{
    public static ImmutableArray<Sample> All { get; } =
    [
        new("jar-lids", "Jar lids off a belt into two tray grids: a rail delta on an extrusion frame, described in full"),
        new("biscuits", "Biscuits off a belt into nests: a crank delta, described for building it"),
        new("labels", "Two chains in one upright plane: labels between two nests"),
        new("tight-corner", "The jar lids with a tray set too far out: falls short, with advice"),
        new("broken", "Broken on purpose: its errors show how a file is refused"),
    ];

    /// <summary>The sample of this name; null where there is none.</summary>
    public static Sample? Find(string name) => All.FirstOrDefault(s => s.Name == name);
}
