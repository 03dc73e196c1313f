using Trivet.Cells;
using Trivet.Findings;
using Xunit;

namespace Trivet.Core.Tests.Findings;

public sealed class ReadingTests
{
    [Fact]
    public void What_was_looked_at_is_declared_sorted_and_once()
    {
        var reading = new Reading();
        reading.Need(2.0, "/b");
        reading.Or<double>(null, "/c", 7);
        reading.Need(1.0, "/a");
        reading.Need(2.0, "/b");
        Assert.Equal(["/a", "/b", "/c"], reading.Inputs);
        Assert.True(reading.Complete);
    }

    [Fact]
    public void What_is_absent_is_not_a_number_and_listed()
    {
        var reading = new Reading();
        Assert.True(double.IsNaN(reading.Need(null, "/length")));
        Assert.Equal(JointKind.Seat, reading.Need<JointKind>(null, "/joint", JointKind.Seat));
        reading.Missing("/stations");
        Assert.Equal(["/joint", "/length", "/stations"], reading.MissingFields);
        Assert.Equal(reading.MissingFields, reading.Inputs);
        Assert.False(reading.Complete);
    }

    [Fact]
    public void A_default_is_not_missing_but_counts_as_used()
    {
        var reading = new Reading();
        Assert.Equal(7, reading.Or<double>(null, "/c", 7));
        Assert.True(reading.Complete);
        Assert.Equal([new("/c", null)], reading.Key);
    }
}
