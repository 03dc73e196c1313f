using Trivet.Cells;

namespace Trivet.Desk.Components.Layout;

internal static class DepthWords
{
    public static string Of(Depth depth) => depth switch
    {
        Depth.Quote => "quote",
        Depth.Build => "build",
        _ => "as-built",
    };
}
