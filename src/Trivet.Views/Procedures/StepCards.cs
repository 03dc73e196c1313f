using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Procedures;
using Trivet.Views.Drawings;
using Trivet.Views.Papers;
using Trivet.Views.Pictures;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>A page of a step's card.</summary>
/// <param name="Link">What its code says: where the step is on the desk; empty for a page without one.</param>
public sealed record CardPage(Paper Paper, string Link);

/// <summary>The procedure as cards, A5 upright, in order: what to do, what is asked with room for the answer, a box to tick, name and date; and the step's picture as large as the page has room for.</summary>
public static class StepCards
{
    public const double Width = 148, Height = 210;

    /// <summary>Strip above the text: place, energy, number, and the code that leads back. Millimetres.</summary>
    public const double Strip = 30;

    private const double Margin = 15;

    /// <summary>Sizes tried for a picture, from the largest to the smallest.</summary>
    private const int Sizes = 12;

    /// <summary>Lines for people inside.</summary>
    private const int PlacesInside = 4;

    /// <summary>A box to tick; its spaces do not break.</summary>
    public const string Box = "[\u00a0\u00a0\u00a0]";

    /// <param name="pictures">Of the steps; a step that has none gets none.</param>
    /// <param name="address">Of the cell's page; the step's id is put behind it.</param>
    /// <param name="revision">Names the revision of the cell, short.</param>
    public static ImmutableArray<CardPage> Of(ProcedureSheet sheet, PictureSet pictures, string address, string revision)
    {
        var lines = pictures.Pictures.ToDictionary(p => p.Key, p => PictureOnPaper.Of(p.Value), StringComparer.Ordinal);
        var pages = ImmutableArray.CreateBuilder<CardPage>();
        pages.AddRange(Safe(sheet, revision).Select(p => new CardPage(p, "")));
        foreach (var step in sheet.Steps)
        {
            string link = $"{address}?step={Uri.EscapeDataString(step.Step.Id)}";
            var papers = PagesOf(step, sheet, pictures.OfSteps.GetValueOrDefault(step.Step.Id) is { } name ? lines[name] : null, revision);
            foreach (var paper in papers) pages.Add(new(paper with { Height = Height, Marks = [.. paper.Marks, .. Head(step, sheet)] }, link));
        }
        return pages.ToImmutable();
    }

    /// <summary>How this cell is made safe, before all steps: it hangs at the machine.</summary>
    private static ImmutableArray<Paper> Safe(ProcedureSheet sheet, string revision)
    {
        var (floor, own) = (FloorWords.Of(sheet.Words.Tag), sheet.Words.Safe);
        List<FlowBlock> blocks = [new FlowHeading(floor.SafeTitle, true)];
        foreach (var (what, says) in ProcedureForms.SafeLines(sheet))
        {
            blocks.Add(new FlowParagraph(what, true));
            blocks.AddRange(says.Select(line => new FlowParagraph(line)));
        }
        blocks.Add(new FlowParagraph(floor.SafeDefer, true));
        blocks.Add(new FlowTable([floor.WhoIsInside, own.InAt, own.OutAt], [4, 2, 2], [.. Enumerable.Repeat(ImmutableArray.Create(" ", " ", " "), PlacesInside)]));
        return Flow.Pages(sheet.Title, floor.SafeTitle, Width, Height, blocks, (page, of) => string.Create(CultureInfo.InvariantCulture, $"{revision}{(of > 1 ? $"  {page}/{of}" : "")}"),
            Locale.Fill(sheet.Words.Labels.Continued, ("step", floor.SafeTitle)));
    }

    /// <summary>The card with its picture as large as it may be without a page more; where even the smallest takes one, at its end, alone and large.</summary>
    private static ImmutableArray<Paper> PagesOf(WordedStep step, ProcedureSheet sheet, PictureOnPaper? picture, string revision)
    {
        var (blocks, at) = Blocks(step, sheet);
        var without = Set(blocks);
        // A list in what to do has a line for each group, unless it then takes a page more than as one text.
        if (without.Length > 1 && Blocks(step with { What = step.What.ReplaceLineEndings(" ") }, sheet) is var whole && Set(whole.Blocks) is var shorter && shorter.Length < without.Length)
            ((blocks, at), without) = (whole, shorter);
        if (picture is null) return without;
        double largest = Math.Min(PictureOnPaper.Largest, (Width - 2 * Margin) / picture.Width), smallest = Math.Min(PictureOnPaper.Smallest, largest);
        for (int i = 0; i < Sizes; i++)
        {
            var with = Set([.. blocks[..at], picture.At(largest + (smallest - largest) * i / (Sizes - 1)), .. blocks[at..]]);
            if (with.Length == without.Length) return with;
        }
        return Set([.. blocks, picture.At(largest)]);

        ImmutableArray<Paper> Set(List<FlowBlock> all) => Flow.Pages(
            sheet.Title, step.Title, Width, Height - Strip, all, (page, of) => string.Create(CultureInfo.InvariantCulture, $"{step.Step.Id}  {revision}{(of > 1 ? $"  {page}/{of}" : "")}"),
            Locale.Fill(sheet.Words.Labels.Continued, ("step", step.Title)));
    }

