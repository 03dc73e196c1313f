namespace Trivet.Views.Words;

/// <summary>The German texts of the pictures of a step.</summary>
internal static class GermanPictures
{
    public static PictureWords All { get; } = new()
    {
        Title = "{part}, {cell}",
        WholeTitle = "{cell} von der Seite des Bedieners",
        Whole = "Die ganze Zelle schräg von oben, {part} mit kräftigem Umriss und Schraffur.",
        Hidden = "Die ganze Zelle schräg von oben; {part} liegt hinter anderen Teilen und ist gestrichelt.",
        Detail = "Ausschnitt mit {part}, mit kräftigem Umriss und Schraffur; daneben, wo das in der Zelle ist.",
        FromBelow = "Die Plattform von unten mit der Richtung zu jeder Kette und x und y der Zelle.",
        FromAbove = "Der Roboter von oben mit seinen Ketten in der Reihenfolge ihrer Nummern, und x und y der Zelle.",
        Rail = "Die Module auf der Schiene als Umrisse, {part} hervorgehoben; darunter, was seine Schalter zeigen müssen.",
        Cable = "Beide Enden von {part}; Kabel, deren Stecker auch dorthin passen, sind gestrichelt.",
        Foot = "Das Gestell schräg von oben, {part} hervorgehoben, mit einem Pfeil in der Richtung, in die es das Gestell bewegt: nach oben.",
        Push = "{part} mit einem Pfeil in der Richtung, in die es von Hand bewegt wird.",
        Level = "Die Zelle schräg von oben mit der Wasserwaage in beiden Richtungen, {part}.",
        Feet = "Füße des Gestells",
        Platform = "Plattform",
        Robot = "Roboter",
        Base = "Basis des Roboters",
        Frame = "Gestell",
        Tool = "Werkzeug",
        Rotary = "Drehachse",
        LinearAxis = "Achse, die den Roboter trägt",
        Cabinet = "Schaltschrank",
        Levels = "Wasserwaage",
        NotThis = "nicht dieses",
    };
}
