using System.Globalization;
using System.Text.Json;
using System.Xml;
using System.Xml.Linq;
using Trivet.Cells;

namespace Trivet.Files.Exchange;

/// <summary>
/// Reads exports that are trees. Without a list every value is a parameter, named by its way from the root: <c>/axes/0/speed</c>, <c>/drive/axis[2]/@id</c>. With one,
/// each entry of the list is.
/// </summary>
internal static class ParameterTrees
{
    public static void Json(string text, ExportMapping mapping, ParameterExport.Gathered to)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(text, new() { MaxDepth = ParameterExport.Deepest });
        }
        catch (JsonException e)
        {
            to.Wrong((int)(e.LineNumber ?? 0) + 1, (int)(e.BytePositionInLine ?? 0) + 1, "", $"it is no JSON that can be read, or deeper than {ParameterExport.Deepest}", "export it again");
            return;
        }
        using (document)
        {
            if (string.IsNullOrEmpty(mapping.List))
            {
                Flat(document.RootElement, "", to);
                return;
            }
            var lists = new List<(JsonElement At, string Group)> { (document.RootElement, "") };
            foreach (string segment in Segments(mapping.List))
                lists = [.. lists.SelectMany(l => Members(l.At).Where(m => segment == "*" || m.Name == segment).Select(m => (m.Value, segment == "*" ? ParameterLines.Led(l.Group, m.Name) : l.Group)))];
            if (lists.Count == 0) to.Wrong(1, 1, "/controller/export/list", $"the file has nothing at {Shown.Short(mapping.List)}", "state where the list of parameters is");
            foreach (var (list, group) in lists)
                foreach (var (name, entry) in Members(list))
                {
                    if (to.Full) return;
                    string own = mapping.NameAt is { Length: > 0 } n ? Scalar(Find(entry, n)) ?? "" : name;
                    string led = ParameterLines.Led(mapping.GroupAt is { Length: > 0 } g ? Scalar(Find(entry, g)) ?? "" : group, own);
                    var value = mapping.ValueAt is { Length: > 0 } v ? Find(entry, v) : entry;
                    if (value is null) to.Wrong(1, 1, "", $"parameter {Shown.Short(led)} has nothing at {Shown.Short(mapping.ValueAt!)}", "state where the value of a parameter is");
                    else Flat(value.Value, led, to);
                }
        }
    }

    private static void Flat(JsonElement element, string name, ParameterExport.Gathered to)
    {
        if (to.Full) return;
        if (Scalar(element) is { } text)
        {
            to.Add(name.Length == 0 ? "/" : name, text, 1, element.ValueKind == JsonValueKind.Number);
            return;
        }
        foreach (var (member, value) in Members(element)) Flat(value, $"{name}/{member}", to);
    }

    private static string? Scalar(JsonElement? element) => element is not { } e ? null : e.ValueKind switch
    {
        JsonValueKind.String => e.GetString(),
        JsonValueKind.Number => e.GetRawText(),
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        JsonValueKind.Null => "",
        _ => null,
    };

    private static IEnumerable<(string Name, JsonElement Value)> Members(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().Select(m => (m.Name, m.Value)),
        JsonValueKind.Array => element.EnumerateArray().Select((e, i) => (i.ToString(CultureInfo.InvariantCulture), e)),
        _ => [],
    };

    private static JsonElement? Find(JsonElement element, string pointer)
    {
        foreach (string segment in Segments(pointer))
        {
            var found = Members(element).Where(m => m.Name == segment).Select(m => (JsonElement?)m.Value).FirstOrDefault();
            if (found is not { } next) return null;
            element = next;
        }
        return element;
    }

    /// <summary>Segments of a JSON pointer (RFC 6901); the first slash may be left out.</summary>
    private static string[] Segments(string pointer) =>
        [.. pointer.TrimStart('/').Split('/').Where(s => s is not ("" or ".")).Select(s => s.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    public static void Xml(byte[] file, ExportMapping mapping, ParameterExport.Gathered to)
    {
        XElement root;
        try
        {
            using (var depth = Reader(file))
                while (depth.Read())
                    if (depth.Depth > ParameterExport.Deepest)
                    {
                        to.Wrong(((IXmlLineInfo)depth).LineNumber, 1, "", $"it is deeper than {ParameterExport.Deepest} elements", "export the parameters alone");
                        return;
                    }
            using var reader = Reader(file);
            root = XDocument.Load(reader, LoadOptions.SetLineInfo).Root!;
        }
        catch (XmlException e)
        {
            to.Wrong(Math.Max(1, e.LineNumber), Math.Max(1, e.LinePosition), "", "it is no XML that can be read; document types and entities are not read at all", "export it again, without a document type");
            return;
        }
        if (string.IsNullOrEmpty(mapping.List))
        {
            Flat(root, "/" + root.Name.LocalName, to);
            return;
        }
        string[] way = mapping.List.Split('/', StringSplitOptions.RemoveEmptyEntries);
        XElement[] found = way.Length > 0 && Is(root, way[0]) ? [root] : [];
        foreach (string step in way.Skip(1)) found = [.. found.SelectMany(e => e.Elements().Where(c => Is(c, step)))];
        if (found.Length == 0) to.Wrong(1, 1, "/controller/export/list", $"the file has no element {Shown.Short(mapping.List)}", "state the way to the element of a parameter, the outermost element first");
        foreach (var entry in found)
        {
            if (to.Full) return;
            int line = ((IXmlLineInfo)entry).LineNumber;
            string name = mapping.NameAt is { Length: > 0 } n ? Text(entry, n) ?? "" : entry.Name.LocalName;
            string group = mapping.GroupAt is { Length: > 0 } g ? Text(entry, g) ?? "" : "";
            if (Text(entry, mapping.ValueAt is { Length: > 0 } v ? v : ".") is { } value) to.Add(ParameterLines.Led(group, name), value, line);
            else to.Wrong(line, 1, "", $"parameter {Shown.Short(name)} has nothing at {Shown.Short(mapping.ValueAt!)}", "state where the value of a parameter is");
        }
    }

    private static XmlReader Reader(byte[] file) => XmlReader.Create(
        new MemoryStream(file), new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = ParameterExport.LargestFile, IgnoreComments = true, IgnoreProcessingInstructions = true });

    private static bool Is(XElement element, string step) => step == "*" || element.Name.LocalName == step;

    /// <summary>The text at a way from an element: <c>.</c>, <c>child</c>, <c>@attribute</c>, <c>../@attribute</c>, <c>child/@attribute</c>.</summary>
    private static string? Text(XElement from, string way)
    {
        var at = from;
        foreach (string step in way.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (step[0] == '@') return at.Attributes().FirstOrDefault(a => a.Name.LocalName == step[1..])?.Value;
            var next = step switch { "." => at, ".." => at.Parent, _ => at.Elements().FirstOrDefault(e => e.Name.LocalName == step) };
            if (next is null) return null;
            at = next;
        }
        return at.Value;
    }

    private static void Flat(XElement element, string name, ParameterExport.Gathered to)
    {
        if (to.Full) return;
        int line = ((IXmlLineInfo)element).LineNumber;
        foreach (var a in element.Attributes().Where(a => !a.IsNamespaceDeclaration)) to.Add($"{name}/@{a.Name.LocalName}", a.Value, line);
        if (!element.HasElements)
        {
            if (element.Value.Trim().Length > 0 || !element.HasAttributes) to.Add(name, element.Value, line);
            return;
        }
        var all = element.Elements().CountBy(e => e.Name.LocalName).ToDictionary();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var child in element.Elements())
        {
            string own = child.Name.LocalName;
            int n = seen[own] = seen.GetValueOrDefault(own) + 1;
            Flat(child, all[own] == 1 ? $"{name}/{own}" : string.Create(CultureInfo.InvariantCulture, $"{name}/{own}[{n}]"), to);
        }
    }
}