    /// <summary>All that a card says, and before which block its picture stands: after what is done and what can hurt.</summary>
    private static (List<FlowBlock> Blocks, int Picture) Blocks(WordedStep step, ProcedureSheet sheet)
    {
        var labels = sheet.Words.Labels;
        // A requirement is a title as long as the customer wrote it; nothing of it is cut.
        bool fits = TextMetrics.Width(step.Title, 5) * Flow.StrongWider < Width - 2 * Margin;
        List<FlowBlock> blocks = [fits ? new FlowHeading(step.Title, true) : new FlowParagraph(step.Title, true), .. step.What.Split('\n').Select(line => new FlowParagraph(line))];
        if (step.Why.Length > 0) blocks.Add(new FlowParagraph($"{labels.Why}: {step.Why}"));
        if (step.Hazard.Length > 0) blocks.Add(new FlowParagraph($"{labels.Hazard}: {step.Hazard}", true));
        if (step.Caution.Length > 0) blocks.Add(new FlowParagraph($"{labels.Caution}: {step.Caution}", true));
        int picture = blocks.Count;
        if (step.Held.Any()) blocks.Add(new FlowParagraph($"{labels.HeldBy}: {string.Join("; ", step.Held)}"));
        if (step.Tools.Any()) blocks.Add(new FlowParagraph($"{labels.Tools}: {string.Join(", ", step.Tools)}"));
        if (step.After.Any()) blocks.Add(new FlowParagraph($"{labels.After}: {string.Join(", ", step.After.Select(a => a.ToString(CultureInfo.InvariantCulture)))}"));
        if (step.Missing.Any()) blocks.Add(new FlowParagraph(Locale.Fill(labels.NotStated, ("fields", string.Join("; ", step.Missing.Select(m => FieldNames.Of(Cell.Empty, m, sheet.Words.Tag))))), true));
        if (!step.Asks.IsEmpty)
            blocks.Add(new FlowTable([labels.Record, labels.Accepted, labels.Value, labels.Done], [36, 38, 30, 14], [.. step.Asks.Select(a => Row(a, labels))]));
        if (step.Bad.Length > 0) blocks.Add(new FlowParagraph($"{labels.Bad}: {step.Bad}"));
        if (step.Step.HoldPoint) blocks.Add(new FlowParagraph(labels.HoldPoint, true));
        blocks.Add(new FlowTable([labels.Name], [1], [[" "]]));
        return (blocks, picture);
    }

    /// <summary>Answers to choose from have a box each; a reading has its unit where it is written.</summary>
    private static ImmutableArray<string> Row(AskText ask, ProcedureLabels labels) => ask.Of switch
    {
        AskedChoice => [ask.What, string.Join("   ", ask.Form.Split(" / ").Select(o => $"[\u00a0\u00a0]\u00a0{o.Replace(' ', '\u00a0')}")), ask.Planned.Length > 0 ? $"({ask.Planned})" : "", Box],
        AskedValue v => [ask.What, ask.Accepted.Length > 0 ? ask.Accepted : v.ShownAfter ? ask.Planned : v.Accepted is null ? labels.Kept : ask.Planned, $"................ {ask.Form}", Box],
        AskedCount => [ask.What, ask.Accepted, "................", Box],
        _ => [ask.What, ask.Form, "................", Box],
    };

    private static IEnumerable<Mark> Head(WordedStep step, ProcedureSheet sheet)
    {
        double top = Height - 12, room = Width - 2 * Margin - Strip;
        yield return new Label(new(Margin, top - 4), Locale.Fill(sheet.Words.Labels.CardOf, ("number", Whole(step.Number)), ("of", Whole(sheet.Steps.Length))), 6, TextAnchor.Start, true);
        yield return new Label(new(Margin, top - 12), TextMetrics.Cut($"{step.Place}   {step.By}: {step.Step.People.ToString(CultureInfo.InvariantCulture)}   {step.Minutes}", 3.2, room), 3.2);
        yield return new Label(new(Margin + 2, top - 20.2), TextMetrics.Cut(step.Energy, 4, room), 4, TextAnchor.Start, true);
        double wide = TextMetrics.Width(step.Energy, 4) * Flow.StrongWider + 5;
        yield return new Stroke([new Vec2(Margin, top - 22.4), new(Margin + wide, top - 22.4), new(Margin + wide, top - 15.6), new(Margin, top - 15.6)], step.Step.Energy == EnergyLevel.Isolated ? Views.Papers.Pen.Thin : Views.Papers.Pen.Outline, true);
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
