namespace Trivet.Desk.Components.Description;

/// <summary>A section of the description as a page of the form.</summary>
/// <param name="Path">Its name in the address.</param>
/// <param name="Pointer">What of the document it shows; empty for the document's own fields.</param>
/// <param name="Collections">Keyed collections in it, to which entries can be added, with a word for one entry; <c>*</c> stands for each entry of the one above.</param>
public sealed record DescriptionSection(string Path, string Title, string Pointer, params (string Pointer, string Entry)[] Collections);

public static class DescriptionSections
{
    public static readonly DescriptionSection[] All =
    [
        new("cell", "Cell", ""),
        new("brief", "Brief", "/brief", ("/brief/parts", "part"), ("/brief/requirements", "requirement"), ("/brief/openQuestions", "open question")),
        new("robot", "Robot", "/robot", ("/robot/chains", "chain")),
        new("controller", "Controller mapping", "/controller", ("/controller/axes", "axis")),
        new("mount", "Mount", "/mount"),
        new("tool", "Tool stack", "/tool", ("/tool/parts", "tool part")),
        new("pneumatics", "Compressed air", "/pneumatics", ("/pneumatics/users", "user of air"), ("/pneumatics/hoses", "hose")),
        new("drives", "Drives", "/drives", ("/drives/motors", "motor"), ("/drives/motors/*/curve", "curve point"), ("/drives/axes", "axis")),
        new("motion", "Motion", "/motion", ("/motion/cycles", "cycle"), ("/motion/cycles/*/waypoints", "waypoint")),
        new("frame", "Frame", "/frame", ("/frame/members", "frame member"), ("/frame/profiles", "profile"), ("/frame/mountPoints", "mount point"), ("/frame/masses", "mass")),
        new("stations", "Stations", "/stations", ("/stations", "station")),
        new("cabinet", "Cabinet", "/cabinet", ("/cabinet/modules", "module")),
        new("cables", "Cables", "/cables", ("/cables", "cable"), ("/cables/*/cores", "core")),
        new("cabling", "Cable ways", "/cabling", ("/cabling/devices", "device"), ("/cabling/ways", "way"), ("/cabling/ways/*/points", "point")),
        new("io", "Inputs and outputs", "/io", ("/io/banks", "bank"), ("/io/signals", "signal"), ("/io/switches", "switch"), ("/io/nodes", "bus device"), ("/io/nodes/*/objects", "object")),
        new("handling", "Handling", "/handling", ("/handling/lifts", "lift")),
        new("guarding", "Guarding", "/guarding", ("/guarding/devices", "device"), ("/guarding/fences", "guard"), ("/guarding/gaps", "gap")),
        new("recording", "Recording", "/recording", ("/recording/people", "person")),
        new("stopping", "Stop functions", "/stopping", ("/stopping/functions", "safety function"), ("/stopping/functions/*/channels", "channel")),
        new("hazards", "Hazards", "/hazards", ("/hazards", "hazard"), ("/hazards/*/measures", "measure"), ("/hazards/*/proofs", "proof")),
        new("parts-list", "Parts list", "/partsList", ("/partsList", "line")),
        new("interfaces", "Interfaces", "/interfaces", ("/interfaces", "interface"), ("/interfaces/*/points", "hole")),
        new("plates", "Adapter plates", "/plates", ("/plates", "plate"), ("/plates/*/stock", "thickness in stock")),
        new("joints", "Bolted joints", "/joints", ("/joints", "joint"), ("/joints/*/clamped", "clamped layer")),
        new("materials", "Materials", "/materials", ("/materials", "material")),
    ];

    public static DescriptionSection Named(string? path) => Array.Find(All, s => s.Path == path) ?? All[0];

    /// <summary>The section that holds a pointer.</summary>
    public static DescriptionSection Holding(string pointer) =>
        Array.Find(All, s => s.Pointer.Length > 0 && (pointer == s.Pointer || pointer.StartsWith(s.Pointer + "/", StringComparison.Ordinal))) ?? All[0];
}
