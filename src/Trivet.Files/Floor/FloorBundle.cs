using System.Collections.Immutable;
using Trivet.BringUp;

namespace Trivet.Files.Floor;

/// <summary>What the page at the machine is handed: the steps with their limits and pictures, and nothing of the store.</summary>
/// <param name="CellId">Id of the cell in its job, or of the file it came from.</param>
/// <param name="CellName">Name as people say it.</param>
/// <param name="Revision">Hash of the revision the steps were made from.</param>
/// <param name="Pictures">SVG texts by name.</param>
public sealed record FloorBundle(
    string CellId, string CellName, string Revision, ImmutableArray<FloorStep> Steps, ImmutableSortedDictionary<string, string> Pictures);

/// <summary>One screen: what to measure and in which words.</summary>
/// <param name="Title">A few words.</param>
/// <param name="How">How to measure it, one or two sentences.</param>
/// <param name="Caution">What can hurt here and how to make safe now.</param>
/// <param name="Picture">Name of the picture that goes with it, or empty.</param>
public sealed record FloorStep(Measuring Measuring, string Title, string How, string Caution, string Picture);

/// <summary>A bundle read from text, or why it was refused.</summary>
public sealed record FloorBundleRead(FloorBundle? Bundle, string Problem, string Remedy);
