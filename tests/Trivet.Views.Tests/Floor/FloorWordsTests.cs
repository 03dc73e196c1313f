using System.Text.RegularExpressions;
using Trivet.AsBuilt;
using Trivet.Findings;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Floor;

public sealed class FloorWordsTests
{
    [Fact]
    public void Every_language_fills_the_same_places_and_leaves_nothing_out()
    {
        foreach (var property in typeof(FloorWords).GetProperties().Where(p => p.PropertyType == typeof(string) && p.Name != nameof(FloorWords.Tag)))
        {
            var texts = FloorWords.All.Select(w => (string)property.GetValue(w)!).ToArray();
            Assert.DoesNotContain("", texts);
            Assert.Single(texts.Select(t => string.Join(' ', Regex.Matches(t, @"\{\w+\}").Select(m => m.Value).Order(StringComparer.Ordinal))).Distinct());
        }
        Assert.All(FloorWords.All, w => Assert.Equal(Enum.GetValues<Verdict>().Length, w.Verdicts.Length));
        Assert.All(FloorWords.All, w => Assert.Equal(Enum.GetValues<Standing>().Length, w.Journal.Standings.Length));
        Assert.Single(FloorWords.All.Select(w => string.Join(' ', w.Held.Keys.Order(StringComparer.Ordinal))).Distinct());
        Assert.All(FloorWords.All, w => Assert.Equal(w.Tag, FloorWords.Of(w.Tag).Tag));
    }
}
