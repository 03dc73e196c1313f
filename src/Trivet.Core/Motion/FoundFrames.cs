using System.Collections.Concurrent;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;

namespace Trivet.Motion;

/// <summary>
/// Frames as they are studied, each when first asked for: what settling waits and the frame's own findings share while a cell is assessed, and one assessment with the
/// next. Safe to ask from several threads.
/// </summary>
public sealed class FoundFrames
{
    // A study keeps some megabytes.
    private const int MostRemembered = 8;

    private readonly ConcurrentDictionary<ReadKey, Lazy<FrameStudy>> _found = new();

    /// <param name="read">All that the frame was read from, what was measured included.</param>
    public Lazy<FrameStudy> Of(FrameInput input, FrameMeasured measured, Reading read)
    {
        if (_found.Count > MostRemembered) _found.Clear();
        return _found.GetOrAdd(new("frame", read.Key), _ => new(() => FrameStudy.Of(input, measured)));
    }
}
