using Trivet.Cells;

namespace Trivet.Cabinets;

/// <summary>One module more, to see what it changes: order, addresses, heat and supplies follow by their plans.</summary>
public static class OneMore
{
    /// <summary>A module like another, without place, address, name and axis; its id is the other's with the next free number. Null where there is no such module.</summary>
    public static Cell? Like(Cell cell, string module)
    {
        var modules = cell.Cabinet.Modules;
        if (!modules.TryGetValue(module, out var like)) return null;
        int number = 2;
        while (modules.ContainsKey($"{module}-{number}")) number++;
        return cell with
        {
            Cabinet = cell.Cabinet with { Modules = modules.Add($"{module}-{number}", like with { Order = null, Address = null, Name = null, Drives = null, Note = null }) },
        };
    }

    /// <summary>One more like the last along the rail of a role. Null where none has it.</summary>
    public static Cell? OfRole(Cell cell, string role) =>
        cell.Cabinet.Modules.InOrder().LastOrDefault(m => m.Value.Role == role) is { Key: { } id } ? Like(cell, id) : null;
}
