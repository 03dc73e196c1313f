using Trivet.Cells;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Frames;

/// <summary>From where the frame is seen.</summary>
public enum FrameView
{
    FromAbove,
    AlongY,
    AlongX,
    FromACorner,
}

/// <summary>The axes of a frame's members as a drawing, as they stand or as a mode swings them.</summary>
public static class FrameDrawing
{
    private const double Width = 620, Height = 560, Margin = 46, Label = 12;

    /// <summary>How far the largest displacement is drawn, as a part of the frame's size.</summary>
    private const double Swing = 0.09;

    /// <summary>Time of one swing on the screen: slow enough for the eye, whatever the frequency.</summary>
    private const double Seconds = 1.6;

    /// <param name="mode">From 0; −1 for the frame as it stands.</param>
    /// <param name="stiff">With the stiffest joints instead of the softest.</param>
    /// <param name="moving">The mode swings; else it is held at its largest.</param>
    public static Drawing Of(FrameReport report, FrameView view, int mode = -1, bool stiff = false, bool moving = false, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Frame;
        var study = report.Study ?? throw new ArgumentException("There is no study: the frame is not described.", nameof(report));
        var solution = stiff ? study.Stiff : study.Soft;
        var shown = mode >= 0 && mode < solution.Modes.Length ? solution.Modes[mode] : null;
        string told = shown is null ? words.Still : Locale.Fill(words.ModeShown, ("number", (mode + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)), ("range", Numbers.Quantity(shown.Hz, "Hz", locale)));
        string name = report.Cell.Name ?? language.UnnamedCell;
        var sheet = new Sheet(
            $"{words.Drawing}: {told}", Locale.Fill(words.DrawingDescription, ("cell", name), ("view", words.Views[(int)view]), ("mode", told)), Width, Height);

        var lines = study.Mesh.Lines;
        var points = lines.SelectMany(l => l).Select(p => p.P).ToArray();
        double size = Math.Max(points.Max(p => p.Z) - points.Min(p => p.Z), points.Max(p => (p - points[0]).Norm));
        double largest = shown is null ? 0 : lines.SelectMany(l => l).Max(p => p.Displacement(shown.Vector).Norm);
        double amplitude = largest > 0 ? Swing * size / largest : 0;
        var flat = points.Select(p => Flat(p, view)).ToArray();
        double left = flat.Min(p => p.X), right = flat.Max(p => p.X), low = flat.Min(p => p.Y), high = flat.Max(p => p.Y);
        double scale = Math.Min((Width - 2 * Margin) / Math.Max(right - left, 0.1), (Height - 2 * Margin) / Math.Max(high - low, 0.1));
        (double X, double Y) At(Vec3 p)
        {
            var (x, y) = Flat(p, view);
            return (Width / 2 + (x - (left + right) / 2) * scale, Height / 2 - (y - (low + high) / 2) * scale);
        }

        foreach (var (line, i) in lines.Select((l, i) => (l, i)).OrderByDescending(l => Depth(l.l[0].P + l.l[^1].P, view)))
        {
            var bar = study.Mesh.Input.Lines[i].Bar;
            sheet.Open(("data-pointer", bar.Pointer));
            sheet.Tooltip(bar.Id);
            var still = line.Select(p => At(p.P));
            sheet.Polyline(still, shown is null ? "w" : "d h");
            if (shown is not null)
            {
                (double, double)[] one = [.. line.Select(p => At(p.P + amplitude * p.Displacement(shown.Vector)))];
                if (moving) sheet.Swinging(one, line.Select(p => At(p.P - amplitude * p.Displacement(shown.Vector))), "x w", Seconds);
                else sheet.Polyline(one, "x w");
            }

            sheet.Close();
        }

        if (view != FrameView.FromAbove)
            foreach (var foot in study.Mesh.Feet) Foot(sheet, At(foot.P));
        else
            foreach (var foot in study.Mesh.Feet) sheet.Circle(At(foot.P).X, At(foot.P).Y, 5, "w p");
        Robot(sheet, study, shown, amplitude, At, moving);
        sheet.Text(16, 24, $"{words.Views[(int)view]} · {told}", Label, "s");
        return sheet.Finish();
    }

    /// <summary>The robot's base: its origin and its bolts, and where they swing.</summary>
    private static void Robot(Sheet sheet, FrameStudy study, FrameMode? shown, double amplitude, Func<Vec3, (double X, double Y)> at, bool moving)
    {
        if (study.Mesh is not { Mount: { } mount, Input.Mount: { } robot }) return;
        var motion = shown is null ? default : study.Soft.MountOf(shown.Vector);
        foreach (var bolt in robot.Bolts_C)
        {
            var arm = bolt - mount.P;
            sheet.Polyline([at(mount.P), at(bolt)], shown is null ? "b" : "d h");
            if (shown is null) continue;
            (double, double)[] one = [Moved(Vec3.Zero, 1), Moved(arm, 1)], other = [Moved(Vec3.Zero, -1), Moved(arm, -1)];
            if (moving) sheet.Swinging(one, other, "x", Seconds);
            else sheet.Polyline(one, "x");
        }

        var (x, y) = at(mount.P);
        sheet.Circle(x, y, 4, shown is null ? "f" : "ff");

        (double X, double Y) Moved(Vec3 arm, int way) => at(mount.P + arm + way * amplitude * motion.At(arm));
    }

    private static void Foot(Sheet sheet, (double X, double Y) at)
    {
        sheet.Polygon([at, (at.X - 7, at.Y + 11), (at.X + 7, at.Y + 11)], "p b");
        sheet.Line(at.X - 12, at.Y + 11, at.X + 12, at.Y + 11, "w");
    }

    /// <summary>Right and up on the sheet. From a corner: isometric, x to the right and back, y to the left and back (ISO 5456-3, from memory).</summary>
    private static (double X, double Y) Flat(Vec3 p, FrameView view) => view switch
    {
        FrameView.FromAbove => (p.X, p.Y),
        FrameView.AlongY => (p.X, p.Z),
        FrameView.AlongX => (p.Y, p.Z),
        _ => ((p.X - p.Y) * Math.Sqrt(3) / 2, (p.X + p.Y) / 2 + p.Z),
    };

    /// <summary>Away from who looks.</summary>
    private static double Depth(Vec3 p, FrameView view) => view switch
    {
        FrameView.FromAbove => -p.Z,
        FrameView.AlongY => p.Y,
        FrameView.AlongX => -p.X,
        _ => p.X + p.Y - p.Z,
    };
}
