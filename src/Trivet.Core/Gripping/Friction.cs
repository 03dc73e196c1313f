using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Gripping;

/// <summary>
/// Friction between gripper and part as an interval: nobody knows it better before a trial. As stated, or by the state of the part's surface: dry 0.4 to
/// 0.6, wet 0.2 to 0.3, oily 0.1 to 0.3, film 0.2 to 0.4 (common practice of vacuum and gripper handling, no source).
/// </summary>
public static class Friction
{
    public static Interval By(SurfaceState state) => state switch
    {
        SurfaceState.Dry => new(0.4, 0.6),
        SurfaceState.Wet => new(0.2, 0.3),
        SurfaceState.Oily => new(0.1, 0.3),
        _ => new(0.2, 0.4),
    };

    /// <summary>Missing where neither both limits nor the state of the surface are stated.</summary>
    internal static Interval Read(GripReading fields, double? from, double? to, Cell cell, string part)
    {
        string state = $"/brief/parts/{part}/state";
        if (from is not null || to is not null)
        {
            double low = fields.Positive(from, "frictionFrom"), high = fields.Positive(to, "frictionTo");
            if (low > high) fields.Wrong("frictionFrom", GripReasons.FrictionTurned);
            return low <= high ? new(low, high) : new(double.NaN, double.NaN);
        }

        fields.Reading.Used(fields.At("frictionFrom"), null);
        fields.Reading.Used(fields.At("frictionTo"), null);
        var surface = cell.Brief.Parts[part].State;
        fields.Reading.Need(surface, state, SurfaceState.Dry);
        return surface is { } known ? By(known) : new(double.NaN, double.NaN);
    }
}
