using System.Text;
using BenchmarkDotNet.Attributes;
using Trivet.Assessment;
using Trivet.Files;
using Trivet.Views.Pictures;

namespace Trivet.Benchmarks;

/// <summary>Pictures of the jar lids for steps, from the cell to the SVG text. A step's picture is there before one looks for it: 200 ms.</summary>
public class PictureBenchmarks
{
    private Assessed _cell = null!;

    [GlobalSetup]
    public void Make() => _cell = Assess.Preview(CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!);

    [Benchmark]
    public int Whole_cell() => StepPictures.Of(_cell, "")!.Svg.Length;

    [Benchmark]
    public int Whole_cell_with_a_tray_marked() => StepPictures.Of(_cell, "/stations/tray-left")!.Svg.Length;

    [Benchmark]
    public int Detail_of_a_chain() => StepPictures.Of(_cell, "/robot/chains/a")!.Svg.Length;
}
