using Trivet.Cells;
using Trivet.Desk.Components.Description;
using Trivet.Files;

namespace Trivet.Desk.Description;

public sealed class DescriptionSectionsTests
{
    [Fact]
    public void Every_field_of_the_document_is_on_exactly_one_page_of_the_form()
    {
        var cell = Cell.Empty;
        foreach (var (pointer, _) in DescriptionSections.All.SelectMany(s => s.Collections))
        {
            var added = CellFields.Add(cell, pointer.Replace("*", "first", StringComparison.Ordinal) + "/first");
            Assert.True(added.Errors.IsEmpty, pointer);
            cell = added.Cell!;
        }
        foreach (var field in CellFields.Below(cell, ""))
        {
            var holding = DescriptionSections.Holding(field.Pointer);
            bool shown = holding.Pointer.Length == 0
                ? field.Pointer.LastIndexOf('/') == 0
                : CellFields.Below(cell, holding.Pointer).Any(f => f.Pointer == field.Pointer);
            Assert.True(shown, field.Pointer);
        }
    }

    [Fact]
    public void A_pointer_leads_to_the_page_that_holds_it()
    {
        Assert.Equal("stations", DescriptionSections.Holding("/stations/tray/x").Path);
        Assert.Equal("cell", DescriptionSections.Holding("/name").Path);
        Assert.Equal("robot", DescriptionSections.Holding("/robot").Path);
    }
}
