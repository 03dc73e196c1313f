using System.Globalization;
using System.Text;
using Trivet.Drives;
using Trivet.Motion;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>
/// Cycles as text, Markdown, CSV and JSON, and one of them over time as CSV. CSV and JSON are for programs: SI with all digits, and names that stay
/// (docs/output-json.md); what is not finite is empty or null. The series is in millimetres and degrees where its header says so.
/// </summary>
public static class CycleForms
{
    public const string Format = "trivet-cycle";
    public const int Version = 1;

    public static string Text(CycleSheet sheet)
    {
        var text = new StringBuilder(sheet.Title).Append('\n');
        foreach (var cycle in sheet.Rows.GroupBy(r => r.Cycle))
        {
            int what = cycle.Max(r => r.What.Length), shown = cycle.Max(r => r.Shown.Length);
            text.Append(cycle.Key.Length > 0 ? $"\n{cycle.Key}\n" : "\n");
            foreach (var r in cycle) text.Append(("  " + r.What.PadRight(what) + "  " + r.Shown.PadLeft(shown) + "  " + r.Known).TrimEnd()).Append('\n');
        }
        if (sheet.Settings.IsEmpty) return text.ToString();
        var words = Locale.English.Language.Motion.Cycle;
        text.Append('\n').Append(words.TypedIn).Append('\n');
        foreach (var s in sheet.Settings)
            text.Append(CultureInfo.InvariantCulture, $"  {s.What,-28} {CsvCell.Of(s.Typed),10} {s.Unit,-8} {(double.IsNaN(s.Now) ? "" : Locale.Fill(words.Now, ("value", CsvCell.Of(s.Now))))}").Append('\n');
        return text.Append(words.Caution).Append('\n').ToString();
    }

    public static string Markdown(CycleSheet sheet)
    {
        var text = new StringBuilder($"# {sheet.Title}\n\n| cycle | what | value | known |\n| --- | --- | ---: | --- |\n");
        foreach (var r in sheet.Rows) text.Append(CultureInfo.InvariantCulture, $"| {Cell(r.Cycle)} | {Cell(r.What)} | {r.Shown} | {Cell(r.Known)} |\n");
        if (sheet.Settings.IsEmpty) return text.ToString();
        text.Append("\n| setting | typed | unit | now |\n| --- | ---: | --- | ---: |\n");
        foreach (var s in sheet.Settings) text.Append(CultureInfo.InvariantCulture, $"| {s.What} | {CsvCell.Of(s.Typed)} | {s.Unit} | {CsvCell.Of(s.Now)} |\n");
        return text.ToString();

        static string Cell(string words) => words.Replace("|", "\\|", StringComparison.Ordinal);
    }

    public static string Csv(CycleSheet sheet)
    {
        var text = new StringBuilder("cycle,id,value,unit\r\n");
        foreach (var r in sheet.Rows) text.Append(CultureInfo.InvariantCulture, $"{r.Cycle},{r.Id},{CsvCell.Of(r.Si)},{r.Unit}\r\n");
        foreach (var s in sheet.Settings) text.Append(CultureInfo.InvariantCulture, $",{s.Pointer},{CsvCell.Of(s.Typed)},{s.Unit}\r\n");
        return text.ToString();
    }

    /// <param name="revision">Hash that names the revision of the cell.</param>
    public static string Json(CycleSheet sheet, string revision) =>
        JsonAnswer.Of(Format, Version, sheet.Title, revision, json =>
        {
            json.WriteStartArray("rows");
            foreach (var r in sheet.Rows)
            {
                json.WriteStartObject();
                json.WriteString("cycle", r.Cycle);
                json.WriteString("id", r.Id);
                json.WriteFinite("value", r.Si);
                json.WriteString("unit", r.Unit);
                json.WriteString("what", r.What);
                json.WriteString("known", r.Known);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("settings");
            foreach (var s in sheet.Settings)
            {
                json.WriteStartObject();
                json.WriteString("field", s.Pointer);
                json.WriteFinite("now", s.Now);
                json.WriteFinite("typed", s.Typed);
                json.WriteString("unit", s.Unit);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });

    /// <summary>
    /// One cycle over time: time, tool with speed and acceleration, and for each axis reading, speed, acceleration and force, rotor and transmission included; force and moment
    /// of the robot on its mount, base frame; electric power and voltage of the drives. A column of what is not described is left out.
    /// </summary>
    /// <param name="drives">What the cycle asks of the drives; null where they are not described.</param>
    public static string Series(CycleTrace trace, CycleInput input, DriveJudgement? drives)
    {
        var columns = new List<(string Name, Func<int, double> Value)>
        {
            ("t[s]", i => trace.Times[i]), ("x[mm]", i => 1000 * trace.Tool_C[i].X), ("y[mm]", i => 1000 * trace.Tool_C[i].Y), ("z[mm]", i => 1000 * trace.Tool_C[i].Z),
            ("speed[mm/s]", i => 1000 * trace.ToolSpeed[i]), ("acceleration[mm/s2]", i => 1000 * trace.ToolAcceleration[i]),
        };
        for (int k = 0; k < input.Axes.Length; k++)
        {
            var (axis, series, force) = (input.Axes[k], trace.Series.Axes[k], trace.Force[k]);
            var (unit, per) = axis.Turns ? ("deg", 180 / Math.PI) : ("mm", 1000.0);
            columns.Add(($"q_{axis.Axis}[{unit}]", i => per * series.Position[i]));
            columns.Add(($"v_{axis.Axis}[{unit}/s]", i => per * series.Speed[i]));
            columns.Add(($"a_{axis.Axis}[{unit}/s2]", i => per * series.Acceleration[i]));
            if (force.All(double.IsFinite)) columns.Add(($"f_{axis.Axis}[{(axis.Turns ? "N m" : "N")}]", i => force[i]));
        }
        if (trace.Reaction is { } reaction)
        {
            foreach (var (d, k) in new[] { ("x", 0), ("y", 1), ("z", 2) }) columns.Add(($"mount_f{d}[N]", i => reaction.Force_B[i][k]));
            foreach (var (d, k) in new[] { ("x", 0), ("y", 1), ("z", 2) }) columns.Add(($"mount_m{d}[N m]", i => reaction.Moment_B[i][k]));
        }
        if (drives?.Power is { } power) columns.Add(("power[W]", i => power.Power[i]));
        if (drives?.Supply is { Usable: true } supply) columns.Add(("voltage[V]", i => supply.Voltage[i]));
        var text = new StringBuilder().AppendJoin(',', columns.Select(c => c.Name)).Append("\r\n");
        for (int i = 0; i < trace.Times.Length; i++) text.AppendJoin(',', columns.Select(c => CsvCell.Of(c.Value(i)))).Append("\r\n");
        return text.ToString();
    }
}
