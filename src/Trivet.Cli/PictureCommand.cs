using System.CommandLine;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Views.Pictures;

namespace Trivet.Cli;

/// <summary><c>trivet picture</c>: a picture of the cell with one part marked.</summary>
internal static class PictureCommand
{
    public static Command Create()
    {
        var cell = Options.Cell();
        var part = new Argument<string>("part")
        {
            Description = "The part that is marked, by its JSON Pointer: /robot/chains/a. A field stands for the part it belongs to. Nothing is marked without it.",
            HelpName = "PART", DefaultValueFactory = _ => "",
        };
        var kind = new Option<PictureKind?>("--shown") { Description = "What is shown of it; by default what suits the part.", HelpName = "KIND" };
        var hidden = new Option<bool>("--hidden") { Description = "Hidden edges of the part too, dashed." };
        var without = new Option<Fitted[]>("--without") { Description = "What is not fitted yet and left out.", HelpName = "PARTS", AllowMultipleArgumentsPerToken = true };
        var steps = new Option<string?>("--steps") { Description = "Write the picture of every step of bring-up into this folder, each once.", HelpName = "FOLDER" };
        var cellId = Options.CellId();
        var outOption = Options.Out("Write the picture to this file instead of standard output.");
        var command = new TaughtCommand(
            "picture",
            """
            A picture of the cell as SVG, with its hidden lines taken out and one part marked by a heavy outline, a hatch and its name: the whole cell, the part
            from near by, the robot from above or below, a module on its rail, a cable with both ends. Ends with 2 when the cell does not describe enough to
            draw it.
            """,
            new Example("picture samples/jar-lids.json /io/switches/low-b --out low-b.svg", "Where the lower switch of the second rail is."),
            new Example("picture samples/jar-lids.json /robot/chains --without Rods Platform Tool", "The robot from above with its chains in order."),
            new Example("picture samples/jar-lids.json /robot/chains/a --shown Push --out push.svg", "Which way the carriage is moved by hand."),
            new Example("picture samples/jar-lids.json --steps pictures", "All pictures of the steps at the machine."))
        {
            cell, part, kind, hidden, without, steps, cellId, outOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            if (await CellInput.ReadOneAsync(parsed, parsed.GetRequiredValue(cell), parsed.GetValue(cellId), stop) is not { } input) return ExitCode.Refused;
            var assessed = Assess.Preview(input.Cell);
            if (parsed.GetValue(steps) is { } folder) return await WriteAsync(parsed, PictureSet.Of(assessed, CellProcedure.Of(input.Cell)), folder, stop);
            string pointer = parsed.GetValue(part) ?? "";
            if (StepPictures.Of(assessed, pointer, parsed.GetValue(kind), (parsed.GetValue(without) ?? []).Aggregate(Fitted.All, (all, part) => all & ~part), parsed.GetValue(hidden)) is { } drawing)
                return Options.Write(parsed, outOption, to => to.Text.Write(drawing.Svg));
            string[] parts = [.. StepPictures.Parts(assessed)];
            var error = parsed.InvocationConfiguration.Error;
            error.WriteLine(parts.Length == 0
                ? "trivet: nothing of this cell can be drawn yet: robot, frame or stations need a place and sizes first."
                : $"trivet: \"{pointer}\" has no place in this cell that could be drawn so. Try one of: {string.Join(' ', parts)}");
            return ExitCode.Refused;
        });
        return command;
    }

    /// <summary>A file for each picture, and a line for each step that says which is its own.</summary>
    private static async Task<int> WriteAsync(ParseResult parsed, PictureSet set, string folder, CancellationToken stop)
    {
        var io = parsed.InvocationConfiguration;
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, svg) in set.Pictures) await File.WriteAllTextAsync(Path.Combine(folder, name + ".svg"), svg, stop);
        }
        catch (Exception e) when (Places.Refuses(e))
        {
            io.Error.WriteLine($"trivet: {Places.Unwritable(folder, e)}");
            return ExitCode.Refused;
        }

        foreach (var (step, name) in set.OfSteps) io.Output.WriteLine($"{step}  {name}.svg");
        return ExitCode.AllHold;
    }
}
