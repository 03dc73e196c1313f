using System.Text;
using Trivet.Cli;

// Text goes out as UTF-8 with \n on every system, in blocks: a pose table may have a million lines.
if (OperatingSystem.IsWindows() && !Console.IsOutputRedirected) Console.OutputEncoding = Encoding.UTF8;
using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
try
{
    int code = await TrivetProgram.RunAsync(args, output, Console.Error, CancellationToken.None);
    await output.FlushAsync();
    return code;
}
catch (IOException) when (Console.IsOutputRedirected)
{
    // Whoever read our output has gone (`| head`); there is nobody left to tell.
    return 0;
}
