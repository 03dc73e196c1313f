using System.Collections.Immutable;
using Trivet.Frames;

namespace Trivet.Files;

/// <summary>
/// Reads readings of setting up: a table with the columns <c>from,to,distance[mm],height[mm],level[mm/m],reversed[mm/m]</c>, in any order, those not used left away.
/// Each row fills a distance (between two corners), a height (of the first), or a level with its reversed reading; corners by their names.
/// </summary>
public static class SetUpTable
{
    private const string RightHead = "from,to,distance[mm],height[mm],level[mm/m],reversed[mm/m]";

    public static (ImmutableArray<SetUpReading> Readings, ImmutableArray<FileError> Errors) Read(TextReader text, string file, ImmutableArray<SetUpPoint> points)
    {
        var readings = ImmutableArray.CreateBuilder<SetUpReading>();
        var errors = ImmutableArray.CreateBuilder<FileError>();
        (string Name, Unit? Unit)[]? head = null;
        char separator = ',';
        int at = 0;
        for (string? line = text.ReadLine(); line is not null && errors.Count < 100; line = text.ReadLine())
        {
            at++;
            line = line.Trim().TrimStart('\uFEFF');
            if (line.Length == 0 || line[0] == '#') continue;
            if (head is null)
            {
                separator = line.Contains(';', StringComparison.Ordinal) ? ';' : line.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
                head = Head(line.Split(separator));
                if (head is null) break;
                continue;
            }

            Row(line.Split(separator));
        }

        if (head is null && errors.Count == 0) Refuse("the table is empty", $"begin with a head line: {RightHead}");
        return (readings.ToImmutable(), errors.ToImmutable());

        (string, Unit?)[]? Head(string[] heads)
        {
            var columns = new List<(string, Unit?)>();
            foreach (string column in heads.Select(h => h.Trim().Trim('"')))
            {
                int bracket = column.IndexOf('[', StringComparison.Ordinal);
                string name = (bracket < 0 ? column : column[..bracket]).Trim(), unit = bracket < 0 ? "" : column[(bracket + 1)..].TrimEnd(']').Trim();
                Dimension? dimension = name switch { "from" or "to" => Dimension.One, "distance" or "height" => Dimension.Length, "level" or "reversed" => Dimension.Angle, _ => null };
                if (dimension is null)
                {
                    Refuse($"there is no column \"{Shown.Short(name)}\" here", $"the head is {RightHead}");
                    return null;
                }

                var found = dimension == Dimension.One ? null : Quantity.Find(dimension.Value, unit);
                if (dimension != Dimension.One && (unit.Length == 0 || found is null))
                {
                    Refuse($"column {name} names no unit that fits", $"the head is {RightHead}");
                    return null;
                }

                columns.Add((name, found));
            }

            if (columns.Any(c => c.Item1 == "from")) return [.. columns];
            Refuse("column from is missing", $"the head is {RightHead}");
            return null;
        }

        void Row(string[] fields)
        {
            if (fields.Length != head!.Length)
            {
                Refuse($"this row has {fields.Length} of {head.Length} fields", "leave a field empty rather than out");
                return;
            }

            var values = new Dictionary<string, double>(StringComparer.Ordinal);
            int from = -1, to = -1;
            for (int i = 0; i < fields.Length; i++)
            {
                var (name, unit) = head[i];
                string field = fields[i].Trim().Trim('"').Trim();
                if (field.Length == 0) continue;
                if (name is "from" or "to")
                {
                    int corner = IndexOf(field);
                    if (corner < 0)
                    {
                        Refuse($"there is no corner \"{Shown.Short(field)}\"", $"corners are {string.Join(", ", points.Select(p => p.Name))}");
                        return;
                    }

                    if (name == "from") from = corner;
                    else to = corner;
                }
                else if (CsvNumber.TryRead(field, unit!, separator != ',', out double value))
                {
                    values[name] = value;
                }
                else
                {
                    Refuse($"\"{Shown.Short(field)}\" is not a number", "write a number only; its unit stands in the head");
                    return;
                }
            }

            bool pair = from >= 0 && to >= 0 && from != to;
            if (values.Count == 1 && values.TryGetValue("distance", out double distance) && pair) readings.Add(new(SetUpKind.Distance, from, to, distance, SettingUp.TapeUncertainty));
            else if (values.Count == 1 && values.TryGetValue("height", out double height) && from >= 0 && to < 0) readings.Add(new(SetUpKind.Height, from, -1, height, SettingUp.HeightUncertainty));
            else if (values.Count == 2 && values.TryGetValue("level", out double level) && values.TryGetValue("reversed", out double reversed) && pair)
                readings.Add(new(SetUpKind.Level, from, to, (level - reversed) / 2, SettingUp.LevelUncertainty));
            else Refuse("a row is one reading", "a distance between two corners, a height of one, or a level with its reversed reading between two");
        }

        int IndexOf(string name)
        {
            for (int i = 0; i < points.Length; i++)
                if (points[i].Name == name) return i;
            return -1;
        }

        void Refuse(string problem, string remedy) => errors.Add(new(file, Math.Max(1, at), 1, "", problem, remedy));
    }
}
