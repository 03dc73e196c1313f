using System.Globalization;
using Trivet.Files;
using Trivet.Numerics;
using Trivet.Numerics.Profiles;

namespace Trivet.Cli;

/// <summary>Times the run along a table of points. Limits may differ from point to point; a path is held whole.</summary>
/// <param name="startSpeed">ṡ at the first point, not below zero.</param>
/// <param name="endSpeed">ṡ at the last one.</param>
internal sealed class PathTable(double startSpeed, double endSpeed)
{
    private const int MostPoints = 200_000;

    /// <summary>Names of the columns that repeat for each axis, behind s; from dq on they may be missing.</summary>
    private static readonly string[] Names = ["q", "vmax", "amax", "dq", "ddq", "m", "c", "g", "fmax", "fall"];
    private const int Q = 0, VMax = 1, AMax = 2, Dq = 3, Ddq = 4, M = 5, C = 6, G = 7, FMax = 8, Fall = 9;

    public int Run(TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
    {
        int axes = 1;
        var reader = new CsvReader(text, file, heads =>
        {
            axes = AxisColumns.Count(heads, "q");
            return
            [
                new("s", Dimension.One),
                .. Names.SelectMany((name, i) => AxisColumns.Of(name, axes, optional: i >= Dq)),
                new("t", Dimension.One, Answer: true), new("sdot", Dimension.One, Answer: true),
            ];
        });
        if (AxisColumns.Refused(reader, error)) return ExitCode.Refused;

        var rows = new List<double[]>();
        var lines = new List<int>();
        double[] read = new double[reader.Columns.Length];
        while (reader.Next(read))
        {
            if (rows.Count % 4096 == 0)
            {
                stop.ThrowIfCancellationRequested();
                progress.Report(done());
            }

            if (rows.Count == MostPoints || (rows.Count > 0 && !(read[0] > rows[^1][0])))
                return Refuse(error, file, reader.Line, rows.Count == MostPoints
                    ? ($"this is point {MostPoints + 1}", $"a path has at most {MostPoints} points")
                    : ("s does not rise here", "it must from row to row"));
            rows.Add([.. read]);
            lines.Add(reader.Line);
        }

        if (AxisColumns.Refused(reader, error)) return ExitCode.Refused;
        if (rows.Count < 2) return Refuse(error, file, reader.Line, ("this path has fewer than two points", "write a row for each point"));
        if (Missing(reader, axes) is { } missing) return Refuse(error, file, 1, missing);

        var limits = Limits(reader, rows, axes, out var names, out int bad);
        if (bad >= 0) return Refuse(error, file, lines[bad], ("a limit is not above zero here", "vmax, amax and fmax are magnitudes, and fall is not below zero"));
        var found = new PathTiming().Solve(limits);
        if (!found.Found)
        {
            string limit = found.Limit == PathTraversal.NoLimit ? "" : $": {names[found.Limit]}";
            error.WriteLine($"{file}:{lines[found.Point]}:1: {Words(found.Problem)}{limit}");
            return ExitCode.NotAllHold;
        }

        Write(output, reader, rows, axes, found, names);
        error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"duration {found.Duration:R} s"));
        return ExitCode.AllHold;
    }

    private static int Column(int axes, int name, int axis) => 1 + name * axes + axis;

    /// <summary>Columns that only come together.</summary>
    private static (string, string)? Missing(CsvReader reader, int axes)
    {
        for (int k = 0; k < axes; k++)
        {
            bool Has(int name) => reader.Has(Column(axes, name, k));
            if (Has(Dq) != Has(Ddq)) return ($"only one of dq{k + 1} and ddq{k + 1} is here", $"give both, or neither: then they are those of a spline through q{k + 1}");
            if (Has(FMax) != Has(M) || Has(FMax) != Has(C) || Has(FMax) != Has(G) || (Has(Fall) && !Has(FMax)))
                return ($"not all of m{k + 1}, c{k + 1}, g{k + 1} and fmax{k + 1} are here", $"give all four, and fall{k + 1} only with them");
        }

        return null;
    }

    /// <summary>Every limit at each point, divided by its own size there; names of the limits in their order.</summary>
    private PathLimits Limits(CsvReader reader, List<double[]> rows, int axes, out List<string> names, out int bad)
    {
        int n = rows.Count;
        double[] Values(int column) => [.. rows.Select(r => r[column])];
        double[] s = Values(0);
        var limits = new PathLimits(s) { StartSpeed = startSpeed, EndSpeed = endSpeed };
        names = [];
        bad = -1;
        for (int k = 0; k < axes; k++)
        {
            double[] Of(int name) => Values(Column(axes, name, k));
            double[] first, second;
            if (reader.Has(Column(axes, Dq, k))) (first, second) = (Of(Dq), Of(Ddq));
            else
            {
                (first, second) = (new double[n], new double[n]);
                CubicSpline.Derivatives(s, Of(Q), first, second);
            }

            double[] vmax = Of(VMax), amax = Of(AMax);
            double[] Over(double[] values, double[] most) => [.. values.Zip(most, (v, m) => v / m)];
            for (int i = 0; i < n && bad < 0; i++)
                if (!(vmax[i] > 0 && amax[i] > 0)) bad = i;
            limits.Velocity(Over(first, vmax), 1);
            names.Add($"velocity {k + 1}");
            limits.Band(Over(first, amax), Over(second, amax), -1, 1);
            names.Add($"acceleration {k + 1}");
            if (!reader.Has(Column(axes, FMax, k))) continue;

            double[] fmax = Of(FMax), m = Over(Of(M), fmax), c = Over(Of(C), fmax), g = Over(Of(G), fmax);
            double[] fall = reader.Has(Column(axes, Fall, k)) ? Of(Fall) : new double[n];
            for (int i = 0; i < n && bad < 0; i++)
                if (!(fmax[i] > 0 && fall[i] >= 0)) bad = i;
            if (bad >= 0) return limits;
            // fmax − fall·|q̇| over fmax is 1 − v with v = |q′|·fall/fmax·ṡ.
            if (Array.TrueForAll(fall, f => f == 0)) limits.Band(m, c, g, -1, 1);
            else limits.Effort(m, c, g, [.. first.Select((d, i) => d * fall[i] / fmax[i])], new SpeedCurve((0, 1), (1, 0)));
            names.Add($"force {k + 1}");
        }

        return limits;
    }

    private static void Write(TextWriter output, CsvReader reader, List<double[]> rows, int axes, PathTraversal found, List<string> names)
    {
        var writer = new CsvWriter(output, [reader.Columns[0], .. reader.Columns[1..(axes + 1)], reader.Columns[^2], reader.Columns[^1]], "held_back_by");
        double[] row = new double[axes + 3];
        for (int i = 0; i < rows.Count; i++)
        {
            rows[i].AsSpan(0, axes + 1).CopyTo(row);
            (row[^2], row[^1]) = (found.T[i], Math.Sqrt(found.X[i]));
            int limit = i < found.Limiting.Length ? found.Limiting[i] : PathTraversal.NoLimit;
            writer.Row(row, limit == PathTraversal.NoLimit ? "" : names[limit]);
        }
    }

    private static string Words(PathProblem problem) => problem switch
    {
        PathProblem.Stuck => "the path can not be run through: nothing gets it moving from here",
        PathProblem.Contradiction => "the path can not be run through: its limits leave no way on here at any speed",
        PathProblem.NotFinite => "the path can not be run through: its derivatives here are out of all proportion",
        PathProblem.StartTooFast or PathProblem.StartTooSlow => "the path can not be run through: its limits can not be kept from the speed at which it starts",
        _ => "the path can not be run through: its limits can not be kept to the speed at which it ends",
    };

    private static int Refuse(TextWriter error, string file, int line, (string Problem, string Remedy) what)
    {
        Refusals.Write([new FileError(file, line, 1, "", what.Problem, what.Remedy)], error, "the table was not used");
        return ExitCode.Refused;
    }
}
