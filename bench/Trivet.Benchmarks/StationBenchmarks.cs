using BenchmarkDotNet.Attributes;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Reach;

namespace Trivet.Benchmarks;

/// <summary>
/// Reach of the sample cells, one thread unless said otherwise. Budgets: proof of a whole cell 2 s on two cores, preview 30 ms; a
/// station is what one edit costs.
/// </summary>
public class StationBenchmarks
{
    private Cell _cell = Cell.Empty;
    private StagePlan _plan = StationStage.Of(Cell.Empty);

    [Params("jar-lids", "biscuits")]
    public string Sample { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        _cell = CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Samples.Find(Sample)!.Text), Sample).Cell!;
        _plan = StationStage.Of(_cell);
    }

    /// <summary>Reads every station's inputs, rule by rule: what a preview costs before anything is computed.</summary>
    [Benchmark]
    public StagePlan Plan() => StationStage.Of(_cell);

    /// <summary>All rules of the first station, proved.</summary>
    [Benchmark]
    public int Proof_of_a_station() => Proved(_cell.Stations.Keys.First());

    /// <summary>All rules of all stations, proved, one after the other.</summary>
    [Benchmark]
    public int Proof_of_all_stations() => Proved("");

    [Benchmark]
    public Assessed Preview() => Assess.Preview(_cell);

    private int Proved(string station)
    {
        int holds = 0;
        foreach (var task in _plan.Tasks)
        {
            if (!task.Name.Contains(station, StringComparison.Ordinal)) continue;
            foreach (var finding in task.Prove(CancellationToken.None))
                if (finding.Verdict == Verdict.Holds) holds++;
        }
        return holds;
    }
}
