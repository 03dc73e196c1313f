using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Stopping;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Stopping;

/// <summary>The hazard register, and what the description shows, in finished texts.</summary>
public static class HazardSections
{
    public const string Id = "hazards";

    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Stopping;
        var section = new Section(Id, words.Hazards, words.HazardCautions, [], [Register(cell, locale), Proposed(cell, locale)], [.. HazardRules.Rules.Select(r => r.Id)]);
        // A cell of which only the robot is known proposes hazards too, but nobody plans stops yet.
        return section.IsEmpty || cell.Hazards.IsEmpty && cell.Stopping.Functions.IsEmpty && (cell.Depth ?? Depth.Quote) < Depth.Build ? [] : [section];
    }

    internal static SheetTable Register(Cell cell, Locale? locale)
    {
        var words = (locale ?? Locale.English).Language.Stopping;
        var hazards = cell.Hazards.InOrder().ToArray();
        return new(
            Id, words.Register,
            [
                new("name", words.HeadHazard), new("kind", words.HeadKind), new("phase", words.HeadPhase), new("where", words.HeadWhere), new("who", words.HeadWho), new("before", words.HeadBefore),
                new("measures", words.HeadMeasures), new("after", words.HeadAfter), new("proof", words.HeadProof), new("owner", words.HeadOwner), new("accepted", words.HeadAccepted),
            ],
            [
                .. hazards.Select(h => ImmutableArray.Create<Entry>(
                    new(h.Value.Name ?? h.Key), new(h.Value.Kind is { } kind ? words.HazardKinds[(int)kind] : "–"), new(h.Value.Phase is { } phase ? words.Phases[(int)phase] : "–"),
                    Text(h.Value.Where), Text(h.Value.Who), new(StopSections.Risk(h.Value.Before)), Measures(h.Value), new(StopSections.Risk(h.Value.After)), Proofs(h.Value), Text(h.Value.Owner),
                    Text(h.Value.Accepted))),
            ],
            [.. hazards.Select(h => $"{HazardStage.At}/{h.Key}")]);

        // The three steps in their order, whatever the order they are written in.
        Entry Measures(Hazard hazard) => Joined(hazard.Measures.InOrder().OrderBy(m => m.Value.Step ?? MeasureStep.InformationForUse).Select(m =>
            m.Value.Step is { } step ? Locale.Fill(words.MeasureForm, ("step", words.Steps[(int)step]), ("measure", Measure(m.Key, m.Value))) : Measure(m.Key, m.Value)));

        string Measure(string id, HazardMeasure measure) =>
            measure.Function is { } f ? $"{measure.Name ?? id} ({cell.Stopping.Functions.GetValueOrDefault(f)?.Name ?? f})" : measure.Name ?? id;

        Entry Proofs(Hazard hazard) => Joined(hazard.Proofs.InOrder().SelectMany(p => new[]
        {
            p.Value.Rule is { } rule ? Locale.Fill(words.RuleProof, ("rule", rule)) : null, p.Value.Step is { } step ? Locale.Fill(words.StepProof, ("step", step)) : null, p.Value.Document,
        }).OfType<string>());

        static Entry Joined(IEnumerable<string> texts) => new(string.Join("; ", texts) is { Length: > 0 } all ? all : "–");

        static Entry Text(string? text) => new(text ?? "–");
    }

    private static SheetTable Proposed(Cell cell, Locale? locale)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Stopping;
        var proposals = ProposedHazards.Of(cell, new());
        return new(
            "proposed-hazards", words.Proposed,
            [new("hazard", words.HeadHazard), new("id", words.HeadEntry), new("kind", words.HeadKind), new("phase", words.HeadPhase)],
            [
                .. proposals.Select(p => ImmutableArray.Create<Entry>(
                    new(language.Cases[p.Id]), new(p.Entry is { } e ? cell.Hazards[e].Name ?? e : words.NotRegistered), new(words.HazardKinds[(int)p.Kind]), new(words.Phases[(int)p.Phase]))),
            ],
            [.. proposals.Select(p => p.Entry is { } e ? $"{HazardStage.At}/{e}" : $"{HazardStage.At}/{p.Id}")]);
    }
}
