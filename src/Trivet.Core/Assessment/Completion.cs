using System.Collections.Concurrent;
using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Motion;
using Trivet.Tooling;

namespace Trivet.Assessment;

/// <summary>
/// Computes what a description leaves to computation, in one direction: plates first, since they are part of what moves; then the frame, which answers the motion; then
/// the settling time of each cycle that states none. A reaction depends on the motion and only by the length of the cycle on the wait, so the wait is the
/// smallest with which it is itself enough. What was computed is remembered.
/// </summary>
internal sealed class Completion(FoundPlates plates, FoundFrames frames)
{
    /// <summary>Part of mass and of height that sheet tolerance and screws explain. Common practice, no source.</summary>
    private const double Difference = 0.05;

    // A wait costs some bytes; after this many the memory starts afresh.
    private const int MostRemembered = 1024;

    private readonly ConcurrentDictionary<ReadKey, double> _waits = new();
    private readonly ConcurrentDictionary<string, double> _last = new(StringComparer.Ordinal);
    private CompletedCell? _latest;

    /// <param name="compute">False while a person edits: a wait not computed yet is the last there was.</param>
    public CompletedCell Of(Cell cell, bool compute, CancellationToken stop)
    {
        var latest = _latest;
        if (latest is not null && ReferenceEquals(latest.Stated, cell) && latest.Waits.All(w => w.Known is not (WaitKnown.LastComputed or WaitKnown.NotComputed))) return latest;
        var standIns = ImmutableArray.CreateBuilder<StandIn>();
        var differs = ImmutableArray.CreateBuilder<Finding>();
        var whole = WithPlates(cell, standIns, differs);
        var waits = ImmutableArray.CreateBuilder<CycleWait>();
        whole = WithWaits(whole, compute, waits, standIns, stop);
        // Pages tell by the object whether anything is new.
        if (latest is not null && ReferenceEquals(latest.Stated, cell) && latest.Waits.SequenceEqual(waits)) return latest;
        return _latest = new(cell, whole, waits.ToImmutable(), differs.ToImmutable()) { StandIns = standIns.ToImmutable() };
    }

    private Cell WithPlates(Cell cell, ImmutableArray<StandIn>.Builder standIns, ImmutableArray<Finding>.Builder differs)
    {
        foreach (var (id, part) in cell.Tool.Parts.InOrder())
        {
            if (part.Plate is not { } plate || !cell.Plates.ContainsKey(plate)) continue;
            var reading = new Reading();
            string at = ToolInputs.Pointer(id);
            reading.Used(at + "/plate", plate);
            reading.Used("/plates", string.Join('\n', cell.Plates.Keys));
            if (AdapterInput.Read(cell, plate, reading, []) is not { } input || plates.Chosen(input) is not { IsEmpty: false } chosen) continue;
            var body = PlateBody.Of(chosen);
            double height = chosen.Sum(p => p.Thickness);
            Differ("mass", part.Mass, body.Mass);
            Differ("height", part.Height, height);
            var r = body.Inertia;
            cell = cell with
            {
                Tool = cell.Tool with
                {
                    Parts = cell.Tool.Parts.SetItem(id, part with
                    {
                        Mass = body.Mass,
                        Height = height,
                        Shape = SolidKind.Given,
                        CentreX = body.Centre.X,
                        CentreY = body.Centre.Y,
                        CentreZ = body.Centre.Z,
                        InertiaX = r.Row0.X,
                        InertiaY = r.Row1.Y,
                        InertiaZ = r.Row2.Z,
                        ProductXY = -r.Row0.Y,
                        ProductYZ = -r.Row1.Z,
                        ProductZX = -r.Row2.X,
                    }),
                },
            };
            standIns.Add(new(at, reading.Inputs));

            void Differ(string field, double? typed, double designed)
            {
                if (typed is not { } value) return;
                string pointer = $"{at}/{field}";
                differs.Add(new Judged(
                    ToolRules.Plate, new(pointer), [.. reading.Inputs.Append(pointer).Order(StringComparer.Ordinal)], Math.Abs(value / designed - 1),
                    Limit.AtMost(Difference, new(SourceKind.CommonPractice, "")), Assurance.Exact)
                {
                    Advice = Math.Abs(value / designed - 1) > Difference ? [new(pointer, value, designed, 1)] : [],
                });
            }
        }

        return cell;
    }

    private Cell WithWaits(Cell cell, bool compute, ImmutableArray<CycleWait>.Builder waits, ImmutableArray<StandIn>.Builder standIns, CancellationToken stop)
    {
        if (_waits.Count > MostRemembered) _waits.Clear();
        var stated = cell.Motion.Cycles;
        Lazy<FrameStudy>? study = null;
        Reading? read = null;
        (double Value, string Pointer)? tolerance = null;
        if (stated.Values.Any(c => c.Settle is null) && FrameMembers.Any(cell.Frame) && (tolerance = FrameRun.Tolerance(cell, new())) is not null)
        {
            read = new Reading();
            var frame = FrameRun.Read(cell, TimedCycle.Of(cell), read);
            FrameRun.UseMeasured(cell.Frame.Measured, read);
            if (frame.Input is { } input) study = frames.Of(input, cell.Frame.Measured, read);
        }

        foreach (var (id, cycle) in stated.InOrder())
        {
            stop.ThrowIfCancellationRequested();
            if (cycle.Settle is { } typed)
            {
                waits.Add(new(id, WaitKnown.Typed, typed));
                continue;
            }
            if (read is null || tolerance is not var (allowed, _))
            {
                waits.Add(new(id, WaitKnown.NotPlanned, 0));
                continue;
            }

            var timed = TimedCycle.Of(cell, id);
            var own = new Reading(read);
            own.Used(timed.Reading());
            FrameRun.Tolerance(cell, own);
            var key = new ReadKey(id, own.Key);
            bool known = _waits.TryGetValue(key, out double wait);
            if (!known && compute && study is not null)
            {
                wait = _waits[key] = FrameRun.Wait(cell, timed, study.Value, allowed);
                known = true;
            }

            var how = known || study is null ? WaitKnown.Computed : _last.TryGetValue(id, out wait) ? WaitKnown.LastComputed : WaitKnown.NotComputed;
            if (study is null || double.IsNaN(wait)) how = WaitKnown.NotFound;
            if (how is WaitKnown.NotComputed or WaitKnown.NotFound)
            {
                waits.Add(new(id, how, 0));
                continue;
            }
            if (known) _last[id] = wait;
            waits.Add(new(id, how, wait));
            cell = cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, cycle with { Settle = wait }) } };
            standIns.Add(new(CyclePlan.Pointer(id) + "/settle", own.Inputs));
        }

        return cell;
    }
}
