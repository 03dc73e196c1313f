using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the safety functions and of the hazard register.</summary>
internal static class StoppingFields
{
    private static readonly Shape Risk = new Table<RiskEstimate>(new RiskEstimate())
        .Choice("severity", Words.Severity, r => r.Severity, (r, v) => r with { Severity = v }, "S1: slight, usually reversible harm. S2: serious, usually irreversible harm, or death.", Depth.Build)
        .Choice("exposure", Words.Exposure, r => r.Exposure, (r, v) => r with { Exposure = v }, "F1: seldom to less often, or for a short time. F2: frequent to continuous, or for a long time.", Depth.Build)
        .Choice("avoidance", Words.Avoidance, r => r.Avoidance, (r, v) => r with { Avoidance = v }, "P1: harm can be avoided or limited under specific conditions. P2: scarcely.", Depth.Build)
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "What the estimate rests on, and whose it is.")
        .Done();

    private static readonly Shape Channel = new Table<SafetyChannel>(new SafetyChannel())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What it comes from: a contact, an output of a device.")
        .Text("signal", c => c.Signal, (c, v) => c with { Signal = v }, "Id of the signal that carries it; it ends at that signal's bank.")
        .Text("device", c => c.Device, (c, v) => c with { Device = v }, "Where it ends if no signal carries it: a relay, a safe input of the drives.")
        .YesNo("safety", c => c.Safety, (c, v) => c with { Safety = v }, "Whether that device is made for safety functions.")
        .Text("source", c => c.Source, (c, v) => c with { Source = v }, "By which paper it is.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Function = new Table<SafetyFunction>(new SafetyFunction())
        .Whole("order", f => f.Order, (f, v) => f with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", f => f.Name, (f, v) => f with { Name = v }, "What people call it.")
        .Choice("kind", Words.SafetyKind, f => f.Kind, (f, v) => f with { Kind = v }, "What kind of safety function it is.", Depth.Build)
        .Text("trigger", f => f.Trigger, (f, v) => f with { Trigger = v }, "What sets it off.", Depth.Build)
        .Text("guards", f => f.Guards, (f, v) => f with { Guards = v }, "Ids of the fences or devices of the guarding that it watches, with commas between.")
        .Keyed("channels", Channel, f => f.Channels, (f, v) => f with { Channels = v }, "The channels by which it hears of its trigger.")
        .Section("risk", Risk, f => f.Risk, (f, v) => f with { Risk = v }, "The risk without this function, from the risk assessment: the way through the risk graph of ISO 13849-1.")
        .Choice("level", Words.PerformanceLevel, f => f.Level, (f, v) => f with { Level = v }, "Performance level that is planned for all its parts together.", Depth.Build)
        .Choice("category", Words.SafetyCategory, f => f.Category, (f, v) => f with { Category = v }, "Category that is planned.", Depth.Build)
        .Text("levelSource", f => f.LevelSource, (f, v) => f with { LevelSource = v }, "Where level and category come from.", Depth.Build)
        .Quantity("failureRate", Dimension.Rate, f => f.FailureRate, (f, v) => f with { FailureRate = v }, "Mean frequency of a dangerous failure of all its parts together (PFHd).", null, "1/h")
        .Text("failureRateSource", f => f.FailureRateSource, (f, v) => f with { FailureRateSource = v }, "Where that comes from.")
        .Choice("stopCategory", Words.StopCategory, f => f.StopCategory, (f, v) => f with { StopCategory = v },
            "0: power is removed at once. 1: stopped under control, then power is removed. 2: stopped under control, power stays. Nothing for a function that stops nothing.")
        .Quantity("rampTime", Dimension.Time, f => f.RampTime, (f, v) => f with { RampTime = v }, "Stop category 1: from its trigger until everything stands.", null, "ms")
        .Quantity("torqueTime", Dimension.Time, f => f.TorqueTime, (f, v) => f with { TorqueTime = v },
            "Stop category 1: how long torque stays on at standstill before it is cut, so that brakes can close; none where nothing is stated.", null, "ms")
        .Text("isolates", f => f.Isolates, (f, v) => f with { Isolates = v }, "What it isolates, and by what.")
        .YesNo("airOff", f => f.AirOff, (f, v) => f with { AirOff = v }, "Whether it takes compressed air away too.")
        .Text("resetBy", f => f.ResetBy, (f, v) => f with { ResetBy = v }, "How it is reset.")
        .YesNo("resetSees", f => f.ResetSees, (f, v) => f with { ResetSees = v }, "Whether the whole zone is seen from where it is reset.")
        .YesNo("resetStarts", f => f.ResetStarts, (f, v) => f with { ResetStarts = v }, "Whether the reset also starts motion.")
        .Text("note", f => f.Note, (f, v) => f with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Stopping = new Table<StopPlan>(new StopPlan())
        .Quantity("largestSink", Dimension.Length, s => s.LargestSink, (s, v) => s with { LargestSink = v }, "What the risk assessment allows the tool to sink from standstill when torque is cut.")
        .YesNo("gripHolds", s => s.GripHolds, (s, v) => s with { GripHolds = v }, "Whether the gripper keeps its part without air and control supply: a spring, or a check valve before cups that seal. No where nothing is stated.")
        .Keyed("functions", Function, s => s.Functions, (s, v) => s with { Functions = v }, "The safety functions.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Measure = new Table<HazardMeasure>(new HazardMeasure())
        .Whole("order", m => m.Order, (m, v) => m with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", m => m.Name, (m, v) => m with { Name = v }, "What is done.", Depth.Build)
        .Choice("step", Words.MeasureStep, m => m.Step, (m, v) => m with { Step = v }, "Which of the three steps of risk reduction it is.", Depth.Build)
        .Text("function", m => m.Function, (m, v) => m with { Function = v }, "Id of the safety function that it is.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Proof = new Table<HazardProof>(new HazardProof())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", p => p.Name, (p, v) => p with { Name = v }, "What it shows.")
        .Text("rule", p => p.Rule, (p, v) => p with { Rule = v }, "Id of a rule whose findings show it, such as motion.hold.")
        .Text("step", p => p.Step, (p, v) => p with { Step = v }, "A step of the bring-up.")
        .Text("document", p => p.Document, (p, v) => p with { Document = v }, "A document.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Hazard = new Table<Hazard>(new Hazard())
        .Whole("order", h => h.Order, (h, v) => h with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", h => h.Name, (h, v) => h with { Name = v }, "What happens.", Depth.Build)
        .Text("proposed", h => h.Proposed, (h, v) => h with { Proposed = v }, "Id of the hazard that Trivet proposes and this one answers; its own id where nothing is stated.")
        .Choice("kind", Words.HazardKind, h => h.Kind, (h, v) => h with { Kind = v }, "What kind of hazard it is.", Depth.Build)
        .Choice("phase", Words.LifePhase, h => h.Phase, (h, v) => h with { Phase = v }, "In which phase of the machine's life.", Depth.Build)
        .Text("where", h => h.Where, (h, v) => h with { Where = v }, "Where and when.")
        .Text("who", h => h.Who, (h, v) => h with { Who = v }, "Who may come to harm.", Depth.Build)
        .Section("before", Risk, h => h.Before, (h, v) => h with { Before = v }, "The risk before any measure.")
        .Keyed("measures", Measure, h => h.Measures, (h, v) => h with { Measures = v }, "What is done against it.")
        .Text("onlyInformation", h => h.OnlyInformation, (h, v) => h with { OnlyInformation = v }, "Why neither design nor safeguard takes it away, where information for use is all there is.")
        .Section("after", Risk, h => h.After, (h, v) => h with { After = v }, "The risk that remains with the measures.")
        .Keyed("proofs", Proof, h => h.Proofs, (h, v) => h with { Proofs = v }, "How it is shown that the measures are there and work.")
        .Text("owner", h => h.Owner, (h, v) => h with { Owner = v }, "Who answers for it.", Depth.Build)
        .Text("accepted", h => h.Accepted, (h, v) => h with { Accepted = v }, "Who accepted what remains, and when.")
        .Text("note", h => h.Note, (h, v) => h with { Note = v }, "Anything worth keeping.")
        .Done();
}
