using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts of the parts list.</summary>
internal static class EnglishParts
{
    public static PartsWords Words { get; } = new()
    {
        Title = "Parts list",
        Groups = ["Robot", "Drives", "Tool", "Compressed air", "Frame", "Guarding", "Cabinet", "Cables", "Screws and pins", "Further"],
        Kinds =
        [
            "", "platform", "rod", "carriage", "upper arm", "counterweight", "rotary axis", "linear axis", "motor", "valve", "hose", "profile, cut", "guard", "foot", "screw", "dowel pin for", "corner bracket",
        ],
        HeadGroup = "Group",
        HeadName = "Part",
        HeadSizes = "Size",
        HeadQuantity = "Pieces",
        HeadSupplied = "Supplied",
        HeadSpares = "Spares",
        HeadArticle = "Article",
        HeadNote = "Note",
        Bought = "bought",
        Made = "made",
        NotSaid = "not said",
        Usual = "{supplied}, as usual",
        Nothing = "Nothing is described yet that could be listed.",
        Summary = "{lines} lines, {pieces} pieces: {bought} bought, {made} made.",
    };

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["parts.of"] = new("line of the parts list",
            "A line that speaks of a part which was renamed or removed would silently be lost. The rule appears only where one does.",
            "The pointer in its field `of` is looked up among everything that is listed.",
            "none"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["parts.astray"] = "The description has nothing there that is listed: give the pointer of a part, such as /tool/parts/cup, or leave it out for a line of its own. The plate of a part of the tool is an id under /plates.",
    }.ToImmutableDictionary();
}
