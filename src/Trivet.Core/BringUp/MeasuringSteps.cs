using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.BringUp;

/// <summary>The lengths worth measuring before anything moves: those that reach and accuracy rest on and a tape or gauge can reach.</summary>
public static class MeasuringSteps
{
    /// <summary>Every length that the description states, in the order in which one walks round the machine. What is not stated is left out.</summary>
    public static ImmutableArray<Measuring> Of(Cell cell)
    {
        var steps = ImmutableArray.CreateBuilder<Measuring>();
        Add(MeasuredLength.MountHeight, new Subject("/mount/z"), ["/mount/z"], cell.Mount.Z);

        string[] chains = [.. cell.Robot.Chains.InOrder().Select(c => c.Key)];
        for (int i = 0; i < chains.Length; i++)
        {
            for (int j = i + 1; j < chains.Length; j++)
            {
                var inputs = Of(chains[i], "azimuth").Concat(Of(chains[i], "baseRadius")).Concat(Of(chains[j], "azimuth")).Concat(Of(chains[j], "baseRadius"));
                Add(MeasuredLength.ChainDistance, new Subject("/robot/chains", $"{chains[i]} to {chains[j]}"), inputs, Between(cell.Robot, chains[i], chains[j]));
            }
        }
        foreach (string chain in chains)
            Add(MeasuredLength.RodLength, new Subject($"/robot/chains/{chain}"), Of(chain, "rod"), cell.Robot.Chains[chain].Rod ?? cell.Robot.Common.Rod);

        foreach (var (id, station) in cell.Stations.InOrder())
        {
            string at = $"/stations/{id}";
            Add(MeasuredLength.StationHeight, new Subject(at), [$"{at}/z"], station.Z);
            if (station.Kind != StationKind.Tray) continue;
            Add(MeasuredLength.TrayAlongColumns, new Subject(at), [$"{at}/columnPitch", $"{at}/columns"], (station.Columns - 1) * station.ColumnPitch);
            Add(MeasuredLength.TrayAlongRows, new Subject(at), [$"{at}/rowPitch", $"{at}/rows"], (station.Rows - 1) * station.RowPitch);
        }
        return steps.ToImmutable();

        void Add(MeasuredLength what, Subject subject, IEnumerable<string> inputs, double? planned)
        {
            if (planned is not { } length || !(length > 0) || Tolerance(length) is not { } tolerance) return;
            string id = $"{what}:{subject.Pointer}{(subject.Case.Length > 0 ? ":" + subject.Case : "")}";
            var limit = Limit.Between(Math.Round(length - tolerance, ToNanometre), Math.Round(length + tolerance, ToNanometre), General);
            steps.Add(new Measuring(id, what, subject, [.. inputs.Distinct().Order(StringComparer.Ordinal)], length, limit));
        }

        // A field stated for all chains counts as well as the chain's own: stating either would change the length.
        static IEnumerable<string> Of(string chain, string field) => [$"/robot/chains/{chain}/{field}", $"/robot/common/{field}"];
    }

    /// <summary>Decimals of a metre that a limit is given to, so that it reads as a person would write it.</summary>
    private const int ToNanometre = 9;

    private static Source General { get; } = new(SourceKind.FromMemory, "ISO-2768-1", "table 1, class m");

    /// <summary>Permissible deviation of a linear size without a tolerance of its own, metres, either way; null outside the table.</summary>
    private static double? Tolerance(double length) => (length * 1000) switch
    {
        < 0.5 => null,
        <= 6 => 0.1e-3,
        <= 30 => 0.2e-3,
        <= 120 => 0.3e-3,
        <= 400 => 0.5e-3,
        <= 1000 => 0.8e-3,
        <= 2000 => 1.2e-3,
        <= 4000 => 2e-3,
        _ => null,
    };

    /// <summary>Distance of two joints on their circles, by the law of cosines; both stand at the same height.</summary>
    private static double? Between(Robot robot, string first, string second)
    {
        ChainDescription a = robot.Chains[first], b = robot.Chains[second], all = robot.Common;
        if ((a.BaseHeight ?? all.BaseHeight) != (b.BaseHeight ?? all.BaseHeight)) return null;
        if ((a.BaseSideOffset ?? all.BaseSideOffset ?? 0) != 0 || (b.BaseSideOffset ?? all.BaseSideOffset ?? 0) != 0) return null;
        double? r = a.BaseRadius ?? all.BaseRadius, s = b.BaseRadius ?? all.BaseRadius, turn = (a.Azimuth ?? all.Azimuth) - (b.Azimuth ?? all.Azimuth);
        return r is { } ra && s is { } rb && turn is { } angle ? Math.Sqrt(ra * ra + rb * rb - 2 * ra * rb * Math.Cos(angle)) : null;
    }
}
