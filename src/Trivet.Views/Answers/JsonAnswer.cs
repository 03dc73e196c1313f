using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Trivet.Views.Answers;

/// <summary>The JSON document that a command answers with (docs/output-json.md): its format and version, the cell it speaks of, and what the command has to say.</summary>
internal static class JsonAnswer
{
    /// <param name="cell">Name of the cell.</param>
    /// <param name="revision">Hash that names the revision of the cell.</param>
    /// <param name="rest">Writes the members that follow.</param>
    public static string Of(string format, int version, string cell, string revision, Action<Utf8JsonWriter> rest) => Of(json =>
    {
        json.WriteString("format", format);
        json.WriteNumber("version", version);
        json.WriteStartObject("cell");
        json.WriteString("name", cell);
        json.WriteString("revision", revision);
        json.WriteEndObject();
        rest(json);
    });

    /// <param name="members">Writes all members.</param>
    public static string Of(Action<Utf8JsonWriter> members)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    /// <summary>A number as a member; null where it is not finite.</summary>
    public static void WriteFinite(this Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value)) json.WriteNumber(name, value);
        else json.WriteNull(name);
    }
}
