using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Cells;

namespace Trivet.Files;

/// <summary>What a step may depend on and is not as it was: fields by their SI values, collections by which entries they have in which order.</summary>
public static class FieldMoves
{
    public static ImmutableArray<FieldMove> Of(Cell then, Cell now)
    {
        var (before, after) = (CellFields.Collections(then), CellFields.Collections(now));
        return
        [
            .. CellFields.Changes(then, now).Select(c => new FieldMove(c.Pointer, c.Before, c.After)),
            .. before.Keys.Union(after.Keys).Order(StringComparer.Ordinal)
                .Select(p => new FieldMove(p, before.GetValueOrDefault(p, ""), after.GetValueOrDefault(p, "")))
                .Where(m => m.From != m.To),
        ];
    }
}
