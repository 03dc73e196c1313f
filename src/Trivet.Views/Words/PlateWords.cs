using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts of adapter plates: their drawing and tables.</summary>
public sealed record PlateWords
{
    /// <summary>In the order of <see cref="Adapters.HoleKind"/>.</summary>
    public required ImmutableArray<string> Kinds { get; init; }

    // Callouts of holes. {d} {depth} {thread} {face} {angle} {wide}
    public required string Through { get; init; }
    public required string Counterbored { get; init; }
    public required string Countersunk { get; init; }
    public required string Tapped { get; init; }
    public required string Fit { get; init; }
    public required string FitBlind { get; init; }
    public required string AndThrough { get; init; }
    /// <summary>In the order of <see cref="Cells.PlateFace"/>.</summary>
    public required ImmutableArray<string> FromFace { get; init; }
    public required ImmutableArray<string> Faces { get; init; }
    public required string Screw { get; init; }
    public required string ScrewCountersunk { get; init; }
    public required string ScrewUnknown { get; init; }

    // The drawing
    public required string Description { get; init; }
    public required string SeenFromAbove { get; init; }
    public required string Section { get; init; }
    public required string Holes { get; init; }
    public required string HeadTag { get; init; }
    public required string HeadHole { get; init; }
    public required string Owner { get; init; }
    public required string Number { get; init; }
    public required string DocumentType { get; init; }
    public required string DocumentTypeText { get; init; }
    public required string Creator { get; init; }
    public required string ApprovedBy { get; init; }
    public required string NotApproved { get; init; }
    public required string NotStated { get; init; }
    public required string Sheet { get; init; }
    public required string HeadScrew { get; init; }
    /// <summary>A pin: {d} and {length} in millimetres.</summary>
    public required string Pin { get; init; }
    public required string Callouts { get; init; }
    public required string Material { get; init; }
    public required string Mass { get; init; }
    public required string Thickness { get; init; }
    public required string Scale { get; init; }
    public required string Tolerances { get; init; }
    public required string ToleranceText { get; init; }
    public required string Drawn { get; init; }
    public required string Cell { get; init; }
    public required string Revision { get; init; }
    public required string Clocking { get; init; }
    public required string Edges { get; init; }
    public required string EdgesText { get; init; }
    public required string Position { get; init; }
    public required string Notes { get; init; }
    public required string NoteFirst { get; init; }
    public required string NoteMark { get; init; }
    public required string NoteOutline { get; init; }
    /// <summary>{d} {face}</summary>
    public required string NotePins { get; init; }
    public required string NoteRing { get; init; }
    public required string Pieces { get; init; }
    public required string Upper { get; init; }
    public required string Lower { get; init; }

    // The sheet. {count} {rules}
    public required string Works { get; init; }
    public required string NoneWorks { get; init; }
    public required string StackFound { get; init; }
    public required string NoStack { get; init; }
    public required string HeadClocking { get; init; }
    public required string HeadFirst { get; init; }
    public required string HeadWall { get; init; }
    public required string HeadKey { get; init; }
    public required string KeyFree { get; init; }
    public required string Axial { get; init; }
    public required string Tilt { get; init; }
    public required string Straight { get; init; }
    public required string OutlineSize { get; init; }

    // The desk
    public required string Title { get; init; }
    public required string NoPlates { get; init; }
    public required string Describe { get; init; }
    public required string Stated { get; init; }
    public required string Clockings { get; init; }
    public required string Take { get; init; }
    public required string TakeStack { get; init; }
    public required string NotYet { get; init; }
    public required string ForTheShop { get; init; }
    public required string Interfaces { get; init; }
}
