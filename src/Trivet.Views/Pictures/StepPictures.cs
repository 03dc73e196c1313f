using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>What is shown of a part.</summary>
public enum PictureKind
{
    /// <summary>The whole cell with the part marked.</summary>
    Whole,
    /// <summary>The part from near by, and where that is.</summary>
    Detail,
    /// <summary>The platform from below.</summary>
    FromBelow,
    /// <summary>The robot from above with its chains in order.</summary>
    FromAbove,
    /// <summary>The rail of the cabinet.</summary>
    Rail,
    /// <summary>Both ends of a cable.</summary>
    Cable,
    /// <summary>The frame with the foot that is turned.</summary>
    Foot,
    /// <summary>The way a part is moved by hand.</summary>
    Push,
    /// <summary>Where the spirit level is laid.</summary>
    Level,
}

/// <summary>Pictures of a cell for a step at the machine, each with one part marked. Sheets of 640 × 480, read at arm's length and farther.</summary>
public static class StepPictures
{
    /// <summary>What a step about a part shows, unless it asks for something else.</summary>
    public static PictureKind KindOf(string pointer) => Fields.Path(pointer) switch
    {
        ["cabinet", "modules", ..] => PictureKind.Rail,
        ["cables", _, ..] => PictureKind.Cable,
        ["frame", "feet", ..] => PictureKind.Foot,
        ["robot", "chains"] => PictureKind.FromAbove,
        ["robot", "chains", ..] or ["io", "switches", ..] or ["drives", "axes", ..] or ["cabling", "devices", ..] or ["robot", "platform" or "rotary"] or ["tool", ..] => PictureKind.Detail,
        _ => PictureKind.Whole,
    };

    /// <summary>The picture of a part; null where the cell does not describe enough to draw it.</summary>
    /// <param name="pointer">What is marked; empty for nothing. A field stands for the part it belongs to.</param>
    /// <param name="fitted">What of the machine is there already.</param>
    /// <param name="hidden">Hidden edges of the marked part too, dashed. Where nothing of it is seen they are drawn anyway.</param>
    public static Drawing? Of(Assessed cell, string pointer, PictureKind? kind = null, Fitted fitted = Fitted.All, bool hidden = false, Locale? locale = null)
    {
        locale ??= Locale.English;
        return (kind ?? KindOf(pointer)) switch
        {
            PictureKind.Detail => SlantedPictures.Detail(cell, pointer, fitted, hidden, locale),
            PictureKind.FromBelow => TurnedPictures.FromBelow(cell, fitted, locale),
            PictureKind.FromAbove => TurnedPictures.FromAbove(cell, locale),
            PictureKind.Rail => CabinetPictures.Rail(cell, pointer, locale),
            PictureKind.Cable => CabinetPictures.Cable(cell, pointer, locale),
            PictureKind.Foot => MovedPictures.Foot(cell, pointer, locale),
            PictureKind.Push => MovedPictures.Push(cell, pointer, fitted, locale),
            PictureKind.Level => MovedPictures.Level(cell, pointer, fitted, locale),
            _ => SlantedPictures.Whole(cell, pointer, fitted, hidden, locale),
        };
    }
}
