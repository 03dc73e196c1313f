using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Findings;
using Trivet.Papers;
using Trivet.Views.Mechanical;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Cli;

/// <summary><c>trivet plate</c>: designs the adapter plates of a cell and writes their papers.</summary>
internal static class PlateCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var cellId = Options.CellId();
        var format = Options.Format();
        var plate = new Option<string?>("--plate") { Description = "Id of one plate; all of them where not given.", HelpName = "ID" };
        var folder = Options.All("drawing (.svg, .pdf), cutting (.dxf), solid (.step) and triangles (.stl) of each plate");
        var outOption = Options.Out("Write the answer to this file instead of standard output.");
        var command = new TaughtCommand(
            "plate",
            """
            Designs the adapter plates of a cell: thickness, holes, outline, and every clocking of the two patterns that works, the
            lightest first. Where one plate can't do it, says which rule forbids it and makes a stack of two. Ends with 1 when a plate
            does not work as stated.
            """,
            new Example("plate samples/jar-lids.json", "The clockings of the sample's plate."),
            new Example("plate samples/jar-lids.json --all papers", "Its drawing and the files for the shop."))
        {
            cell, cellId, plate, format, folder, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            var error = parsed.InvocationConfiguration.Error;
            string? only = parsed.GetValue(plate);
            string[] ids = [.. input.Cell.Plates.InOrder().Select(p => p.Key).Where(id => only is null || id == only)];
            if (ids.Length == 0)
            {
                error.WriteLine(input.Cell.Plates.IsEmpty ? $"trivet: {input.Name} describes no adapter plate: state one in /plates."
                    : $"trivet: {input.Name} has no plate {only}. It has {string.Join(", ", input.Cell.Plates.InOrder().Select(p => p.Key))}.");
                return ExitCode.Refused;
            }

            string revision = CellFile.Hash(input.Cell);
            var now = DateTime.Now;
            var sheets = ImmutableArray.CreateBuilder<PlateSheet>();
            foreach (string id in ids)
            {
                if (Solve(input, id, error) is not { } result) return ExitCode.Refused;
                sheets.Add(PlateSheet.Of(input.Cell, result, revision[..8], now.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
            }
            if (parsed.GetValue(folder) is { } all && !Write(all, sheets, now, error)) return ExitCode.Refused;
            var answer = sheets.ToImmutable();
            int written = Options.Write(parsed, outOption, to => to.Text.Write(parsed.GetValue(format) switch
            {
                OutputFormat.Json => PlateForms.Json(answer, input.Cell.Name ?? "", revision),
                OutputFormat.Csv => PlateForms.Csv(answer),
                OutputFormat.Markdown => PlateForms.Markdown(answer),
                _ => PlateForms.Text(answer),
            }));
            if (written != ExitCode.AllHold) return written;
            return answer.All(s => s.Works) ? ExitCode.AllHold : ExitCode.NotAllHold;
        });
        return command;
    }

    private static AdapterResult? Solve(CellInput input, string id, TextWriter error)
    {
        var reading = new Reading();
        var wrong = new List<Contradiction>();
        if (AdapterInput.Read(input.Cell, id, reading, wrong) is { } plan) return PlateSearch.Solve(plan);
        foreach (string field in reading.MissingFields) error.WriteLine($"trivet: {field} is not stated.");
        foreach (var problem in wrong) error.WriteLine($"trivet: {problem.Pointer}: {Sentences.Of(problem.Reason, input.Cell)}");
        error.WriteLine($"trivet: plate {id} can not be designed yet. State or correct these fields.");
        return null;
    }

    private static bool Write(string folder, IEnumerable<PlateSheet> sheets, DateTime now, TextWriter error)
    {
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var piece in sheets.SelectMany(s => s.Pieces))
            {
                string name = Path.Combine(folder, piece.FileName);
                var drawing = PlateDrawing.Of(piece.Plate, piece.Title);
                var utf8 = new UTF8Encoding(false);
                File.WriteAllText(name + ".svg", PaperSvg.Of(drawing).Svg, utf8);
                File.WriteAllBytes(name + ".pdf", PaperPdf.Of(piece.Title.Name, now, drawing));
                File.WriteAllText(name + ".dxf", DxfFile.Of(piece.Plate), utf8);
                File.WriteAllText(name + ".step", StepFile.Of(piece.Plate, piece.Title.Name, now.ToString("s", CultureInfo.InvariantCulture)), utf8);
                File.WriteAllBytes(name + ".stl", StlFile.Of(piece.Plate, piece.FileName));
            }
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"trivet: {Places.Unmakable(folder, e)}");
            return false;
        }
    }
}
