using System.CommandLine;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Papers;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary>What <c>trivet wiring</c> hands out and takes back beside its answer: a folder of papers, and a list that was edited.</summary>
internal sealed class WiringPapers
{
    /// <summary>Where the desk serves the page of a cell that was started without a port.</summary>
    private const string Desk = "http://localhost:5173";

    public Option<string?> All { get; } = Options.All("lists as CSV and in one workbook, lists to be edited, diagram, labels, schedule, settings, plan");

    public Option<string> Labels { get; } = new("--labels")
    {
        Description = $"Label sheet by its columns and rows, A4: {string.Join(", ", LabelSheet.A4.Select(s => $"{s.Id} ({s.Width:0.#} × {s.Height:0.#} mm)"))}.", HelpName = "SHEET", DefaultValueFactory = _ => LabelSheet.A4[0].Id,
    };

    public Option<string?> Address { get; } = new("--address") { Description = $"Address of the cell's electrical page, to which the QR codes lead; the desk on this machine where it is not given ({Desk}).", HelpName = "URL" };

    public Option<string?> Edited { get; } = new("--edited") { Description = "A list of the folder's edit files that was edited, .csv or .xlsx: says what it changes and changes nothing.", HelpName = "FILE" };

    public Option<string?> List { get; } = new("--list") { Description = $"Which list that is: {string.Join(", ", FieldList.Collections.Select(Name))}; by its file's name where it is not given.", HelpName = "NAME" };

    public Option<string?> NewCell { get; } = new("--new-cell") { Description = "With --edited: write the cell with those changes to this file.", HelpName = "FILE" };

    private static string Name(string collection) => collection[(collection.LastIndexOf('/') + 1)..];

    /// <summary>Writes the folder; false where it could not, which is told.</summary>
    public bool Write(ParseResult parsed, CellInput input)
    {
        if (parsed.GetValue(All) is not { } folder) return true;
        var error = parsed.InvocationConfiguration.Error;
        if (LabelSheet.A4.FirstOrDefault(s => s.Id == parsed.GetValue(Labels)) is not { } sheet)
        {
            error.WriteLine($"trivet: there is no label sheet {parsed.GetValue(Labels)}. Give one of {string.Join(", ", LabelSheet.A4.Select(s => s.Id))}.");
            return false;
        }
        string id = Path.GetFileNameWithoutExtension(input.Name);
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var file in CablingFiles.Of(input.Cell, parsed.GetValue(Address) ?? $"{Desk}/cell/{Uri.EscapeDataString(id)}/electrical", sheet, DateTime.Now))
                File.WriteAllBytes(Path.Combine(folder, file.Name), file.Bytes);
            if (CablingFiles.Shortened(input.Cell, sheet) is { IsEmpty: false } shortened)
                error.WriteLine($"trivet: {Locale.English.Language.Cabling.LabelsShortened.Replace("{labels}", string.Join(", ", shortened), StringComparison.Ordinal)}");
            return true;
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            error.WriteLine($"trivet: {Places.Unmakable(folder, e)}");
            return false;
        }
    }

    /// <summary>Says what an edited list changes. Null where none was given.</summary>
    public int? Compare(ParseResult parsed, CellInput input)
    {
        if (parsed.GetValue(Edited) is not { } path) return null;
        var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
        string name = parsed.GetValue(List) ?? Path.GetFileNameWithoutExtension(path).Split('-')[^1];
        if (FieldList.Collections.FirstOrDefault(c => Name(c) == name) is not { } collection)
        {
            error.WriteLine($"trivet: which list {path} is, its name does not tell. Give --list with one of {string.Join(", ", FieldList.Collections.Select(Name))}.");
            return ExitCode.Refused;
        }
        GridRead grid;
        try
        {
            grid = path.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase) ? Grids.Workbook(File.ReadAllBytes(path), name) : Grids.Csv(File.ReadAllText(path));
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            error.WriteLine($"trivet: {Places.Unreadable(path, e)}");
            return ExitCode.Refused;
        }
        if (grid.Problem.Length > 0)
        {
            error.WriteLine($"trivet: {path}: {grid.Problem}. Save it again as CSV or workbook.");
            return ExitCode.Refused;
        }
        var edited = EditedList.Take(input.Cell, collection, grid.Rows, path);
        foreach (var change in edited.Changes) output.WriteLine($"{change.Pointer}: {Shown(change.Before)} → {Shown(change.After)}");
        if (edited.Changes.IsEmpty) output.WriteLine("The list changes nothing.");
        foreach (string id in edited.Kept) output.WriteLine($"{collection}/{id}: not in the list, kept");
        foreach (string column in edited.Unknown) output.WriteLine($"column {column}: no field of the cell, passed over");
        Refusals.Write(edited.Errors, error);
        if (!edited.Errors.IsEmpty) return ExitCode.Refused;
        if (parsed.GetValue(NewCell) is { } to)
        {
            try
            {
                File.WriteAllText(to, CellFile.Write(edited.Cell));
            }
            catch (Exception e) when (Places.Refuses(e))
            {
                error.WriteLine($"trivet: {Places.Unwritable(to, e)}");
                return ExitCode.Refused;
            }
        }
        return ExitCode.AllHold;

        static string Shown(string text) => text.Length == 0 ? "(nothing)" : text;
    }
}
