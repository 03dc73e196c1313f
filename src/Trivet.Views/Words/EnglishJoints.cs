namespace Trivet.Views.Words;

/// <summary>The English texts of bolted joints.</summary>
internal static class EnglishJoints
{
    public static JointWords All { get; } = new()
    {
        Title = "Torque sheet",
        Description = "Torque sheet of {cell}: the bolted joints in the order they are tightened, with torque, steps and order of the screws.",
        HeadOrder = "No.",
        HeadJoint = "Joint",
        HeadScrews = "Screws",
        HeadSteps = "Steps N m",
        HeadTorque = "Torque",
        HeadPreload = "Preload",
        HeadKept = "Stays",
        HeadLimit = "Limited by",
        HeadSequence = "Order of the screws",
        HeadDone = "Done",
        Limits = ["the screw", "pressure under the head", "the thread", "the slot nut", "as stated"],
        Screws = "{count} × {thread}, {class}",
        Range = "{from} to {to}",
        Nothing = "nothing is left after losses",
        Notes = "Notes",
        NoteLines =
        [
            "Lock off and secure what hangs before a screw is loosened or tightened; never reach under a part that its screws alone hold.",
            "Tighten crosswise in the steps given, with a checked wrench, screws and faces as clean and oiled as the friction stated.",
            "Re-check: after 24 hours, after transport, after the first week of production, then once a year; a screw with hardened locking compound is not re-tightened but replaced.",
            "Mark each screw with a line across head and part once its torque is reached.",
            "Torques hold for the friction and materials stated. The maker's figures for a part go before them.",
        ],
        CreepNote = "{joint}: a clamped part creeps; re-tighten after one day and after one week.",
        NotCalculated = "Not calculated yet, see the ledger: {joints}.",
        Separation = "Opening",
        Slip = "Slipping",
        LoadUnknown = "load not known",
        SectionTitle = "Bolted joints",
        NoJoints = "No bolted joint is described yet: it names its screws, what they clamp, and what loads them.",
        Describe = "Describe a joint",
        Caution = "Secure what hangs and lock off before a screw is touched. Shares of one or more mean that the joint opens, slips or tires.",
    };
}
