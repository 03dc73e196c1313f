using System.Globalization;
using System.Text;

namespace Trivet.Views.Motion;

/// <summary>A cycle over time as a table with units in its header, SI throughout, so that another program can take it up.</summary>
public static class MotionCsv
{
    public static string Of(MotionRun run)
    {
        var trace = run.Trace;
        var axes = run.Sheet.Result!.Input.Axes;
        var columns = new List<(string Head, Func<int, double> At)>
        {
            ("t[s]", i => trace.Times[i]),
            ("x[m]", i => trace.Tool_C[i].X),
            ("y[m]", i => trace.Tool_C[i].Y),
            ("z[m]", i => trace.Tool_C[i].Z),
            ("speed[m/s]", i => trace.ToolSpeed[i]),
            ("acceleration[m/s2]", i => trace.ToolAcceleration[i]),
        };
        foreach (var (axis, k) in axes.Select((a, k) => (a, k)))
        {
            string unit = axis.Turns ? "rad" : "m";
            var series = trace.Series.Axes[k];
            columns.Add(($"{axis.Axis}_position[{unit}]", i => series.Position[i]));
            columns.Add(($"{axis.Axis}_speed[{unit}/s]", i => series.Speed[i]));
            columns.Add(($"{axis.Axis}_acceleration[{unit}/s2]", i => series.Acceleration[i]));
            if (trace.Force[k].All(double.IsFinite)) columns.Add((axis.Turns ? $"{axis.Axis}_torque[N m]" : $"{axis.Axis}_force[N]", i => trace.Force[k][i]));
        }

        if (!run.Voltage.IsEmpty) columns.Add(("voltage[V]", i => run.Voltage[i]));
        var text = new StringBuilder();
        text.AppendJoin(',', columns.Select(c => c.Head)).Append('\n');
        for (int i = 0; i < trace.Times.Length; i++)
            text.AppendJoin(',', columns.Select(c => c.At(i).ToString("R", CultureInfo.InvariantCulture))).Append('\n');
        return text.ToString();
    }
}
