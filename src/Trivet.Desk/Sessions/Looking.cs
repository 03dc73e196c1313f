namespace Trivet.Desk.Sessions;

/// <summary>How a page follows what others write: one look after the other, every two seconds, until it is left.</summary>
internal static class Looking
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(2);

    /// <param name="look">One look, in the page's context; it tells its own trouble.</param>
    /// <param name="leave">Cancelled when the page is left; that ends the looking and is no failure.</param>
    public static async Task UntilAsync(Func<Task> look, CancellationToken leave)
    {
        using var every = new PeriodicTimer(Between);
        try
        {
            while (await every.WaitForNextTickAsync(leave)) await look();
        }
        catch (OperationCanceledException)
        {
            // The page was left.
        }
    }
}
