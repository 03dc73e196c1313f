using System.Reflection;
using CsCheck;
using Trivet.Cells;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

public class CellFieldsTests
{
    private static readonly Cell Rail = Cell.Empty with
    {
        Robot = new Robot { Family = RobotFamily.RailDelta, Common = new ChainDescription { Rod = 0.56, TravelTo = 0.52 } },
    };

    /// <summary>The table is written by hand; this holds it against the records, whose properties it must name one by one.</summary>
    [Fact]
    public void Every_property_of_every_record_is_a_field_of_its_name()
    {
        Cell cell = Cell.Empty;
        foreach (string place in (string[])["/brief/parts/e", "/brief/requirements/e", "/brief/openQuestions/e", "/robot/chains/e", "/controller/axes/e", "/controller/settings/e", "/controller/export/exceptions/e", "/tool/parts/e",
            "/drives/motors/e", "/drives/motors/e/curve/e", "/drives/axes/e", "/motion/cycles/e", "/motion/cycles/e/waypoints/e", "/frame/members/e", "/frame/profiles/e", "/frame/mountPoints/e", "/frame/masses/e", "/stations/e",
            "/cabinet/modules/e", "/cabinet/modules/e/sockets/e", "/cabinet/railRules/e", "/cabinet/sources/e", "/cabinet/branches/e", "/cabinet/consumers/e", "/cabinet/addressClasses/e", "/cabinet/network/messages/e", "/cables/e", "/cables/e/cores/e", "/cabling/devices/e", "/cabling/ways/e", "/cabling/ways/e/points/e", "/io/banks/e", "/io/signals/e", "/io/switches/e", "/io/nodes/e", "/io/nodes/e/objects/e", "/pneumatics/users/e", "/pneumatics/hoses/e", "/handling/lifts/e", "/guarding/devices/e",
            "/guarding/fences/e", "/guarding/gaps/e", "/stopping/functions/e", "/stopping/functions/e/channels/e", "/hazards/e", "/hazards/e/measures/e", "/hazards/e/proofs/e", "/recording/people/e", "/partsList/e",
            "/interfaces/e", "/interfaces/e/points/e", "/materials/e", "/plates/e", "/plates/e/stock/e", "/joints/e", "/joints/e/clamped/e"])
        {
            cell = CellFields.Add(cell, place).Cell!;
        }

        var expected = new List<string>();
        Collect(typeof(Cell), "", expected);
        Assert.Equal(expected.Order(StringComparer.Ordinal), CellFields.Below(cell, "").Select(f => f.Pointer).Order(StringComparer.Ordinal));

        static void Collect(Type type, string pointer, List<string> leaves)
        {
            foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
            {
                string place = $"{pointer}/{char.ToLowerInvariant(property.Name[0])}{property.Name[1..]}";
                var kind = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
                if (kind.IsGenericType) Collect(kind.GetGenericArguments()[1], place + "/e", leaves);
                else if (kind == typeof(string) || kind.IsValueType) leaves.Add(place);
                else Collect(kind, place, leaves);
            }
        }
    }

    [Fact]
    public void Each_field_set_alone_changes_nothing_but_itself() =>
        RandomCells.Any.Sample(
            cell =>
            {
                foreach (var field in CellFields.Below(cell, "").Where(f => f.Kind == FieldKind.Quantity).Take(40))
                {
                    var edited = CellFields.SetSi(cell, field.Pointer, 0.123);
                    var change = CellFields.Changes(cell, edited);
                    if (field.Si == 0.123) Assert.Empty(change);
                    else Assert.Equal(field.Pointer, Assert.Single(change).Pointer);
                    Assert.Equal(0.123, CellFields.Find(edited, field.Pointer)!.Si);
                }
            },
            seed: "0000000000002", iter: Effort.Cases(30));

