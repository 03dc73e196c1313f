namespace Trivet.Store.Saver;

internal static class Lines
{
    private static readonly Lock One = new();

    /// <summary>Writes a whole line before the next begins, and lets go of it at once.</summary>
    public static void Say(string line)
    {
        lock (One)
        {
            Console.Out.WriteLine(line);
            Console.Out.Flush();
        }
    }
}
