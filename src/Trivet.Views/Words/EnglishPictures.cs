namespace Trivet.Views.Words;

/// <summary>The English texts of the pictures of a step.</summary>
internal static class EnglishPictures
{
    public static PictureWords All { get; } = new()
    {
        Title = "{part}, {cell}",
        WholeTitle = "{cell} from the operator's side",
        Whole = "The whole cell seen at a slant, {part} marked by a heavy outline and a hatch.",
        Hidden = "The whole cell seen at a slant; {part} is behind other parts and drawn dashed.",
        Detail = "Detail of {part}, marked by a heavy outline and a hatch; beside it where this is in the cell.",
        FromBelow = "The platform seen from below with the direction to each chain and the cell's x and y.",
        FromAbove = "The robot seen from above with its chains in the order they are numbered, and the cell's x and y.",
        Rail = "The modules along the rail as outlines, {part} marked; below it what its switches must read.",
        Cable = "Both ends of {part}; cables whose plugs fit there too are drawn dashed.",
        Foot = "The frame seen at a slant, {part} marked, with an arrow for the way it moves the frame: up.",
        Push = "{part} with an arrow along the way it moves by hand.",
        Level = "The cell seen at a slant with the spirit level in both directions, {part}.",
        Feet = "feet of the frame",
        Platform = "platform",
        Robot = "robot",
        Base = "base of the robot",
        Frame = "frame",
        Tool = "tool",
        Rotary = "rotary axis",
        LinearAxis = "axis that carries the robot",
        Cabinet = "cabinet",
        Levels = "spirit level",
        NotThis = "not this one",
    };
}
