namespace Trivet.Findings;

/// <summary>Which side of its limit a value must stay on.</summary>
public enum Sense
{
    AtMost,
    AtLeast,
    Within,
}

/// <summary>The trades that own rules, in the order of the job.</summary>
public enum Trade
{
    Brief,
    Reach,
    Motion,
    Mechanical,
    Electrical,
    BringUp,
    Calibration,
    Acceptance,
}

/// <summary>What kind of authority stands behind a method or a limit.</summary>
public enum SourceKind
{
    /// <summary>A published standard; the place is its clause or table.</summary>
    Standard,
    /// <summary>A book or paper listed in docs/sources.md.</summary>
    Literature,
    /// <summary>Derived in this project; the place names the page that shows it.</summary>
    Derived,
    /// <summary>A number that the cell description itself states; the place is its pointer.</summary>
    Cell,
    /// <summary>Common practice of the trade, no source.</summary>
    CommonPractice,
    /// <summary>A value from memory of the named source, not yet compared with it.</summary>
    FromMemory,
}

/// <summary>Where a method or a limit comes from.</summary>
/// <param name="Kind">The kind of authority.</param>
/// <param name="Key">Key into docs/sources.md, or a JSON pointer for <see cref="SourceKind.Cell"/>; may be empty for common practice.</param>
/// <param name="Place">Clause, table, page or section; empty when the whole source is meant.</param>
public sealed record Source(SourceKind Kind, string Key, string Place = "");

/// <summary>
/// One kind of check. It never changes with the cell: the same rule judges every station of every cell, so it has one page, one
/// test class and one wording.
/// </summary>
/// <param name="Id">Dotted, stable, lower case: <c>reach.travel</c>.</param>
/// <param name="Title">What the rule asks, in a few plain words.</param>
/// <param name="Trade">The trade that owns it.</param>
/// <param name="Unit">SI unit of value and limit: <c>m</c>, <c>rad</c>, <c>1</c>.</param>
/// <param name="Sense">Which side of the limit is good.</param>
/// <param name="ComfortBand">Margin (a fraction) under which a finding that holds is called tight.</param>
/// <param name="Method">Source of the method.</param>
/// <param name="Scale">Divides the distance to the limit where 1 − v/L has no meaning (limits that may be zero or negative).</param>
/// <param name="NeedsProof">When true a value that was only sampled or estimated never holds: it is open until proved.</param>
public sealed record Rule(
    string Id,
    string Title,
    Trade Trade,
    string Unit,
    Sense Sense,
    double ComfortBand,
    Source Method,
    double? Scale = null,
    bool NeedsProof = false);
