using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Files;
using Trivet.Numerics;

namespace Trivet.Cli;

/// <summary>
/// Computes a table of forces block by block, in memory that does not grow with it. What it writes it also reads; columns that are computed are passed
/// over. While the rotary axis rests the drives' forces come from <see cref="DynamicsBatch"/>, which are those of one by one to 1e-12 of the largest;
/// rods and mount are computed one by one.
/// </summary>
/// <param name="rotary">A rotary axis is fitted: its torque has a column too.</param>
/// <param name="lumped">Adds by how much the forces of lumped rods differ.</param>
internal sealed class ForcesTable(RobotDynamics dynamics, bool rotary, bool lumped)
{
    private static readonly ImmutableArray<CsvColumn> State =
    [
        new("x", Dimension.Length, Unit: "m"), new("y", Dimension.Length, Unit: "m"), new("z", Dimension.Length, Unit: "m"),
        new("vx", Dimension.Speed), new("vy", Dimension.Speed), new("vz", Dimension.Speed),
        new("ax", Dimension.Acceleration), new("ay", Dimension.Acceleration), new("az", Dimension.Acceleration),
    ];

    private static readonly ImmutableArray<CsvColumn> Turning =
    [
        new("rotary", Dimension.Angle, Optional: true), new("rotary_speed", Dimension.AngularSpeed, Optional: true),
        new("rotary_acceleration", Dimension.AngularAcceleration, Optional: true),
    ];

    /// <summary>Forces; the rotary axis' torque; largest tension and compression at the end of any rod, not below zero; force and moment on the
    /// mount, base frame; errors of lumped rods.</summary>
    private readonly ImmutableArray<CsvColumn> _computed =
    [
        .. dynamics.Robot.ChainIds.Select(id => Force($"f_{id}", dynamics)),
        .. rotary ? [new CsvColumn("f_rotary", Dimension.Torque)] : Array.Empty<CsvColumn>(),
        new("tension", Dimension.Force), new("compression", Dimension.Force),
        .. new[] { "mount_fx", "mount_fy", "mount_fz" }.Select(name => new CsvColumn(name, Dimension.Force)),
        .. new[] { "mount_mx", "mount_my", "mount_mz" }.Select(name => new CsvColumn(name, Dimension.Torque)),
        .. lumped ? dynamics.Robot.ChainIds.Select(id => Force($"lumped_error_{id}", dynamics)) : [],
    ];

    /// <summary>Rows that are computed at once: a multiple of the widest lanes, 512 bits of doubles.</summary>
    private const int Block = 1024, Widest = 8;
    private readonly double[][] _states = [.. Enumerable.Range(0, State.Length).Select(_ => new double[Block])], _force = [new double[Block], new double[Block], new double[Block]];
    private readonly RobotDynamics _lumped = dynamics.With(RodShares.TwoThirds);

    /// <summary>Exit code: 0 when every row is reached within travel, 1 when one is not, 2 when the table was refused.</summary>
    /// <param name="done">Fraction of the table read so far.</param>
    public int Run(
        TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
    {
        var reader = new CsvReader(text, file, [.. State, .. Turning, .. _computed.Select(c => c with { Answer = true })]);
        if (Refused(reader, error)) return ExitCode.Refused;
        var writer = new CsvWriter(output, [.. State, .. _computed]);
        double[] row = new double[State.Length + _computed.Length];
        double[][] read = [.. Enumerable.Range(0, Block).Select(_ => new double[State.Length + Turning.Length + _computed.Length])];
        bool allReached = true;
        int count;
        do
        {
            for (count = 0; count < Block && reader.Next(read[count]); count++) { }
            stop.ThrowIfCancellationRequested();
            progress.Report(done());
            bool batch = Batch(read.AsSpan(0, count));
            for (int i = 0; i < count; i++)
            {
                var r = read[i];
                // A column that is not there is not a number: the axis is at rest.
                var state = new MotionState(
                    new(r[0], r[1], r[2]), new(r[3], r[4], r[5]), new(r[6], r[7], r[8]), new(Stated(r[9]), Stated(r[10]), Stated(r[11])));
                allReached &= dynamics.Robot.WithinTravel(dynamics.Robot.Inverse(state.P));
                r.AsSpan(0, State.Length).CopyTo(row);
                Fill(row.AsSpan(State.Length), state, batch ? new Vec3(_force[0][i], _force[1][i], _force[2][i]) : null);
                writer.Row(row);
            }
        }
        while (count == Block);

        if (Refused(reader, error, "the rows named were passed over")) return ExitCode.Refused;
        return allReached ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    /// <summary>The drives' forces of a block; false where the rotary axis moves somewhere, which the batch does not know.</summary>
    private bool Batch(ReadOnlySpan<double[]> rows)
    {
        foreach (var r in rows)
            if (Stated(r[10]) != 0 || Stated(r[11]) != 0) return false;
        // Filled up to whole lanes with the last row, so that every row goes through the same width and its digits don't depend on its neighbours.
        int n = (rows.Length + Widest - 1) / Widest * Widest;
        for (int i = 0; i < n; i++)
            for (int k = 0; k < State.Length; k++) _states[k][i] = rows[Math.Min(i, rows.Length - 1)][k];
        DynamicsBatch.Inverse(
            dynamics, _states[0].AsSpan(0, n), _states[1].AsSpan(0, n), _states[2].AsSpan(0, n), _states[3].AsSpan(0, n), _states[4].AsSpan(0, n), _states[5].AsSpan(0, n),
            _states[6].AsSpan(0, n), _states[7].AsSpan(0, n), _states[8].AsSpan(0, n), _force[0], _force[1], _force[2]);
        return true;
    }

    private static double Stated(double value) => double.IsNaN(value) ? 0 : value;

    /// <param name="known">Forces of the drives, where they come from the batch.</param>
    private void Fill(Span<double> row, in MotionState state, Vec3? known)
    {
        int n = dynamics.Chains.Length, k = 0;
        var demand = known is null || rotary ? dynamics.Demand(state) : default;
        var force = known ?? demand.Force;
        var loads = Loads.Of(dynamics, state);
        for (int i = 0; i < n; i++) row[k++] = force[i];
        if (rotary) row[k++] = demand.RotaryTorque;
        double tension = 0, compression = 0;
        for (int i = 0; i < n; i++)
        {
            // Math.Max keeps what is not a number.
            tension = Math.Max(tension, loads.Rods(i).Most);
            compression = Math.Max(compression, -loads.Rods(i).Least);
        }
        row[k++] = tension;
        row[k++] = compression;
        for (int i = 0; i < 3; i++) row[k++] = loads.Force_B[i];
        for (int i = 0; i < 3; i++) row[k++] = loads.Moment_B[i];
        if (!lumped) return;
        var error = _lumped.Demand(state).Force - force;
        for (int i = 0; i < n; i++) row[k++] = error[i];
    }

    private static CsvColumn Force(string name, RobotDynamics dynamics) =>
        new(name, dynamics.Robot.Family == RobotFamily.RailDelta ? Dimension.Force : Dimension.Torque);

    private static bool Refused(CsvReader reader, TextWriter error, string consequence = "the table was not used")
    {
        if (reader.Errors.IsEmpty) return false;
        Refusals.Write(reader.Errors, error, consequence);
        return true;
    }
}
