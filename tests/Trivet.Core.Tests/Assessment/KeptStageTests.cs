using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Assessment;

public sealed class KeptStageTests
{
    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    /// <summary>A kept stage would be stale if it read more than its sections: whatever its findings declare lies in them, also of a cell that is half empty.</summary>
    [Theory]
    [InlineData("jar-lids"), InlineData("biscuits"), InlineData("labels"), InlineData("tight-corner")]
    public void A_kept_stage_rests_on_its_sections_alone(string sample)
    {
        var cell = Sample(sample);
        foreach (var half in (Cell[])[cell, cell with { Cabinet = new() }, cell with { Frame = new(), Cabling = new() }, cell with { Depth = null, Cables = Keyed.Empty<Cable>() }])
            foreach (var stage in KeptStage.Electrical())
            {
                var plan = stage.Of(half);
                var inputs = plan.Findings.Concat(plan.Tasks.SelectMany(t => t.Sample())).SelectMany(f => f.Inputs).Concat(plan.Tasks.SelectMany(t => t.Used.Select(u => u.Key)));
                Assert.All(inputs.Distinct(), i => Assert.Contains(stage.Sections, s => i == s || i.StartsWith(s + "/", StringComparison.Ordinal)));
            }
    }

    /// <summary>Kept or done anew, an edit shows the same: each section is emptied in turn and put back.</summary>
    [Fact]
    public void What_is_kept_is_what_would_be_done_anew()
    {
        var cell = Sample("jar-lids");
        var kept = KeptStage.Electrical();
        Cell[] edits =
        [
            cell, cell with { Stations = Keyed.Empty<Station>() }, cell with { Cabinet = cell.Cabinet with { Enclosure = new() } }, cell, cell with { Cables = cell.Cables.Remove("motor-a") }, cell with { Cabling = new() },
            cell with { Depth = Depth.Quote }, cell with { Depth = Depth.Build }, cell with { Frame = new() }, cell,
        ];
        foreach (var edit in edits)
            foreach (var (stage, anew) in kept.Zip(KeptStage.Electrical()))
                Assert.Equal(anew.Of(edit).Findings.Select(Told), stage.Of(edit).Findings.Select(Told));
        // What lies elsewhere asks for nothing again.
        var before = kept.Select(k => k.Of(cell)).ToArray();
        Assert.Equal(before, kept.Select(k => k.Of(cell with { Stations = Keyed.Empty<Station>() })), ReferenceEqualityComparer.Instance);

        static string Told(Finding f) => $"{f.Id} {f.Verdict} {f.Margin:R} {string.Join(' ', f.Inputs)}";
    }
}
