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

    /// <summary>A copy goes on from where it was taken, and neither sees what the other reads from there on; asked again and again, the order is always that of one reading.</summary>
    [Fact]
    public void A_copy_goes_on_by_itself_and_in_order()
    {
        var random = new Random(7);
        for (int round = 0; round < 200; round++)
        {
            var (reading, all) = (new Reading(), new SortedDictionary<string, object?>(StringComparer.Ordinal));
            for (int i = 0; i < 60; i++)
            {
                string pointer = $"/{(char)('a' + random.Next(26))}/{random.Next(40)}";
                reading.Used(pointer, i);
                all[pointer] = i;
                switch (random.Next(6))
                {
                    case 0:
                        Assert.Equal(all.Keys, reading.Inputs);
                        break;
                    case 1:
                        var copy = new Reading(reading);
                        copy.Used("/zz", null);
                        Assert.DoesNotContain("/zz", reading.Inputs);
                        Assert.Equal(all.Keys.Append("/zz").Order(StringComparer.Ordinal), copy.Inputs);
                        if (random.Next(2) == 0) reading = new(reading);
                        break;
                }
            }
            Assert.Equal(all, reading.Key);
        }
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
