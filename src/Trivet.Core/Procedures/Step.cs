using System.Collections.Immutable;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Settings;

namespace Trivet.Procedures;

/// <summary>What may be live while a step is done. Each one allows all before it and no more than its word says.</summary>
public enum EnergyLevel
{
    /// <summary>Off, locked, and measured dead after the discharge time.</summary>
    Isolated,
    /// <summary>Motor supply locked off and measured dead; control supply on.</summary>
    ControlSupplyOnly,
    /// <summary>One axis enabled, current and travel limited.</summary>
    OneAxisLimited,
    OneAxis,
    AllAxes,
}

/// <summary>Where a step is done.</summary>
public enum StepPlace
{
    Shop,
    Transport,
    Site,
}

/// <summary>Whose act a step is.</summary>
public enum Skill
{
    Fitter,
    /// <summary>Skilled and, where the local code asks for it, licensed.</summary>
    Electrician,
    Engineer,
    /// <summary>Answers for the safety functions; never who built them alone.</summary>
    SafetyPerson,
    Customer,
}

/// <summary>Something a step asks to be recorded. Closed: the kinds below are all there are.</summary>
/// <param name="Id">Stable within the step: <c>gap</c>, <c>serial</c>. Worded in the views by the step's kind and this id.</param>
public abstract record Asked(string Id);

/// <summary>A reading.</summary>
/// <param name="Unit">SI unit of expected value and limit: <c>m</c>, <c>rad</c>, <c>Ω</c>.</param>
/// <param name="Expected">As planned, SI; not a number where nothing is planned.</param>
/// <param name="Accepted">What is accepted; null where the reading is kept and not judged.</param>
/// <param name="ShownAfter">The expected value is shown after the entry, because knowing it would bias the reading.</param>
public sealed record AskedValue(string Id, string Unit, double Expected, Limit? Accepted, bool ShownAfter = false) : Asked(Id);

/// <summary>One of several answers, each worded in the views by its id.</summary>
public sealed record AskedChoice(string Id, ImmutableArray<string> Options, string Expected) : Asked(Id);

public sealed record AskedCount(string Id, int Expected) : Asked(Id);

/// <summary>Words, such as a serial number.</summary>
public sealed record AskedText(string Id) : Asked(Id);

/// <summary>Only that it was done: weak, and shown as weak.</summary>
public sealed record AskedTick(string Id) : Asked(Id);

public sealed record AskedPhotograph(string Id) : Asked(Id);

public sealed record AskedSignature(string Id, Skill By) : Asked(Id);

/// <summary>What keeps a chain up while a step is done.</summary>
/// <param name="Chain">Chain id.</param>
/// <param name="By"><c>brake</c>, <c>counterweight</c>, <c>friction</c>, <c>prop</c>, <c>lower stop</c>, <c>drive</c>, <c>not fitted</c>: an id, worded in the views. Never nothing.</param>
public sealed record ChainHeld(string Chain, string By);

/// <summary>A number of this cell that the words of a step tell: a torque, a gap, a mass.</summary>
/// <param name="Id">Its place in the words.</param>
/// <param name="Unit">SI unit.</param>
public sealed record StepNumber(string Id, string Unit, double Value);

/// <summary>A text out of the cell that the words of a step tell: labels of cables that fit there too.</summary>
/// <param name="Id">Its place in the words.</param>
public sealed record StepWords(string Id, string Text);

/// <summary>A parameter of the controller as it is typed.</summary>
/// <param name="DecimalComma">The controller writes numbers with a comma.</param>
public sealed record TypedSetting(PlannedSetting Of, bool DecimalComma);

/// <summary>
/// One step of the procedure, computed from the cell: data only, worded in the views by <see cref="Kind"/>. Its id stays while the ids in the
/// cell stay, so that what was recorded under it is found again.
/// </summary>
public sealed record Step
{
    /// <summary>The kind, and after a colon what it is done to: <c>limit-switch:a</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the kind: <c>limit-switch</c>. Title, what, why, hazard, caution and what a bad result means are worded by it.</summary>
    public required string Kind { get; init; }

    public required Subject Subject { get; init; }
    public required StepPlace Place { get; init; }
    public required EnergyLevel Energy { get; init; }
    public required Skill By { get; init; }

    /// <summary>People needed at once.</summary>
    public int People { get; init; } = 1;

    /// <summary>Minutes it takes; common practice until own records say better.</summary>
    public required double Minutes { get; init; }

    /// <summary>Ids of the steps that must be done before.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>Fields it depends on, sorted: where one of them changes the step is stale.</summary>
    public ImmutableArray<string> Inputs { get; init; } = [];

    public ImmutableArray<Asked> Asks { get; init; } = [];
    public ImmutableArray<StepNumber> Numbers { get; init; } = [];

    /// <summary>Names out of the cell that the words tell, in the order of their places: labels, modules, terminals.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Texts out of the cell beside the names, by their places in the words.</summary>
    public ImmutableArray<StepWords> Words { get; init; } = [];

    /// <summary>Parameters of the controller that it is about, as they are typed.</summary>
    public ImmutableArray<TypedSetting> Settings { get; init; } = [];

    /// <summary>Ids of tools and instruments, worded in the views.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    /// <summary>Every chain that is fitted, and what keeps it up.</summary>
    public ImmutableArray<ChainHeld> Held { get; init; } = [];

    /// <summary>What it would show of faults.</summary>
    public ImmutableArray<Probe> Probes { get; init; } = [];

    /// <summary>What a fault could do in it stays small: a few millimetres, slowly, over a prop, without air or part, nobody within reach.</summary>
    public bool Bounded { get; init; }

    /// <summary>What depends on it waits until it is done, in order, and where the cell says so released by a second person.</summary>
    public bool HoldPoint { get; init; }

    /// <summary>What makes its evidence worthless besides a change of the cell: a power cycle, moved plugs, transport.</summary>
    public ImmutableArray<Upset> UpsetBy { get; init; } = [];
}

/// <summary>What happens to a machine between two steps and spoils evidence.</summary>
public enum Upset
{
    PowerCycled,
    PlugsMoved,
    Transported,
}
