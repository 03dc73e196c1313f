using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
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
    private static CycleWords Words => Locale.English.Language.Motion.Cycle;

    public static CycleSheet Of(Cell cell, ImmutableArray<CycleResult> results, FastestResult? fastest = null, bool variants = false, ImmutableArray<DriveJudgement> drives = default)
    {
        var rows = ImmutableArray.CreateBuilder<CycleRow>();
        foreach (var result in results)
        {
            string id = result.Input.Plan.Id;
            foreach (var law in result.Laws) AddLaw(rows, cell, id, law);
            foreach (var cut in RoundingCut.Of(result.Input.Plan))
                rows.Add(new(id, cut.Loaded ? "rounding-loaded" : "rounding-empty", cut.What, cut.Least, "m", Numbers.Quantity(cut.Least, "m"), cut.Why));
            rows.Add(new(id, "gap", Words.Gap, result.Gap, "1", double.IsFinite(result.Gap) ? Numbers.Percent(result.Gap) : "–", HeldBack(cell, result)));
            foreach (var judged in drives.IsDefault ? [] : drives.Where(d => d.Cycle == id)) AddDrives(rows, cell, judged);
            if (!variants) continue;
            foreach (var variant in LawVariants.Of(cell, result.Input)) AddVariant(rows, cell, id, variant);
        }
        if (fastest is null) return new(cell.Name ?? Locale.English.Language.UnnamedCell, rows.ToImmutable(), []);

        foreach (var result in fastest.Cycles)
            rows.Add(Seconds(result.Input.Plan.Id, "fastest-cycle-time", Words.Fastest, result.Controller.CycleTime, Locale.Fill(Words.Tried, ("tried", $"{fastest.Tried}"))));
        if (fastest.Settings is null) rows.Add(new("", "fastest", Words.FastestSettings, double.NaN, "1", "–", Words.FastestNone));
        return new(cell.Name ?? Locale.English.Language.UnnamedCell, rows.ToImmutable(), fastest.Settings is { } typed ? Table(cell, typed) : []);
    }

    private static void AddLaw(ImmutableArray<CycleRow>.Builder rows, Cell cell, string cycle, LawResult law)
    {
        string id = law.Law switch
        {
            TimingLaw.Controller => "controller",
            TimingLaw.States => "states",
            _ => "bound",
        };
        string why = law.Why is { } reason ? Sentences.Of(reason, cell) : "";
        rows.Add(Seconds(cycle, $"{id}-loaded", Named(Words.Loaded), law.Loaded.Duration, why));
        rows.Add(Seconds(cycle, $"{id}-empty", Named(Words.Empty), law.Empty.Duration, ""));
        rows.Add(Seconds(cycle, $"{id}-cycle-time", Named(Words.Whole), law.CycleTime, Words.AsStated));
        rows.Add(new(cycle, $"{id}-rate", Named(Words.Rate), law.Rate, "1/s", law.Found ? Numbers.Quantity(law.Rate, "1/s") : "–", ""));
        double leaves = Math.Max(law.Loaded.Leaves, law.Empty.Leaves);
        if (leaves > 0) rows.Add(new(cycle, $"{id}-leaves", Named(Words.Leaves), leaves, "m", Numbers.Quantity(leaves, "m"), Words.Largest));

        string Named(string form) => Locale.Fill(form, ("law", Words.Laws[(int)law.Law]));
    }

    private static void AddDrives(ImmutableArray<CycleRow>.Builder rows, Cell cell, DriveJudgement judged)
    {
        if (judged.Supply is { Usable: true } supply)
        {
            rows.Add(new(judged.Cycle, "energy", Words.Energy, supply.Energies.Source, "J", Numbers.Quantity(supply.Energies.Source, "J"), Words.FromSupply));
            rows.Add(new(judged.Cycle, "mean-power", Words.MeanPower, supply.MeanSourcePower, "W", Numbers.Quantity(supply.MeanSourcePower, "W"), Words.FromSupply));
        }
        foreach (var (axis, result) in judged.Axes)
        {
            if (result.Warming is not { } warming) continue;
            string name = Fields.Axis(cell, axis, Locale.English.Language);
            if (double.IsFinite(warming.Shift)) Add("temperature", Words.Temperature, warming.AtEnd);
            Add("temperature-steady", Words.TemperatureSteady, warming.Steady);

            void Add(string id, string what, double celsius) =>
                rows.Add(new(judged.Cycle, $"{id}-{axis}", Locale.Fill(what, ("axis", name)), celsius, "°C", Numbers.Quantity(celsius, "°C"), ""));
        }
    }

    private static void AddVariant(ImmutableArray<CycleRow>.Builder rows, Cell cell, string cycle, LawVariant variant)
    {
        var row = VariantSheet.Row(cell, variant);
        string id = $"variant-{(variant.Profile == ProfileKind.Trapezoidal ? "trapezoid" : "seven-phase")}-{(variant.Along == ProfileAlong.Path ? "path" : "axes")}";
        string known = row.Why.Length > 0 ? row.Why : variant.Stated ? Locale.English.Language.Motion.IsStated : "";
        rows.Add(Seconds(cycle, $"{id}-cycle-time", Locale.Fill(Words.VariantCycle, ("variant", row.Name)), variant.Law.CycleTime, known));
        if (variant.Leaves > 0)
            rows.Add(new(cycle, $"{id}-leaves", Locale.Fill(Words.VariantLeaves, ("variant", row.Name)), variant.Leaves, "m", row.Leaves, Words.Largest));
        if (variant.Worst is { } worst) rows.Add(new(cycle, $"{id}-use", Locale.Fill(Words.VariantUse, ("variant", row.Name)), worst.Use, "1", Numbers.Percent(worst.Use), row.Worst));
    }

    private static string HeldBack(Cell cell, CycleResult result)
    {
        var language = Locale.English.Language;
        return result.HeldBack.IsEmpty ? "" : Locale.Fill(Words.HeldBack, ("limits", Fields.List(result.HeldBack.Take(3).Select(h => Locale.Fill(
            language.Motion.HeldBackBy, ("limit", Sentences.RuleNoun(MotionRules.Of(h.Kind, turns: false))), ("axis", Fields.Axis(cell, h.Axis, language)), ("share", Numbers.Percent(h.Share)))))));
    }

    /// <summary>The settings in the length unit that the controller shows for a carriage; millimetres where its axes turn or nothing is stated.</summary>
    private static ImmutableArray<TypedSetting> Table(Cell cell, ControllerSettings typed)
    {
        double unit = 1e-3;
        if (cell.Robot.Family == RobotFamily.RailDelta && RobotInputs.Geometry(cell.Robot, new()).Robot is { } robot)
            unit = ControllerReadings.Of(cell.Controller, robot, new()).Axes[0].PerUnit;
        string name = unit switch { 1e-3 => "mm", 1e-2 => "cm", 1 => "m", _ => Words.Units };
        var now = cell.Motion.Settings;
        var table = ImmutableArray.CreateBuilder<TypedSetting>();
        Add("pathSpeed", Words.SpeedAlong, now.PathSpeed, typed.Speed, $"{name}/s");
        Add("pathAcceleration", Words.AccelerationAlong, now.PathAcceleration, typed.Acceleration, $"{name}/s²");
        if (double.IsFinite(typed.Jerk)) Add("pathJerk", Words.JerkAlong, now.PathJerk, typed.Jerk, $"{name}/s³");
        Add("blend", Words.Blend, now.Blend, typed.Blend, name);
        return table.ToImmutable();

        // The unit divides what was rounded in SI: the quotient is rounded back to what a person types.
        void Add(string field, string what, double? before, double then, string per) =>
            table.Add(new($"/motion/settings/{field}", what, Math.Round((before ?? double.NaN) / unit, 6), Math.Round(then / unit, 6), per));
    }

    private static CycleRow Seconds(string cycle, string id, string what, double seconds, string known) =>
        new(cycle, id, what, seconds, "s", double.IsFinite(seconds) ? $"{Numbers.Plain(seconds, 3)} s" : "–", known);
}
