using System.Collections.Immutable;
using System.Text;
using Trivet.Assessment;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Views.Words;

namespace Trivet.Views.Drawings;

/// <summary>
/// A working plane: contour lines of one quantity over what the tool centre point reaches there, hatched the denser the worse, with
/// the stations and the limit. Hatching instead of colours, so that it reads the same in print, in the dark and to every eye.
/// </summary>
internal sealed class PlaneSheet
{
    private const double HatchPitch = 3.2, LabelSize = 10.5, NameSize = 12;
    private const int Resolution = 96;

    /// <summary>Pixels. Shorter pieces are what the grid leaves of a line that runs along the end of the reach.</summary>
    private const double ShortestContour = 30;

    private readonly Assessed _cell;
    private readonly Locale _locale;
    private readonly PlaneQuantity _quantity;
    private readonly WorkingPlane _plane;
    private readonly Seen _seen;
    private readonly PlaneMap _map;
    private readonly Outline _outline;
    private readonly Sheet _sheet;
    private readonly SheetFrame _frame;

    private PlaneSheet(Assessed cell, double z_C, PlaneQuantity quantity, Locale locale)
    {
        (_cell, _quantity, _locale) = (cell, quantity, locale);
        double along = cell.Geometry.Stations.IsEmpty ? 0 : cell.Geometry.Stations[0].LinearAxisAt;
        bool own = cell.Geometry.Robot is { Planar: true };
        _seen = own ? Views.Drawings.Seen.AlongY : Views.Drawings.Seen.FromAbove;
        _plane = own ? WorkingPlane.OfRobot(cell.Geometry, 0, along) : WorkingPlane.Level(z_C);
        _map = PlaneMap.Of(cell.Geometry, _plane, Travel ? MapQuantity.TravelLeft : MapQuantity.Condition, Resolution, linearAxis: along);
        _outline = cell.Geometry.Robot is { } robot
            ? PlaneMap.PlaneOutline(cell.Geometry, new ReachableSet(robot), _plane, 0, along)
            : new(_plane.Origin, _plane.U, _plane.V, []);
        string name = cell.Cell.Name ?? locale.Language.UnnamedCell, z = Numbers.Quantity(z_C, "m", locale);
        Title = Travel ? Words.TravelSheet : Words.DexteritySheet;
        Name = name;
        Seen = own ? Words.OwnPlaneSeen : Locale.Fill(Words.PlaneSeen, ("z", z));
        _sheet = new($"{Title}, {Seen}: {name}", own ? Locale.Fill(Words.OwnPlaneDescription, ("cell", name)) : Locale.Fill(Words.PlaneDescription, ("cell", name), ("z", z)), SheetFrame.Width, SheetFrame.Height);
        _frame = new(_sheet, locale);
    }

    private DrawingWords Words => _locale.Language.Drawing;
    private bool Travel => _quantity == PlaneQuantity.Travel;
    private string Title { get; }
    private string Name { get; }
    private string Seen { get; }

    public static Drawing Draw(Assessed cell, double z_C, PlaneQuantity quantity, Locale locale) => new PlaneSheet(cell, z_C, quantity, locale).Draw();

    /// <summary>Values of the contour lines; a share of half the travel, or a condition number.</summary>
    private double[] Levels => Travel ? [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] : [1.25, 1.5, 2, 2.5, 3, 4, 5, 7, 10, 20];

    /// <summary>Three steps of hatching, the worst first: every line, every second, every fourth.</summary>
    private double[] Steps => Travel ? [0.05, 0.1, 0.2] : [5, 3, 2];

    /// <summary>The limit as a value of the map; not a number where none is stated, or where it differs from chain to chain.</summary>
    private double Limit
    {
        get
        {
            if (!Travel) return _cell.Cell.Robot.Dexterity.LargestCondition ?? double.NaN;
            if (_cell.Cell.Robot.Dexterity.TravelReserve is not { } reserve || _cell.Geometry.Robot is not { } robot) return double.NaN;
            double[] half = [.. robot.Chains.Select(c => (c.TravelTo - c.TravelFrom) / 2).Distinct()];
            return half.Length == 1 && reserve > 0 ? reserve / half[0] : double.NaN;
        }
    }

