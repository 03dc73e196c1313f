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
        ["Cabling"] = ["Kinematics", "Reach", "Frames"],
        ["Signals"] = ["Cabling"],
        ["Settings"] = ["Kinematics", "Drives", "Motion", "Reach"],
        ["Powering"] = ["Drives", "Dynamics", "Motion", "Kinematics"],
        ["Faults"] = [],
        ["Procedures"] = ["Faults"],
        ["Journal"] = ["Procedures"],
        ["AsBuilt"] = ["Journal", "Procedures"],
        ["Assessment"] = ["Frames", "Kinematics", "Dynamics", "Drives", "Reach", "Motion", "Tooling", "Gripping", "Protecting", "Adapters", "Bolting", "Wiring", "Cabinets", "Cabling", "Signals", "Powering", "Listing"],
