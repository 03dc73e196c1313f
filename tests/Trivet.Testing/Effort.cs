namespace Trivet.Testing;

/// <summary>How many cases a test tries: the usual number, or with <c>./test --long</c> twenty times as many.</summary>
public static class Effort
{
    private const int LongFactor = 20;

    public static bool IsLong { get; } = Environment.GetEnvironmentVariable("TRIVET_TEST_LONG") is { Length: > 0 };

    public static int Cases(int usual) => IsLong ? LongFactor * usual : usual;
}
