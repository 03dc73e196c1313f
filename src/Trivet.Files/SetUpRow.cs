using System.Collections.Immutable;
using System.Globalization;
using Trivet.Frames;

namespace Trivet.Files;

/// <summary>A reading of setting up by the names of its corners, so that it outlasts a change of the frame.</summary>
/// <param name="To">Empty for a height.</param>
/// <param name="Value">As in <see cref="SetUpReading"/>.</param>
public sealed record SetUpRow(SetUpKind Kind, string From, string To, double Value, double Uncertainty)
{
    /// <summary>Reads what is typed: quantities with their units, of a level both readings. The usual uncertainty of the instrument is taken.</summary>
    /// <param name="reversed">Of a level: the reading with the level turned end for end.</param>
    /// <returns>Null with what is wrong and what would be right.</returns>
    public static (SetUpRow? Row, string Problem) Typed(SetUpKind kind, string from, string to, string value, string reversed)
    {
        if (kind != SetUpKind.Height && (to.Length == 0 || from == to)) return (null, "Two different corners are needed.");
        var dimension = kind == SetUpKind.Level ? Dimension.Angle : Dimension.Length;
        var first = Quantity.Parse(value, dimension);
        if (!first.Ok) return (null, $"{first.Problem} {first.Remedy}");
        if (kind != SetUpKind.Level) return (new(kind, from, kind == SetUpKind.Height ? "" : to, first.Value, kind == SetUpKind.Height ? SettingUp.HeightUncertainty : SettingUp.TapeUncertainty), "");
        var second = Quantity.Parse(reversed, dimension);
        return second.Ok ? (new(kind, from, to, (first.Value - second.Value) / 2, SettingUp.LevelUncertainty), "") : (null, $"{second.Problem} {second.Remedy}");
    }

    public static SetUpRow Of(SetUpReading r, ImmutableArray<SetUpPoint> points) => new(r.Kind, points[r.From].Name, r.To < 0 ? "" : points[r.To].Name, r.Value, r.Uncertainty);

    /// <summary>Null where the frame has no such corner.</summary>
    public SetUpReading? At(ImmutableArray<SetUpPoint> points)
    {
        int from = IndexOf(From), to = To.Length == 0 ? -1 : IndexOf(To);
        return from < 0 || (To.Length > 0 && to < 0) ? null : new(Kind, from, to, Value, Uncertainty);

        int IndexOf(string name)
        {
            for (int i = 0; i < points.Length; i++)
                if (points[i].Name == name) return i;
            return -1;
        }
    }

    /// <summary>The table that <see cref="SetUpTable"/> reads. A level comes as its slope and the opposite.</summary>
    public static string Table(IEnumerable<SetUpRow> rows) => "from,to,distance[mm],height[mm],level[mm/m],reversed[mm/m]\r\n" + string.Concat(rows.Select(r =>
    {
        string value = (1000 * r.Value).ToString("R", CultureInfo.InvariantCulture), opposite = (-1000 * r.Value).ToString("R", CultureInfo.InvariantCulture);
        return $"{r.From},{r.To}," + r.Kind switch { SetUpKind.Distance => $"{value},,,", SetUpKind.Height => $",{value},,", _ => $",,{value},{opposite}" } + "\r\n";
    }));
}
