using Trivet.Journal;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Journal;

public sealed class InsideTests
{
    [Fact]
    public void Who_went_in_last_and_did_not_come_out_is_inside()
    {
        var tablet = new WritingDevice("tablet", "ada");
        Kept[] entries =
        [
            tablet.Write(new Seen(Inside.In, "")), tablet.Write(new Seen(Inside.In, "bo")), tablet.Write(new Seen("motor-hums", "cy")), tablet.Write(new Seen(Inside.Out, "bo")),
            tablet.Write(new Seen(Inside.In, "cy")),
        ];
        Assert.Equal(["ada", "cy"], Inside.Of(entries));
        // In whatever order they came, and without what was taken back.
        Assert.Equal(["ada"], Inside.Of(entries.Reverse().Append(tablet.Write(new Corrected(entries[4].Hash, "it was not cy", null)))));
    }
}
