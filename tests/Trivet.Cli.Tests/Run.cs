namespace Trivet.Cli.Tests;

/// <summary>One run of the program inside the test process: what it wrote and how it ended.</summary>
internal sealed record Run(int Code, string Output, string Error)
{
    public static async Task<Run> Trivet(params string[] arguments)
    {
        using StringWriter output = new() { NewLine = "\n" }, error = new() { NewLine = "\n" };
        int code = await TrivetProgram.RunAsync(arguments, output, error, CancellationToken.None);
        return new(code, output.ToString(), error.ToString());
    }
}