    [Fact]
    public void A_field_set_from_its_own_text_stays_as_it_was() =>
        RandomCells.Any.Sample(
            cell =>
            {
                foreach (var field in CellFields.Below(cell, "").Where(f => f.Text.Length > 0))
                    Assert.Empty(CellFields.Changes(cell, CellFields.Set(cell, field.Pointer, field.Text).Cell!));
            },
            seed: "0000000000003", iter: Effort.Cases(20));

    [Fact]
    public void Fields_below_a_pointer_are_those_of_that_part_only()
    {
        var cell = CellFields.Add(CellFields.Add(Rail, "/stations/tray").Cell!, "/stations/tray-left").Cell!;
        Assert.All(CellFields.Below(cell, "/stations/tray"), f => Assert.StartsWith("/stations/tray/", f.Pointer, StringComparison.Ordinal));
        Assert.Equal("/robot/common/rod", Assert.Single(CellFields.Below(cell, "/robot/common/rod")).Pointer);
        Assert.Empty(CellFields.Below(cell, "/nothing"));
        Assert.Null(CellFields.Find(cell, "/robot"));
        var rod = CellFields.Find(cell, "/robot/common/rod")!;
        Assert.Equal(("rod", "560 mm", Dimension.Length, Depth.Quote), (rod.Label, rod.Text, rod.Dimension, rod.NeededAt));
        Assert.Equal("TCP z", CellFields.Find(cell, "/tool/tcpZ")!.Label);
        Assert.Equal(Dimension.Length, CellFields.Find(cell, "/robot/common/travelTo")!.Dimension);
    }

    [Fact]
    public void A_typed_text_is_set_cleared_or_refused()
    {
        var set = CellFields.Set(Rail, "/robot/common/rod", "57,5 cm").Cell!;
        Assert.Equal(0.575, set.Robot.Common.Rod);
        Assert.Null(CellFields.Set(set, "/robot/common/rod", " ").Cell!.Robot.Common.Rod);
        var refused = CellFields.Set(Rail, "/robot/common/rod", "57");
        Assert.Null(refused.Cell);
        Assert.Contains("57 mm", Assert.Single(refused.Errors).Remedy, StringComparison.Ordinal);
        Assert.Contains("length", Assert.Single(CellFields.Set(Rail, "/robot/common/travelTo", "30 deg").Errors).Problem, StringComparison.Ordinal);
        Assert.Contains("robot.family", Assert.Single(CellFields.Set(Cell.Empty, "/robot/common/travelTo", "30 deg").Errors).Remedy, StringComparison.Ordinal);
        Assert.NotEmpty(CellFields.Set(Rail, "/stations/gone/x", "1 mm").Errors);
        Assert.True(CellFields.Set(Rail, "/robot/cameAssembled", "yes").Cell!.Robot.CameAssembled);
    }

    [Fact]
    public void The_kind_of_drive_is_not_changed_under_values_stated_for_it()
    {
        var refused = CellFields.Set(Rail, "/robot/family", "crank delta");
        Assert.Contains("/robot/common/travelTo", Assert.Single(refused.Errors).Problem, StringComparison.Ordinal);
        var cleared = CellFields.Set(Rail, "/robot/common/travelTo", "").Cell!;
        Assert.Equal(RobotFamily.CrankDelta, CellFields.Set(cleared, "/robot/family", "crank delta").Cell!.Robot.Family);
    }

