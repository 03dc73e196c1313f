using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Files.Floor;
using Trivet.Stopping;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>Words how a cell is made safe: by what it describes, and by the general rule, said to be one, where it does not.</summary>
public static class SafeTexts
{
    public static SafeText Of(MakingSafe safe, ProcedureWords words)
    {
        var own = words.Safe;
        var locale = StepTexts.LocaleOf(words);
        return new(
            safe.Stops.IsEmpty ? [own.NoStop] : [.. safe.Stops.Select(s => $"{Press(s)} {Stops(s)} {Takes(s)}")],
            safe.Isolators.IsEmpty ? [own.NoIsolator] : [.. safe.Isolators.Select(s => $"{Press(s)} {Takes(s)}")],
            Wait(), [safe.Sources.IsEmpty ? own.NoSupplies : Locale.Fill(own.StayLive, ("names", string.Join(", ", safe.Sources)))], [Air()], [.. Falls()]);

        string Press(SafeDevice s) => s.Where.Length == 0 ? Locale.Fill(own.PressNowhere, ("name", s.Name)) : Locale.Fill(own.Press, ("name", s.Name), ("where", s.Where.TrimEnd('.')));

        string Stops(SafeDevice s) => s.Category is not { } category ? own.NoCategory
            : Locale.Fill(own.Categories[(int)category], ("time", double.IsNaN(s.Ramp) ? own.NoTime : Time(s.Ramp)), ("torque", Time(s.Torque)));

        string Takes(SafeDevice s) => s.Isolates.Length == 0 ? own.TakesUnknown : Locale.Fill(own.TakesAway, ("what", s.Isolates.TrimEnd('.')));

        ImmutableArray<string> Wait()
        {
            if (safe.Charges.IsEmpty) return [own.NoCharges];
            var lines = ImmutableArray.CreateBuilder<string>();
            var stated = safe.Charges.Where(c => !double.IsNaN(c.Seconds)).ToArray();
            if (stated.Length > 0)
                lines.Add(Locale.Fill(
                    own.Wait, ("time", Time(stated.Max(c => c.Seconds))),
                    ("each", string.Join("; ", stated.GroupBy(c => c.Seconds).OrderByDescending(g => g.Key).Select(g => $"{Time(g.Key)} {string.Join(", ", g.Select(c => c.Name))}")))));
            if (stated.Length < safe.Charges.Length) lines.Add(Locale.Fill(own.WaitUnknown, ("names", string.Join(", ", safe.Charges.Where(c => double.IsNaN(c.Seconds)).Select(c => c.Name)))));
            return lines.ToImmutable();
        }

        string Air()
        {
            var off = safe.Stops.Where(s => s.AirOff == true).Select(s => s.Name).ToArray();
            return off.Length > 0 && off.Length == safe.Stops.Length ? Locale.Fill(own.AirGoes, ("names", string.Join(", ", off))) : safe.Stops.Any(s => s.AirOff == false) ? own.AirStays : own.AirUnknown;
        }

        IEnumerable<string> Falls()
        {
            string[] stop = [.. Chains(safe.AtStop)], without = [.. Chains(safe.WithoutSupply)];
            if (without.Length == 0) yield return own.FallUnknown;
            else if (stop.SequenceEqual(without)) foreach (string chain in stop) yield return Locale.Fill(own.Both, ("what", chain));
            else
            {
                // A stop that does not say how it stops is no better than none.
                foreach (string chain in stop) yield return Locale.Fill(own.AtStop, ("what", chain));
                foreach (string chain in without) yield return Locale.Fill(stop.Length == 0 ? own.Both : own.WithoutSupply, ("what", chain));
            }
            if (without.Length > 0) yield return own.Estimate;
            if (safe.Grips) yield return safe.GripHolds switch { true => own.GripHolds, false => own.GripLetsGo, null => own.GripUnknown };
        }

        IEnumerable<string> Chains(StopFall? fall) => fall is null ? [] : fall.Chains.GroupBy(c => (c.Becomes, c.Holding.Kind)).OrderByDescending(g => g.Key.Becomes).Select(g => Locale.Fill(
            own.Becomes[(int)g.Key.Becomes], ("chains", Locale.Fill(words.Chain, ("id", string.Join(", ", g.Select(c => c.Chain))))), ("by", own.Holdings[(int)g.Key.Kind]),
            ("sink", g.Any(c => double.IsNaN(c.Sink)) ? "" : Numbers.Quantity(g.Max(c => c.Sink), safe.Turns ? "rad" : "m", locale))));

        string Time(double seconds) => Numbers.Quantity(seconds, "s", locale);
    }
}
