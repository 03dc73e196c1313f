namespace Trivet.Views.Words;

/// <summary>The English texts about falls.</summary>
internal static class EnglishFalls
{
    public static FallWords All { get; } = new()
    {
        Title = "When drives let go",
        Caution = "An aid to the risk assessment, never a substitute for it: estimated from the masses described. Joints, end stops and what is underneath are taken as rigid and free. "
            + "Nobody reaches under a chain because of these numbers: put a prop or the lower stops under it first, and follow the local code.",
        HeldNote = "As held: the drives are off, each chain is held as the description states, rotors turn along. Friction that is not stated as holding counts for nothing, and so does a prop.",
        GoneNote = "Gone: nothing is left of the drive, neither holding nor friction nor rotor, as when a belt tears; the other chains are held, or for all chains none is.",
        Points = ["{subject}, at approach height", "{subject}, at the pick", "{subject}, halfway", "{subject}, at the place"],
        Ends = ["stays", "end stop", "comes to rest", "swings back", "rods lose hold", "still moving after 10 s", "not computed"],
        Holdings = ["nothing", "brake", "counterweight", "friction", "prop"],
        HoldsForce = "{holding}, {force}",
        HoldsUnknown = "{holding}, force not stated",
        AllChains = "all chains",
        HeadChain = "Chain",
        HeadHeldBy = "Held by",
        HeadLoad = "Load",
        HeadAsHeld = "As held",
        HeadGone = "Gone",
        HeadEnd = "ends",
        HeadTime = "after",
        HeadDrop = "down",
        HeadSpeed = "speed",
        HeadEnergy = "energy",
        Waits = "Falls need what is not stated: {fields}.",
        NoPlaces = "No station and no cycle is described: there is no place to fall from.",
        Looking = "computing …",
        Show = "Show",
        Hide = "Hide",
        ShowNote = "where each chain falls to at every station and cycle, by what holds it.",
    };
}
