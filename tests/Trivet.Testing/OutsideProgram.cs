using System.Diagnostics;

namespace Trivet.Testing;

/// <summary>What a program of the system said, or why it could not be run: a test then skips with that reason.</summary>
/// <param name="Output">Standard output; empty when not run.</param>
/// <param name="NotRun">Why the program was not run; empty when it was.</param>
public sealed record OutsideProgram(string Output, string NotRun)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>A DXF file as ezdxf's own audit and a plain list of its entities see it (Debian: python3-ezdxf).</summary>
    public static OutsideProgram Dxf(string file)
    {
        const string Python = "/usr/bin/python3";
        if (!File.Exists(Python) || Run(Python, ["-c", "import ezdxf"]).Code != 0) return new("", "ezdxf is not installed; Debian has it as python3-ezdxf.");
        return Checked(Python, [Path.Combine(ReferenceData.Folder("outside"), "plate-dxf.py"), file]);
    }

    /// <summary>A STEP file as a CAD kernel sees it (Debian: occt-draw).</summary>
    public static OutsideProgram Step(string file)
    {
        const string Draw = "/usr/bin/occt-draw";
        if (!File.Exists(Draw)) return new("", "The CAD kernel is not installed; Debian has it as occt-draw.");
        // Its commands are loaded by a name without version, which only the package for developers brings.
        var links = Directory.CreateTempSubdirectory("trivet-occt-");
        try
        {
            foreach (string library in Directory.EnumerateDirectories("/usr/lib", "*-linux-gnu").SelectMany(d => Directory.EnumerateFiles(d, "libTK*.so.7")))
                File.CreateSymbolicLink(Path.Combine(links.FullName, Path.GetFileNameWithoutExtension(library)), library);
            return Checked(Draw, ["-b", "-f", Path.Combine(ReferenceData.Folder("outside"), "plate-solid.tcl")], ("LD_LIBRARY_PATH", links.FullName), ("TRIVET_STEP", file));
        }
        finally
        {
            links.Delete(true);
        }
    }

    /// <summary>The first page of a PDF as Poppler draws it (Debian: poppler-utils): grey values row by row from the top, 255 is white.</summary>
    /// <param name="perInch">Pixels.</param>
    public static (byte[] Pixels, int Width, int Height, string NotRun) GreyPage(string pdf, int perInch)
    {
        const string Poppler = "/usr/bin/pdftoppm";
        if (!File.Exists(Poppler)) return ([], 0, 0, "Poppler is not installed; Debian has it as poppler-utils.");
        string drawn = pdf + "-drawn";
        Checked(Poppler, ["-gray", "-singlefile", "-r", perInch.ToString(System.Globalization.CultureInfo.InvariantCulture), pdf, drawn]);
        // A portable grey map: P5, width, height, 255, each ended by one white space, then the pixels (netpbm's pgm(5), from memory).
        byte[] file = File.ReadAllBytes(drawn + ".pgm");
        int at = 0;
        string[] head = [Word(), Word(), Word(), Word()];
        if (head is not ["P5", _, _, "255"]) throw new InvalidOperationException($"{Poppler} wrote no grey map: {string.Join(' ', head)}");
        var (width, height) = (int.Parse(head[1], System.Globalization.CultureInfo.InvariantCulture), int.Parse(head[2], System.Globalization.CultureInfo.InvariantCulture));
        return (file[at..(at + width * height)], width, height, "");

        string Word()
        {
            int from = at;
            while (!char.IsWhiteSpace((char)file[at])) at++;
            return System.Text.Encoding.ASCII.GetString(file, from, at++ - from);
        }
    }

    /// <summary>The text of a PDF, a form feed after each page, as Poppler reads it (Debian: poppler-utils).</summary>
    public static OutsideProgram PdfText(string file) => Poppler("/usr/bin/pdftotext", ["-layout", file, "-"]);

    /// <summary>A page of a PDF, counted from 1, as Poppler draws it: an SVG of its vector paths.</summary>
    public static OutsideProgram PdfPage(string file, int page)
    {
        string number = page.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return Poppler("/usr/bin/pdftocairo", ["-svg", "-f", number, "-l", number, file, "-"]);
    }

    private static OutsideProgram Poppler(string program, string[] arguments) =>
        File.Exists(program) ? Checked(program, arguments) : new("", "Poppler is not installed; Debian has it as poppler-utils.");

    /// <summary>What a script says in Python (Debian: python3), which every machine that builds Trivet must have: without it the test fails.</summary>
    public static (int Code, string Output) Python(params string[] arguments)
    {
        const string Python = "/usr/bin/python3";
        if (!File.Exists(Python)) throw new FileNotFoundException("Python is not installed; Debian has it as python3.", Python);
        var (code, output, error) = Run(Python, arguments);
        return (code, output + error);
    }

    private static OutsideProgram Checked(string program, string[] arguments, params (string Name, string Value)[] environment)
    {
        var (code, output, error) = Run(program, arguments, environment);
        return code == 0 ? new(output, "") : throw new InvalidOperationException($"{program} ended with {code}: {error} {output}");
    }

    private static (int Code, string Output, string Error) Run(string program, string[] arguments, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments) start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment) start.Environment[name] = value;
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(Patience)) process.Kill(true);
        process.WaitForExit();
        return (process.ExitCode, output.Result, error.Result);
    }
}
