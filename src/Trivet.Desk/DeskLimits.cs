namespace Trivet.Desk;

/// <summary>Bounds on what a page may send or keep, so that no input takes the machine's memory.</summary>
internal static class DeskLimits
{
    /// <summary>Largest cell file taken in, bytes.</summary>
    public const int LargestFile = 16 * 1024 * 1024;

    /// <summary>Largest document that is edited as text in the page, characters; a longer one is shown and edited by its form.</summary>
    public const int LargestText = 400_000;

    /// <summary>Largest single message from a page, bytes: a document typed as text, in UTF-8 and quoted.</summary>
    public const int LargestMessage = 2 * 1024 * 1024;

    /// <summary>Pages that lost their connection and may still come back.</summary>
    public const int KeptPages = 8;

    /// <summary>How long they may take.</summary>
    public static readonly TimeSpan KeptFor = TimeSpan.FromMinutes(10);
}
