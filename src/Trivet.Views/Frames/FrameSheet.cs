using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Views.Words;

namespace Trivet.Views.Frames;

/// <summary>One line of what is known of a frame.</summary>
/// <param name="Group">Id of the group: "modes", "standing", the id of a cycle, "braces".</param>
/// <param name="Id">Stable name for programs: <c>mode-1</c>.</param>
/// <param name="Low">Smaller end, SI; equal to the larger where there is one value.</param>
/// <param name="Shown">As people read it.</param>
/// <param name="Known">How it comes about.</param>
public sealed record FrameRow(string Group, string GroupName, string Id, string What, double Low, double High, string Unit, string Shown, string Known);

/// <summary>All that is known of a frame in finished texts.</summary>
public sealed record FrameSheet(string Title, ImmutableArray<FrameRow> Rows)
{
    private const double PullShown = 100;

    /// <summary>A mode with its band: "mode 1, 16 Hz to 21 Hz".</summary>
    public static string ModeWords(FrameReport report, int mode, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Frame;
        var (low, high) = report.Study!.Band(mode);
        string a = Numbers.Quantity(low, "Hz", locale), b = Numbers.Quantity(high, "Hz", locale);
        return Locale.Fill(
            words.ModeShown, ("number", (mode + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)),
            ("range", a == b ? a : Locale.Fill(words.Range, ("low", a), ("high", b))));
    }

