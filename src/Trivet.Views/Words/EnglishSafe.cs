namespace Trivet.Views.Words;

/// <summary>How a cell is made safe, in English.</summary>
internal static class EnglishSafe
{
    public static SafeWords All { get; } = new()
    {
        WhatStaysLive = "What stays live",
        Press = "{name}: {where}.",
        PressNowhere = "{name}: where it is, is not stated. Find it before work begins.",
        NoStop = "No emergency stop is described for this cell. Find the nearest one before work begins.",
        Categories = ["Category 0: the torque goes at once.", "Category 1: brought to rest, planned within {time}; the torque goes {torque} later.", "Category 2: brought to rest, and the drives stay on. Nothing goes dead."],
        NoCategory = "How it stops is not stated: count on the torque going at once and on a long way before all stands.",
        NoTime = "a time that is not stated",
        TakesAway = "It takes away: {what}.",
        TakesUnknown = "What it takes away is not stated: count on everything staying live.",
        NoIsolator = "No switch that isolates is described. Whoever is licensed for it switches the motor supply off and locks it.",
        Wait = "{time}, then measure: {each}.",
        WaitUnknown = "Not stated how long {names} keeps a charge: read its plate. Nothing counts as dead before it is measured.",
        NoCharges = "Nothing that keeps a charge is described: read the plates of drives and supplies. Nothing counts as dead before it is measured.",
        StayLive = "After the stop, until it is isolated, count as live unless the stop takes it away: {names}. What lies before the main switch is live always.",
        NoSupplies = "The supplies are not described: count on all of them staying live after the stop.",
        AirGoes = "The stop takes the air away: {names}. Vent what is left, look at the gauge.",
        AirStays = "The stop leaves the air on.",
        AirUnknown = "Whether the stop takes the air away is not stated: count on it staying on.",
        AtStop = "At the stop, {what}",
        WithoutSupply = "Without supply, {what}",
        Both = "At the stop and without supply, {what}",
        Becomes = ["{chains}: the drive holds as long as it has its supply.", "{chains}: {by} holds.", "{chains}: sinks up to {sink}, then {by} holds.", "{chains}: comes down to the end of its travel; nothing that can be counted on holds.", "{chains}: comes down unless a prop stands under it."],
        Holdings = ["nothing", "the brake", "the counterweight", "friction", "the prop"],
        FallUnknown = "What comes down is not computed, since masses or holding are not described far enough: count on every chain coming down.",
        Estimate = "Estimated from the plan and from standstill. Nobody reaches under a chain because of it.",
        GripHolds = "The gripper keeps its part without air and supply.",
        GripLetsGo = "The gripper lets its part go without air or supply.",
        GripUnknown = "Whether the gripper keeps its part is not stated: count on the part falling.",
        InAt = "in at",
        OutAt = "out at",
    };
}
