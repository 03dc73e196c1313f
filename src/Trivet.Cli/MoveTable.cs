using Trivet.Files;
using Trivet.Numerics.Profiles;

namespace Trivet.Cli;

/// <summary>Times a table of moves row by row, in memory that does not grow with it. What it writes it also reads.</summary>
internal static class MoveTable
{
    private const int MostReasons = 100;

    /// <summary>Names of the columns that repeat for each axis, in the order written; velocities and jerk may be missing.</summary>
    private static readonly string[] Names = ["p0", "p1", "v0", "v1", "vmax", "amax", "jmax"];

    public static int Run(TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
    {
        int axes = 1;
        var reader = new CsvReader(text, file, heads =>
        {
            axes = AxisColumns.Count(heads, "p0");
            return [.. Names.SelectMany(name => AxisColumns.Of(name, axes, optional: name is "v0" or "v1" or "jmax")), new("duration", Dimension.One, Answer: true)];
        });
        if (AxisColumns.Refused(reader, error)) return ExitCode.Refused;

        // What the file has, and the duration as last column.
        int[] shown = [.. Enumerable.Range(0, reader.Columns.Length - 1).Where(reader.Has), reader.Columns.Length - 1];
        var writer = new CsvWriter(output, [.. shown.Select(i => reader.Columns[i])]);
        double[] read = new double[reader.Columns.Length], row = new double[shown.Length];
        var moves = new AxisMove[axes];
        var limits = new AxisLimits[axes];
        int without = 0;
        for (int i = 0; reader.Next(read); i++)
        {
            if (i % 4096 == 0)
            {
                stop.ThrowIfCancellationRequested();
                progress.Report(done());
            }

            double Value(int name, int axis, double missing) => reader.Has(name * axes + axis) ? read[name * axes + axis] : missing;
            for (int k = 0; k < axes; k++)
            {
                moves[k] = new(Value(0, k, 0), Value(1, k, 0), Value(2, k, 0), Value(3, k, 0));
                limits[k] = new(Value(4, k, 0), Value(5, k, 0), Value(6, k, double.PositiveInfinity));
            }

            read[^1] = Synchronised.Duration(moves, limits);
            if (double.IsNaN(read[^1]) && without++ < MostReasons) error.WriteLine($"{file}:{reader.Line}:1: {Reason(moves, limits)}");
            for (int k = 0; k < shown.Length; k++) row[k] = read[shown[k]];
            writer.Row(row);
        }

        if (AxisColumns.Refused(reader, error, "the rows named were passed over")) return ExitCode.Refused;
        if (without == 0) return ExitCode.AllHold;
        error.WriteLine($"{without} {(without == 1 ? "row has" : "rows have")} no move.");
        return ExitCode.NotAllHold;
    }

    private static string Reason(AxisMove[] moves, AxisLimits[] limits)
    {
        for (int k = 0; k < moves.Length; k++)
        {
            int axis = k + 1;
            switch (AxisProfiles.Fastest(moves[k], limits[k]).Problem)
            {
                case ProfileProblem.LimitNotPositive:
                    return $"axis {axis} has a limit that is not above zero; vmax{axis}, amax{axis} and jmax{axis} are magnitudes";
                case ProfileProblem.VelocityBeyondLimit:
                    return $"axis {axis} starts or ends faster than its limit; v0{axis} and v1{axis} lie within ±vmax{axis}";
                case ProfileProblem.None:
                    continue;
                default:
                    return $"axis {axis} has no move that ends where it should; is a number here out of all proportion?";
            }
        }

        return "the axes have no duration in common";
    }
}
