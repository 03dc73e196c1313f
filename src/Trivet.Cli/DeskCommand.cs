using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Trivet.Desk;
using Trivet.Desk.Network;
using Trivet.Files;
using Trivet.Papers;
using Trivet.Store;
using Trivet.Views.Words;

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
        port.CustomParser = PortOf;
        var network = new Option<bool>("--network") { Description = "Open it to paired devices on the network as well, over HTTPS." };
        var networkPort = new Option<int>("--network-port") { Description = "Port for the network; 0 takes a free one.", HelpName = "PORT", DefaultValueFactory = _ => NetworkOptions.UsualPort };
        networkPort.CustomParser = PortOf;
        var host = new Option<string[]>("--host")
        {
            Description = "A name or address by which devices reach this machine, besides its own. May be given several times.",
            HelpName = "NAME",
            DefaultValueFactory = _ => [],
        };
        host.Validators.Add(result =>
        {
            foreach (string why in (result.GetValueOrDefault<string[]>() ?? []).Select(MachineNames.WhyNot).OfType<string>()) result.AddError(why);
        });
        var certificate = new Option<bool>("--certificate") { Description = "Tell where the root certificate for the devices lies and how it is installed, and end." };
        var labels = new Option<string?>("--door-labels") { Description = "Write a label for each cell's cabinet door into this folder, with the code that opens its steps on a paired device, and end.", HelpName = "FOLDER" };
        var person = new Option<string?>("--person") { Description = "Your id as it stands beside what you save. [default: your user name]", HelpName = "ID" };
        person.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } id && Stamp.WhyNot(id) is { } why) result.AddError(why);
        });
        var command = new TaughtCommand(
            "desk",
            "Open the desk in a browser: cells, drawings, ledger, revisions. It listens on this machine only, unless you open it to the network.",
            new Example("desk demo-job --demo", "Look around in the sample cells."),
            new Example("desk my-job --port 8080", "Work on a job folder of your own."),
            new Example("desk \"Host=localhost;Database=job;Username=me\"", "Work on a job in PostgreSQL."),
            new Example("desk my-job --network --host desk.example", "Let paired tablets in, by that name too."),
            new Example("desk my-job --door-labels papers --host desk.example", "A label for each cabinet's door."),
            new Example("desk --certificate", "Install the root certificate on a tablet."))
        {
            job, demo, port, person, network, networkPort, host, certificate, labels,
        };
        job.Validators.Add(result =>
        {
            if (string.IsNullOrWhiteSpace(result.GetValueOrDefault<string>())) result.AddError("The name of the job folder is empty. Give one, like my-job, or a dot for this folder.");
        });
        command.SetAction((parsed, stop) =>
        {
            string place = parsed.GetRequiredValue(job);
            var io = parsed.InvocationConfiguration;
            string[] hosts = parsed.GetValue(host) ?? [];
            if (parsed.GetValue(certificate)) return Task.FromResult(TellCertificate(hosts, io));
            if (parsed.GetValue(labels) is { } folder)
                return WriteLabelsAsync(place, folder, new() { Port = parsed.GetValue(networkPort), Hosts = [.. hosts] }, io, stop);
            if (hosts.Length > 0 && !parsed.GetValue(network))
            {
                io.Error.WriteLine("trivet: --host says by which name the network reaches the desk; give --network with it.");
                return Task.FromResult(ExitCode.Refused);
            }
            var outside = parsed.GetValue(network) ? new NetworkOptions { Port = parsed.GetValue(networkPort), Hosts = [.. hosts] } : null;
            return ServeAsync(new(place, parsed.GetValue(demo), parsed.GetValue(port), parsed.GetValue(person) ?? Environment.UserName, outside), io, stop);
        });
        return command;
    }

    private sealed record Start(string Job, bool Demo, int Port, string Person, NetworkOptions? Network);

    private static int PortOf(ArgumentResult result)
    {
        string typed = result.Tokens[0].Value;
        if (ushort.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out ushort number)) return number;
        result.AddError($"'{typed}' is no port. Give a number from 0 to 65535; 0 takes a free one.");
        return 0;
    }

    /// <summary>The root is made if there is none yet, so that it can be installed before the desk is first opened to the network.</summary>
    private static int TellCertificate(string[] hosts, InvocationConfiguration io)
    {
        var (root, refused) = LocalRoot.Open(LocalRoot.UsualFolder, hosts, DateTimeOffset.UtcNow);
        if (root is null)
        {
            io.Error.WriteLine($"trivet: {refused!.Problem} {refused.Remedy}");
            return ExitCode.Refused;
        }

        using (root)
        {
            var words = Locale.English.Language.Access;
            var text = new StringBuilder();
            text.AppendLine(Flowing.Text(words.CertificateWhy)).AppendLine();
            (string Head, string Value)[] facts =
            [
                (words.CertificateFile, root.PublicPath), (words.CertificateName, root.Name),
                (words.CertificateEnds, root.Ends.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), (words.Fingerprint, root.Fingerprint),
            ];
            foreach (var (head, value) in facts) text.Append(head).Append(": ").AppendLine(value);
            text.AppendLine().AppendLine(words.CertificateCompare).AppendLine().AppendLine(words.InstallFromMemory);
            foreach (var (platform, steps) in words.Install)
            {
                text.AppendLine().AppendLine(platform);
                for (int i = 0; i < steps.Length; i++) text.AppendLine(CultureInfo.InvariantCulture, $"  {i + 1}. {steps[i]}");
            }
            io.Output.Write(text.AppendLine().AppendLine(words.InstallAfter).ToString());
        }
        return ExitCode.AllHold;
    }

    /// <summary>The address is that of the desk as it would be opened with the same hosts and port; a certificate vouches for it already.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task<int> WriteLabelsAsync(string place, string folder, NetworkOptions outside, InvocationConfiguration io, CancellationToken stop)
    {
        if (outside.Port == 0)
        {
            io.Error.WriteLine($"trivet: a label carries the desk's port, and a free one may be another at each start. Give the one the desk will have: --network-port {NetworkOptions.UsualPort}");
            return ExitCode.Refused;
        }
        await using var job = await JobInput.OpenAsync(place, mayBeNew: false, io.Error, stop);
        if (job is null) return ExitCode.Refused;
        var cells = await job.CellsAsync(stop);
        if (cells.IsEmpty)
        {
            io.Error.WriteLine($"trivet: {place} has no cell yet. Make one at the desk first: trivet desk {place}");
            return ExitCode.Refused;
        }
        var (door, refused) = NetworkDoor.Open(outside, TimeProvider.System);
        if (door is null)
        {
            io.Error.WriteLine($"trivet: {refused!.Problem} {refused.Remedy}");
            return ExitCode.Refused;
        }
        using (door)
        {
            try
            {
                Directory.CreateDirectory(folder);
                foreach (var cell in cells)
                {
                    var label = DoorLabel.File(cell.Name, cell.Id, door.Address, DateTime.Now);
                    string path = Path.Combine(folder, $"{cell.Id}-{label.Name}");
                    await File.WriteAllBytesAsync(path, label.Bytes, stop);
                    io.Output.WriteLine($"{path}: {DoorLabel.Link(door.Address, cell.Id)}");
                }
            }
            catch (Exception e) when (Places.Refuses(e))
            {
                io.Error.WriteLine($"trivet: {Places.Unmakable(folder, e)}");
                return ExitCode.Refused;
            }
        }
        return ExitCode.AllHold;
    }

    // Apart, so that no other command loads the web server.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task<int> ServeAsync(Start start, InvocationConfiguration io, CancellationToken stop)
    {
        if (start.Demo && !await FillAsync(start, io.Error, stop)) return ExitCode.Refused;
        var options = new DeskOptions(start.Job)
        {
            Port = start.Port,
            Person = start.Person,
            Network = start.Network,
            Listening = at =>
            {
                io.Output.WriteLine($"The desk is open at {at.Desk}");
                foreach (var address in at.Network) io.Output.WriteLine($"On the network at {address}");
                if (at.Root is { } root) io.Output.WriteLine($"Devices need the root certificate {root.PublicPath} (trivet desk --certificate tells how)");
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
