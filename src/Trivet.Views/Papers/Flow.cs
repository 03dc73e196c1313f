using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Views.Drawings;

namespace Trivet.Views.Papers;

/// <summary>A piece of a text that flows over pages. Closed: headings, paragraphs, tables and pictures are all there are.</summary>
public abstract record FlowBlock;

/// <summary>Stays on the page of what follows it.</summary>
public sealed record FlowHeading(string Text, bool Large = false) : FlowBlock;

public sealed record FlowParagraph(string Text, bool Strong = false) : FlowBlock;

/// <summary>A table whose head stands again on each page; a row stays whole, its texts in lines as wide as their column.</summary>
/// <param name="Shares">Widths of the columns, as parts of their sum.</param>
/// <param name="Size">Of the type, millimetres.</param>
public sealed record FlowTable(ImmutableArray<string> Head, ImmutableArray<double> Shares, ImmutableArray<ImmutableArray<string>> Rows, double Size = DraftingTable.Type) : FlowBlock
{
    /// <summary>Smallest type of a paper that is read beside the work (common practice, no source), millimetres.</summary>
    private const double Smallest = 1.6;

    /// <summary>
    /// A table whose columns are wide enough for their longest word, measured, and share what is left by what their texts would take on one line. Where not even the words fit, the type is made smaller.
    /// </summary>
    /// <param name="width">Of the page, millimetres.</param>
    public static FlowTable Fitted(ImmutableArray<string> head, ImmutableArray<ImmutableArray<string>> rows, double width = 297)
    {
        const double LargestShare = 0.35;
        double inner = width - 2 * Flow.Margin;
        for (double size = DraftingTable.Type; ; size -= 0.1)
        {
            double[] least = [.. head.Select((_, k) => rows.Select(r => r[k]).Append(head[k]).SelectMany(t => t.Split(' ')).Max(w => TextMetrics.Width(w, size)) + Flow.Inset + 0.1)];
            double[] most = [.. head.Select((_, k) => Math.Max(least[k], Math.Min(LargestShare * inner, rows.Select(r => r[k]).Append(head[k]).Max(t => TextMetrics.Width(t, size)) + Flow.Inset)))];
            double spare = inner - least.Sum(), wanted = most.Sum() - least.Sum();
            if (spare < 0 && size > Smallest) continue;
            return new(head, [.. least.Select((l, k) => l + (wanted > 0 ? Math.Max(spare, 0) * (most[k] - l) / wanted : 0))], rows, size);
        }
    }
}

/// <summary>A picture in the middle of the lines. It is never cut: whoever sets one makes it fit a page.</summary>
/// <param name="Marks">From its lower left corner.</param>
/// <param name="Width">Millimetres.</param>
public sealed record FlowPicture(ImmutableArray<Mark> Marks, double Width, double Height) : FlowBlock;

/// <summary>
/// Sets blocks on pages: each is measured, and drawn where it fits, else on the next page. A heading is kept with what follows; a table breaks between rows and repeats its head. What
/// is higher than a page by itself is cut to it, so setting always ends.
/// </summary>
public sealed class Flow
{
    internal const double Margin = 15, Inset = 1.6;
    private const double Foot = 8, Line = 1.35, Pad = 1;

    /// <summary>How much wider strong type is than what is measured.</summary>
    internal const double StrongWider = 1.08;

    private const int MostLinesAgain = 3;

    /// <summary>Lines of a cell; a page has room for no more.</summary>
    private const int MostLines = 40;

    private readonly string _title, _description;
    private readonly double _width, _height;
    private readonly Func<int, int, string> _foot;
    private readonly string? _again;
    private readonly List<List<Mark>> _pages = [];
    private double _y, _top;

    private Flow(string title, string description, double width, double height, Func<int, int, string> foot, string? again) =>
        (_title, _description, _width, _height, _foot, _again) = (title, description, width, height, foot, again);

    /// <param name="width">Of a page, millimetres.</param>
    /// <param name="foot">Of a page, by its number and how many there are.</param>
    /// <param name="again">Stands strong at the head of every page but the first, so that it is known what goes on there.</param>
    public static ImmutableArray<Paper> Pages(string title, string description, double width, double height, IReadOnlyList<FlowBlock> blocks, Func<int, int, string> foot, string? again = null)
    {
        var flow = new Flow(title, description, width, height, foot, again);
        flow.NewPage();
        for (int i = 0; i < blocks.Count; i++) flow.Set(blocks, i);
        return flow.Done();
    }

    private double Inner => _width - 2 * Margin;
    private static double Lowest => Margin + Foot;
    private bool Fresh => _y >= _top;

