using System.Text;
using Trivet.Cli;

// Text goes out as UTF-8 with \n on every system, in blocks: a pose table may have a million lines. When the reader of a pipe has
// gone (`| head`) the system's stream takes what is left in silence, and the command ends with its own code.
if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected) Console.OutputEncoding = Encoding.UTF8;
return await TrivetProgram.RunAsync(
    args, new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16) { NewLine = "\n" }, Console.Error, CancellationToken.None);
