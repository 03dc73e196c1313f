using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Settings;
using Xunit;

namespace Trivet.Core.Tests.Settings;

public sealed class ExportComparisonTests
{
    private static readonly Cell Cell = Cells.Cell.Empty with
    {
        Tool = new() { TcpX = 0.0123, TcpY = 0.02 },
        Controller = new()
        {
            Settings = Keyed.Empty<ControllerSetting>()
                .Add("x", new() { Name = "X", Quantity = SettingQuantity.TcpX, PerUnit = 1e-3, Digits = 1, Reversed = true })
                .Add("y", new() { Name = "Y", Key = "tool/y", Quantity = SettingQuantity.TcpY, PerUnit = 1e-3, Digits = 1 })
                .Add("z", new() { Name = "Z", Quantity = SettingQuantity.TcpZ, PerUnit = 1e-3, Digits = 1 })
                .Add("kind", new() { Name = "Kind", Value = "3" }),
        },
    };

    private static FoundParameter F(string name, string text, double number = double.NaN) => new(name, text, number);

    [Fact]
    public void An_export_is_held_against_the_plan_within_the_step()
    {
        var compared = ExportComparison.Of(Cell, [F("X", "-12.34", -12.34), F("tool/y", "21", 21), F("Kind", "3.0", 3), F("other", "1", 1)]);
        Assert.Equal([("kind", SettingMatch.Equal), ("x", SettingMatch.Equal), ("y", SettingMatch.Differs)], compared.Settings.Select(s => (s.Setting.Id, s.Match)).Order());
        // 21 mm where 20 are planned.
        Assert.Equal(0.001, compared.Settings.Single(s => s.Setting.Id == "y").Difference, 1e-12);
        Assert.Equal("/tool/tcpY", compared.Settings.Single(s => s.Setting.Id == "y").Setting.Field);
        Assert.Equal("other", Assert.Single(compared.NotPlanned).Name);
        // The plan states no z yet, so equal it is not.
        Assert.Equal("z", Assert.Single(compared.NotComputed));
        Assert.False(compared.Same);
        var whole = Cell with { Controller = Cell.Controller with { Settings = Cell.Controller.Settings.Remove("z") } };
        Assert.True(ExportComparison.Of(whole, [F("X", "-12.3", -12.3), F("tool/y", "20", 20), F("Kind", "3", 3)]).Same);
        // A sign that was lost is a difference of twice the value.
        Assert.Equal(-0.0246, ExportComparison.Of(whole, [F("X", "12.3", 12.3)]).Settings.Single(s => s.Setting.Id == "x").Difference, 1e-12);
        var none = ExportComparison.Of(whole, [F("X", "twelve")]);
        Assert.Equal([SettingMatch.NoNumber, SettingMatch.Missing, SettingMatch.Missing], none.Settings.OrderBy(s => s.Match).Select(s => s.Match));
        Assert.False(ExportComparison.Of(Cells.Cell.Empty, [F("a", "1", 1)]).Same);
    }

    [Fact]
    public void A_restored_backup_is_equal_only_when_all_is_but_named_exceptions()
    {
        var may = Keyed.Empty<ExportException>().Add("c", new() { Name = "count/*", Reason = "counts" }).Add("t", new() { Name = "time" });
        ImmutableArray<FoundParameter> backup = [F("a", "1.0", 1), F("b", "on"), F("count/h", "7", 7), F("time", "8:15")];
        Assert.True(RestoreProof.Of(backup, [F("a", "1.00", 1), F("b", "on"), F("count/h", "8", 8)], may).RestoredEqual);
        Assert.Equal((2, 2), (RestoreProof.Of(backup, [F("a", "1.00", 1), F("b", "on"), F("count/h", "8", 8)], may).Equal, RestoreProof.Of(backup, [F("a", "1.00", 1), F("b", "on"), F("count/h", "8", 8)], may).Excepted));
        Assert.False(RestoreProof.Of(backup, [F("a", "1.1", 1.1), F("b", "on"), F("count/h", "7", 7), F("time", "8:15")], may).RestoredEqual);
        Assert.False(RestoreProof.Of(backup, backup.RemoveAt(1), may).RestoredEqual);
        Assert.False(RestoreProof.Of(backup, backup.Add(F("new", "1", 1)), may).RestoredEqual);
        Assert.False(RestoreProof.Of(backup, backup.SetItem(1, F("b", "ON")), may).RestoredEqual);
        // "time" is a name of its own, not the beginning of others.
        Assert.False(RestoreProof.Of(backup, backup.Add(F("timer", "1", 1)), may).RestoredEqual);
        Assert.False(RestoreProof.Of([], [], may).RestoredEqual);
    }
}
