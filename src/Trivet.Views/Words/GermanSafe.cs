namespace Trivet.Views.Words;

/// <summary>How a cell is made safe, in German.</summary>
internal static class GermanSafe
{
    public static SafeWords All { get; } = new()
    {
        WhatStaysLive = "Was unter Spannung bleibt",
        Press = "{name}: {where}.",
        PressNowhere = "{name}: wo das ist, ist nicht angegeben. Vor Beginn der Arbeit suchen.",
        NoStop = "Für diese Zelle ist kein Not-Halt beschrieben. Den nächsten vor Beginn der Arbeit suchen.",
        Categories = ["Kategorie 0: das Drehmoment fällt sofort weg.", "Kategorie 1: gesteuert stillgesetzt, geplant in {time}; das Drehmoment fällt {torque} später weg.", "Kategorie 2: gesteuert stillgesetzt, die Antriebe bleiben ein. Nichts wird spannungsfrei."],
        NoCategory = "Wie er stillsetzt, ist nicht angegeben: damit rechnen, dass das Drehmoment sofort wegfällt und der Weg bis zum Stillstand lang ist.",
        NoTime = "einer nicht angegebenen Zeit",
        TakesAway = "Er nimmt weg: {what}.",
        TakesUnknown = "Was er wegnimmt, ist nicht angegeben: damit rechnen, dass alles unter Spannung bleibt.",
        NoIsolator = "Es ist kein Schalter zum Freischalten beschrieben. Wer dazu befugt ist, schaltet die Motorversorgung aus und sichert sie.",
        Wait = "{time}, dann messen: {each}.",
        WaitUnknown = "Nicht angegeben, wie lange {names} geladen bleibt: das Typenschild lesen. Nichts gilt als spannungsfrei, bevor es gemessen ist.",
        NoCharges = "Es ist nichts beschrieben, was geladen bleibt: die Typenschilder der Antriebe und Versorgungen lesen. Nichts gilt als spannungsfrei, bevor es gemessen ist.",
        StayLive = "Nach dem Halt gilt bis zum Freischalten als unter Spannung, was der Halt nicht wegnimmt: {names}. Was vor dem Hauptschalter liegt, steht immer unter Spannung.",
        NoSupplies = "Die Versorgungen sind nicht beschrieben: damit rechnen, dass nach dem Halt alle unter Spannung bleiben.",
        AirGoes = "Der Halt nimmt die Druckluft weg: {names}. Den Rest entlüften, das Manometer ablesen.",
        AirStays = "Der Halt lässt die Druckluft an.",
        AirUnknown = "Ob der Halt die Druckluft wegnimmt, ist nicht angegeben: damit rechnen, dass sie bleibt.",
        AtStop = "Beim Halt, {what}",
        WithoutSupply = "Ohne Versorgung, {what}",
        Both = "Beim Halt und ohne Versorgung, {what}",
        Becomes = ["{chains}: der Antrieb hält, solange er versorgt ist.", "{chains}: gehalten durch {by}.", "{chains}: sinkt bis zu {sink}, dann gehalten durch {by}.", "{chains}: kommt bis ans Ende des Hubs herunter; nichts, womit zu rechnen ist, hält.", "{chains}: kommt herunter, wenn keine Stütze darunter steht."],
        Holdings = ["nichts", "die Bremse", "das Gegengewicht", "Reibung", "die Stütze"],
        FallUnknown = "Was herunterkommt, ist nicht berechnet, weil Massen oder Halt nicht weit genug beschrieben sind: damit rechnen, dass jede Kette herunterkommt.",
        Estimate = "Aus dem Plan geschätzt, aus dem Stillstand. Niemand greift deswegen unter eine Kette.",
        GripHolds = "Der Greifer hält sein Teil auch ohne Druckluft und Versorgung.",
        GripLetsGo = "Der Greifer lässt sein Teil ohne Druckluft oder Versorgung los.",
        GripUnknown = "Ob der Greifer sein Teil hält, ist nicht angegeben: damit rechnen, dass es fällt.",
        InAt = "hinein um",
        OutAt = "heraus um",
    };
}
