using System.Collections.Immutable;
using Trivet.Views.Wiring;
using Trivet.Views.Words;

namespace Trivet.Views.Cabinets;

/// <summary>All that the electrical sheet says of one module, gathered.</summary>
public static class ModuleFacts
{
    /// <summary>Empty where there is no such module.</summary>
    public static ImmutableArray<Fact> Of(WiringSheet sheet, ImmutableArray<Section> sections, string module, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Wiring;
        if (sheet.Modules.FirstOrDefault(m => m.Id == module) is not { } row) return [];
        var facts = ImmutableArray.CreateBuilder<Fact>();
        Add("place", words.HeadPlace, Number(row.Place));
        if (row.Role.Length > 0) Add("role", words.HeadRole, row.Role);
        if (double.IsFinite(row.Width)) Add("width", words.HeadWidth, Numbers.Quantity(row.Width, "m", locale));
        if (row.Planned is { } address) Add("address", words.HeadAddress, row.Verdict.Length > 0 ? $"{Number(address)}, {row.Verdict}" : Number(address));
        if (row.SetBy.Length > 0) Add("set-by", words.HeadSet, row.SetBy);
        foreach (var section in sections)
        {
            foreach (var table in section.Tables)
            {
                int[] own = [.. Enumerable.Range(0, table.Rows.Length).Where(i => table.Pointers[i] == $"/cabinet/modules/{module}")];
                // The first column is the module itself; where it stands in several rows, the second tells them apart.
                int first = own.Length > 1 ? 2 : 1;
                foreach (int i in own)
                {
                    string id = first == 2 ? $"{table.Id}-{i}" : table.Id, of = first == 2 ? table.Rows[i][1].Text : table.Title;
                    for (int k = first; k < table.Columns.Length; k++)
                        if (table.Rows[i][k].Text is not "–") Add($"{id}-{table.Columns[k].Key}", $"{of}: {table.Columns[k].Head}", table.Rows[i][k].Text);
                }
            }
        }
        foreach (var start in sheet.StartUp.Where(s => s.Of.Module == module)) Add("start-up", words.StartUp, start.Identifier);
        foreach (var sent in sheet.Traffic.Where(t => t.Of.From == module)) Add($"sends-{sent.Of.Id}", words.Sends, $"{sent.Name} {sent.Identifier}, {sent.Period}");
        return facts.ToImmutable();

        void Add(string id, string what, string text) => facts.Add(new(id, what, text, double.NaN, ""));
    }

    private static string Number(int value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