    private Drawing Draw()
    {
        string scale = "–";
        if (_map.Columns < 2 || _map.Rows < 2)
        {
            Labels.Centred(_sheet, _frame.Area, [(_frame.Area.X + _frame.Area.Width / 2, _frame.Area.Y + _frame.Area.Height / 2)], TextMetrics.Cut(Words.NothingReached, NameSize, _frame.Area.Width - 20), NameSize, "s");
        }
        else
        {
            var view = ViewOf();
            scale = "1 : " + view.Denominator.ToString(_locale.Culture);
            DrawMap(view);
        }

        _frame.Title(Name, Title, scale, Seen, _cell.Proved ? Words.StateProved : Words.StatePreview);
        Legend();
        _frame.Space(10);
        _frame.Stations(_cell);
        return _sheet.Finish();
    }

    private View ViewOf()
    {
        var extents = new Extents(_seen);
        foreach (var p in _outline.Loops.SelectMany(l => l)) extents.Add(Flat(p));
        foreach (var box in _cell.Geometry.Stations) foreach (var p in CellParts.Zone(box, _cell.Cell)) extents.Add(Flat(p));
        var area = _frame.Area;
        return View.Fit(_seen, extents, new(area.X + 34, area.Y + 34, area.Width - 68, area.Height - 78));
    }

    /// <summary>A place of the cell as the plane shows it: along u to the right and along v up.</summary>
    private Vec3 Flat(Vec3 p_C)
    {
        var (u, v) = _plane.Of(p_C);
        return _seen == Views.Drawings.Seen.FromAbove ? new(u, v, 0) : new(u, 0, v);
    }

    private void DrawMap(View view)
    {
        view.Open(_sheet);
        Hatch(view);
        foreach (var loop in _outline.Loops) _sheet.Polygon(loop.Select(p => view.At(Flat(p))), "w");
        var labels = new List<(List<(double X, double Y)> Line, string Text, string Style)>();
        double limit = Limit;
        // A level that the limit is drawn at needs no second line and no second name.
        foreach (double level in Levels.Where(l => Level(l) != Level(limit))) Contour(level, Level(level), "", "o");
        if (double.IsFinite(limit)) Contour(limit, $"{Words.LegendLimit} {Level(limit)}", "x", "a o");
        foreach (var box in _cell.Geometry.Stations.Where(b => b.LinearAxisAt == _cell.Geometry.Stations[0].LinearAxisAt))
        {
            _sheet.Open(("class", "station"), ("data-pointer", "/stations/" + box.Id));
            _sheet.Polygon(Rim(view, box), "w");
            _sheet.Close();
        }

        _sheet.Close();
        foreach (var box in _cell.Geometry.Stations) StationName(view, box);
        foreach (var (line, text, style) in labels.OrderByDescending(l => l.Style.Length)) Label(line, text, style);

        void Contour(double level, string text, string style, string words)
        {
            foreach (var line in Contours.At(_map, level))
            {
                var drawn = line.Select(p => (view.AtX(p.X), view.AtUp(p.Y))).ToList();
                if (LengthOf(drawn) < ShortestContour) continue;
                _sheet.Polyline(drawn, style);
                labels.Add((drawn, text, words));
            }
        }
    }

    /// <summary>What is seen of a station's box, which may be as thin as a line.</summary>
    private ImmutableArray<(double X, double Y)> Rim(View view, StationBox b) => Hull.Of(Enumerable.Range(0, 8).Select(corner => view.At(Flat(b.X_CS * new Vec3(
        (corner & 1) == 0 ? b.Low.X : b.High.X, (corner & 2) == 0 ? b.Low.Y : b.High.Y, (corner & 4) == 0 ? b.Low.Z : b.High.Z)))));

    private void StationName(View view, StationBox box)
    {
        var rim = Rim(view, box);
        double x = rim.Average(p => p.X), y = rim.Average(p => p.Y), low = rim.Max(p => p.Y), high = rim.Min(p => p.Y);
        string name = _cell.Cell.Stations.GetValueOrDefault(box.Id)?.Name ?? box.Id;
        if (!Labels.Centred(_sheet, _frame.Area, [(x, y), (x, high - 10), (x, low + 10)], name, NameSize, "k o"))
            Labels.Callout(_sheet, _frame.Area, x, y, [name], NameSize, "k o", "d");
    }

