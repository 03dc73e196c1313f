using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>One line of what a cycle takes.</summary>
/// <param name="Cycle">Id of the cycle; empty for what concerns all.</param>
/// <param name="Id">Stable name for programs: <c>controller-cycle-time</c>.</param>
/// <param name="Si">Value in SI; not a number where there is none.</param>
/// <param name="Shown">Value with its unit as people read it.</param>
/// <param name="Known">How it comes about, or why there is none.</param>
public sealed record CycleRow(string Cycle, string Id, string What, double Si, string Unit, string Shown, string Known);

/// <summary>A number as it is typed into the controller.</summary>
/// <param name="Pointer">The field of the cell it stands in.</param>
/// <param name="Now">In the unit shown, as the cell states it; not a number where it does not.</param>
/// <param name="Typed">In the unit shown.</param>
public sealed record TypedSetting(string Pointer, string What, double Now, double Typed, string Unit);

/// <summary>What the cycles of a cell take under the three laws, in finished texts; with the fastest settings as the table that is typed in.</summary>
public sealed record CycleSheet(string Title, ImmutableArray<CycleRow> Rows, ImmutableArray<TypedSetting> Settings)
{
    public static CycleSheet Of(Cell cell, ImmutableArray<CycleResult> results, FastestResult? fastest = null)
    {
        var rows = ImmutableArray.CreateBuilder<CycleRow>();
        foreach (var result in results)
        {
            string id = result.Input.Plan.Id;
            foreach (var law in result.Laws) AddLaw(rows, cell, id, law);
            rows.Add(new(id, "gap", "Time that the bound saves", result.Gap, "1", double.IsFinite(result.Gap) ? Numbers.Percent(result.Gap) : "–", HeldBack(cell, result)));
        }
        if (fastest is null) return new(cell.Name ?? Locale.English.Language.UnnamedCell, rows.ToImmutable(), []);

        foreach (var result in fastest.Cycles)
            rows.Add(Seconds(result.Input.Plan.Id, "fastest-cycle-time", "With the fastest settings, whole cycle", result.Controller.CycleTime, $"{fastest.Tried} settings tried"));
        if (fastest.Settings is null) rows.Add(new("", "fastest", "Fastest settings", double.NaN, "1", "–", "none found that hold every limit with their reserve"));
        return new(cell.Name ?? Locale.English.Language.UnnamedCell, rows.ToImmutable(), fastest.Settings is { } typed ? Table(cell, typed) : []);
    }

    private static void AddLaw(ImmutableArray<CycleRow>.Builder rows, Cell cell, string cycle, LawResult law)
    {
        var (id, name) = law.Law switch
        {
            TimingLaw.Controller => ("controller", "As the controller does it"),
            TimingLaw.States => ("states", "From state to state"),
            _ => ("bound", "The bound"),
        };
        string why = law.Why is { } reason ? Sentences.Of(reason, cell) : "";
        rows.Add(Seconds(cycle, $"{id}-loaded", $"{name}, loaded move", law.Loaded.Duration, why));
        rows.Add(Seconds(cycle, $"{id}-empty", $"{name}, empty move", law.Empty.Duration, ""));
        rows.Add(Seconds(cycle, $"{id}-cycle-time", $"{name}, whole cycle", law.CycleTime, "dwell and settling as stated"));
        rows.Add(new(cycle, $"{id}-rate", $"{name}, rate", law.Rate, "1/s", law.Found ? Numbers.Quantity(law.Rate, "1/s") : "–", ""));
        double leaves = Math.Max(law.Loaded.Leaves, law.Empty.Leaves);
        if (leaves > 0) rows.Add(new(cycle, $"{id}-leaves", $"{name}, tool off the planned path", leaves, "m", Numbers.Quantity(leaves, "m"), "largest"));
    }

    private static string HeldBack(Cell cell, CycleResult result)
    {
        var language = Locale.English.Language;
        return result.HeldBack.IsEmpty ? "" : "the bound is held back by " + Fields.List(result.HeldBack.Take(3).Select(h =>
            $"{Sentences.RuleNoun(MotionRules.Of(h.Kind, turns: false))} of {Fields.Axis(cell, h.Axis, language)} for {Numbers.Percent(h.Share)}"));
    }

    /// <summary>The settings in the length unit that the controller shows for a carriage; millimetres where its axes turn or nothing is stated.</summary>
    private static ImmutableArray<TypedSetting> Table(Cell cell, ControllerSettings typed)
    {
        double unit = 1e-3;
        if (cell.Robot.Family == RobotFamily.RailDelta && RobotInputs.Geometry(cell.Robot, new()).Robot is { } robot)
            unit = ControllerReadings.Of(cell.Controller, robot, new()).Axes[0].PerUnit;
        string name = unit switch { 1e-3 => "mm", 1e-2 => "cm", 1 => "m", _ => "units" };
        var now = cell.Motion.Settings;
        var table = ImmutableArray.CreateBuilder<TypedSetting>();
        Add("pathSpeed", "Speed along the path", now.PathSpeed, typed.Speed, $"{name}/s");
        Add("pathAcceleration", "Acceleration along the path", now.PathAcceleration, typed.Acceleration, $"{name}/s²");
        if (double.IsFinite(typed.Jerk)) Add("pathJerk", "Jerk along the path", now.PathJerk, typed.Jerk, $"{name}/s³");
        Add("blend", "Blend", now.Blend, typed.Blend, name);
        return table.ToImmutable();

        // The unit divides what was rounded in SI: the quotient is rounded back to what a person types.
        void Add(string field, string what, double? before, double then, string per) =>
            table.Add(new($"/motion/settings/{field}", what, Math.Round((before ?? double.NaN) / unit, 6), Math.Round(then / unit, 6), per));
    }

    private static CycleRow Seconds(string cycle, string id, string what, double seconds, string known) =>
        new(cycle, id, what, seconds, "s", double.IsFinite(seconds) ? $"{Numbers.Plain(seconds, 3)} s" : "–", known);
}
