using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Motion;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>
/// Falls as text, Markdown, CSV and JSON. CSV and JSON are for programs: SI with all digits, and names that stay (docs/output-json.md); what is not
/// finite is empty or null. The caution stands over what people read.
/// </summary>
public static class FallForms
{
    public const string Format = "trivet-falls";
    public const int Version = 1;

    private static readonly string[] Ends = ["stays", "end-stop", "came-to-rest", "swings-back", "loses-hold", "still-moving", "not-computed"];
    private static readonly string[] Points = ["approach", "pick", "halfway", "place"];
    private static readonly string[] Holdings = ["nothing", "brake", "counterweight", "friction", "prop"];

    public static string Text(FallSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Falls;
        var text = new StringBuilder(sheet.Title).Append('\n').Append(words.Caution).Append('\n');
        foreach (var block in sheet.Blocks)
        {
            text.Append('\n').Append(block.Where).Append('\n');
            string[][] lines =
            [
                [words.HeadChain, words.HeadHeldBy, words.HeadLoad, words.HeadAsHeld, "", "", "", "", words.HeadGone, words.HeadTime, words.HeadDrop, words.HeadSpeed, words.HeadEnergy],
                .. block.Rows.Select(r => (string[])[r.Chain, r.HeldBy, r.Load, .. Cells(r.AsHeld), .. Cells(r.Gone)]),
            ];
            if (block.Rows.Any(r => r.AsHeld.Moves)) (lines[0][4], lines[0][5], lines[0][6], lines[0][7]) = (words.HeadTime, words.HeadDrop, words.HeadSpeed, words.HeadEnergy);
            else lines = [.. lines.Select(l => (string[])[.. l[..4], .. l[8..]])];
            int[] widths = [.. Enumerable.Range(0, lines[0].Length).Select(i => lines.Max(l => l[i].Length))];
            foreach (string[] line in lines)
            {
                var row = new StringBuilder(" ");
                // Numbers end below each other, words begin so.
                for (int i = 0; i < line.Length; i++) row.Append(' ').Append(i < 2 || i == 3 || i == line.Length - 5 ? line[i].PadRight(widths[i] + 1) : line[i].PadLeft(widths[i] + 1));
                text.Append(row.ToString().TrimEnd()).Append('\n');
            }
        }

        foreach (string why in sheet.Waits) text.Append('\n').Append(why).Append('\n');
        if (!sheet.Blocks.IsEmpty) text.Append('\n').Append(words.HeldNote).Append('\n').Append(words.GoneNote).Append('\n');
        return text.ToString();

        static string[] Cells(FallCell c) => [c.End, c.Time, c.Drop, c.Speed, c.Energy];
    }

    public static string Markdown(FallSheet sheet, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Falls;
        var text = new StringBuilder($"# {sheet.Title}: {words.Title}\n\n**{words.Caution}**\n\n{words.HeldNote} {words.GoneNote}\n");
        foreach (var block in sheet.Blocks)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {block.Where}\n\n| {words.HeadChain} | {words.HeadHeldBy} | {words.HeadLoad} |");
            foreach (string which in new[] { words.HeadAsHeld, words.HeadGone })
                text.Append(CultureInfo.InvariantCulture, $" {which}: {words.HeadEnd} | {words.HeadTime} | {words.HeadDrop} | {words.HeadSpeed} | {words.HeadEnergy} |");
            text.Append("\n| --- | --- | ---: | --- | ---: | ---: | ---: | ---: | --- | ---: | ---: | ---: | ---: |\n");
            foreach (var r in block.Rows)
                text.Append(CultureInfo.InvariantCulture, $"| {r.Chain} | {r.HeldBy} | {r.Load} | {Cells(r.AsHeld)} | {Cells(r.Gone)} |\n");
        }
        foreach (string why in sheet.Waits) text.Append('\n').Append(why).Append('\n');
        return text.ToString();

        static string Cells(FallCell c) => string.Join(" | ", c.End, c.Time, c.Drop, c.Speed, c.Energy);
    }

    public static string Csv(FallSheet sheet, RobotFamily family)
    {
        string unit = family == RobotFamily.CrankDelta ? "N m" : "N";
        var text = new StringBuilder($"place,point,chain,holding,holds[{unit}],load[{unit}],case,end,time[s],drop[m],speed[m/s],energy[J],x[m],y[m],z[m]\r\n");
        foreach (var (place, of, which, outcome) in All(sheet))
        {
            var fall = outcome.Fall;
            text.AppendJoin(',', place.Pointer, Points[(int)place.Point], of.Chain ?? "", Holdings[(int)of.Holding.Kind], CsvCell.Of(of.Holding.Force), CsvCell.Of(of.Load), which, Ends[(int)fall.End],
                CsvCell.Of(fall.Time), CsvCell.Of(outcome.Drop), CsvCell.Of(fall.FastestPlatform), CsvCell.Of(fall.Energy), CsvCell.Of(outcome.Tool_C.X), CsvCell.Of(outcome.Tool_C.Y), CsvCell.Of(outcome.Tool_C.Z)).Append("\r\n");
        }
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(FallSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Title, revision, json =>
        {
            json.WriteStartArray("falls");
            foreach (var (place, of, which, outcome) in All(sheet))
            {
                json.WriteStartObject();
                json.WriteString("place", place.Pointer);
                json.WriteString("point", Points[(int)place.Point]);
                json.WriteString("part", place.Part);
                json.WriteString("chain", of.Chain);
                json.WriteString("holding", Holdings[(int)of.Holding.Kind]);
                json.WriteFinite("holds", of.Holding.Force);
                json.WriteFinite("load", of.Load);
                json.WriteString("case", which);
                json.WriteString("end", Ends[(int)outcome.Fall.End]);
                json.WriteFinite("time", outcome.Fall.Time);
                json.WriteFinite("drop", outcome.Drop);
                json.WriteFinite("speed", outcome.Fall.FastestPlatform);
                json.WriteFinite("energy", outcome.Fall.Energy);
                json.WriteStartArray("tool");
                for (int i = 0; i < 3; i++)
                {
                    if (double.IsFinite(outcome.Tool_C[i])) json.WriteNumberValue(outcome.Tool_C[i]);
                    else json.WriteNullValue();
                }
                json.WriteEndArray();
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("waits");
            foreach (string why in sheet.Waits) json.WriteStringValue(why);
            json.WriteEndArray();
        });

    private static IEnumerable<(FallPlace Place, FallCase Of, string Which, FallOutcome Outcome)> All(FallSheet sheet) =>
        from block in sheet.Blocks
        from row in block.Rows
        from one in new[] { ("as-held", row.Of.AsHeld), ("gone", row.Of.Gone) }
        select (block.Of, row.Of, one.Item1, one.Item2);
}
