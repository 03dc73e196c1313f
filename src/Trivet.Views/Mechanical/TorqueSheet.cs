using System.Collections.Immutable;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>One joint on the torque sheet, in finished texts beside the calculation.</summary>
public sealed record TorqueRow(int Number, string Id, string Joint, string Screws, string Steps, string Torque, string Preload, string Kept, string LimitedBy, string Sequence, JointResult Result);

/// <summary>The joints of a cell in the order they are tightened.</summary>
/// <param name="Notes">For whoever tightens.</param>
public sealed record TorqueSheet(string Title, string Cell, ImmutableArray<TorqueRow> Rows, ImmutableArray<string> Notes)
{
    // A joint is brought to its torque in three steps: common practice.
    private static readonly double[] Steps = [0.3, 0.6, 1];

    public static TorqueSheet Of(Cell cell, ImmutableArray<JointResult> results, Locale? locale = null)
    {
        var where = locale ?? Locale.English;
        var words = where.Language.Joint;
        string NameOf(string id) => cell.Joints[id].Name ?? id;
        var rows = results.Select((r, i) => Row(r, i + 1, NameOf(r.Input.Id), words, where)).ToImmutableArray();
        string[] open = [.. cell.Joints.InOrder().Select(j => j.Key).Where(id => results.All(r => r.Input.Id != id)).Select(NameOf)];
        ImmutableArray<string> notes =
        [
            .. words.NoteLines,
            .. results.Where(r => r.Input.ThreadStuff.Creep > 0 || r.Input.Layers.Any(l => l.Stuff.Creep > 0)).Select(r => Locale.Fill(words.CreepNote, ("joint", NameOf(r.Input.Id)))),
            .. open.Length == 0 ? [] : new[] { Locale.Fill(words.NotCalculated, ("joints", Fields.List(open, where))) },
        ];
        return new(words.Title, cell.Name ?? where.Language.UnnamedCell, rows, notes);
    }

    private static TorqueRow Row(JointResult r, int number, string name, JointWords words, Locale where)
    {
        string Newtons(double n) => Numbers.Rough(n, "N", where);
        // The last step is the torque itself, whatever rounding makes of the others.
        string steps = string.Join(" – ", Steps.Select(s => Torque(s < 1 ? Tightening.Settable(s * r.Torque) : r.Torque, where)));
        return new(
            number, r.Input.Id, name,
            Locale.Fill(words.Screws, ("count", r.Input.Points.Length.ToString(where.Culture)), ("thread", r.Input.Thread.Name), ("class", r.Input.Class.Name)),
            steps, Torque(r.Torque, where) + " N m", Locale.Fill(words.Range, ("from", Newtons(r.PreloadFrom)), ("to", Newtons(r.PreloadTo))),
            r.Kept > 0 ? Newtons(r.Kept) : words.Nothing, words.Limits[(int)r.LimitedBy], string.Join(" ", JointResult.Crosswise(r.Input.Points).Select(i => (i + 1).ToString(where.Culture))), r);
    }

    private static string Torque(double torque, Locale where) => Numbers.Plain(torque, torque < 10 ? 2 : 1, where);

    public static ImmutableArray<string> Heads(Locale where)
    {
        var w = where.Language.Joint;
        return [w.HeadOrder, w.HeadJoint, w.HeadScrews, w.HeadSteps, w.HeadTorque, w.HeadPreload, w.HeadKept, w.HeadLimit, w.HeadSequence];
    }

    public static ImmutableArray<string> Cells(TorqueRow r) =>
        [r.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), r.Joint, r.Screws, r.Steps, r.Torque, r.Preload, r.Kept, r.LimitedBy, r.Sequence];

    /// <summary>On A4 across, with room to sign each joint.</summary>
    public Paper Paper(string revision, string made, Locale? locale = null)
    {
        var where = locale ?? Locale.English;
        var words = where.Language.Joint;
        var plate = where.Language.Plate;
        var table = new DraftingTable(Title, Locale.Fill(words.Description, ("cell", Cell)), 297, 210);
        table.Frame(Title, [new(plate.Cell, Cell), new(plate.Revision, revision), new(plate.Drawn, made)]);
        double y = table.Table(DraftingTable.Left + 4, table.Top - 6, [9, 48, 24, 26, 18, 36, 18, 36, 28, 16],
            [[.. Heads(where), words.HeadDone], .. Rows.Select(r => (IReadOnlyList<string>)[.. Cells(r), ""])], 7);
        y -= 8;
        table.Text(DraftingTable.Left + 4, y, words.Notes, DraftingTable.Heading, strong: true);
        foreach (string line in Notes.SelectMany(n => DraftingTable.Lines(n, 250))) table.Text(DraftingTable.Left + 4, y -= 4.6, line);
        return table.Done();
    }
}