    /// <summary>A contour's value on the line itself, where it is free; short lines are left unlabelled.</summary>
    private void Label(List<(double X, double Y)> line, string text, string style)
    {
        double w = TextMetrics.Width(text, LabelSize);
        if (LengthOf(line) < 2 * w + 16) return;
        var places = ((double[])[0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.05, 0.95]).Select(f => line[(int)(f * (line.Count - 1))]);
        Labels.Centred(_sheet, _frame.Area, places, text, LabelSize, style);
    }

    private static double LengthOf(List<(double X, double Y)> line)
    {
        double length = 0;
        for (int i = 1; i < line.Count; i++) length += Math.Sqrt(Math.Pow(line[i].X - line[i - 1].X, 2) + Math.Pow(line[i].Y - line[i - 1].Y, 2));
        return length;
    }

    /// <summary>Lines at 45°, each broken where the value is good enough for its density.</summary>
    private void Hatch(View view)
    {
        double x0 = view.AtX(_map.FromU), x1 = view.AtX(_map.FromU + (_map.Columns - 1) * _map.Step);
        double y1 = view.AtUp(_map.FromV), y0 = view.AtUp(_map.FromV + (_map.Rows - 1) * _map.Step);
        const double Walk = 1.5;
        double across = HatchPitch * Math.Sqrt(2);
        int lines = (int)((x1 - x0 + y1 - y0) / across);
        var path = new StringBuilder();
        for (int n = 1; n < lines; n++)
        {
            // Along a line (x − x0) + (y − y0) is constant; it is walked to the right.
            double sum = n * across, from = Math.Max(0, sum - (y1 - y0)), to = Math.Min(x1 - x0, sum);
            double? begun = null;
            for (double u = from; ; u += Walk)
            {
                bool on = u <= to && Dense(ValueAt(view, x0 + u, y0 + (sum - u)), n);
                if (on && begun is null) begun = u;
                else if (!on && begun is { } b)
                {
                    if (u - b > 2 * Walk) path.Append('M').Append(At(b, sum)).Append('L').Append(At(u - Walk, sum));
                    begun = null;
                }

                if (u > to) break;
            }
        }

        if (path.Length > 0) _sheet.Path(path.ToString(), "hatch");

        string At(double u, double sum) => $"{Sheet.N(x0 + u)} {Sheet.N(y0 + sum - u)}";
    }

    private bool Dense(double value, int line)
    {
        int every = Travel
            ? value < Steps[0] ? 1 : value < Steps[1] ? 2 : value < Steps[2] ? 4 : 0
            : value > Steps[0] ? 1 : value > Steps[1] ? 2 : value > Steps[2] ? 4 : 0;
        return every > 0 && line % every == 0;
    }

    /// <summary>The value at the nearest grid point; not a number outside. Finer than a hatch's width is not needed.</summary>
    private double ValueAt(View view, double x, double y)
    {
        int i = (int)Math.Round(((x - view.OriginX) / view.Scale - _map.FromU) / _map.Step), j = (int)Math.Round(((view.OriginY - y) / view.Scale - _map.FromV) / _map.Step);
        return i < 0 || j < 0 || i >= _map.Columns || j >= _map.Rows ? double.NaN : _map.At(i, j);
    }

    private string Level(double v) => Travel ? Numbers.Percent(v, _locale) : Numbers.Plain(v, 2, _locale);

    private void Legend()
    {
        _frame.Heading(Travel ? Words.LegendTravel : Words.LegendDexterity);
        string[] texts = [.. Steps.Select((s, i) => (Travel, i) switch
        {
            (true, 0) => $"< {Level(s)}",
            (false, 0) => $"> {Level(s)}",
            _ => Travel ? $"{Level(Steps[i - 1])} – {Level(s)}" : $"{Level(s)} – {Level(Steps[i - 1])}",
        })];
        for (int i = 0; i < texts.Length; i++) _frame.Sample(texts[i], HatchPitch * Math.Sqrt(2) * (1 << i));
        if (double.IsFinite(Limit)) _frame.Sample($"{Words.LegendLimit} {Level(Limit)}", 0, "x");
        _frame.Sample(Words.LegendReach, 0, "w");
    }
}
