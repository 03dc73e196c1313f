using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>The pictures of all steps of a procedure, each once, however many steps show it.</summary>
/// <param name="Pictures">SVG texts by name.</param>
/// <param name="OfSteps">Names of the steps' pictures by the id of the step; a step about something without a place has none.</param>
public sealed record PictureSet(ImmutableSortedDictionary<string, string> Pictures, ImmutableSortedDictionary<string, string> OfSteps)
{
    public static PictureSet Of(Assessed cell, Procedure procedure, Locale? locale = null)
    {
        var pictures = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        var steps = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        // Names of what was drawn, by what asked for it and by what came of it: parts of the cabinet are all shown as the cabinet.
        var asked = new Dictionary<string, string?>(StringComparer.Ordinal);
        var drawn = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var step in procedure.Steps)
        {
            string name = StepPictures.NameOf(procedure, step);
            if (!asked.TryGetValue(name, out string? shown))
            {
                string? svg = StepPictures.Of(cell, procedure, step, locale)?.Svg;
                shown = svg is null ? null : drawn.TryGetValue(svg, out string? same) ? same : drawn[svg] = name;
                if (svg is not null) pictures[shown!] = svg;
                asked[name] = shown;
            }

            if (shown is not null) steps[step.Id] = shown;
        }

        return new(pictures.ToImmutable(), steps.ToImmutable());
    }
}
