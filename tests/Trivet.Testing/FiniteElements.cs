using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Trivet.Testing;

/// <summary>What the general-purpose finite-element solver said, or why it could not be run: a test then skips with that reason.</summary>
/// <param name="Hz">The lowest frequencies, rising.</param>
/// <param name="NotRun">Why it was not run; empty when it was.</param>
public sealed record FiniteElements(double[] Hz, string NotRun)
{
    /// <summary>
    /// Frequencies of a frame of steel (E 210 GPa, ν 0.3, ρ 7850 kg/m³), its ends on the floor held wholly: quadratic beams, which the solver expands
    /// to solids, masses without inertia.
    /// </summary>
    /// <param name="wall">Of a square tube, metres; zero for a solid bar.</param>
    public static FiniteElements Modes((double[] From, double[] To)[] members, (double[] At, double Mass)[] masses, double side, double wall, int count)
    {
        string folder = Directory.CreateTempSubdirectory("trivet-ccx-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "frame.inp"), Deck(members, masses, side, wall, count));
            var start = new ProcessStartInfo("ccx", "-i frame") { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
            start.Environment["OMP_NUM_THREADS"] = "1";
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            string results = Path.Combine(folder, "frame.dat");
            return process.ExitCode == 0 && File.Exists(results)
                ? new(Read(File.ReadAllLines(results), count), "")
                : throw new InvalidOperationException($"ccx ended with {process.ExitCode}: {said[^Math.Min(said.Length, 800)..]}{errors.Result}");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return new([], "The finite-element solver `ccx` is not installed (Debian: calculix-ccx).");
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static double[] Read(string[] lines, int count)
    {
        var rows = lines.Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(w => w.Length == 5 && int.TryParse(w[0], NumberStyles.None, CultureInfo.InvariantCulture, out _));
        return [.. rows.Take(count).Select(w => double.Parse(w[3], CultureInfo.InvariantCulture))];
    }

    private static string Deck((double[] From, double[] To)[] members, (double[] At, double Mass)[] masses, double side, double wall, int count)
    {
        // Members are cut where another one or a mass meets them, then into pieces of at most a tenth of a metre.
        var nodes = new List<double[]>();
        var deck = new StringBuilder();
        var elements = new StringBuilder();
        int element = 0;
        for (int m = 0; m < members.Length; m++)
        {
            var (from, to) = members[m];
            double length = Distance(from, to);
            var cuts = members.SelectMany(o => new[] { o.From, o.To }).Concat(masses.Select(x => x.At)).Select(p => Along(from, to, p)).OfType<double>()
                .Concat([0, 1]).Select(s => Math.Round(s, 9)).Distinct().Order().ToArray();
            string set = $"M{m}";
            elements.Append(CultureInfo.InvariantCulture, $"*ELEMENT, TYPE=B32R, ELSET={set}\n");
            for (int c = 1; c < cuts.Length; c++)
            {
                int parts = Math.Max(1, (int)Math.Ceiling((cuts[c] - cuts[c - 1]) * length / 0.1));
                for (int k = 0; k < parts; k++)
                {
                    double a = cuts[c - 1] + (cuts[c] - cuts[c - 1]) * k / parts, b = cuts[c - 1] + (cuts[c] - cuts[c - 1]) * (k + 1) / parts;
                    elements.Append(CultureInfo.InvariantCulture, $"{++element},{Node(a)},{Node((a + b) / 2)},{Node(b)}\n");
                }
            }

            string direction = Math.Abs(to[2] - from[2]) > 0.9 * length ? "1,0,0" : "0,0,1";
            string section = wall > 0
                ? string.Create(CultureInfo.InvariantCulture, $"*BEAM SECTION, ELSET={set}, MATERIAL=STEEL, SECTION=BOX\n{side},{side},{wall},{wall},{wall},{wall}\n{direction}\n")
                : string.Create(CultureInfo.InvariantCulture, $"*BEAM SECTION, ELSET={set}, MATERIAL=STEEL, SECTION=RECT\n{side},{side}\n{direction}\n");
            deck.Append(section);

            int Node(double s) => Find([.. Enumerable.Range(0, 3).Select(i => from[i] + s * (to[i] - from[i]))]);
        }

        string lumped = "";
        foreach (var (at, mass) in masses)
            lumped += string.Create(CultureInfo.InvariantCulture, $"*ELEMENT, TYPE=MASS, ELSET=P{element}\n{++element},{Find(at)}\n*MASS, ELSET=P{element - 1}\n{mass}\n");
        var feet = nodes.Select((p, i) => (p, i)).Where(n => Math.Abs(n.p[2]) < 1e-9).Select(n => n.i + 1);
        string listed = string.Concat(nodes.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{p[0]:R},{p[1]:R},{p[2]:R}\n")));
        return $"*NODE, NSET=ALL\n{listed}{elements}*MATERIAL, NAME=STEEL\n*ELASTIC\n210e9,0.3\n*DENSITY\n7850\n{deck}{lumped}*BOUNDARY\n"
            + string.Concat(feet.Select(n => $"{n},1,6\n")) + $"*STEP\n*FREQUENCY\n{count}\n*NODE FILE\nU\n*END STEP\n";

        int Find(double[] p)
        {
            int known = nodes.FindIndex(n => Distance(n, p) < 1e-7);
            if (known >= 0) return known + 1;
            nodes.Add(p);
            return nodes.Count;
        }
    }

    private static double Distance(double[] a, double[] b) => Math.Sqrt(a.Zip(b, (x, y) => (x - y) * (x - y)).Sum());

    /// <summary>Where on the way from one point to another a third lies, 0 to 1; null where it does not.</summary>
    private static double? Along(double[] from, double[] to, double[] p)
    {
        double length = Distance(from, to), s = Enumerable.Range(0, 3).Sum(i => (p[i] - from[i]) * (to[i] - from[i])) / (length * length);
        double off = Distance([.. Enumerable.Range(0, 3).Select(i => from[i] + s * (to[i] - from[i]))], p);
        return off < 1e-7 && s is >= 0 and <= 1 ? s : null;
    }
}
