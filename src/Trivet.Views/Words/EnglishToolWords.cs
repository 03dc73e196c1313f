namespace Trivet.Views.Words;

/// <summary>The English texts of the tool's sheets.</summary>
internal static class EnglishToolWords
{
    public static ToolWords Words { get; } = new()
    {
        Stack = "Tool stack",
        StackDrawing = "Tool stack, exploded",
        StackDescription = "The tool of {cell} from the mechanical interface down, seen along y, its parts drawn apart, with their centres of mass.",
        Sums = "Sums",
        Gripping = "Gripping",
        Air = "Compressed air",
        AirDrawing = "Pneumatic diagram",
        AirDescription = "Compressed air of {cell}: supply, valves and users, symbols after ISO 1219-1.",
        Handling = "Handling",
        Guarding = "Guarding",
        Findings = "Findings",
        NoTool = "No tool part is described yet.",
        NoAir = "Nothing is described that uses compressed air.",
        HeadPart = "Part",
        HeadMass = "Mass",
        HeadCentre = "Centre x, y, z",
        HeadInertia = "Inertia about x, y, z at the interface",
        HeadInertiaTcp = "at the tool centre point",
        HeadTurns = "Turns",
        HeadWhat = "What",
        HeadValue = "Value",
        Turns = "yes",
        Unknown = "not known",
        Empty = "empty",
        With = "with {part}",
        FrameNote = "From the mechanical interface, axes of the platform at rotary angle 0, z up.",
        CupsForce = "Force of all cups",
        CupsLever = "Distance to the edge about which the part tips",
        Reached = "Vacuum that is reached",
        UntilHeld = "Time until the part is held",
        UntilFree = "Time until it is let go",
        Evacuated = "Volume of hose and cups",
        Friction = "Friction",
        AirOf = "Free air of {user} in a cycle",
        AirCycle = "Free air in a cycle",
        AirHour = "Free air at the mean rate, mean flow",
        SpaceX = "All that moves stays within, along x",
        SpaceY = "along y",
        SpaceZ = "along z",
        Thrown = "{what} coming off, {cycle}",
        ThrownPart = "part",
        ThrownRod = "rod of chain {chain}",
        ThrownValue = "{speed}, {energy}, towards {azimuth} seen from above, {elevation} from level; lands {range} away",
        AirCautions =
        [
            "Shut off and vent the air, and lock the valve, before anybody works on the tool: grippers close and parts drop when pressure goes or comes back.",
            "Wear eye protection where air blows. Local codes and the manuals of the parts used take precedence.",
        ],
        HandlingCautions =
        [
            "Nobody stands under a hanging load. Hoists, slings and hooks are inspected and rated; a trained person leads the lift.",
            "How many people could lift something is never computed: what takes more than one gets a lifting aid.",
            "The hoist or props stay until the stated bolts are at their torque. Local codes take precedence.",
        ],
        GuardCautions =
        [
            "An aid to the risk assessment, never a substitute for it. Compare every distance with the current text of the standard; a competent person decides.",
            "A device's distance stays open until the worst stop was measured at this machine. What is thrown after a fault can carry more than what the plan makes.",
            "A device that is muted protects nobody while it is: something else keeps people out, and a competent person has seen that it does.",
        ],
        Supply = "supply",
        ShutOff = "shut-off, lockable",
        FilterRegulator = "filter and regulator",
        Cups = "cups",
    };
}
