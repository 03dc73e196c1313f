using System.CommandLine;
using System.Globalization;
using System.Runtime.CompilerServices;
using Trivet.Desk;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Cli;

/// <summary><c>trivet desk</c>: serves the desk over a job folder or a database.</summary>
internal static class DeskCommand
{
    public static Command Create()
    {
        var job = new Argument<string>("job")
        {
            Description = "A job folder, or a PostgreSQL connection string (Host=…;Database=…).",
            HelpName = "FOLDER",
            DefaultValueFactory = _ => ".",
        };
        var demo = new Option<bool>("--demo") { Description = "Make the folder if need be, and put the sample cells into a job that has none." };
        var port = new Option<int>("--port") { Description = "Port on this machine; 0 takes a free one.", HelpName = "PORT", DefaultValueFactory = _ => 5173 };
        port.CustomParser = result =>
        {
            string typed = result.Tokens[0].Value;
            if (ushort.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out ushort number)) return number;
            result.AddError($"'{typed}' is no port. Give a number from 0 to 65535; 0 takes a free one.");
            return 0;
        };
        var person = new Option<string?>("--person") { Description = "Your id as it stands beside what you save. [default: your user name]", HelpName = "ID" };
        person.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } id && Stamp.WhyNot(id) is { } why) result.AddError(why);
        });
        var command = new TaughtCommand(
            "desk",
            "Open the desk in a browser: cells, drawings, ledger, revisions. It listens on this machine only.",
            new Example("desk demo-job --demo", "Look around in the sample cells."),
            new Example("desk my-job --port 8080", "Work on a job folder of your own."),
            new Example("desk \"Host=localhost;Database=job;Username=me\"", "Work on a job in PostgreSQL."))
        {
            job, demo, port, person,
        };
        job.Validators.Add(result =>
        {
            if (string.IsNullOrWhiteSpace(result.GetValueOrDefault<string>())) result.AddError("The name of the job folder is empty. Give one, like my-job, or a dot for this folder.");
        });
        command.SetAction((parsed, stop) =>
        {
            string place = parsed.GetRequiredValue(job);
            var options = new Start(place, parsed.GetValue(demo), parsed.GetValue(port), parsed.GetValue(person) ?? Environment.UserName);
            return ServeAsync(options, parsed.InvocationConfiguration, stop);
        });
        return command;
    }

    private sealed record Start(string Job, bool Demo, int Port, string Person);

    // Apart, so that no other command loads the web server.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task<int> ServeAsync(Start start, InvocationConfiguration io, CancellationToken stop)
    {
        if (start.Demo && !await FillAsync(start, io.Error, stop)) return ExitCode.Refused;
        var options = new DeskOptions(start.Job)
        {
            Port = start.Port,
            Person = start.Person,
            Listening = address =>
            {
                io.Output.WriteLine($"The desk is open at {address}");
                io.Output.WriteLine("Ctrl-C closes it.");
                io.Output.Flush();
            },
        };
        if (await DeskHost.RunAsync(options, stop) is not { } refused) return ExitCode.AllHold;
        io.Error.WriteLine($"trivet: {refused.Problem} {refused.Remedy}");
        return ExitCode.Refused;
    }

    private static async Task<bool> FillAsync(Start start, TextWriter error, CancellationToken stop)
    {
        if (JobLocation.Parse(start.Job) is JobLocation.Folder folder)
        {
            try
            {
                Directory.CreateDirectory(folder.Path);
            }
            catch (Exception e) when (Places.Refuses(e))
            {
                error.WriteLine($"trivet: {Places.Unmakable(start.Job, e)}");
                return false;
            }
        }

        await using var job = await JobInput.OpenAsync(start.Job, mayBeNew: true, error, stop);
        if (job is null) return false;
        if (!(await job.CellsAsync(stop)).IsEmpty) return true;
        var by = new Stamp(start.Person, DateTimeOffset.UtcNow);
        foreach (var sample in Samples.All)
            if (CellFile.Read(System.Text.Encoding.UTF8.GetBytes(sample.Text), sample.Name).Cell is { } cell)
                await job.CreateAsync(sample.Name, cell, by, "a sample, invented for Trivet", stop);
        return true;
    }
}
