using System.Text.Json;
using System.Xml.Linq;
using ArchUnitNET.Domain;
using Xunit;

namespace Trivet.Design.Tests;

/// <summary>Core and Numerics compute and nothing else: no clock, file, culture, console, unseeded chance, network or waiting.</summary>
public sealed class PureCoreTests
{
    private static readonly string[] Banned =
    [
        "System.Console::",
        "System.IO.",
        "System.Net.",
        "System.Environment::",
        "System.DateTime::get_Now", "System.DateTime::get_UtcNow", "System.DateTime::get_Today",
        "System.DateTimeOffset::get_Now", "System.DateTimeOffset::get_UtcNow",
        "System.TimeProvider::", "System.Diagnostics.Stopwatch::",
        "System.Random::.ctor()", "System.Random::get_Shared", "System.Guid::NewGuid",
        "System.Globalization.CultureInfo::get_CurrentCulture", "System.Globalization.CultureInfo::get_CurrentUICulture",
        "System.Runtime.CompilerServices.AsyncTaskMethodBuilder", "System.Runtime.CompilerServices.AsyncValueTaskMethodBuilder",
        "System.Runtime.CompilerServices.AsyncVoidMethodBuilder",
        "System.Threading.Thread::Sleep", "System.Threading.Tasks.Task::Delay",
        "System.Text.Json.", "System.Reflection.",
    ];

    [Theory, InlineData("Core"), InlineData("Numerics")]
    public void Nothing_impure_is_called(string project) =>
        Assert.Empty(Compiled.Types(Compiled.Projects[project]).SelectMany(BannedCalls));

    [Fact]
    public void The_ban_is_seen_to_work()
    {
        var sample = Compiled.Types(typeof(Impure).Assembly).Single(t => t.Name == nameof(Impure));
        Assert.Equal(
            ["Clock", "Culture", "File", "Luck", "Wait"],
            Compiled.Calls(sample).Where(IsBanned).Select(c => c.User.Split('.')[^1].Split('(')[0]).Distinct().Order());
    }

    [Theory, InlineData("Core"), InlineData("Numerics")]
    public void No_package_is_referenced(string project)
    {
        var file = XDocument.Load(Repository.File($"src/Trivet.{project}/Trivet.{project}.csproj"));
        Assert.Empty(file.Descendants("PackageReference").Select(p => (string?)p.Attribute("Include")));

        Assert.Empty(Packages(project));
    }

    [Theory, InlineData("Files"), InlineData("Views")]
    public void What_the_floor_shares_needs_no_package(string project) => Assert.Empty(Packages(project));

    /// <summary>Every package in the lock file, those that only serve the build left out.</summary>
    private static IEnumerable<string> Packages(string project)
    {
        using var locked = JsonDocument.Parse(File.ReadAllText(Repository.File($"src/Trivet.{project}/packages.lock.json")));
        return [.. from framework in locked.RootElement.GetProperty("dependencies").EnumerateObject()
                   from package in framework.Value.EnumerateObject()
                   where package.Value.GetProperty("type").GetString() != "Project" && package.Name != "Microsoft.NET.ILLink.Tasks"
                   select package.Name];
    }

    [Theory, InlineData("Findings"), InlineData("Cells")]
    public void What_is_described_and_what_is_found_never_changes(string folder)
    {
        var wrong = from type in Compiled.Folder(folder).OfType<Class>()
                    where type.FullName != "Trivet.Findings.Reading" // collects while it reads, is never kept
                    from member in type.Members
                    where member is PropertyMember { Setter: not null, Writability: Writability.Writable }
                        or FieldMember { Writability: Writability.Writable }
                    select $"{type.FullName}.{member.Name}";
        Assert.Empty(wrong);
    }

    private static bool IsBanned((string User, string Member) call) => Banned.Any(b => call.Member.StartsWith(b, StringComparison.Ordinal));

    private static IEnumerable<string> BannedCalls(IType type) =>
        from call in Compiled.Calls(type)
        where IsBanned(call)
        select $"{call.User} uses {call.Member}";

    private sealed class Impure
    {
        public static IEnumerable<int> Luck()
        {
            yield return new Random().Next();
        }

        public static Func<long> Clock() => () => DateTime.UtcNow.Ticks;

        public static string Culture() => System.Globalization.CultureInfo.CurrentCulture.Name;

        public static bool File() => System.IO.File.Exists("");

        public static async Task Wait() => await Task.Yield();

        public static int Seeded() => new Random(1).Next();
    }
}
