using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Drives;

/// <summary>
/// One axis's drive fields read through a <see cref="Reading"/>: the axis's own value, else, for a chain, the one in <c>/drives/common</c>. Both
/// pointers count as used. A value that no axis of a chain states is missing once, in <c>common</c>; one that other chains state is missing here.
/// </summary>
internal sealed class AxisReading(Cell cell, string axis, Reading reading)
{
    private const string AxesPointer = "/drives/axes", CommonPointer = "/drives/common";

    private readonly AxisDrive _own = cell.Drives.Axes.GetValueOrDefault(axis) ?? new();

    public bool IsChain { get; } = axis is not ("rotary" or "linear");

    public string Pointer { get; } = $"{AxesPointer}/{axis}";

    private AxisDrive Common => IsChain ? cell.Drives.Common : new();

    public double? Stated(string name, Func<AxisDrive, double?> field)
    {
        Use(name, field(_own), field(Common));
        return field(_own) ?? field(Common);
    }

    public double Or(string name, Func<AxisDrive, double?> field, double fallback) => Stated(name, field) ?? fallback;

    public double Need(string name, Func<AxisDrive, double?> field) => Stated(name, field) ?? Absent(name, d => field(d) is not null, double.NaN);

    public T Need<T>(string name, Func<AxisDrive, T?> field, T fallback) where T : struct
    {
        Use(name, field(_own), field(Common));
        return field(_own) ?? field(Common) ?? Absent(name, d => field(d) is not null, fallback);
    }

    public string? Need(string name, Func<AxisDrive, string?> field)
    {
        Use(name, field(_own), field(Common));
        return field(_own) ?? field(Common) ?? Absent<string?>(name, d => field(d) is not null, null);
    }

    /// <summary>The pointer a field is stated at, or would be: the axis's own, else the common one of the chains.</summary>
    public string PointerOf(string name, Func<AxisDrive, bool> stated) =>
        !IsChain || stated(_own) || (!stated(Common) && OthersState(stated)) ? $"{Pointer}/{name}" : $"{CommonPointer}/{name}";

    private bool OthersState(Func<AxisDrive, bool> stated) => cell.Robot.Chains.Keys.Any(id => cell.Drives.Axes.TryGetValue(id, out var d) && stated(d));

    private void Use<T>(string name, T own, T common)
    {
        reading.Used($"{Pointer}/{name}", own);
        if (IsChain) reading.Used($"{CommonPointer}/{name}", common);
    }

    private T Absent<T>(string name, Func<AxisDrive, bool> stated, T fallback)
    {
        reading.Missing(PointerOf(name, stated));
        return fallback;
    }
}
