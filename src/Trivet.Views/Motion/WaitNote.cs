using Trivet.Assessment;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Motion;

/// <summary>Which settling time a cycle is timed with and how it is known, in one sentence; a typed one beside what the frame asks.</summary>
public static class WaitNote
{
    /// <summary>Empty where the cell has no such cycle.</summary>
    public static string Of(Assessed assessed, string cycle, Locale? locale = null)
    {
        if (assessed.Waits.FirstOrDefault(w => w.Cycle == cycle) is not { } wait) return "";
        var words = (locale ?? Locale.English).Language.Motion;
        string note = Locale.Fill(words.WaitNotes[(int)wait.Known], ("wait", MotionSheet.Seconds(wait.Wait, locale)));
        if (wait.Known != WaitKnown.Typed) return note;
        double[] needed = [.. assessed.Ledger.Findings.OfType<Judged>().Where(f => f.Rule == FrameRules.Settle && f.Subject.Pointer == CyclePlan.Pointer(cycle)).Select(f => f.Value)];
        return needed.Length == 0 ? note : $"{note} {Locale.Fill(words.WaitNeeded, ("needed", MotionSheet.Seconds(needed.Max(), locale)))}";
    }
}
