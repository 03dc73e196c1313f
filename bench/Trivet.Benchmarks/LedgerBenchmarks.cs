using System.Text;
using BenchmarkDotNet.Attributes;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Ledgers;

namespace Trivet.Benchmarks;

/// <summary>
/// What a person waits for. Budgets: edit to ledger (preview) 100 ms with the page around it, so 20 ms here; the proof 2 s on the
/// sample cell; file to ledger is most of what `trivet check` takes after its start.
/// </summary>
public class LedgerBenchmarks
{
    private byte[] _file = [];
    private Cell _cell = Cell.Empty;
    private Assessor _warm = new();
    private double _shift;

    [GlobalSetup]
    public void Setup()
    {
        _file = Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text);
        _cell = CellFile.Read(_file, "jar-lids.json").Cell!;
        _warm = new Assessor();
        _warm.Prove(_cell, null, CancellationToken.None);
    }

    [Benchmark]
    public Cell? Read_file() => CellFile.Read(_file, "jar-lids.json").Cell;

    [Benchmark]
    public string File_to_ledger()
    {
        var cell = CellFile.Read(_file, "jar-lids.json").Cell!;
        return LedgerText.Render(LedgerTable.Of(Assess.Prove(cell, null, CancellationToken.None)));
    }

    [Benchmark]
    public Assessed Edit_to_preview() => _warm.Preview(Edited());

    [Benchmark]
    public Assessed Edit_to_proof() => _warm.Prove(Edited(), null, CancellationToken.None);

    [Benchmark]
    public LedgerTable Ledger_in_words() => LedgerTable.Of(_warm.Preview(_cell));

    /// <summary>One tray moved by a hair, each time elsewhere, so that nothing about it can be remembered from before.</summary>
    private Cell Edited()
    {
        _shift += 1e-7;
        var (id, station) = _cell.Stations.First();
        return _cell with { Stations = _cell.Stations.SetItem(id, station with { X = (station.X ?? 0) + _shift }) };
    }
}
