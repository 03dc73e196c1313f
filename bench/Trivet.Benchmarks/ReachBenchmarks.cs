using System.Text;
using BenchmarkDotNet.Attributes;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Reach;

namespace Trivet.Benchmarks;

/// <summary>
/// What a page about reach waits for. Budgets: the reachable surface at display resolution 150 ms; a section or a map 50 ms; the
/// largest cylinder 0.5 s; homing 1 s; advice for one finding and the search for the mount, which show their progress, 1 s and 5 s.
/// </summary>
public class ReachBenchmarks
{
    private Cell _cell = Cell.Empty, _short = Cell.Empty;
    private CellGeometry _geometry = CellGeometry.Of(Cell.Empty);
    private ReachableSet _set = null!;
    private Finding _worst = null!;
    private readonly Assessor _assessor = new();

    [Params("jar-lids", "biscuits")]
    public string Sample { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        _cell = Read(Sample);
        _geometry = CellGeometry.Of(_cell);
        _set = new(_geometry.Robot!);
        _short = Read("tight-corner");
        _worst = Assess.Preview(_short).Ledger.Findings.First(f => f is Judged && f.Subject.Pointer.StartsWith("/stations/", StringComparison.Ordinal));
        _assessor.Prove(_cell, null, CancellationToken.None);
        _assessor.Prove(_short, null, CancellationToken.None);
    }

    [Benchmark]
    public SurfaceMesh Surface_for_display() => ReachableVolume.Surface(_set);

    [Benchmark]
    public VolumeEstimate Volume() => ReachableVolume.Volume(_set);

    [Benchmark]
    public Outline Vertical_section() => ReachableVolume.VerticalSection(_set, Numerics.Vec3.Zero, 0);

    [Benchmark]
    public PlaneMap Condition_over_a_plane() => PlaneMap.Of(_geometry, WorkingPlane.Level(_geometry.Stations[0].X_CS.P.Z), MapQuantity.Condition);

    [Benchmark]
    public UprightCylinder? Largest_cylinder_proved() => LargestFit.Cylinder(_set);

    [Benchmark]
    public Finding Homing_band_proved() => HomingChecks.Of(_cell).Tasks[0].Prove(CancellationToken.None)[0];

    [Benchmark]
    public int Advice_for_one_finding() => AdviceSearch.For(_short, _worst, cell => _assessor.Preview(cell).Ledger).Length;

    [Benchmark]
    public MountResult Mount_search() => MountSearch.Best(_cell, new(), cell => _assessor.Preview(cell).Ledger);

    private static Cell Read(string sample) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(sample)!.Text), sample).Cell!;
}
