using System.Collections.Immutable;
using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Procedures;
using Trivet.Views.Settings;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Procedures;

/// <summary>Steps tell what the cell knows: parameters, partners of plugs, turns of a foot.</summary>
public sealed class StepKnowsTests
{
    private static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    private static string What(Cell cell, string step, string tag = "en") => StepTexts.Of(CellProcedure.Of(cell), ProcedureWords.In(tag)).First(s => s.Step.Id == step).What;

    /// <summary>Held against the list that is typed from, line by line.</summary>
    [Theory, InlineData("jar-lids"), InlineData("biscuits")]
    public void The_step_that_types_settings_names_each_with_value_and_unit(string sample)
    {
        var cell = Sample(sample);
        string what = What(cell, "settings");
        bool comma = cell.Controller.DecimalComma == true;
        string[][] rows = [.. SettingForms.Csv(cell).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(r => r.Split(','))];
        Assert.Equal(cell.Controller.Settings.Count, rows.Length);
        foreach (var (id, setting) in cell.Controller.Settings)
        {
            var planned = Trivet.Settings.SettingInputs.Read(cell, id, new(), ImmutableArray.CreateBuilder<Findings.Contradiction>())!;
            string unit = SettingTexts.Unit(cell, planned, English.Language.Setting);
            Assert.Contains($"{setting.Name} = {SettingTexts.Typed(planned, comma)}", what, StringComparison.Ordinal);
            // The list words "for mm"; here the sign stands, which needs no language.
            Assert.Equal(unit.StartsWith("for ", StringComparison.Ordinal) ? "1/" + unit[4..] : unit, SettingTexts.UnitShown(planned));
        }
    }

    [Fact]
    public void Parameters_too_many_for_a_card_are_counted_and_their_list_is_named_and_an_axis_still_has_its_own()
    {
        var lids = Sample("jar-lids");
        var many = lids.Controller.Settings;
        for (int i = 0; i < 30; i++) many = many.SetItem($"more-{i}", new() { Name = $"More {i}", Value = "1", Order = 100 + i });
        var cell = lids with { Controller = lids.Controller with { Settings = many } };
        Assert.EndsWith("71 parameters: the sheet Electrical or trivet settings lists them with value and unit.", What(cell, "settings"), StringComparison.Ordinal);
        Assert.EndsWith("Typed for it: Axes, second rail: Second rail, steps for a unit = 66.6667 1/mm; Second rail, sense = 1.", What(cell, "hand-move:b"), StringComparison.Ordinal);
        Assert.DoesNotContain("parameters", What(lids with { Controller = new() }, "settings"), StringComparison.Ordinal);
    }

    /// <summary>Found here by comparing every end with every other one at the same place: connector, coding, gender and contacts the same.</summary>
    [Fact]
    public void A_step_that_plugs_names_what_fits_there_too()
    {
        var lids = Sample("jar-lids");
        foreach (string axis in new[] { "a", "b", "c" })
        {
            string what = What(lids, $"connect-axis:{axis}");
            foreach (var mine in lids.Cables.Values.Where(c => c.Axis == axis))
            {
                string[] fits = [.. lids.Cables.Values.Where(o => o.Axis != axis && o.Kind != CableKind.Earth && Fits(mine.FromEnd, o.FromEnd) && InCabinet(mine.From) && InCabinet(o.From)).Select(o => o.Label!)];
                foreach (string other in fits) Assert.Matches($"{mine.Label}[^;]* – [^;]*{other}", what);
            }
        }
        Assert.Contains("W1A – W1B, W1C, W14 (", What(lids, "connect-axis:a"), StringComparison.Ordinal);
        Assert.Contains("Nicht vertauschen, obwohl es passt: W1B – W1A, W1C, W14 (", What(lids, "connect-axis:b", "de"), StringComparison.Ordinal);
        // Where no plug fits elsewhere nothing is said of it.
        var alone = lids with { Cables = lids.Cables.RemoveRange(lids.Cables.Where(c => c.Value.Axis != "a").Select(c => c.Key)) };
        Assert.DoesNotContain("swapped", What(alone, "connect-axis:a"), StringComparison.Ordinal);

        bool InCabinet(string? place) => place is not null && lids.Cabinet.Modules.ContainsKey(place);
        static bool Fits(CableEnd a, CableEnd b) => a.Connector is not null && a.Gender != ContactGender.Terminals && (a.Connector, a.Coding, a.Gender, a.Contacts) == (b.Connector, b.Coding, b.Gender, b.Contacts);
    }

    /// <summary>A coarse thread M12 has a pitch of 1.75 mm (ISO 261, from memory): a sixth of a turn is 0.292 mm, and 1 mm is 0.571 turns.</summary>
    [Fact]
    public void Levelling_tells_what_a_turn_and_a_flat_lift_or_how_to_find_it()
    {
        var lids = Sample("jar-lids");
        Assert.Equal(1.75e-3, lids.Frame.Feet.ThreadPitch!.Value, 1e-12);
        string what = What(lids, "frame-level");
        Assert.Contains("lifts 1.75 mm, a flat of its hexagon 0.292 mm, so a millimetre takes 0.571 turns", what, StringComparison.Ordinal);
        Assert.Contains("hebt um 1,75 mm, eine Schlüsselfläche um 0,292 mm", What(lids, "frame-level", "de"), StringComparison.Ordinal);
        foreach (double? pitch in new double?[] { null, 0, -1e-3 })
            Assert.Contains("turn one foot once and read it", What(lids with { Frame = lids.Frame with { Feet = lids.Frame.Feet with { ThreadPitch = pitch } } }, "frame-level"), StringComparison.Ordinal);
    }
}
