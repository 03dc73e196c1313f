using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary>Computes a table of forces row by row, in memory that does not grow with it. What it writes it also reads; columns that are
/// computed are passed over.</summary>
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

    private readonly RobotDynamics _lumped = dynamics.With(RodShares.TwoThirds);

    /// <summary>Exit code: 0 when every row is reached within travel, 1 when one is not, 2 when the table was refused.</summary>
    /// <param name="done">Fraction of the table read so far.</param>
    public int Run(
        TextReader text, string file, TextWriter output, TextWriter error, Func<double> done, IProgress<double> progress, CancellationToken stop)
    {
        var reader = new CsvReader(text, file, [.. State, .. Turning, .. _computed.Select(c => c with { Answer = true })]);
        if (Refused(reader, error)) return ExitCode.Refused;
        var writer = new CsvWriter(output, [.. State, .. _computed]);
        double[] read = new double[State.Length + Turning.Length + _computed.Length], row = new double[State.Length + _computed.Length];
        bool allReached = true;
        for (int i = 0; reader.Next(read); i++)
        {
            if (i % 4096 == 0)
            {
                stop.ThrowIfCancellationRequested();
                progress.Report(done());
            }

            // A column that is not there is not a number: the axis is at rest.
            var state = new MotionState(
                new(read[0], read[1], read[2]), new(read[3], read[4], read[5]), new(read[6], read[7], read[8]),
                new(Stated(read[9]), Stated(read[10]), Stated(read[11])));
            allReached &= dynamics.Robot.WithinTravel(dynamics.Robot.Inverse(state.P));
            read.AsSpan(0, State.Length).CopyTo(row);
            Fill(row.AsSpan(State.Length), state);
            writer.Row(row);
        }

        if (Refused(reader, error, "the rows named were passed over")) return ExitCode.Refused;
        return allReached ? ExitCode.AllHold : ExitCode.NotAllHold;
    }

    private static double Stated(double value) => double.IsNaN(value) ? 0 : value;

    private void Fill(Span<double> row, in MotionState state)
    {
        int n = dynamics.Chains.Length, k = 0;
        var demand = dynamics.Demand(state);
        var loads = Loads.Of(dynamics, state);
        for (int i = 0; i < n; i++) row[k++] = demand.Force[i];
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
        var error = _lumped.Demand(state).Force - demand.Force;
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
