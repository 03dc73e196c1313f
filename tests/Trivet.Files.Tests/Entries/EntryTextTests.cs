using System.Text;
using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests.Entries;

public sealed class EntryTextTests
{
    [Fact]
    public void Every_kind_of_entry_reads_back_to_what_it_was()
    {
        var device = new WritingDevice("tablet-1") { ClockOffset = -12_345_678 };
        foreach (var says in WritingDevice.EveryKind)
        {
            var written = device.Write(says, "limit-switch:a", "gap", note: "ä\r\n机");
            var read = EntryReader.Read(EntryText.Of(written.Entry));
            Assert.Equal("", read.Problem);
            Assert.Equal(written.Hash, read.Hash);
            Assert.Equal(says.GetType(), read.Entry!.Says.GetType());
            Assert.Equal(EntryText.Of(written.Entry), EntryText.Of(read.Entry));
        }
    }

    [Fact]
    public void Every_kind_of_statement_is_among_those_tried() =>
        Assert.Equal(
            typeof(Statement).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Statement)) && !t.IsAbstract && t != typeof(Unread)).Select(t => t.Name).Order(),
            WritingDevice.EveryKind.Select(s => s.GetType().Name).Distinct().Order());

    [Fact]
    public void The_form_stays_as_it_is() =>
        // Written out once by hand: a journal of this version is read for ever.
        Assert.Equal(
            """{"ask":"gap","at":"2030-05-06T12:00:01.0000000Z","cell":"jar-lids","clockOffset":-5,"device":"tablet-1","entry":1,"localOffset":120,"note":"n","person":"ada","previous":"","revision":"","says":{"kind":"measured","readTo":"1E-05","typed":"12,30 mm","unit":"m","value":"0.0123"},"sequence":1,"step":"limit-switch:a"}""",
            EntryText.Of(new WritingDevice("tablet-1") { ClockOffset = -5 }.Write(WritingDevice.EveryKind[0], "limit-switch:a", "gap", note: "n").Entry));

    [Fact]
    public void A_receipt_reads_back()
    {
        var receipt = new Receipt(3, new string('a', 64), new string('b', 64), WritingDevice.Noon.Ticks);
        string text = $$"""{"entry":"{{receipt.Entry}}","number":3,"previous":"{{receipt.Previous}}","receipt":1,"received":"2030-05-06T12:00:00.0000000Z"}""";
        Assert.Equal(text, EntryText.Of(receipt));
        Assert.Equal(receipt, EntryReader.Read(text).Receipt);
    }

    [Theory]
    [InlineData("\"entry\":1", "\"entry\":2", "measured")]
    [InlineData("\"kind\":\"measured\"", "\"kind\":\"weighed\"", "weighed")]
    [InlineData("\"value\":\"0.0123\"", "\"value\":\"many\"", "measured")]
    [InlineData("\"step\":\"s\"", "\"step\":\"s\",\"zone\":[true,{\"b\":1}]", "")]
    public void What_a_later_program_says_is_kept_and_not_understood(string old, string later, string kind)
    {
        string text = EntryText.Of(new WritingDevice("d").Write(WritingDevice.EveryKind[0], "s").Entry).Replace(old, later, StringComparison.Ordinal);
        var read = EntryReader.Read(text);
        Assert.Equal("", read.Problem);
        Assert.Equal(kind, read.Entry!.Says is Unread unread ? unread.Kind : "");
        Assert.Equal(EntryText.Hash(text), read.Hash);
    }

    [Theory]
    [InlineData("\"sequence\":1", "\"sequence\":0")]
    [InlineData("\"sequence\":1", "\"sequence\":1.0")]
    [InlineData("\"sequence\":1", "\"sequence\":9007199254740993")]
    [InlineData("\"person\":\"ada\"", "\"person\":\"ada\",\"person\":\"bob\"")]
    [InlineData("\"person\":\"ada\"", "\"person\":\"\"")]
    [InlineData("\"person\":\"ada\"", "\"person\":\"a\\u0000\"")]
    [InlineData("\"person\":\"ada\"", "\"person\":\"\\ud800\"")]
    [InlineData("\"person\":\"ada\"", "\"person\": \"ada\"")]
    [InlineData("\"person\":\"ada\"", "\"person\":\"\\u0061da\"")]
    [InlineData("\"person\":\"ada\",", "")]
    [InlineData("\"previous\":\"\"", "\"previous\":\"abc\"")]
    [InlineData("12:00:01.0000000Z", "12:00:01Z")]
    [InlineData("12:00:01", "12:60:01")]
    [InlineData("{\"kind\":\"ticked\"}", "7")]
    [InlineData("{\"kind\":\"ticked\"}", "{}")]
    [InlineData("}", "")]
    [InlineData("{", "[")]
    public void What_is_damaged_is_refused(string old, string damaged)
    {
        string sound = EntryText.Of(new WritingDevice("d").Write(new Ticked()).Entry), text = sound.Replace(old, damaged, StringComparison.Ordinal);
        Assert.NotEqual(sound, text);
        Assert.True(EntryReader.Read(sound).Ok);
        Assert.False(EntryReader.Read(text).Ok);
    }

    [Fact]
    public void Too_large_is_refused()
    {
        Assert.Contains("larger", EntryReader.Read(new string('{', EntryText.Largest + 1)).Problem, StringComparison.Ordinal);
        string words = new('w', EntryText.LongestWords);
        Assert.True(EntryReader.Read(EntryText.Of(new WritingDevice("d").Write(new Written(words)).Entry)).Ok);
        Assert.False(EntryReader.Read(EntryText.Of(new WritingDevice("d").Write(new Ticked(), note: words + "w").Entry)).Ok);
    }

    [Fact]
    public void No_text_is_too_broken_to_be_refused()
    {
        var random = new Random(20300506);
        string[] sound = [.. WritingDevice.EveryKind.Select(s => EntryText.Of(new WritingDevice("d").Write(s, "s", "a").Entry))];
        for (int i = 0; i < Effort.Cases(20_000); i++)
        {
            var text = new StringBuilder(sound[random.Next(sound.Length)]);
            for (int change = random.Next(1, 4); change > 0; change--)
            {
                int at = random.Next(text.Length);
                if (random.Next(3) == 0) text.Remove(at, Math.Min(random.Next(1, 30), text.Length - at)).Append('}');
                else text[at] = (char)random.Next(0, random.Next(2) == 0 ? 128 : 65536);
            }
            var read = EntryReader.Read(text.ToString());
            Assert.Equal(read.Ok, read.Entry is not null || read.Receipt is not null);
        }
    }
}
