using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Views.Procedures;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Procedures;

public sealed class SafeTextsTests
{
    private static Cell Sample(string id) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(id)!.Text), id).Cell!;

    private static SafeText Of(Cell cell, string tag = "en") => SafeTexts.Of(CellProcedure.SafeOf(cell), ProcedureWords.In(tag));

    private static Cell With(Cell cell, Func<SafetyFunction, SafetyFunction> stop) => cell with
    {
        Stopping = cell.Stopping with { Functions = cell.Stopping.Functions.SetItem("emergency-stop", stop(cell.Stopping.Functions["emergency-stop"])) },
    };

    [Fact]
    public void What_the_cell_states_of_its_stops_is_told()
    {
        var lids = Sample("jar-lids");
        var safe = Of(lids);
        var stop = lids.Stopping.Functions["emergency-stop"];
        string line = Assert.Single(safe.Stop);
        Assert.Contains(stop.Trigger!, line, StringComparison.Ordinal);
        Assert.Contains(stop.Isolates!, line, StringComparison.Ordinal);
        Assert.Contains("within 0.25 s; the torque goes 0.06 s later", line, StringComparison.Ordinal);
        Assert.Contains(lids.Stopping.Functions["main-switch"].Trigger!, Assert.Single(safe.Lock), StringComparison.Ordinal);
        // The longest of the plates first: whoever waits it out has waited for all.
        Assert.StartsWith("60 s, then measure: 60 s Supply 48 V; 30 s Axis first rail, ", Assert.Single(safe.Wait), StringComparison.Ordinal);
        Assert.All(lids.Cabinet.Sources.Values, s => Assert.Contains(s.Name!, Assert.Single(safe.Live), StringComparison.Ordinal));
        // The brakes close within 40 ms, while the stop keeps the torque for 60 ms: only without supply does anything sink.
        Assert.Contains("At the stop, chain a, b, c: the brake holds.", safe.Falls);
        Assert.Contains(safe.Falls, f => f.StartsWith("Without supply, chain a, b, c: sinks up to ", StringComparison.Ordinal));
    }

    /// <summary>IEC 60204-1, 9.2.2 (from memory): 0 takes the power away at once, 1 after a controlled stop, 2 leaves it on.</summary>
    [Fact]
    public void A_category_says_what_becomes_of_the_power_and_of_the_chains()
    {
        var lids = Sample("jar-lids");
        var zero = Of(With(lids, f => f with { StopCategory = StopCategory.Zero }));
        Assert.Contains("the torque goes at once", zero.Stop[0], StringComparison.Ordinal);
        Assert.Contains(zero.Falls, f => f.StartsWith("At the stop and without supply, chain a, b, c: sinks", StringComparison.Ordinal));
        var two = Of(With(lids, f => f with { StopCategory = StopCategory.Two }));
        Assert.Contains("Nothing goes dead", two.Stop[0], StringComparison.Ordinal);
        Assert.Contains("At the stop, chain a, b, c: the drive holds as long as it has its supply.", two.Falls);
        // Less torque time than the brake takes: it sinks at the stop too.
        Assert.Contains(Of(With(lids, f => f with { TorqueTime = 0.01 })).Falls, f => f.StartsWith("At the stop, chain a, b, c: sinks", StringComparison.Ordinal));
    }

    /// <summary>Nothing is told as known that the description does not state; and nothing that is not known is told as harmless.</summary>
    [Fact]
    public void What_is_not_stated_is_said_with_the_general_rule()
    {
        var lids = Sample("jar-lids");
        var words = ProcedureWords.In("en").Safe;
        var open = Of(With(lids, f => f with { StopCategory = null, Isolates = null, Trigger = null, AirOff = null }));
        Assert.Contains(words.NoCategory, open.Stop[0], StringComparison.Ordinal);
        Assert.Contains(words.TakesUnknown, open.Stop[0], StringComparison.Ordinal);
        Assert.Contains("Find it before work begins", open.Stop[0], StringComparison.Ordinal);
        Assert.Equal([words.AirUnknown], open.Air);
        Assert.DoesNotContain(open.Falls, f => f.StartsWith("At the stop, ", StringComparison.Ordinal));
        Assert.Contains(open.Falls, f => f.StartsWith("At the stop and without supply, chain a, b, c: sinks", StringComparison.Ordinal));
        Assert.Equal([words.AirStays], Of(With(lids, f => f with { AirOff = false })).Air);

        var bare = Of(lids with { Stopping = new(), Cabinet = new(), Stations = lids.Stations.Clear() });
        Assert.Equal((words.NoStop, words.NoIsolator, words.NoCharges, words.NoSupplies, words.AirUnknown), (bare.Stop[0], bare.Lock[0], bare.Wait[0], bare.Live[0], bare.Air[0]));
        Assert.Contains(words.FallUnknown, bare.Falls);
        var modules = lids.Cabinet.Modules.SetItem("axis-b", lids.Cabinet.Modules["axis-b"] with { DischargeTime = null });
        Assert.Contains(Of(lids with { Cabinet = lids.Cabinet with { Modules = modules } }).Wait, w => w.Contains("how long Axis second rail keeps a charge: read its plate", StringComparison.Ordinal));
        // A prop counts only where one stands, and a chain that nothing holds comes down.
        Cell Held(Holding by) => lids with { Robot = lids.Robot with { Common = lids.Robot.Common with { Holding = by } } };
        Assert.Contains(Of(Held(Holding.Prop)).Falls, f => f.Contains("comes down unless a prop stands under it", StringComparison.Ordinal));
        Assert.Contains(Of(Held(Holding.Nothing)).Falls, f => f.Contains("comes down to the end of its travel", StringComparison.Ordinal));
    }

    [Fact]
    public void The_card_hangs_before_all_steps_in_either_language_and_the_page_at_the_machine_has_the_same_lines()
    {
        var lids = Sample("jar-lids");
        var bundle = Views.Floor.FloorBundles.Of("jar-lids", lids, new Assessor());
        foreach (string tag in new[] { "en", "de" })
        {
            var sheet = ProcedureSheet.Of(lids, 2, ProcedureWords.In(tag));
            string text = ProcedureForms.Safe(sheet);
            foreach (string line in new[] { bundle.Safe[tag].Stop, bundle.Safe[tag].Lock, bundle.Safe[tag].Wait, bundle.Safe[tag].Live, bundle.Safe[tag].Air, bundle.Safe[tag].Falls }.SelectMany(l => l))
                Assert.Contains(line, text, StringComparison.Ordinal);
            var none = Views.Pictures.PictureSet.Of(Assess.Preview(lids), sheet.Procedure);
            var card = StepCards.Of(sheet, none, "http://desk", "12345678")[0];
            Assert.Equal(("", FloorWords.Of(tag).SafeTitle), (card.Link, card.Paper.Marks.OfType<Views.Papers.Label>().First().Text));
            // The numbers stand in both languages: 60 s to wait, as the plate of the motor supply says.
            Assert.Contains(card.Paper.Marks.OfType<Views.Papers.Label>(), l => l.Text.Contains("60 s", StringComparison.Ordinal));
        }
        Assert.Equal(bundle.Safe["de"].Falls, FloorBundleFile.Read(Encoding.UTF8.GetBytes(FloorBundleFile.Write(bundle))).Bundle!.Safe["de"].Falls);
    }
}
