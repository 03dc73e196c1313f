using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Stopping;
using Trivet.Views.Cabinets;
using Trivet.Views.Cabling;
using Trivet.Views.Words;

namespace Trivet.Views.Stopping;

/// <summary>Safety functions, their channels, and what comes down at each, in finished texts.</summary>
public static class StopSections
{
    public const string Id = "safety-functions";

    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        if (cell.Stopping.Functions.IsEmpty) return [];
        var writer = new Writer(cell, locale);
        return [new(Id, writer.Words.Functions, writer.Words.FunctionCautions, [], [writer.Functions(), writer.Channels(), writer.WhatFalls()], [.. StopRules.Rules.Select(r => r.Id)])];
    }

    /// <summary>"S2 F1 P2", with a question mark for what is not estimated.</summary>
    internal static string Risk(RiskEstimate risk) => $"{risk.Severity?.ToString() ?? "S?"} {risk.Exposure?.ToString() ?? "F?"} {risk.Avoidance?.ToString() ?? "P?"}";

    internal static string Level(PerformanceLevel? level) => level is { } l ? l.ToString().ToLowerInvariant() : "–";

    private sealed class Writer(Cell cell, Locale? locale)
    {
        private static readonly string[] Categories = ["B", "1", "2", "3", "4"], StopCategories = ["0", "1", "2"];

        private readonly Language _language = (locale ?? Locale.English).Language;

        public StoppingWords Words { get; } = (locale ?? Locale.English).Language.Stopping;

        public SheetTable Functions()
        {
            var functions = cell.Stopping.Functions.InOrder().ToArray();
            return new(
                Id, Words.Functions,
                [
                    new("name", Words.HeadFunction), new("kind", Words.HeadKind), new("trigger", Words.HeadTrigger), new("watches", Words.HeadWatches), new("risk", Words.HeadRisk),
                    new("required", Words.HeadRequired), new("planned", Words.HeadPlanned), new("category", Words.HeadCategory), new("source", Words.HeadSource), new("stop", Words.HeadStop),
                    new("ramp", Words.HeadRamp, "s"), new("torque", Words.HeadTorque, "s"), new("isolates", Words.HeadIsolates), new("reset", Words.HeadReset),
                ],
                [
                    .. functions.Select(f => f.Value).Select((f, i) => ImmutableArray.Create<Entry>(
                        new(f.Name ?? functions[i].Key), new(f.Kind is { } kind ? Words.Kinds[(int)kind] : "–"), Text(f.Trigger), new(Watches(f)), new(Risk(f.Risk)),
                        new(Level(RiskGraph.Required(f.Risk))), new(Level(f.Level)), new(f.Category is { } c ? Categories[(int)c] : "–"), Text(f.LevelSource),
                        new(Stop(f.StopCategory)), Time(f.RampTime), Time(f.TorqueTime), Text(f.Isolates), Text(f.ResetBy))),
                ],
                [.. functions.Select(f => StopInputs.PointerOf(f.Key))]);
        }

        public SheetTable Channels()
        {
            var rows = ImmutableArray.CreateBuilder<ImmutableArray<Entry>>();
            var pointers = ImmutableArray.CreateBuilder<string>();
            foreach (var (id, function) in cell.Stopping.Functions.InOrder())
                foreach (var end in StopInputs.Ends(cell, id, new()))
                {
                    string key = end.At[(end.At.LastIndexOf('/') + 1)..];
                    var channel = function.Channels[key];
                    string signal = channel.Signal is { } s ? cell.Io.Signals.GetValueOrDefault(s)?.Name ?? s : "–";
                    string where = end.Bank is { } bank ? cell.Io.Banks[bank].Name ?? bank : end.Device is { } device ? CableSections.PlaceOf(cell, device) : "–";
                    rows.Add([new(function.Name ?? id), new(channel.Name ?? key), new(signal), new(where), new(end.Safety ? Words.Yes : Words.No), Text(channel.Source)]);
                    pointers.Add(end.At);
                }
            return new(
                "safety-channels", Words.Channels,
                [
                    new("function", Words.HeadFunction), new("channel", Words.HeadChannel), new("signal", Words.HeadSignal), new("ends", Words.HeadEnds), new("safety", Words.HeadSafety),
                    new("source", Words.HeadSource),
                ],
                rows.ToImmutable(), pointers.ToImmutable());
        }

        public SheetTable WhatFalls()
        {
            bool rail = cell.Robot.Family != RobotFamily.CrankDelta;
            string force = rail ? "N" : "N m", way = rail ? "m" : "rad";
            var rows = ImmutableArray.CreateBuilder<ImmutableArray<Entry>>();
            var pointers = ImmutableArray.CreateBuilder<string>();
            var places = StopStage.Places(cell);
            foreach (var (id, f) in cell.Stopping.Functions.InOrder())
                if (f.StopCategory is not null) Rest(StopInputs.PointerOf(id), f.Name ?? id, f, f.AirOff == true);
            Rest(StopInputs.At, Words.LossOfSupply, new() { StopCategory = StopCategory.Zero }, true);
            return new(
                "what-falls", Words.WhatFalls,
                [
                    new("function", Words.HeadFunction), new("stop", Words.HeadStop), new("what", Words.HeadWhat), new("held", Words.HeadHeldBy), new("load", Words.HeadLoad, force),
                    new("delay", Words.HeadDelay, "s"), new("becomes", Words.HeadBecomes), new("sink", Words.HeadSink, way), new("drop", Words.HeadDrop, "m"), new("energy", Words.HeadEnergy, "J"),
                ],
                rows.ToImmutable(), pointers.ToImmutable());

            void Rest(string at, string name, SafetyFunction function, bool airOff)
            {
                if (StopFall.Of(cell, function, places, new Reading()) is not { } fall) return;
                string stop = Stop(function.StopCategory);
                foreach (var chain in fall.Chains)
                    Add(at, name, stop, Fields.Axis(cell, chain.Chain, _language), _language.Falls.Holdings[(int)chain.Holding.Kind], Of(chain.Load, force), Of(chain.Delay, "s"),
                        Words.Becomes[(int)chain.Becomes], Of(chain.Sink, way), new("–"), new("–"));
                Add(at, name, stop, Words.Tool, "–", new("–"), new("–"), "–", new("–"), Of(Math.Max(0, fall.ToolDrop), "m"), new("–"));
                bool grips = cell.Tool.Vacuum.Cups is not null || cell.Tool.Fingers.Count is not null;
                if (!grips || places.MaxBy(p => p.Tool_C.Z) is not { Part: { } part } highest) return;
                bool kept = cell.Stopping.GripHolds == true, falls = airOff && !kept;
                var energy = falls && cell.Brief.Parts.GetValueOrDefault(part)?.Mass is { } mass ? Of(mass * Dynamics.RobotDynamics.StandardGravity * highest.Tool_C.Z, "J") : new("–");
                Add(at, name, stop, Locale.Fill(Words.PartOf, ("part", cell.Brief.Parts.GetValueOrDefault(part)?.Name ?? part)), "–", new("–"), new("–"),
                    falls ? Words.LetGo : kept ? Words.KeptByGrip : Words.KeptWhileSupplied, new("–"), falls ? Of(highest.Tool_C.Z, "m") : new("–"), energy);
            }

            void Add(string at, string name, string stop, string what, string held, Entry load, Entry delay, string becomes, Entry sink, Entry drop, Entry energy)
            {
                rows.Add([new(name), new(stop), new(what), new(held), load, delay, new(becomes), sink, drop, energy]);
                pointers.Add(at);
            }
        }

        private string Watches(SafetyFunction function)
        {
            string[] names = [.. StopInputs.Guards(function).Select(g => cell.Guarding.Fences.GetValueOrDefault(g)?.Name ?? cell.Guarding.Devices.GetValueOrDefault(g)?.Name ?? g)];
            return names.Length == 0 ? "–" : Fields.List(names, locale);
        }

        private static string Stop(StopCategory? category) => category is { } c ? StopCategories[(int)c] : "–";

        private static Entry Text(string? text) => new(text ?? "–");

        private Entry Time(double? seconds) => seconds is { } t ? Of(t, "s") : new("–");

        /// <summary>Times of stops are read in milliseconds' size, with three decimals of a second.</summary>
        private Entry Of(double value, string unit) =>
            double.IsFinite(value) ? new(unit == "s" ? Numbers.Plain(value, 3, locale) + " s" : Numbers.Quantity(value, unit, locale), value) : new("–");
    }
}
