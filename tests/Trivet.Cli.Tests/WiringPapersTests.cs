using System.Text;
using System.Text.Json;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Papers;
using Trivet.Views.Cabling;
using Trivet.Views.Papers;
using Xunit;
using ZXing;
using Cell = Trivet.Cells.Cell;

namespace Trivet.Cli.Tests;

/// <summary>The papers of the electrical build, read by programs that are not ours.</summary>
public sealed class WiringPapersTests
{
    private static Cell Lids() => CellFile.Load(Repository.Sample("jar-lids")).Cell!;

    [Fact]
    public async Task Everything_is_written_into_one_folder()
    {
        using var folder = new TemporaryFolder();
        string papers = folder.File("papers");
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--all", papers, "--labels", "4x10");
        Assert.Equal(ExitCode.AllHold, run.Code);
        foreach (string name in (string[])["plan.json", "cables.csv", "signals.csv", "terminals.csv", "addresses.csv", "connectors.csv", "lists.xlsx", "edit.xlsx", "edit-cables.csv", "diagram.svg", "labels.pdf", "labels.csv", "schedule.pdf", "safety-functions.csv", "safety-channels.csv", "what-falls.csv", "hazards.csv", "proposed-hazards.csv", "hazard-register.pdf"])
            Assert.True(new FileInfo(Path.Combine(papers, name)).Length > 100, name);
        using var plan = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(papers, "plan.json"), TestContext.Current.CancellationToken));
        var cables = plan.RootElement.GetProperty("sections").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "cables").GetProperty("tables").GetProperty("cables");
        Assert.Equal(Lids().Cables.Count, cables.GetArrayLength());
        Assert.Equal(4.5, cables[0].GetProperty("length").GetDouble());
        var refused = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--all", papers, "--labels", "9x9");
        Assert.Equal(ExitCode.Refused, refused.Code);
        Assert.Contains("3x8", refused.Error, StringComparison.Ordinal);
    }

    /// <summary>Read by the Open XML SDK, and every part held against its schemas.</summary>
    [Fact]
    public void The_workbook_is_valid_and_what_begins_with_a_sign_stays_text()
    {
        var cell = Lids();
        string[] signs = ["=1+1", "+49", "-x", "@a"];
        string[] ids = [.. cell.Cables.Keys.Take(4)];
        for (int i = 0; i < 4; i++) cell = cell with { Cables = cell.Cables.SetItem(ids[i], cell.Cables[ids[i]] with { Name = signs[i] }) };
        var files = CablingFiles.Of(cell, "http://localhost/cell/jar-lids/electrical", LabelSheet.A4[0], new DateTime(2026, 1, 2, 3, 4, 5, DateTimeKind.Utc));
        foreach (string name in (string[])["lists.xlsx", "edit.xlsx"])
        {
            using var book = SpreadsheetDocument.Open(new MemoryStream(files.Single(f => f.Name == name).Bytes), false);
            Assert.Empty(new DocumentFormat.OpenXml.Validation.OpenXmlValidator(DocumentFormat.OpenXml.FileFormatVersions.Office2019).Validate(book, TestContext.Current.CancellationToken));
            var sheet = book.WorkbookPart!.Workbook!.Descendants<Sheet>().Single(s => s.Name == "cables");
            var cells = ((WorksheetPart)book.WorkbookPart.GetPartById(sheet.Id!)).Worksheet!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Cell>().ToArray();
            Assert.DoesNotContain(cells, c => c.CellFormula is not null);
            foreach (string sign in signs) Assert.Contains(cells, c => TextOf(c, book) == sign);
            if (name == "lists.xlsx") Assert.Contains(cells, c => c.DataType is null && c.CellValue?.Text == "4.5");
        }
        string csv = Encoding.UTF8.GetString(files.Single(f => f.Name == "edit-cables.csv").Bytes);
        foreach (string sign in signs) Assert.Contains($",'{sign},", csv, StringComparison.Ordinal);
    }

    private static string TextOf(DocumentFormat.OpenXml.Spreadsheet.Cell cell, SpreadsheetDocument book) =>
        cell.DataType?.Value == CellValues.SharedString ? book.WorkbookPart!.SharedStringTablePart!.SharedStringTable!.ElementAt(int.Parse(cell.CellValue!.Text, System.Globalization.CultureInfo.InvariantCulture)).InnerText
        : cell.InlineString?.InnerText ?? cell.CellValue?.Text ?? "";

    /// <summary>Each code of a sheet of labels, drawn on a grid of pixels and decoded by ZXing.Net.</summary>
    [Theory]
    [InlineData("3x8"), InlineData("4x10"), InlineData("5x13")]
    public void Every_label_has_a_code_that_leads_to_its_cable(string id)
    {
        var sheet = LabelSheet.A4.Single(s => s.Id == id);
        var labels = CableLabels.Of(Lids(), "http://localhost:5173/cell/jar-lids/electrical")[..6];
        var paper = Assert.Single(LabelSheets.Of("labels", labels, sheet, skip: 2));
        const double scale = 12;
        var read = new List<string>();
        for (int i = 0; i < labels.Length; i++)
        {
            int place = i + 2;
            double x = sheet.Left + place % sheet.Columns * sheet.PitchX, y = paper.Height - sheet.Top - place / sheet.Columns * sheet.PitchY - sheet.Height;
            int w = (int)(sheet.Width * scale), h = (int)(sheet.Height * scale);
            byte[] grey = new byte[w * h];
            Array.Fill(grey, (byte)255);
            foreach (var mark in paper.Marks.OfType<FillMark>().Where(m => m.Points.All(p => p.X >= x - 1e-9 && p.X <= x + sheet.Width + 1e-9 && p.Y >= y - 1e-9 && p.Y <= y + sheet.Height + 1e-9)))
                for (int py = Pixel(y + sheet.Height - mark.Points.Max(p => p.Y)); py < Pixel(y + sheet.Height - mark.Points.Min(p => p.Y)); py++)
                    for (int px = Pixel(mark.Points.Min(p => p.X) - x); px < Pixel(mark.Points.Max(p => p.X) - x); px++) grey[Math.Clamp(py, 0, h - 1) * w + Math.Clamp(px, 0, w - 1)] = 0;
            var found = new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } }.Decode(new RGBLuminanceSource(grey, w, h, RGBLuminanceSource.BitmapFormat.Gray8));
            read.Add(found?.Text ?? "nothing");
        }
        Assert.Equal(labels.Select(l => l.Link), read);
        Assert.Equal("http://localhost:5173/cell/jar-lids/electrical#%2Fcables%2Fmotor-a", read[0]);

        static int Pixel(double millimetres) => (int)Math.Round(millimetres * scale);
    }

    /// <summary>Every text of every label stands on it whole, in its lines, on every sheet; what is left out on the smallest is told.</summary>
    [Theory]
    [InlineData("jar-lids", "3x8"), InlineData("jar-lids", "3x7"), InlineData("jar-lids", "4x10"), InlineData("jar-lids", "5x13"), InlineData("biscuits", "4x10"), InlineData("biscuits", "5x13")]
    public void No_text_of_a_label_is_cut(string sample, string id)
    {
        var sheet = LabelSheet.A4.Single(s => s.Id == id);
        var labels = CableLabels.Of(CellFile.Load(Repository.Sample(sample)).Cell!, "http://localhost:5173/cell/jar-lids/electrical");
        var told = LabelSheets.Shortened(labels, sheet);
        if (id != "5x13") Assert.Empty(told);
        for (int i = 0; i < labels.Length; i++)
        {
            var marks = Assert.Single(LabelSheets.Of("labels", [labels[i]], sheet)).Marks.OfType<Label>().ToArray();
            string all = string.Join(' ', marks.Select(m => m.Text));
            Assert.DoesNotContain("…", all, StringComparison.Ordinal);
            foreach (string text in (string[])[labels[i].Text, labels[i].Here, labels[i].NotWith]) Assert.Contains(text, all, StringComparison.Ordinal);
            if (!told.Contains(labels[i].Text)) foreach (string text in (string[])[labels[i].Mark, labels[i].There, labels[i].Name]) Assert.Contains(text, all, StringComparison.Ordinal);
            double bottom = 297 - sheet.Top - sheet.Height;
            Assert.All(marks, m => Assert.InRange(m.At.Y, bottom, bottom + sheet.Height - m.Size * 0.7));
            Assert.All(marks, m => Assert.InRange(m.At.X + DraftingTable.WidthOf(m.Text, m.Size), sheet.Left, sheet.Left + sheet.Width));
            Assert.All(marks, m => Assert.InRange(m.Size, 1.5 - 1e-9, 12));
        }
    }

    /// <summary>A word that no label has room for is cut with the sign for it, and told.</summary>
    [Fact]
    public void What_fits_nowhere_is_told()
    {
        CableLabel label = new("W1", "name", new string('m', 60), "there", "", "not W2", "http://localhost/x");
        Assert.Equal(["W1"], LabelSheets.Shortened([label], LabelSheet.A4[3]));
        Assert.Contains(LabelSheets.Of("l", [label], LabelSheet.A4[3])[0].Marks, m => m is Label { Text: var t } && t.EndsWith('…'));
    }

    [Fact]
    public void Labels_come_in_order_of_installation_twice_each_and_tell_whom_not_to_swap_with()
    {
        var cell = Lids();
        var labels = CableLabels.Of(cell, "x");
        Assert.Equal(cell.Cables.OrderBy(c => c.Value.Order).SelectMany(c => new[] { c.Value.Label, c.Value.Label }), labels.Take(2 * cell.Cables.Count).Select(l => l.Text));
        // Rail, motor and two rods of each chain, and the front of the base.
        Assert.Equal(["1", "1", "1", "1", "2", "2", "2", "2", "3", "3", "3", "3", "front"], labels.Skip(2 * cell.Cables.Count).Select(l => l.Text));
        Assert.Equal("not W14, W1B, W1C", labels[0].NotWith);
        Assert.Equal("", labels.First(l => l.Text == "W61").NotWith);
        var marks = LabelSheets.Of("labels", labels, LabelSheet.A4[0])[0].Marks;
        Assert.Contains(marks, m => m is Label { Text: "not W14, W1B, W1C" });
        // 59 labels and 23 used up, 24 a sheet.
        Assert.Equal(4, LabelSheets.Of("labels", labels, LabelSheet.A4[0], skip: 23).Length);
    }

    [Fact]
    public async Task An_edited_list_comes_back_as_a_difference_and_loses_nothing()
    {
        using var folder = new TemporaryFolder();
        string papers = folder.File("papers");
        await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--all", papers);
        foreach (string name in (string[])["edit-cables.csv", "edit-signals.csv", "edit-modules.csv", "edit-switches.csv", "edit-ways.csv", "edit-devices.csv"])
        {
            var same = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--edited", Path.Combine(papers, name));
            Assert.Equal((ExitCode.AllHold, "The list changes nothing.\n"), (same.Code, same.Output.Replace("\r", "", StringComparison.Ordinal)));
        }
        var book = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--edited", Path.Combine(papers, "edit.xlsx"), "--list", "cables");
        Assert.Contains("changes nothing", book.Output, StringComparison.Ordinal);

        // Edited: a length, a new row, a row taken out, a column of notes; with semicolons, as some spreadsheets save it.
        var grid = Grids.Csv(await File.ReadAllTextAsync(Path.Combine(papers, "edit-cables.csv"), TestContext.Current.CancellationToken)).Rows.Select(r => r.ToList()).ToList();
        int length = grid[0].IndexOf("length"), name_ = grid[0].IndexOf("name");
        grid.Single(r => r[0] == "motor-a")[length] = "5,2 m";
        grid.RemoveAll(r => r[0] == "valves");
        grid.Add([.. Enumerable.Repeat("", grid[0].Count)]);
        (grid[^1][0], grid[^1][name_]) = ("lamp", "=Lamp; \"green\"");
        foreach (var (row, i) in grid.Select((r, i) => (r, i))) row.Add(i == 0 ? "seen by" : "me");
        string file = folder.File("cables.csv"), target = folder.File("new.json");
        await File.WriteAllTextAsync(file, string.Join("\r\n", grid.Select(r => string.Join(';', r.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")))), TestContext.Current.CancellationToken);
        var run = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--edited", file, "--new-cell", target);
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.Contains("/cables/motor-a/length: 4.5 m → 5.2 m", run.Output, StringComparison.Ordinal);
        Assert.Contains("/cables/valves: not in the list, kept", run.Output, StringComparison.Ordinal);
        Assert.Contains("column seen by: no field", run.Output, StringComparison.Ordinal);
        var (before, after) = (Lids(), CellFile.Load(target).Cell!);
        Assert.Equal("=Lamp; \"green\"", after.Cables["lamp"].Name);
        Assert.Equal(before.Cables["low-a"].Cores.Count, after.Cables["low-a"].Cores.Count);
        Assert.Equal(CellFile.Hash(before), CellFile.Hash(after with { Cables = after.Cables.Remove("lamp").SetItem("motor-a", after.Cables["motor-a"] with { Length = 4.5 }) }));

        // What is filled in by hand beside the work comes back too.
        string[] filled = ["cutLength", "fittedLength", "installedBy", "installedOn"], texts = ["4.7 m", "4,4 m", "ada", "2026-03-02"];
        for (int i = 0; i < filled.Length; i++)
        {
            Assert.Equal("", grid.Single(r => r[0] == "motor-b")[grid[0].IndexOf(filled[i])]);
            grid.Single(r => r[0] == "motor-b")[grid[0].IndexOf(filled[i])] = texts[i];
        }
        await File.WriteAllTextAsync(file, string.Join("\r\n", grid.Select(r => string.Join(';', r.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")))), TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--edited", file, "--new-cell", target)).Code);
        var fitted = CellFile.Load(target).Cell!.Cables["motor-b"];
        Assert.Equal((4.7, 4.4, "ada", "2026-03-02"), (fitted.CutLength, fitted.FittedLength, fitted.InstalledBy, fitted.InstalledOn));

        grid.Single(r => r[0] == "motor-a")[length] = "long";
        await File.WriteAllTextAsync(file, string.Join("\r\n", grid.Select(r => string.Join(';', r.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")))), TestContext.Current.CancellationToken);
        var wrong = await Run.Trivet("wiring", Repository.Sample("jar-lids"), "--edited", file);
        Assert.Equal(ExitCode.Refused, wrong.Code);
        Assert.Contains($"cables.csv:2:{length + 1}: /cables/motor-a/length", wrong.Error, StringComparison.Ordinal);
    }

    /// <summary>Read by the INI reader of .NET; sections and numbers are those of CiA 306 and CiA 301, from memory.</summary>
    [Fact]
    public void An_electronic_data_sheet_has_the_stated_objects_in_their_lists()
    {
        var files = CablingFiles.Of(Lids(), "x", LabelSheet.A4[0], new DateTime(2026, 1, 2, 15, 4, 5, DateTimeKind.Utc));
        var eds = new Microsoft.Extensions.Configuration.ConfigurationManager();
        Microsoft.Extensions.Configuration.IniConfigurationExtensions.AddIniStream(eds, new MemoryStream(files.Single(f => f.Name == "inputs.eds").Bytes));
        Assert.Equal(("03:04PM", "01-02-2026", "4.0"), (eds["FileInfo:CreationTime"], eds["FileInfo:CreationDate"], eds["FileInfo:EDSVersion"]));
        Assert.Equal(("1", "0", "0x00000010", "0x00010000"), (eds["DeviceInfo:BaudRate_500"], eds["DeviceInfo:BaudRate_250"], eds["DeviceInfo:ProductNumber"], eds["DeviceInfo:RevisionNumber"]));
        Assert.Equal(("3", "0x1000", "0x1001", "0x1018"), (eds["MandatoryObjects:SupportedObjects"], eds["MandatoryObjects:1"], eds["MandatoryObjects:2"], eds["MandatoryObjects:3"]));
        Assert.Equal(("2", "0x1017", "0x6000", "0"), (eds["OptionalObjects:SupportedObjects"], eds["OptionalObjects:1"], eds["OptionalObjects:2"], eds["ManufacturerObjects:SupportedObjects"]));
        Assert.Equal(("0x7", "0x0007", "ro", "0x00010191", "0"), (eds["1000:ObjectType"], eds["1000:DataType"], eds["1000:AccessType"], eds["1000:DefaultValue"], eds["1000:PDOMapping"]));
        Assert.Equal(("0x9", "3", "Identity", "2", "0x0005"), (eds["1018:ObjectType"], eds["1018:SubNumber"], eds["1018:ParameterName"], eds["1018sub0:DefaultValue"], eds["1018sub0:DataType"]));
        Assert.Equal(("Inputs 9 to 16", "0x0005", "1"), (eds["6000sub2:ParameterName"], eds["6000sub2:DataType"], eds["6000sub2:PDOMapping"]));
        Assert.Equal(("rw", "0x0006"), (eds["1017:AccessType"], eds["1017:DataType"]));
    }

    [Theory]
    [InlineData("no workbook"), InlineData("")]
    public void What_is_no_workbook_is_refused(string text) => Assert.NotEqual("", Grids.Workbook(Encoding.UTF8.GetBytes(text), "cables").Problem);
}
