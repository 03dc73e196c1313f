namespace Trivet.Views.Words;

/// <summary>Texts of the pictures of a step.</summary>
public sealed record PictureWords
{
    /// <summary>{part} {cell}</summary>
    public required string Title { get; init; }
    /// <summary>Of a picture with nothing marked: {cell}</summary>
    public required string WholeTitle { get; init; }
    // What the picture shows, for who cannot see it: {part}
    public required string Whole { get; init; }
    public required string Hidden { get; init; }
    public required string Detail { get; init; }
    public required string FromBelow { get; init; }
    public required string FromAbove { get; init; }
    public required string Rail { get; init; }
    public required string Cable { get; init; }
    public required string Foot { get; init; }
    public required string Push { get; init; }
    public required string Level { get; init; }
    // Names of what has no name in the description.
    public required string Feet { get; init; }
    public required string Platform { get; init; }
    public required string Robot { get; init; }
    public required string Base { get; init; }
    public required string Frame { get; init; }
    public required string Tool { get; init; }
    public required string Rotary { get; init; }
    public required string LinearAxis { get; init; }
    public required string Cabinet { get; init; }
    public required string Levels { get; init; }
    /// <summary>Beside a cable that can be taken for the one in question.</summary>
    public required string NotThis { get; init; }
}