    /// <summary>A parameter's unit is of the kind of what it holds, and comes back from the file as it was.</summary>
    [Theory]
    [InlineData("rod", "", "0.01 mm", "1 deg")]
    [InlineData("azimuth", "", "0.001 deg", "1 mm")]
    [InlineData("smallest reading", "rotary", "1 deg", "1 mm")]
    [InlineData("smallest reading", "", "1 mm", "1 deg")]
    [InlineData("axis speed", "", "1 mm/s", "1 deg/s")]
    [InlineData("axis jerk", "rotary", "1 deg/s³", "1 m/s³")]
    [InlineData("ratio", "", "2", "2 mm")]
    [InlineData("peak current", "", "100 mA", "1 V")]
    [InlineData("bit rate", "", "1 kbit/s", "1")]
    [InlineData("period", "", "1 ms", "1 A")]
    public void A_unit_of_a_parameter_goes_with_what_it_holds(string quantity, string of, string unit, string wrong)
    {
        var cell = CellFields.Add(Rail, "/controller/settings/p").Cell!;
        Assert.Contains("quantity first", Assert.Single(CellFields.Set(cell, "/controller/settings/p/perUnit", unit).Errors).Remedy, StringComparison.Ordinal);
        cell = CellFields.Set(cell, "/controller/settings/p/quantity", quantity).Cell!;
        cell = CellFields.Set(cell, "/controller/settings/p/of", of).Cell!;
        Assert.NotEmpty(CellFields.Set(cell, "/controller/settings/p/perUnit", wrong).Errors);
        cell = CellFields.Set(cell, "/controller/settings/p/perUnit", unit).Cell!;
        Assert.Equal(unit, CellFields.Find(cell, "/controller/settings/p/perUnit")!.Text == unit ? unit : Quantity.Format(cell.Controller.Settings["p"].PerUnit!.Value, CellFields.Find(cell, "/controller/settings/p/perUnit")!.Dimension, unit.Split(' ', 2).ElementAtOrDefault(1)));
        var again = CellFile.Read(System.Text.Encoding.UTF8.GetBytes(CellFile.Write(cell)), "again");
        Assert.Empty(again.Errors);
        Assert.Equal(CellFile.Hash(cell), CellFile.Hash(again.Cell!));
        // What is stated in millimetres is not turned into degrees by choosing another quantity.
        if (quantity == "rod") Assert.NotEmpty(CellFields.Set(cell, "/controller/settings/p/quantity", "azimuth").Errors);
    }

    [Fact]
    public void Entries_are_added_once_under_a_valid_id_and_removed()
    {
        var one = CellFields.Add(Rail, "/robot/chains/a").Cell!;
        Assert.True(one.Robot.Chains.ContainsKey("a"));
        Assert.Contains("already", Assert.Single(CellFields.Add(one, "/robot/chains/a").Errors).Problem, StringComparison.Ordinal);
        Assert.Contains("an id is", Assert.Single(CellFields.Add(one, "/robot/chains/A 1").Errors).Remedy, StringComparison.Ordinal);
        Assert.NotEmpty(CellFields.Add(one, "/robot/arms/a").Errors);
        Assert.NotEmpty(CellFields.Add(one, "").Errors);
        Assert.Equal(new FieldChange("/robot/chains/a", "", "{}"), Assert.Single(CellFields.Changes(Rail, one)));
        Assert.Equal(CellFile.Hash(Rail), CellFile.Hash(CellFields.Remove(one, "/robot/chains/a")));
        Assert.Null(CellFields.Remove(Rail, "/robot/common/rod").Robot.Common.Rod);
        Assert.Equal(new ChainDescription(), CellFields.Remove(Rail, "/robot/common").Robot.Common);
        Assert.Same(Rail, CellFields.Remove(Rail, "/nothing"));
    }

    [Fact]
    public void Changes_name_each_field_with_both_texts()
    {
        var after = CellFields.SetSi(Rail, "/robot/common/rod", 0.6);
        Assert.Equal([new FieldChange("/robot/common/rod", "560 mm", "600 mm")], CellFields.Changes(Rail, after));
        Assert.Equal([new FieldChange("/robot/family", "", "rail delta"), new FieldChange("/robot/common/rod", "", "560 mm"), new FieldChange("/robot/common/travelTo", "", "520 mm")],
            CellFields.Changes(Cell.Empty, Rail).OrderBy(c => c.Pointer.Length).ThenBy(c => c.Pointer, StringComparer.Ordinal));
    }

    [Fact]
    public void A_value_that_is_no_number_can_not_be_stated() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CellFields.SetSi(Rail, "/robot/common/rod", double.NaN));
}
