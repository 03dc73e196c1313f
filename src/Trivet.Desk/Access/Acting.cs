namespace Trivet.Desk.Access;

/// <summary>The person whose page this is; each page has its own. Empty until it is known, and the store then keeps nothing.</summary>
public sealed class Acting
{
    public string Person { get; set; } = "";

    /// <summary>The page came in by the machine's own door.</summary>
    public bool AtTheMachine { get; set; }
}
