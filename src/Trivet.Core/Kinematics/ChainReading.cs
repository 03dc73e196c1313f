using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Kinematics;

/// <summary>
/// One chain's fields read through a <see cref="Reading"/>: the chain's own value, else the one in <c>/robot/common</c>. Both
/// pointers count as used, since stating either may change the result. A value that no chain states is missing once, in
/// <c>common</c>; one that other chains state is missing here.
/// </summary>
internal sealed class ChainReading(Robot robot, string id, ChainDescription own, Reading reading)
{
    public const string ChainsPointer = "/robot/chains";
    private const string CommonPointer = "/robot/common";

    /// <summary>JSON pointer of the chain; "~" and "/" in an id are escaped (RFC 6901, 3).</summary>
    public string Pointer { get; } = ChainsPointer + "/" + id.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    /// <summary>The pointer a field is stated at, for a problem to name: the chain's own, else the common one.</summary>
    public string PointerOf(string name, Func<ChainDescription, double?> field) =>
        field(own) is null && field(robot.Common) is not null ? $"{CommonPointer}/{name}" : $"{Pointer}/{name}";

    public double Need(string name, Func<ChainDescription, double?> field) =>
        Stated(name, field) ?? Absent(name, field, double.NaN);

    public double Or(string name, Func<ChainDescription, double?> field, double fallback) => Stated(name, field) ?? fallback;

    public T Need<T>(string name, Func<ChainDescription, T?> field, T fallback) where T : struct =>
        Stated(name, field) ?? Absent(name, field, fallback);

    /// <summary>An azimuth is a chain's own by nature: a common one would lay the chains on each other.</summary>
    public double NeedOwn(string name, double? value) => reading.Need(value, $"{Pointer}/{name}");

    private T? Stated<T>(string name, Func<ChainDescription, T?> field) where T : struct
    {
        T? mine = field(own), shared = field(robot.Common);
        reading.Used($"{Pointer}/{name}", mine);
        reading.Used($"{CommonPointer}/{name}", shared);
        return mine ?? shared;
    }

    private T Absent<T>(string name, Func<ChainDescription, T?> field, T fallback) where T : struct
    {
        reading.Missing(robot.Chains.Values.Any(c => field(c) is not null) ? $"{Pointer}/{name}" : $"{CommonPointer}/{name}");
        return fallback;
    }
}
