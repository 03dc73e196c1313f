using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Procedures;
using Trivet.Views.Drawings;
using Trivet.Views.Pictures;
using Trivet.Views.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Floor;

/// <summary>Makes the bundle of a cell: the steps of its procedure in the words of each language, with the drawings its steps are shown on.</summary>
public static class FloorBundles
{
    private const string Plan = "plan", Elevation = "elevation";

    /// <param name="cellId">Id of the cell in its job.</param>
    /// <param name="earlier">Earlier revisions that the journal names, by hash.</param>
    public static FloorBundle Of(string cellId, Cell cell, Assessor assessor, IReadOnlyDictionary<string, Cell>? earlier = null)
    {
        var assessed = assessor.Preview(cell);
        string revision = CellFile.Hash(cell);
        var pictures = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        pictures[Plan] = CellDrawings.Plan(assessed).Svg;
        pictures[Elevation] = CellDrawings.Elevation(assessed).Svg;
        var moves = (earlier ?? ImmutableDictionary<string, Cell>.Empty).Where(e => e.Key != revision)
            .ToImmutableSortedDictionary(e => e.Key, e => FieldMoves.Of(e.Value, cell), StringComparer.Ordinal);
        var procedure = CellProcedure.Of(cell);
        var set = PictureSet.Of(assessed, procedure);
        pictures.AddRange(set.Pictures);
        // A length to be measured is shown on the drawing that has its dimension.
        ImmutableArray<FloorStep> steps = [.. StepsOf(procedure).Select(s => s.Picture.Length == 0 && set.OfSteps.TryGetValue(s.Step.Id, out string? name) ? s with { Picture = name } : s)];
        return new(cellId, cell.Name ?? cellId, revision, steps, Releasing.Of(cell.Recording), moves, pictures.ToImmutable(),
            ProcedureWords.All.ToImmutableSortedDictionary(w => w.Tag, w => SafeTexts.Of(CellProcedure.SafeOf(cell), w), StringComparer.Ordinal));
    }

    private static ImmutableArray<FloorStep> StepsOf(Procedure procedure)
    {
        var worded = ProcedureWords.All.Select(w => (Words: w, Steps: StepTexts.Of(procedure, w))).ToArray();
        return [.. procedure.Steps.Select((s, i) => new FloorStep(
            s, worded.ToImmutableSortedDictionary(w => w.Words.Tag, w => TextOf(w.Steps[i], w.Words), StringComparer.Ordinal), PictureOf(s.Kind)))];
    }

    private static FloorText TextOf(WordedStep step, ProcedureWords words)
    {
        var labels = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var ask in step.Asks)
        {
            labels[ask.Of.Id] = ask.What;
            if (ask.Of is AskedChoice choice)
                foreach (string option in choice.Options) labels[$"{choice.Id}={option}"] = words.Option(choice.Id, option);
        }
        foreach (string tool in step.Step.Tools) labels["tool:" + tool] = words.Tools[tool];
        return new(step.Title, $"{step.What} {step.Why}".Trim(), $"{step.Hazard} {step.Caution}".Trim(), step.Bad, labels.ToImmutable());
    }

    private static string PictureOf(string kind) => kind switch
    {
        "measure-mount-height" or "measure-station-height" => Elevation,
        "measure-chain-distance" or "measure-tray-along-columns" or "measure-tray-along-rows" => Plan,
        _ => "",
    };
}
