using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>One fall in finished texts; a dash where nothing moves or nothing is known.</summary>
public sealed record FallCell(FallOutcome Of, string End, string Time, string Drop, string Speed, string Energy)
{
    public bool Moves => Of.Fall.End is not (FallEnd.Stays or FallEnd.NotComputed);
}

/// <summary>One chain at one place, or all of them.</summary>
public sealed record FallRow(FallCase Of, string Chain, string HeldBy, string Load, FallCell AsHeld, FallCell Gone);

/// <summary>All rows of one place.</summary>
public sealed record FallBlock(FallPlace Of, string Where, ImmutableArray<FallRow> Rows);

/// <summary>What falls where when drives let go, in finished texts.</summary>
/// <param name="Waits">Why there is nothing, or less than all; empty otherwise.</param>
public sealed record FallSheet(string Title, ImmutableArray<FallBlock> Blocks, ImmutableArray<string> Waits)
{
    public static FallSheet Of(Cell cell, Falls falls, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Falls;
        string unit = cell.Robot.Family == RobotFamily.CrankDelta ? "N m" : "N";
        var waits = ImmutableArray.CreateBuilder<string>();
        if (!falls.Missing.IsEmpty)
            waits.Add(Locale.Fill(words.Waits, ("fields", Fields.List(falls.Missing.Select(p => Fields.Words(cell, p, locale)), locale))));
        foreach (var problem in falls.Problems) waits.Add($"{Fields.Words(cell, problem.Pointer, locale)}: {Sentences.Of(problem.Reason, cell, locale)}");
        if (falls.Places.IsEmpty && waits.Count == 0) waits.Add(words.NoPlaces);
        return new(cell.Name ?? language.UnnamedCell, [.. falls.Places.Select(Block)], waits.ToImmutable());

        FallBlock Block(FallPlace place) => new(
            place, Locale.Fill(words.Points[(int)place.Point], ("subject", Fields.Words(cell, place.Pointer, locale))), [.. place.Cases.Select(Row)]);

        FallRow Row(FallCase of) => new(
            of, of.Chain is { } id ? Fields.Axis(cell, id, language) : words.AllChains, HeldBy(of.Holding), Numbers.Quantity(of.Load, unit, locale), Cell(of.AsHeld), Cell(of.Gone));

        string HeldBy(ChainHolding holding)
        {
            string kind = words.Holdings[(int)holding.Kind];
            if (holding.Kind is Holding.Nothing or Holding.Prop) return kind;
            return double.IsNaN(holding.Force) ? Locale.Fill(words.HoldsUnknown, ("holding", kind)) : Locale.Fill(words.HoldsForce, ("holding", kind), ("force", Numbers.Quantity(holding.Force, unit, locale)));
        }

        FallCell Cell(FallOutcome of)
        {
            var fall = of.Fall;
            bool moves = fall.End is not (FallEnd.Stays or FallEnd.NotComputed);
            return new(
                of, words.Ends[(int)fall.End], Shown(fall.Time, "s", 2), Shown(1000 * of.Drop, "mm", 0), Shown(fall.FastestPlatform, "m/s", 2), Shown(fall.Energy, "J", 2));

            string Shown(double value, string per, int decimals) => moves ? $"{Numbers.Plain(value, decimals, locale)} {per}" : "–";
        }
    }
}
