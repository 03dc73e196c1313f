using System.Collections.Immutable;
using Trivet.BringUp;
using Trivet.Cells;
using Trivet.Files.Floor;
using Trivet.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Floor;

/// <summary>The lengths worth measuring before anything moves, as steps of the floor page.</summary>
internal static class LengthSteps
{
    // The hazards and the order of making safe are common practice of the trade, no source; the local rules decide.
    private const string AtRest = "Motor supply isolated and locked off, and every chain held up or on its lower stop, before you reach into the cell. " +
        "A brake is not a prop. The local rules and the person responsible decide.";

    private const string AtHeight = AtRest + " Use a stand made for the height; two people for a tape over two metres.";

    private const string InRuhe = "Motorversorgung freigeschaltet und abgeschlossen, und jede Kette gehalten oder auf ihrem unteren Anschlag, bevor Sie in die Zelle greifen. " +
        "Eine Bremse ist keine Stütze. Die örtlichen Regeln und die verantwortliche Person entscheiden.";

    private const string InDerHöhe = InRuhe + " Einen für die Höhe gemachten Tritt benutzen; ein Band über zwei Meter halten zwei Personen.";

    // The kinds of step that a procedure makes of what is measured.
    private static readonly ImmutableDictionary<string, MeasuredLength> Kinds = new Dictionary<string, MeasuredLength>
    {
        ["measure-mount-height"] = MeasuredLength.MountHeight,
        ["measure-chain-distance"] = MeasuredLength.ChainDistance,
        ["measure-rod-length"] = MeasuredLength.RodLength,
        ["measure-station-height"] = MeasuredLength.StationHeight,
        ["measure-tray-along-columns"] = MeasuredLength.TrayAlongColumns,
        ["measure-tray-along-rows"] = MeasuredLength.TrayAlongRows,
    }.ToImmutableDictionary();

    /// <summary>The measuring steps of a procedure, each in its words.</summary>
    /// <param name="cell">The words tell of its stations as people call them.</param>
    public static ImmutableArray<FloorStep> Of(Procedure procedure, Cell cell) => [.. procedure.Steps.Where(s => Kinds.ContainsKey(s.Kind)).Select(s => Of(s, cell))];

    private static FloorStep Of(Step step, Cell cell)
    {
        var what = Kinds[step.Kind];
        var words = ImmutableSortedDictionary.CreateBuilder<string, FloorText>(StringComparer.Ordinal);
        words["en"] = English(what, step, cell);
        words["de"] = German(what, step);
        string picture = what switch
        {
            MeasuredLength.MountHeight or MeasuredLength.StationHeight => FloorBundles.Elevation,
            MeasuredLength.RodLength => "",
            _ => FloorBundles.Plan,
        };
        return new(step, words.ToImmutable(), picture);
    }

    private static FloorText English(MeasuredLength what, Step step, Cell cell)
    {
        string where = what == MeasuredLength.ChainDistance ? step.Names[0] : Fields.Words(cell, step.Subject.Pointer);
        var (title, how, caution) = what switch
        {
            MeasuredLength.MountHeight => ("Height of the robot's mounting plane", "From the floor to the plane the robot is bolted to, plumb below its middle.", AtHeight),
            MeasuredLength.ChainDistance => ($"Distance of chains {where}",
                "Between the middles of the two upper joints, with both chains at the upper end of travel. Measure from edge to edge and subtract one joint's width.", AtHeight),
            MeasuredLength.RodLength => ($"Rod length, {where}",
                "From ball centre to ball centre, both rods of the pair. Type the one that is further from the plan. Best before the rods are fitted.", AtRest),
            MeasuredLength.StationHeight => ($"Height at {where}", "From the floor to the place where the tool picks or places.", AtRest),
            MeasuredLength.TrayAlongColumns => ($"Pockets of {where} along the columns", "From the first pocket to the last one of a row of pockets along x: left edge to left edge.", AtRest),
            _ => ($"Pockets of {where} along the rows", "From the first pocket to the last one of a row of pockets along y: near edge to near edge.", AtRest),
        };
        return new(title, how, caution, "Loosen, shift and tighten, or change the plan; then see what becomes stale.", Labels(("length", "Length"), ("tool:tape", "tape measure")));
    }

    private static FloorText German(MeasuredLength what, Step step)
    {
        string where = step.Names[0].Replace(" to ", " und ", StringComparison.Ordinal);
        var (title, how, caution) = what switch
        {
            MeasuredLength.MountHeight => ("Höhe der Montageebene des Roboters", "Vom Boden bis zur Ebene, an die der Roboter geschraubt ist, lotrecht unter seiner Mitte.", InDerHöhe),
            MeasuredLength.ChainDistance => ($"Abstand der Ketten {where}",
                "Zwischen den Mitten der beiden oberen Gelenke, beide Ketten am oberen Ende des Wegs. Von Kante zu Kante messen und eine Gelenkbreite abziehen.", InDerHöhe),
            MeasuredLength.RodLength => ($"Stangenlänge, Kette {where}",
                "Von Kugelmitte zu Kugelmitte, beide Stangen des Paares. Die eingeben, die weiter vom Plan liegt. Am besten vor dem Einbau.", InRuhe),
            MeasuredLength.StationHeight => ($"Höhe bei {where}", "Vom Boden bis zu der Stelle, an der das Werkzeug greift oder ablegt.", InRuhe),
            MeasuredLength.TrayAlongColumns => ($"Taschen von {where} entlang der Spalten", "Von der ersten bis zur letzten Tasche einer Reihe entlang x: linke Kante bis linke Kante.", InRuhe),
            _ => ($"Taschen von {where} entlang der Reihen", "Von der ersten bis zur letzten Tasche einer Reihe entlang y: vordere Kante bis vordere Kante.", InRuhe),
        };
        return new(title, how, caution, "Lösen, verschieben und festziehen, oder den Plan ändern; dann sehen, was überholt ist.", Labels(("length", "Länge"), ("tool:tape", "Bandmaß")));
    }

    private static ImmutableSortedDictionary<string, string> Labels(params ReadOnlySpan<(string Id, string Words)> labels)
    {
        var all = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (id, words) in labels) all[id] = words;
        return all.ToImmutable();
    }
}
