using Trivet.Files;
using Trivet.Numerics.Profiles;

namespace Trivet.Cli;

/// <summary>
/// Times a table of moves block by block, in memory that does not grow with it. What it writes it also reads. Moves from rest to rest go through
/// <see cref="ProfileBatch"/>, whose durations are those of one by one to 1e-12 of themselves; the others one by one.
/// </summary>
/// <param name="law">A smooth law from rest to rest in place of the shortest profile; null for none.</param>
internal sealed class MoveTable(RestLaw? law)
{
    private const int MostReasons = 100, Block = 1024;

    /// <summary>Names of the columns that repeat for each axis, in the order written; velocities and jerk may be missing.</summary>
    private static readonly string[] Names = ["p0", "p1", "v0", "v1", "vmax", "amax", "jmax"];

    public int Run(TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
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
        double[][] rows = [.. Enumerable.Range(0, Block).Select(_ => new double[reader.Columns.Length])];
        int[] lines = new int[Block];
        double[] row = new double[shown.Length], durations = new double[Block];
        var batch = new RestBatch(Block);
        var moves = new AxisMove[axes];
        var limits = new AxisLimits[axes];
        int without = 0, count = 0;
        do
        {
            for (count = 0; count < Block && reader.Next(rows[count]); count++) lines[count] = reader.Line;
            stop.ThrowIfCancellationRequested();
            progress.Report(done());
            bool resting = !rows.Take(count).Any(r => Enumerable.Range(0, axes).Any(k => Value(r, 2, k, 0) != 0 || Value(r, 3, k, 0) != 0));
            if (law is null && resting) batch.Times(rows.AsSpan(0, count), axes, Value, durations);
            for (int i = 0; i < count; i++)
            {
                for (int k = 0; k < axes; k++)
                {
                    moves[k] = new(Value(rows[i], 0, k, 0), Value(rows[i], 1, k, 0), Value(rows[i], 2, k, 0), Value(rows[i], 3, k, 0));
                    limits[k] = new(Value(rows[i], 4, k, 0), Value(rows[i], 5, k, 0), Value(rows[i], 6, k, double.PositiveInfinity));
                }

                if (law is { } smooth) durations[i] = Smooth(smooth, moves, limits);
                else if (!resting) durations[i] = Synchronised.Duration(moves, limits);
                rows[i][^1] = durations[i];
                if (double.IsNaN(durations[i]) && without++ < MostReasons) error.WriteLine($"{file}:{lines[i]}:1: {Reason(moves, limits)}");
                for (int k = 0; k < shown.Length; k++) row[k] = rows[i][shown[k]];
                writer.Row(row);
            }
        }
        while (count == Block);

        if (AxisColumns.Refused(reader, error, "the rows named were passed over")) return ExitCode.Refused;
        if (without == 0) return ExitCode.AllHold;
        error.WriteLine($"{without} {(without == 1 ? "row has" : "rows have")} no move.");
        return ExitCode.NotAllHold;

        double Value(double[] of, int name, int axis, double missing) => reader.Has(name * axes + axis) ? of[name * axes + axis] : missing;
    }

    /// <summary>All axes in the time of the slowest: a law that is one formula can be stretched to any longer time.</summary>
    private static double Smooth(RestLaw law, AxisMove[] moves, AxisLimits[] limits)
    {
        double longest = 0;
        for (int k = 0; k < moves.Length; k++)
        {
            bool rests = moves[k].StartVelocity == 0 && moves[k].EndVelocity == 0;
            longest = Math.Max(longest, rests ? RestLaws.Duration(law, moves[k].To - moves[k].From, limits[k]) : double.NaN);
        }

        return longest;
    }

    /// <summary>A block of moves from rest to rest as structure of arrays, axis after axis.</summary>
    private sealed class RestBatch(int size)
    {
        private readonly double[] _distance = new double[size], _velocity = new double[size], _acceleration = new double[size], _jerk = new double[size], _own = new double[size];

        public void Times(ReadOnlySpan<double[]> rows, int axes, Func<double[], int, int, double, double> value, double[] durations)
        {
            int n = rows.Length;
            Array.Clear(durations, 0, n);
            for (int k = 0; k < axes; k++)
            {
                for (int i = 0; i < n; i++)
                {
                    _distance[i] = value(rows[i], 1, k, 0) - value(rows[i], 0, k, 0);
                    (_velocity[i], _acceleration[i], _jerk[i]) = (value(rows[i], 4, k, 0), value(rows[i], 5, k, 0), value(rows[i], 6, k, double.PositiveInfinity));
                }

                ProfileBatch.RestToRest(_distance.AsSpan(0, n), _velocity.AsSpan(0, n), _acceleration.AsSpan(0, n), _jerk.AsSpan(0, n), _own);
                // Math.Max keeps what is not a number.
                for (int i = 0; i < n; i++) durations[i] = Math.Max(durations[i], _own[i]);
            }
        }
    }

    private string Reason(AxisMove[] moves, AxisLimits[] limits)
    {
        if (law is not null && moves.Any(m => m.StartVelocity != 0 || m.EndVelocity != 0))
            return "a smooth law begins and ends at rest; leave out v0 and v1, or --law";
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
