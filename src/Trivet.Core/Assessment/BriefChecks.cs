using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Assessment;

/// <summary>What the brief leaves open. A finding appears only while something is open: a brief that is whole says nothing.</summary>
public static class BriefChecks
{
    /// <summary>The customer's wish is stated as far as the depth asks for.</summary>
    public static Rule Stated { get; } = new(
        "brief.stated", "The brief says what is asked for", Trade.Brief, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, "", "every later number rests on it"));

    /// <summary>Every promise says how it will be proven and who owns it.</summary>
    public static Rule Requirement { get; } = new(
        "brief.requirement", "Each requirement has a proof and an owner", Trade.Brief, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, "", "acceptance without dispute"));

    /// <summary>Open questions are answered.</summary>
    public static Rule Question { get; } = new(
        "brief.question", "Open questions are answered", Trade.Brief, "1", Sense.AtLeast, 0, new(SourceKind.CommonPractice, ""));

    public static ImmutableArray<Rule> Rules { get; } = [Stated, Requirement, Question];

    public static IEnumerable<Finding> Check(Cell cell)
    {
        var brief = cell.Brief;
        var reading = new Reading();
        reading.Need(brief.MeanRate, "/brief/meanRate");
        reading.Need(brief.PeakRate, "/brief/peakRate");
        reading.Used("/brief/parts", string.Join('\n', brief.Parts.Keys));
        if (brief.Parts.IsEmpty) reading.Missing("/brief/parts");
        foreach (var (id, part) in brief.Parts.InOrder()) reading.Need(part.Mass, $"/brief/parts/{id}/mass");
        if (reading.Or(cell.Depth, "/depth", Depth.Quote) >= Depth.Build)
        {
            reading.Need(brief.HoursPerYear, "/brief/hoursPerYear");
            foreach (var (id, part) in brief.Parts.InOrder())
            {
                reading.Need(part.Size.Width, $"/brief/parts/{id}/size/width");
                reading.Need(part.Size.Depth, $"/brief/parts/{id}/size/depth");
                reading.Need(part.Size.Height, $"/brief/parts/{id}/size/height");
            }
        }
        if (Open(Stated, "/brief", reading) is { } open) yield return open;

        foreach (var (id, requirement) in brief.Requirements.InOrder())
        {
            string at = $"/brief/requirements/{id}";
            var own = new Reading();
            own.Need(requirement.ProvenBy, at + "/provenBy", Proof.Inspection);
            Text(own, requirement.Owner, at + "/owner");
            Text(own, requirement.Text, at + "/text");
            // A tolerance means nothing until it says from where it is measured.
            own.Used(at + "/tolerance", requirement.Tolerance);
            if (requirement.Tolerance is not null) Text(own, requirement.RelativeTo, at + "/relativeTo");
            if (Open(Requirement, at, own) is { } lacking) yield return lacking;
        }

        foreach (var (id, question) in brief.OpenQuestions.InOrder())
        {
            var own = new Reading();
            Text(own, question.Answer, $"/brief/openQuestions/{id}/answer");
            if (Open(Question, $"/brief/openQuestions/{id}", own) is { } unanswered) yield return unanswered;
        }
    }

    private static void Text(Reading reading, string? text, string pointer)
    {
        if (string.IsNullOrWhiteSpace(text)) reading.Missing(pointer);
        else reading.Used(pointer, text);
    }

    private static Unjudged? Open(Rule rule, string subject, Reading reading) => reading.Complete
        ? null
        : new(rule, new(subject), reading.Inputs, OpenReason.Missing, reading.MissingFields);
}
