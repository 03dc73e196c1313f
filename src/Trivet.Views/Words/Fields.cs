using System.Text;
using Trivet.Cells;

namespace Trivet.Views.Words;

/// <summary>Words for pointers into the description: "rod length of chain a", "height of tray-left".</summary>
public static class Fields
{
    /// <summary>Words for a field: its name, and what it belongs to.</summary>
    public static string Words(Cell cell, string pointer, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        string[] path = Path(pointer);
        if (path.Length == 0) return cell.Name ?? language.UnnamedCell;
        if (IsEntry(path)) return Entry(cell, path, language);
        string field = Word(path[^1], language);
        // A cell has one robot: its sections need not say whose they are.
        string of = path.Length == 1 || path is ["robot", _] ? "" : Words(cell, Joined(path[..^1]), locale);
        return of.Length == 0 ? field : Locale.Fill(language.FieldOf, ("field", field), ("of", of));
    }

    /// <summary>Several fields as one list in words: "a, b and c".</summary>
    public static string List(IEnumerable<string> words, Locale? locale = null)
    {
        string[] all = [.. words];
        if (all.Length <= 1) return string.Concat(all);
        return Locale.Fill((locale ?? Locale.English).Language.And, ("list", string.Join(", ", all[..^1])), ("last", all[^1]));
    }

    /// <summary>Segments of a JSON pointer, unescaped (RFC 6901).</summary>
    internal static string[] Path(string pointer) =>
        pointer.Length == 0 ? [] : [.. pointer.TrimStart('/').Split('/').Select(s => s.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    private static string Joined(string[] path) =>
        string.Concat(path.Select(s => "/" + s.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)));

    /// <summary>Whether a path ends at one entry of a collection.</summary>
    internal static bool IsEntry(string[] path) => path is ["controller", "settings", _] or ["controller", "export", "exceptions", _] or ["stopping", "functions", _] or ["stopping", "functions", _, "channels", _]
        or ["hazards", _] or ["hazards", _, "measures" or "proofs", _] || path.Length >= 2 && path[^2] is
        "stations" or "chains" or "motors" or "cycles" or "members" or "parts" or "modules" or "addressClasses" or "railRules" or "sources" or "branches" or "consumers" or "messages" or "axes" or "cables" or "requirements" or "openQuestions"
        or "sockets" or "ways" or "cores" or "banks" or "signals" or "switches" or "nodes" or "objects"
        or "users" or "hoses" or "lifts" or "devices" or "fences" or "gaps" or "partsList"
        or "interfaces" or "materials" or "plates" or "joints" or "clamped" or "stock" or "points";

    private static string Entry(Cell cell, string[] path, Language language) => path switch
    {
        ["robot", "chains", var id] => Locale.Fill(language.ChainCase, ("case", id)),
        // Its id, not its name, since an axis names it by that.
        ["drives", "motors", var id] => Locale.Fill(language.MotorCase, ("case", id)),
        ["drives", "axes", var id] => Locale.Fill(language.DriveCase, ("case", Axis(cell, id, language))),
        _ => NameOf(cell, path),
    };

    /// <summary>What people call an entry; its id where it has no name.</summary>
    internal static string NameOf(Cell cell, string[] path)
    {
        string id = path[^1];
        return path[^2] switch
        {
            "stations" => cell.Stations.GetValueOrDefault(id)?.Name,
            "modules" => cell.Cabinet.Modules.GetValueOrDefault(id)?.Name,
            "addressClasses" => cell.Cabinet.AddressClasses.GetValueOrDefault(id)?.Name,
            "railRules" => cell.Cabinet.RailRules.GetValueOrDefault(id)?.Name,
            "sources" => cell.Cabinet.Sources.GetValueOrDefault(id)?.Name,
            "branches" => cell.Cabinet.Branches.GetValueOrDefault(id)?.Name,
            "consumers" => cell.Cabinet.Consumers.GetValueOrDefault(id)?.Name,
            "messages" => cell.Cabinet.Network.Messages.GetValueOrDefault(id)?.Name,
            "cycles" => cell.Motion.Cycles.GetValueOrDefault(id)?.Name,
            "cables" => cell.Cables.GetValueOrDefault(id)?.Name,
            "users" => cell.Pneumatics.Users.GetValueOrDefault(id)?.Name,
            "hoses" => cell.Pneumatics.Hoses.GetValueOrDefault(id)?.Name,
            "lifts" => cell.Handling.Lifts.GetValueOrDefault(id)?.Name,
            "sockets" => cell.Cabinet.Modules.GetValueOrDefault(path[^3])?.Sockets.GetValueOrDefault(id)?.Name,
            "settings" => cell.Controller.Settings.GetValueOrDefault(id)?.Name,
            "exceptions" => cell.Controller.Export.Exceptions.GetValueOrDefault(id)?.Name,
            "functions" => cell.Stopping.Functions.GetValueOrDefault(id)?.Name,
            "channels" => cell.Stopping.Functions.GetValueOrDefault(path[2])?.Channels.GetValueOrDefault(id)?.Name,
            "hazards" => cell.Hazards.GetValueOrDefault(id)?.Name,
            "measures" => cell.Hazards.GetValueOrDefault(path[1])?.Measures.GetValueOrDefault(id)?.Name,
            "proofs" => cell.Hazards.GetValueOrDefault(path[1])?.Proofs.GetValueOrDefault(id)?.Name,
            "ways" => cell.Cabling.Ways.GetValueOrDefault(id)?.Name,
            "banks" => cell.Io.Banks.GetValueOrDefault(id)?.Name,
            "signals" => cell.Io.Signals.GetValueOrDefault(id)?.Name,
            "nodes" => cell.Io.Nodes.GetValueOrDefault(id)?.Name,
            "switches" => cell.Io.Switches.GetValueOrDefault(id)?.Name,
            "devices" when path[0] == "cabling" => cell.Cabling.Devices.GetValueOrDefault(id)?.Name,
            "devices" => cell.Guarding.Devices.GetValueOrDefault(id)?.Name,
            "fences" => cell.Guarding.Fences.GetValueOrDefault(id)?.Name,
            "gaps" => cell.Guarding.Gaps.GetValueOrDefault(id)?.Name,
            "partsList" => cell.PartsList.GetValueOrDefault(id)?.Name,
            "interfaces" => cell.Interfaces.GetValueOrDefault(id)?.Name,
            "materials" => cell.Materials.GetValueOrDefault(id)?.Name,
            "plates" => cell.Plates.GetValueOrDefault(id)?.Name,
            "joints" => cell.Joints.GetValueOrDefault(id)?.Name,
            "parts" when path[0] == "tool" => cell.Tool.Parts.GetValueOrDefault(id)?.Name,
            "parts" => cell.Brief.Parts.GetValueOrDefault(id)?.Name,
            _ => null,
        } ?? id;
    }

    /// <summary>An axis by its chain, or by what it is.</summary>
    internal static string Axis(Cell cell, string id, Language language) =>
        cell.Robot.Chains.ContainsKey(id) ? Locale.Fill(language.ChainCase, ("case", id)) : language.Cases.GetValueOrDefault(id, id);

    private static string Word(string name, Language language)
    {
        if (language.FieldWords.TryGetValue(name, out string? word)) return word;
        var text = new StringBuilder(name.Length + 4);
        foreach (char c in name)
        {
            if (char.IsAsciiLetterUpper(c)) text.Append(' ').Append(char.ToLowerInvariant(c));
            else text.Append(c);
        }

        return text.ToString();
    }
}
