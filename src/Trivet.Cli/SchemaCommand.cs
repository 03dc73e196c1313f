using System.CommandLine;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary><c>trivet schema</c>: the JSON Schema that editors complete and check a cell file with.</summary>
internal static class SchemaCommand
{
    public static Command Create()
    {
        var outOption = Options.Out("Write the schema to this file instead of standard output.");
        var command = new TaughtCommand(
            "schema",
            "Print the JSON Schema of a cell file, for completion and checking in a text editor.",
            new Example("schema --out trivet-cell.schema.json", "Write the schema beside your cells and name it in your editor's settings."))
        {
            outOption,
        };
        command.SetAction(parsed => Options.Write(parsed, outOption, to => to.Text.Write(CellSchema.Json())));
        return command;
    }
}
