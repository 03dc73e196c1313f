using System.Text;
using BenchmarkDotNet.Attributes;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Benchmarks;

/// <summary>The adapter plate of the jar lids: all clockings and thicknesses searched, and the mass properties of the one chosen. A plate is found while a person types: 20 ms.</summary>
public class PlateBenchmarks
{
    private AdapterInput _input = null!;
    private AdapterResult _found = null!;

    [GlobalSetup]
    public void Make()
    {
        Cell cell = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;
        _input = AdapterInput.Read(cell, "adapter", new(), [])!;
        _found = PlateSearch.Solve(_input);
    }

    [Benchmark]
    public double Search() => PlateSearch.Solve(_input).Works[0].Mass;

    [Benchmark]
    public double Mass_properties() => PlateBody.Of(_found.Chosen).Inertia.Row2.Z;
}
