using System.Collections.Immutable;
using System.Globalization;
using Trivet.Assessment;
using Trivet.Procedures;
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

    /// <summary>Kinds of step that show something else of their part.</summary>
    private static readonly ImmutableDictionary<string, PictureKind> Own = new Dictionary<string, PictureKind>
    {
        ["hand-move"] = PictureKind.Push,
        ["small-jog"] = PictureKind.Push,
        ["home-alone"] = PictureKind.Push,
        ["platform-push"] = PictureKind.Push,
        ["frame-level"] = PictureKind.Level,
        ["mount-level"] = PictureKind.Level,
        ["platform-level"] = PictureKind.Level,
        ["base-marks"] = PictureKind.FromAbove,
        ["rods-and-platform"] = PictureKind.FromBelow,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The picture of a step of a procedure, with what is fitted by then; null where its part cannot be drawn.</summary>
    public static Drawing? Of(Assessed cell, Procedure procedure, Step step, Locale? locale = null) =>
        Of(cell, step.Subject.Pointer, KindOf(step), FittedAt(procedure, step), locale: locale);

    public static PictureKind KindOf(Step step) => Own.TryGetValue(step.Kind, out var kind) ? kind : KindOf(step.Subject.Pointer);

    /// <summary>Name of a step's picture: equal for steps with the same picture.</summary>
    public static string NameOf(Procedure procedure, Step step)
    {
        string at = string.Concat(step.Subject.Pointer.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-'));
        var kind = KindOf(step);
        // What is fitted shows in these alone.
        string fitted = kind is PictureKind.Whole or PictureKind.Detail or PictureKind.Push or PictureKind.Level or PictureKind.FromBelow
            ? "-" + ((int)FittedAt(procedure, step)).ToString(CultureInfo.InvariantCulture) : "";
        return kind.ToString().ToLowerInvariant() + at + fitted;
    }

    /// <summary>What is fitted while a step is done: robot, rods with platform, and tool from the step on that fits them, or from the first where none does.</summary>
    public static Fitted FittedAt(Procedure procedure, Step step)
    {
        int at = procedure.Steps.IndexOf(step);
        return Fitted.Frame | Fitted.Stations | Fitted.Cabinet | Fitted.Ways | Fitted.Guards | From("robot-hung", Fitted.Robot)
            | From("rods-and-platform", Fitted.Rods | Fitted.Platform, "robot-hung") | From("tool-mounted", Fitted.Tool);

        Fitted From(string kind, Fitted parts, string orElse = "")
        {
            int from = Index(kind);
            if (from < 0) from = Index(orElse);
            return at < from ? 0 : parts;
        }

        int Index(string kind)
        {
            for (int i = 0; i < procedure.Steps.Length; i++)
                if (procedure.Steps[i].Kind == kind) return i;
            return -1;
        }
    }

    /// <summary>Pointers of all that is drawn of a cell and can be marked, sorted.</summary>
    public static ImmutableArray<string> Parts(Assessed cell) =>
    [
        .. CellSolids.Of(cell, Fitted.All).SelectMany(p => p.Pointers).Where(p => !p.Contains('#', StringComparison.Ordinal))
            .Concat(cell.Cell.Cabinet.Modules.Keys.Select(m => "/cabinet/modules/" + m)).Concat(cell.Cell.Cables.Keys.Select(c => "/cables/" + c))
            .Distinct().Order(StringComparer.Ordinal),
    ];

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
