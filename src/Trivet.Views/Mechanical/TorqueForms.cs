using System.Globalization;
using System.Text;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>The torque sheet as text, Markdown, CSV and JSON; the last two in SI with all digits.</summary>
public static class TorqueForms
{
    public const string Format = "trivet-joints";
    public const int Version = 1;

    public static string Text(TorqueSheet sheet)
    {
        var text = new StringBuilder(sheet.Cell).Append("  ").Append(sheet.Title).Append('\n');
        var heads = TorqueSheet.Heads(Locale.English);
        foreach (var row in sheet.Rows)
        {
            var cells = TorqueSheet.Cells(row);
            text.Append('\n').Append(cells[0]).Append("  ").Append(cells[1]).Append('\n');
            for (int i = 2; i < heads.Length; i++) text.Append("   ").Append(heads[i].PadRight(22)).Append(cells[i]).Append('\n');
        }
        text.Append('\n');
        foreach (string note in sheet.Notes) text.Append("- ").Append(note).Append('\n');
        return text.ToString();
    }

    public static string Markdown(TorqueSheet sheet)
    {
        var heads = TorqueSheet.Heads(Locale.English);
        var text = new StringBuilder($"# {sheet.Title}: {sheet.Cell}\n\n| ").AppendJoin(" | ", heads).Append(" |\n|");
        for (int i = 0; i < heads.Length; i++) text.Append(" --- |");
        text.Append('\n');
        foreach (var row in sheet.Rows) text.Append("| ").AppendJoin(" | ", TorqueSheet.Cells(row).Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
        text.Append('\n');
        foreach (string note in sheet.Notes) text.Append("- ").Append(note).Append('\n');
        return text.ToString();
    }

    public static string Csv(TorqueSheet sheet)
    {
        var text = new StringBuilder("order,joint,thread,class,screws,torque[N m],preloadFrom[N],preloadTo[N],embedding[N],kept[N],pull[N],separation,slip,fatigue,limitedBy,sequence\r\n");
        foreach (var row in sheet.Rows)
        {
            var r = row.Result;
            text.AppendJoin(',', row.Number.ToString(CultureInfo.InvariantCulture), row.Id, r.Input.Thread.Name, r.Input.Class.Name, r.Input.Points.Length.ToString(CultureInfo.InvariantCulture),
                CsvCell.Of(r.Torque), CsvCell.Of(r.PreloadFrom), CsvCell.Of(r.PreloadTo), CsvCell.Of(r.Embedding), CsvCell.Of(r.Kept), CsvCell.Of(r.Pull), CsvCell.Of(r.Separation), CsvCell.Of(r.Slip), CsvCell.Of(r.Fatigue),
                r.LimitedBy.ToString().ToLowerInvariant(), row.Sequence).Append("\r\n");
        }
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(TorqueSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Cell, revision, json =>
        {
            json.WriteStartArray("joints");
            foreach (var row in sheet.Rows)
            {
                var r = row.Result;
                json.WriteStartObject();
                json.WriteNumber("order", row.Number);
                json.WriteString("id", row.Id);
                json.WriteString("name", row.Joint);
                json.WriteString("thread", r.Input.Thread.Name);
                json.WriteString("class", r.Input.Class.Name);
                json.WriteNumber("screws", r.Input.Points.Length);
                foreach (var (name, value) in new[]
                {
                    ("torque", r.Torque), ("preloadFrom", r.PreloadFrom), ("preloadTo", r.PreloadTo), ("tighteningFactor", r.TighteningFactor), ("embedding", r.Embedding), ("kept", r.Kept),
                    ("screwResilience", r.ScrewResilience), ("layerResilience", r.LayerResilience), ("pull", r.Pull), ("screwUse", r.ScrewUse), ("pressureUse", r.PressureUse),
                    ("stripUse", r.StripUse), ("separation", r.Separation), ("slip", r.Slip), ("fatigue", r.Fatigue),
                })
                {
                    json.WriteFinite(name, value);
                }
                json.WriteString("limitedBy", r.LimitedBy.ToString().ToLowerInvariant());
                json.WriteString("sequence", row.Sequence);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("notes");
            foreach (string note in sheet.Notes) json.WriteStringValue(note);
            json.WriteEndArray();
        });
}
