using Xunit;

namespace Trivet.Design.Tests;

/// <summary>The two tables of docs/architecture.md, held against the compiled code.</summary>
public sealed class WhoMayUseWhomTests
{
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Numerics"] = [],
        ["Core"] = ["Numerics"],
        ["Files"] = ["Core", "Numerics"],
        ["Views"] = ["Files", "Core", "Numerics"],
        ["Store"] = ["Files", "Core", "Numerics"],
        ["Floor"] = ["Views", "Files", "Core", "Numerics"],
        ["Papers"] = ["Views", "Files", "Core", "Numerics"],
        ["Desk"] = ["Papers", "Views", "Store", "Files", "Core", "Numerics"],
        ["Cli"] = ["Desk", "Papers", "Views", "Store", "Files", "Core", "Numerics"],
    };

    // Every folder may use Findings, Cells and Numerics besides what its row names; Findings and Cells use no other folder.
    private static readonly Dictionary<string, string[]> FolderMayUse = new(StringComparer.Ordinal)
    {
        ["Findings"] = [],
        ["Cells"] = [],
        ["Kinematics"] = [],
        ["Tooling"] = [],
        ["Dynamics"] = ["Kinematics", "Drives", "Reach", "Tooling"],
        ["Drives"] = ["Kinematics"],
        ["Frames"] = [],
        ["Reach"] = ["Kinematics", "Frames"],
        ["Motion"] = ["Kinematics", "Dynamics", "Reach", "Drives", "Frames"],
        ["Gripping"] = ["Kinematics", "Dynamics", "Motion", "Tooling"],
        ["Protecting"] = ["Kinematics", "Dynamics", "Reach", "Motion", "Tooling"],
        ["Fasteners"] = [],
        ["Adapters"] = ["Fasteners"],
        ["Listing"] = ["Frames", "Fasteners", "Adapters", "Bolting"],
        ["Bolting"] = ["Fasteners", "Adapters", "Dynamics", "Reach", "Motion", "Tooling", "Gripping"],
        ["BringUp"] = [],
        ["Wiring"] = [],
        ["Cabinets"] = [],
        ["Conductors"] = [],
        ["Cabling"] = ["Kinematics", "Reach", "Frames", "Cabinets", "Conductors"],
        ["Signals"] = ["Cabling", "Conductors"],
        ["Settings"] = ["Kinematics", "Drives", "Motion", "Reach"],
        ["Powering"] = ["Conductors", "Drives", "Dynamics", "Motion", "Kinematics"],
        ["Stopping"] = ["Kinematics", "Dynamics", "Motion"],
        ["Faults"] = [],
        ["Procedures"] = ["Faults", "BringUp", "Wiring", "Cabling", "Tooling", "Kinematics", "Reach", "Frames", "Settings"],
        ["Journal"] = ["Procedures"],
        ["AsBuilt"] = ["Journal", "Procedures"],
        ["Assessment"] = ["Frames", "Kinematics", "Dynamics", "Drives", "Reach", "Motion", "Tooling", "Gripping", "Protecting", "Adapters", "Bolting", "Wiring", "Cabinets", "Cabling", "Signals", "Powering", "Settings", "Stopping", "Listing", "Procedures"],
    };

    public static TheoryData<string> Projects => [.. Compiled.Projects.Keys];

    public static TheoryData<string> Folders => [.. Compiled.Types(Compiled.Projects["Core"]).Select(t => Compiled.FolderOf(t) ?? "").Distinct()];

    [Theory, MemberData(nameof(Projects))]
    public void A_project_uses_only_what_its_row_names(string project)
    {
        string? own = NameOf(project);
        var allowed = MayUse[project].Select(NameOf).ToHashSet();
        var trivet = Compiled.Projects.Keys.Select(NameOf).ToHashSet();
        Assert.NotEmpty(Compiled.Types(Compiled.Projects[project]));
        var wrong = from type in Compiled.Types(Compiled.Projects[project])
                    from use in Compiled.Uses(type)
                    let target = Compiled.AssemblyOf(use.Used)
                    where target != own && trivet.Contains(target) && !allowed.Contains(target)
                    select $"{use.User} uses {use.Used.FullName}";
        Assert.Empty(wrong.Distinct());
    }

    private static string? NameOf(string project) => Compiled.Projects[project].GetName().Name;

    [Theory, MemberData(nameof(Folders))]
    public void A_folder_of_the_core_uses_only_what_its_row_names(string folder)
    {
        Assert.True(FolderMayUse.TryGetValue(folder, out string[]? row), $"The folder '{folder}' has no row in the table.");
        string[] always = folder is "Findings" or "Cells" ? [] : ["Findings", "Cells"];
        string[] allowed = [folder, .. row!, .. always];
        var wrong = from type in Compiled.Folder(folder)
                    from use in Compiled.Uses(type)
                    let target = Compiled.FolderOf(use.Used)
                    where target is not null && !allowed.Contains(target)
                    select $"{use.User} uses {use.Used.FullName}";
        Assert.Empty(wrong.Distinct());
    }

    [Fact]
    public void Numerics_does_not_know_the_words_of_the_trade()
    {
        string[] words = ["Cell", "Station", "Finding", "Verdict", "Ledger", "Robot", "Carriage", "Tray", "Belt"];
        var wrong = Compiled.Types(Compiled.Projects["Numerics"])
            .SelectMany(t => t.Members.Select(m => $"{t.FullName}.{m.Name}").Append(t.FullName))
            .Where(name => words.Any(w => name.Contains(w, StringComparison.Ordinal)));
        Assert.Empty(wrong);
    }

    [Fact]
    public void A_use_hidden_in_a_lambda_an_iterator_or_a_type_argument_is_seen()
    {
        var sample = Compiled.Types(typeof(HiddenUses).Assembly).Single(t => t.Name == nameof(HiddenUses));
        string[] seen = [.. Compiled.Uses(sample).Select(u => u.Used.Name).Distinct()];
        Assert.Superset(
            new HashSet<string> { nameof(Cells.Cell), nameof(Findings.Ledger), nameof(Kinematics.DeltaRobot), nameof(Reach.Obstacle) },
            seen.ToHashSet());
    }

    private sealed class HiddenUses
    {
        public static Func<string?> Lambda() => () => Cells.Cell.Empty.Name;

        public static IEnumerable<int> Iterator()
        {
            yield return Findings.Ledger.Empty.Findings.Length;
        }

        public static int TypeArgument() => new List<Kinematics.DeltaRobot>().Count;

        public static Type Named() => typeof(Reach.Obstacle);
    }
}