    private void NewPage()
    {
        _pages.Add([]);
        _y = _height - Margin;
        if (_pages.Count > 1 && _again is not null)
        {
            foreach (string line in TextMetrics.Wrap(_again, DraftingTable.Type, Inner / StrongWider, MostLinesAgain))
            {
                _y -= DraftingTable.Type * Line;
                Text(Margin, _y + DraftingTable.Type * (Line - 1), line, DraftingTable.Type, Inner, true);
            }
            _y -= 2 * Pad;
        }
        _top = _y;
    }

    private void Set(IReadOnlyList<FlowBlock> blocks, int i)
    {
        switch (blocks[i])
        {
            case FlowHeading h:
                double size = h.Large ? 5 : DraftingTable.Heading, space = Fresh ? 0 : 4;
                if (!Fresh && _y - space - size * Line - Least(blocks, i + 1) < Lowest) (space, _) = (0, Turn());
                _y -= space + size * Line;
                Text(Margin, _y + size * (Line - 1), h.Text, size, Inner, true);
                break;
            case FlowParagraph p:
                foreach (string line in TextMetrics.Wrap(p.Text, DraftingTable.Type, Inner, 200))
                {
                    if (_y - DraftingTable.Type * Line < Lowest) NewPage();
                    _y -= DraftingTable.Type * Line;
                    Text(Margin, _y + DraftingTable.Type * (Line - 1), line, DraftingTable.Type, Inner, p.Strong);
                }
                _y -= Pad;
                break;
            case FlowTable t:
                Table(t);
                break;
            case FlowPicture d:
                if (!Fresh && _y - Pad - d.Height < Lowest) NewPage();
                _y -= Pad + d.Height;
                foreach (var mark in d.Marks) _pages[^1].Add(mark.Moved(new((_width - d.Width) / 2, _y)));
                _y -= 2 * Pad;
                break;
        }
    }

    private bool Turn()
    {
        NewPage();
        return true;
    }

    /// <summary>Height of the least of a block that may stand below a heading.</summary>
    private double Least(IReadOnlyList<FlowBlock> blocks, int i) => i >= blocks.Count ? 0 : blocks[i] switch
    {
        FlowHeading h => (h.Large ? 5 : DraftingTable.Heading) * Line + 4 + Least(blocks, i + 1),
        FlowTable t => HeightOf(t, t.Head) + (t.Rows.IsEmpty ? 0 : HeightOf(t, t.Rows[0])) + Pad,
        FlowPicture d => d.Height + Pad,
        _ => DraftingTable.Type * Line,
    };

    private void Table(FlowTable t)
    {
        _y -= Pad;
        if (!Fresh && _y - HeightOf(t, t.Head) - (t.Rows.IsEmpty ? 0 : HeightOf(t, t.Rows[0])) < Lowest) NewPage();
        Row(t, t.Head, true);
        foreach (var row in t.Rows)
        {
            if (_y - HeightOf(t, row) < Lowest)
            {
                NewPage();
                Row(t, t.Head, true);
            }
            Row(t, row, false);
        }
        _y -= Pad;
    }

    private List<string> LinesOf(FlowTable t, ImmutableArray<string> row, int column) => TextMetrics.Wrap(row[column], t.Size, WidthOf(t, column) - Inset, MostLines);

    private double HeightOf(FlowTable t, ImmutableArray<string> row) =>
        Math.Max(1, Enumerable.Range(0, t.Shares.Length).Max(c => LinesOf(t, row, c).Count)) * t.Size * Line + Pad;

    private double WidthOf(FlowTable t, int column) => Inner * t.Shares[column] / t.Shares.Sum();

    private void Row(FlowTable t, ImmutableArray<string> row, bool head)
    {
        double top = _y, x = Margin;
        if (head) Stroke(top, Pen.Outline);
        for (int c = 0; c < t.Shares.Length; c++)
        {
            double y = top - Pad / 2;
            foreach (string line in LinesOf(t, row, c))
            {
                y -= t.Size * Line;
                Text(x + Inset / 2, y + t.Size * (Line - 1), line, t.Size, WidthOf(t, c) - Inset, head);
            }
            x += WidthOf(t, c);
        }
        _y = top - HeightOf(t, row);
        Stroke(_y, head ? Pen.Outline : Pen.Thin);
    }

    private void Stroke(double y, Pen pen) => _pages[^1].Add(new Stroke([new Vec2(Margin, y), new(_width - Margin, y)], pen));

    private void Text(double x, double y, string text, double size, double most, bool strong) => _pages[^1].Add(new Label(new(x, y), TextMetrics.Cut(text, size, most), size, TextAnchor.Start, strong));

    private ImmutableArray<Paper> Done() =>
    [
        .. _pages.Select((marks, i) => new Paper(
            _title, _description, _width, _height, [.. marks, new Label(new(_width - Margin, Margin - 3), _foot(i + 1, _pages.Count), 2.2, TextAnchor.End), new Label(new(Margin, Margin - 3), _title, 2.2)])),
    ];
}
