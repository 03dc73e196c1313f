using System.Xml.Linq;
using CsCheck;
using Trivet.Cabling;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Findings;
using Trivet.Signals;
using Trivet.Testing;
using Trivet.Views.Cabinets;
using Trivet.Views.Cabling;
using Xunit;

namespace Trivet.Views.Tests.Cabling;

/// <summary>Whatever a half-filled description holds, it is judged, shown and handed out without an exception.</summary>
public sealed class AnyCellTests
{
    [Fact]
    public void Any_cell_is_judged_and_shown() =>
        RandomCells.Any.Sample(
            cell =>
            {
                foreach (var finding in CablingStage.Of(cell).Findings.Concat(SignalStage.Of(cell).Findings))
                    Assert.False(finding is Judged j && double.IsNaN(j.Value) && j.Verdict is (Verdict.Holds or Verdict.Tight));
                foreach (var table in ElectricalSections.Of(cell).SelectMany(s => s.Tables))
                    Assert.All(table.Rows, r => Assert.Equal(table.Columns.Length, r.Length));
                XDocument.Parse(WiringDiagram.Of(cell).Svg);
                Assert.NotEmpty(CablePapers.Schedule(cell, "revision"));
                CableLabels.Of(cell, "x");
                foreach (string collection in FieldList.Collections)
                {
                    var list = FieldList.Of(cell, collection);
                    var back = EditedList.Take(cell, collection, Grids.Csv(list.Csv()).Rows, "list.csv");
                    Assert.Empty(back.Errors);
                    Assert.Empty(back.Changes);
                }
            },
            seed: "0000000000013", iter: 300);

    [Fact]
    public void Numbers_beyond_all_sense_are_refused_in_words()
    {
        var cell = Cell.Empty with
        {
            Io = new()
            {
                Banks = Keyed.Empty<ChannelBank>().Add("b", new() { Direction = SignalDirection.Input, FirstChannel = int.MaxValue, Channels = int.MaxValue }),
                Signals = Keyed.Empty<Signal>().Add("s", new() { Direction = SignalDirection.Input, Bank = "b", Channel = int.MinValue }),
            },
        };
        Assert.Contains(SignalStage.Of(cell).Findings, f => f is Unjudged { Detail: { } d } && d == SignalReasons.NoChannels);
        ElectricalSections.Of(cell);
    }
}