    /// <summary>The report must have a study.</summary>
    public static FrameSheet Of(FrameReport report, ImmutableArray<Brace> braces, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Frame;
        var study = report.Study ?? throw new ArgumentException("There is no study: the frame is not described.", nameof(report));
        var rows = ImmutableArray.CreateBuilder<FrameRow>();
        for (int i = 0; i < study.Soft.Modes.Length; i++)
        {
            var (low, high) = study.Band(i);
            Add("modes", words.Modes, $"mode-{i + 1}", Locale.Fill(words.Mode, ("number", Whole(i + 1))), low, high, "Hz", words.BandKnown);
        }

        Standing();
        foreach (var under in report.Under) Under(under);
        foreach (var (brace, i) in braces.Take(8).Select((b, i) => (b, i)))
        {
            rows.Add(new(
                "braces", words.Braces, $"brace-{i + 1}", Locale.Fill(words.Brace, ("from", Place(brace.From)), ("to", Place(brace.To))), brace.GainedLow / brace.Mass,
                brace.GainedHigh / brace.Mass, "Hz/kg", Numbers.Plain(brace.PerKilogram, 2, locale) + " Hz/kg",
                Locale.Fill(words.BraceKnown, ("gain", "+" + Range(brace.GainedLow, brace.GainedHigh, "Hz")), ("mass", Kilograms(brace.Mass)), ("per", Range(brace.Low, brace.High, "Hz")))));
        }

        return new(report.Cell.Name ?? language.UnnamedCell, rows.ToImmutable());

        void Standing()
        {
            double mass = study.Soft.Mass;
            rows.Add(new("standing", words.Standing, "mass", words.Mass, mass, mass, "kg", Kilograms(mass), words.MassKnown));
            if (double.IsFinite(study.Joints.From))
                Add("joints", words.Joints, study.Joints.From, study.Joints.To, "N m/rad", study.Joints == study.Stated ? words.JointsStated : words.JointsNarrowed);
            Add("damping", words.Damping, study.DampingFrom, study.DampingTo, "1", "");
            MountMotion[] down = [.. study.SampledJoints.Select(k => study.At(k)).Select(s => s.MountOf(s.UnderWeight))];
            Add("sag", words.Sag, down.Min(m => -m.Moved.Z), down.Max(m => -m.Moved.Z), "m", words.SampledKnown);
            Add("tilt", words.Tilt, down.Min(FrameChecks.TiltOf), down.Max(FrameChecks.TiltOf), "m/m", words.SampledKnown);
            string[] axes = ["give-x", "give-y", "give-z"];
            for (int i = 0; i < 3; i++)
            {
                var direction = i == 0 ? Vec3.UnitX : i == 1 ? Vec3.UnitY : Vec3.UnitZ;
                Add(axes[i], words.Give[i], Give(study.Stiff, direction), Give(study.Soft, direction), "m", words.ExactKnown);
            }

            foreach (var one in study.Measurements)
            {
                string unit = one.Pointer.EndsWith("Frequency", StringComparison.Ordinal) ? "Hz" : "m";
                rows.Add(new(
                    "standing", words.Standing, one.Pointer[(one.Pointer.LastIndexOf('/') + 1)..],
                    Locale.Fill(words.Measured, ("field", Fields.Words(report.Cell, one.Pointer, locale))), one.Measured, one.Measured, unit, Quantity(one.Measured, unit),
                    one.Left is { } left
                        ? Locale.Fill(words.MeasuredAgrees, ("range", Range(left.From, left.To, "N m/rad")))
                        : Locale.Fill(words.MeasuredNot, ("range", Range(Math.Min(one.AtSoft, one.AtStiff), Math.Max(one.AtSoft, one.AtStiff), unit)))));
            }

            void Add(string id, string what, double low, double high, string unit, string known) =>
                rows.Add(new("standing", words.Standing, id, what, low, high, unit, Range(low, high, unit), known));
        }

        void Under(FrameUnder under)
        {
            string group = under.Load.Name, name = report.Cell.Motion.Cycles.GetValueOrDefault(group)?.Name ?? group;
            foreach (var s in under.Settling)
            {
                string wait = words.Waits.GetValueOrDefault(s.Wait, s.Wait);
                Add(group, name, $"settle-{s.Wait}", Locale.Fill(words.Wait, ("wait", wait)), s.Samples.Min(p => p.Wait), s.Worst.Wait, "s",
                    Locale.Fill(words.WaitKnown, ("tolerance", Quantity(s.Tolerance, "m")), ("damping", Numbers.Plain(s.Damping, 4, locale))));
                Add(group, name, $"residual-{s.Wait}", words.Residual, s.Samples.Min(p => p.Residual), s.Samples.Max(p => p.Residual), "m", words.ResidualKnown);
            }

            var most = under.Feet.Feet.MaxBy(f => f.Largest);
            var least = under.Feet.Feet.MinBy(f => f.Smallest);
            Add(group, name, "foot-largest", words.FootLargest, most.Largest, most.Largest, "N", most.Foot);
            Add(group, name, "foot-smallest", words.FootSmallest, least.Smallest, least.Smallest, "N", Locale.Fill(words.FootKnown, ("foot", least.Foot)));
            double moment = under.Feet.Feet.Max(f => f.Moment);
            Add(group, name, "foot-moment", words.FootMoment, moment, moment, "N m", words.FootMomentKnown);
            if (report.Cell.Frame.Feet.Anchored == true)
            {
                var pulled = under.Feet.Feet.MaxBy(f => f.Pull);
                var pushed = under.Feet.Feet.MaxBy(f => f.Level);
                Add(group, name, "anchor-pull", words.AnchorPull, pulled.Pull, pulled.Pull, "N", Locale.Fill(words.AnchorPullKnown, ("foot", pulled.Foot)));
                Add(group, name, "anchor-shear", words.AnchorShear, pushed.Level, pushed.Level, "N", Locale.Fill(words.AnchorShearKnown, ("foot", pushed.Foot)));
            }
            rows.Add(new(
                group, name, "overturning", words.Overturning, under.Feet.Safety, under.Feet.Safety, "1",
                double.IsInfinity(under.Feet.Safety) ? "∞" : Numbers.Plain(under.Feet.Safety, 1, locale), words.OverturningKnown));
        }

        void Add(string group, string groupName, string id, string what, double low, double high, string unit, string known) =>
            rows.Add(new(group, groupName, id, what, low, high, unit, Range(low, high, unit), known));

        string Range(double low, double high, string unit)
        {
            string a = Quantity(low, unit), b = Quantity(high, unit);
            return a == b ? a : Locale.Fill(words.Range, ("low", a), ("high", b));
        }

        string Quantity(double si, string unit) => !double.IsFinite(si) ? words.NoBand
            : unit == "N m/rad" ? Numbers.Plain(si / 1000, 1, locale) + " kN·m/rad" : unit == "s" ? Numbers.Plain(si, 3, locale) + " s" : Numbers.Quantity(si, unit, locale);

        string Kilograms(double kg) => Numbers.Plain(kg, kg < 10 ? 2 : 1, locale) + " kg";

        string Place(Vec3 p) => $"({Numbers.Plain(1000 * p.X, 0, locale)}, {Numbers.Plain(1000 * p.Y, 0, locale)}, {Numbers.Plain(1000 * p.Z, 0, locale)}) mm";

        static string Whole(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

        static double Give(FrameSolution solution, Vec3 direction) => direction.Dot(solution.Under(PullShown * direction, Vec3.Zero).Moved);
    }
}
