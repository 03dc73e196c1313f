using Trivet.Faults;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Words;

/// <summary>The catalogue of faults is worded, whole, in each language.</summary>
public sealed class FaultWordsTests
{
    public static TheoryData<string> Languages => ["en", "de"];

    private static FaultWords Of(string tag) => tag == "de" ? GermanFaultCatalogue.Words : EnglishFaultCatalogue.Words;

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_fault_every_probe_and_every_outcome_has_its_words_and_nothing_else_has(string tag)
    {
        var words = Of(tag);
        Assert.Equal(FaultCatalogue.All.Select(f => f.Id).Order(), words.Faults.Keys.Order());
        Assert.All(words.Faults.Values, t => Assert.All(new[] { t.Title, t.Seen, t.Harm, t.Remedy }, text => Assert.True(text.Length > 4, text)));
        Assert.All(words.Faults.Values, t => Assert.All(new[] { t.Seen, t.Harm, t.Remedy }, text => Assert.EndsWith(".", text)));
        Assert.Equal(Enum.GetValues<Probe>().Length, words.Probes.Length);
        var outcomes = Enum.GetValues<Probe>().SelectMany(p => Outcomes.Of(p).Where(o => o != Outcomes.Differs).Select(o => FaultWords.Key(p, o)));
        Assert.Equal(outcomes.Order(), words.Shown.Keys.Order());
    }
}
