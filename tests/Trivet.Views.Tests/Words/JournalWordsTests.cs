using Trivet.AsBuilt;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Testing;
using Trivet.Views.Journals;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Words;

/// <summary>The journal is worded, whole, in each language.</summary>
public sealed class JournalWordsTests
{
    public static TheoryData<string> Languages => ["en", "de"];

    private static JournalWords Of(string tag) => JournalWords.In(tag);

    [Theory, MemberData(nameof(Languages))]
    public void Every_entry_every_contradiction_and_every_standing_has_its_words(string tag)
    {
        var words = Of(tag);
        foreach (var says in WritingDevice.EveryKind.Append(new Unread("weighed"))) Assert.NotEmpty(JournalSentences.Of(says, words));
        foreach (var kind in Enum.GetValues<MismatchKind>()) Assert.Contains("tablet-1", JournalSentences.Of(new Mismatch(kind, "tablet-1", 3, ["a"], 1, 2), "ada", words), StringComparison.Ordinal);
        Assert.Equal(Enum.GetValues<MismatchKind>().Length, words.Mismatches.Length);
        Assert.Equal(Enum.GetValues<Standing>().Length, words.Standings.Length);
        Assert.Equal(Enum.GetValues<Weakness>().Length, words.Weaknesses.Length);
        Assert.Equal(Enum.GetValues<Deviation>().Length, words.Deviations.Length);
        Assert.Equal(Enum.GetValues<EnergyLevel>().Length, words.Levels.Length);
        Assert.Equal(Enum.GetValues<Skill>().Length, words.Skills.Length);
        Assert.Equal(Enum.GetValues<Upset>().Length, words.Upsets.Length);
        Staleness[] why = [new Staleness.Field("/a", "1 mm", ""), new Staleness.Result("s", "a", "h"), new Staleness.Upset(Upset.PlugsMoved, "h"), new Staleness.UnknownRevision("")];
        foreach (var reason in why) Assert.NotEmpty(JournalSentences.Of(reason, words, p => p, s => s));
    }

    [Fact]
    public void The_sheet_shows_the_newest_first_and_what_was_corrected_and_finds_by_the_step_an_entry_names()
    {
        var device = new WritingDevice("tablet-1");
        Kept reading = device.Write(new Measured("60 Ω", "Ω", 60, 1), "bus-ohms", "ohms"), other = device.Write(new Begun(), "rod:a");
        Kept correction = device.Write(new Corrected(reading.Hash, "misread", new Measured("61 Ω", "Ω", 61, 1)));
        var sheet = JournalSheet.Of([reading, other, correction], "", new(Step: "bus-ohms"), EnglishJournal.Words, []);

        Assert.Equal([correction, reading], sheet.Rows.Select(r => r.Kept));
        Assert.Equal([false, true], sheet.Rows.Select(r => r.Superseded));
        Assert.Equal(["bus-ohms", "rod:a"], sheet.Steps);
        Assert.Empty(JournalSheet.Of([reading], "", new(Person: "bob"), EnglishJournal.Words, []).Rows);
    }
}
