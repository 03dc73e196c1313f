using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Listing;
using Trivet.Views.Words;

namespace Trivet.Views.Listing;

/// <summary>One line in finished texts, with the line itself for programs.</summary>
public sealed record PartsRow(PartsLine Line, string Group, string Name, string Sizes, string Supplied);

/// <summary>The parts list of a cell as people read it.</summary>
public sealed record PartsSheet(string Title, string Cell, ImmutableArray<PartsRow> Rows, string Summary)
{
    public static PartsSheet Of(Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Parts;
        ImmutableArray<PartsRow> rows = [.. PartsLines.Of(cell).Lines.Select(l => new PartsRow(
            l, words.Groups[(int)l.Group], Named(l, words), string.Join(" × ", l.Sizes.Select(s => Numbers.Quantity(s, "m", locale))), Supply(l, words)))];
        return new(words.Title, cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell, rows, Sum(rows, words, locale));
    }

    private static string Named(PartsLine line, PartsWords words)
    {
        string kind = words.Kinds[(int)line.Kind];
        return line.Name.Length == 0 ? kind : kind.Length == 0 || line.Kind is PartKind.Motor or PartKind.Hose or PartKind.Guard ? line.Name : $"{kind} {line.Name}";
    }

    private static string Supply(PartsLine line, PartsWords words)
    {
        if (line.Supplied is not { } supplied) return words.NotSaid;
        string word = supplied == Supplied.Bought ? words.Bought : words.Made;
        return line.Stated ? word : Locale.Fill(words.Usual, ("supplied", word));
    }

    private static string Sum(ImmutableArray<PartsRow> rows, PartsWords words, Locale? locale)
    {
        if (rows.IsEmpty) return words.Nothing;
        var culture = (locale ?? Locale.English).Culture;
        int Pieces(Supplied? of) => rows.Where(r => of is null || r.Line.Supplied == of).Sum(r => r.Line.Quantity);
        return Locale.Fill(
            words.Summary, ("lines", rows.Length.ToString(culture)), ("pieces", Pieces(null).ToString(culture)), ("bought", Pieces(Supplied.Bought).ToString(culture)),
            ("made", Pieces(Supplied.Made).ToString(culture)));
    }
}
