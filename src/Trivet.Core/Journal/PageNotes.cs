namespace Trivet.Journal;

/// <summary>What the floor page writes into a note by itself. It stands in hashed entries, so it has one form; people read it in their language.</summary>
public static class PageNotes
{
    /// <summary>Typed in from a card; date and time on the card follow.</summary>
    public const string FromPaper = "from paper";
}
