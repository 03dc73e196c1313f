namespace Trivet.Desk.Access;

/// <summary>The person whose page this is; each page has its own. Empty until it is known, and the store then keeps nothing.</summary>
public sealed class Acting
{
    public string Person { get; set; } = "";

    /// <summary>BCP 47 tag of the language that this person's browser asks for and Trivet speaks.</summary>
    public string Language { get; set; } = "en";

    /// <summary>The page came in by the machine's own door.</summary>
    public bool AtTheMachine { get; set; }
}
