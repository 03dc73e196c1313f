using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;

namespace Trivet.Drives;

/// <summary>All that the checks of one axis rest on; null where it is missing, impossible, or does not arise.</summary>
/// <param name="MotorAt">Pointer of the motor.</param>
/// <param name="OpenLoop">A stepper motor without feedback.</param>
internal sealed record AxisCase(string Axis, string MotorAt, bool OpenLoop, bool Belt, Part<Drive> Drive)
{
    public Part<ElectricSide>? Electric { get; init; }
    public Part<double>? Continuous { get; init; }
    public Part<MotorHeat>? Heat { get; init; }
    public Part<BeltPull>? Pull { get; init; }
    public Part<BeltTeeth>? Teeth { get; init; }
    /// <summary>Largest force of gear or screw, with the pointer that states it.</summary>
    public Part<(double Force, string Pointer)>? LargestForce { get; init; }
    public Part<Compliance>? Yield { get; init; }
    /// <summary>Metres of the joint by the drive coordinate: 1 for a carriage, the arm's length for a crank.</summary>
    public Part<double>? Arm { get; init; }
}

/// <summary>The supply as far as it is judged.</summary>
internal sealed record SupplyCase(Part<Supply> Supply)
{
    public Part<double>? Lowest { get; init; }
    public Part<double>? Highest { get; init; }
    public Part<double>? BrakingPower { get; init; }
}

/// <summary>
/// The drives of a cell, read once: what is known of them without a motion, and what is needed to judge one
/// (<see cref="DriveChecks.Judge"/>).
/// </summary>
/// <param name="Findings">What is missing or impossible, and what needs no motion.</param>
/// <param name="Coverage">What does not apply, and why.</param>
/// <param name="Used">Every field that was looked at, with its value.</param>
public sealed record DriveCase(
    ImmutableArray<Finding> Findings, ImmutableArray<NotApplicable> Coverage, ImmutableSortedDictionary<string, object?> Used)
{
    internal ImmutableArray<AxisCase> Axes { get; init; } = [];
    internal SupplyCase? Supply { get; init; }
    internal Part<(double Tolerance, string Pointer)>? Tolerance { get; init; }

    /// <summary>Every axis has its electric side, and the supply is whole: the voltage can be followed.</summary>
    internal bool VoltageKnown { get; init; }

    public static DriveCase Of(Cell cell)
    {
        var reader = new Reader(cell);
        return reader.Read();
    }

    /// <summary>Part of the description that an axis is: its chain, or the axis itself.</summary>
    internal static string SubjectOf(string axis) => axis switch
    {
        "rotary" => "/robot/rotary",
        "linear" => "/robot/linearAxis",
        _ => $"/robot/chains/{axis}",
    };

    private sealed class Reader(Cell cell)
    {
        private readonly List<Finding> _findings = [];
        private readonly List<NotApplicable> _coverage = [];
        private readonly Dictionary<Rule, Reading> _missing = [];
        private readonly SortedDictionary<string, object?> _used = new(StringComparer.Ordinal);
        private readonly HashSet<(string, string)> _told = [];
        private readonly Reading _depth = new(), _axes = new();
        private bool _asked;

        public DriveCase Read()
        {
            _asked = _depth.Or(cell.Depth, "/depth", Depth.Quote) >= Depth.Build;
            var ids = DriveInputs.Axes(cell.Robot, _axes);
            Remember(_depth);
            Remember(_axes);
            AxisCase[] axes = [.. ids.Select(Axis).OfType<AxisCase>()];
            var supply = Supply();
            var tolerance = Tolerance();
            Say(ids, axes);
            Ask();
            return new([.. _findings], [.. _coverage], _used.ToImmutableSortedDictionary(StringComparer.Ordinal))
            {
                Axes = [.. axes],
                Supply = supply,
                Tolerance = tolerance,
                VoltageKnown = supply is not null && axes.Length == ids.Length && axes.All(a => a.Electric is not null),
            };
        }

        private AxisCase? Axis(string axis)
        {
            var reading = new Reading();
            var read = DriveInputs.Read(cell, axis, reading);
            Remember(reading);
            foreach (var problem in read.Problems) Contradicted(problem, Pointers.Joined(_axes.Inputs, reading.Inputs));
            if (!reading.Complete) Lacks(DriveRules.Described, reading);
            if (cell.Brief.Shift <= 0) Contradicted(new("/brief/shift", DriveReasons.NotPositive), ["/brief/shift"]);
            if (read.Drive is not { } drive) return null;

            var fields = new AxisReading(cell, axis, new());
            string motorId = fields.Need("motor", d => d.Motor)!, at = DriveInputs.MotorPointer(motorId);
            var motor = cell.Drives.Motors[motorId];
            var kind = fields.Need("transmission", d => d.Transmission, TransmissionKind.Belt);
            bool belt = kind == TransmissionKind.Belt;

            var loop = new Reading();
            bool open = DriveParts.OpenLoop(cell, axis, drive.Kind, loop);
            Remember(loop);
            if (!loop.Complete) Lacks(DriveRules.Described, loop);
            var basis = new Part<Drive>(drive, Pointers.Joined(_axes.Inputs, reading.Inputs, loop.Inputs));
            var result = new AxisCase(axis, at, open, belt, basis)
            {
                Electric = Take(DriveRules.Torque, r => DriveParts.Electric(motor, at, open, r)),
                Continuous = open ? null : Take(DriveRules.Continuous, r => r.Need(motor.ContinuousTorque, $"{at}/continuousTorque")),
                Heat = Take(DriveRules.Temperature, r => DriveParts.Heat(cell, motor, at, r)),
                Pull = !belt ? null : Take(DriveRules.Strand, r => new BeltPull(
                    DriveParts.BeltForce(new(cell, axis, r), drive.Turns), In(r).Need("pretension", d => d.Pretension),
                    In(r).Need("largestStrandForce", d => d.LargestStrandForce))),
                Teeth = !belt ? null : Take(DriveRules.Tooth, r => new BeltTeeth(
                    DriveParts.BeltForce(new(cell, axis, r), drive.Turns), In(r).Need("teethInMesh", d => d.TeethInMesh, 1),
                    In(r).Need("largestToothForce", d => d.LargestToothForce))),
                LargestForce = belt ? null : Stated("largestForce", d => d.LargestForce, fields),
                Yield = Optional(r => DriveParts.Yield(drive, motor, at, open, In(r), kind, r)),
                Arm = !fields.IsChain ? null : !drive.Turns ? new(1, []) : Optional(r => Positive(
                    new ChainReading(cell.Robot, axis, cell.Robot.Chains[axis], r).Or("upperArm", c => c.UpperArm, double.NaN))),
            };
            Resolution(result, motor, at);
            return result;

            AxisReading In(Reading r) => new(cell, axis, r);

            Part<(double, string)>? Stated(string name, Func<AxisDrive, double?> field, AxisReading own) => Optional(r =>
                In(r).Stated(name, field) is { } v and > 0 ? (v, own.PointerOf(name, d => field(d) is not null)) : ((double, string)?)null);
        }

        private SupplyCase? Supply()
        {
            var problems = ImmutableArray.CreateBuilder<Contradiction>();
            var s = cell.Drives.Supply;
            var reading = new Reading();
            var supply = DriveParts.Supply(s, reading, problems);
            Remember(reading);
            foreach (var problem in problems) Contradicted(problem, reading.Inputs);
            if (!reading.Complete) Lacks(DriveRules.Torque, reading);
            if (!reading.Complete || problems.Count > 0) return null;
            return new(new(supply, reading.Inputs))
            {
                Lowest = Take(DriveRules.VoltageLow, r => r.Need(s.LowestVoltage, "/drives/supply/lowestVoltage")),
                Highest = Take(DriveRules.VoltageHigh, r => r.Need(s.HighestVoltage, "/drives/supply/highestVoltage")),
                BrakingPower = Optional(r =>
                {
                    r.Used("/drives/supply/brakingPower", s.BrakingPower);
                    return supply.HasChopper ? Positive(s.BrakingPower ?? double.NaN) : null;
                }),
            };
        }

        private Part<(double, string)>? Tolerance() => Optional(r => DriveParts.Tolerance(cell.Brief, r));

        /// <summary>The stated drive step against the one that counts and gearing give.</summary>
        private void Resolution(AxisCase axis, Motor motor, string at)
        {
            if (axis.Axis == "linear") return;
            string pointer = SubjectOf(axis.Axis) + "/driveStep";
            var part = Take(DriveRules.Resolution, r => (
                Counts: r.Need(motor.CountsPerTurn, $"{at}/countsPerTurn", 1),
                Step: axis.Axis == "rotary"
                    ? r.Need(cell.Robot.Rotary.DriveStep, pointer)
                    : new ChainReading(cell.Robot, axis.Axis, cell.Robot.Chains[axis.Axis], r).Need("driveStep", c => c.DriveStep)));
            if (part is not { Value: var (counts, stated) } || !(counts > 0 && stated > 0)) return;
            double step = Math.Tau / (counts * axis.Drive.Value.Gearing);
            var finding = new Judged(
                DriveRules.Resolution, new(SubjectOf(axis.Axis)), Pointers.Joined(axis.Drive.Inputs, part.Inputs), Math.Abs(step / stated - 1),
                Limit.AtMost(0.01, new(SourceKind.CommonPractice, "", "a stated step is rounded")), Assurance.Exact);
            if (axis.Axis != "rotary" && cell.Robot.Chains[axis.Axis].DriveStep is null) pointer = "/robot/common/driveStep";
            _findings.Add(finding.Verdict == Verdict.FallsShort ? finding with { Advice = [new(pointer, stated, step, 1)] } : finding);
        }

        /// <summary>What does not apply: said once for all axes where it is the same for all.</summary>
        private void Say(ImmutableArray<string> ids, AxisCase[] axes)
        {
            foreach (string id in ids.Except(axes.Select(a => a.Axis)))
                Not(DriveRules.Torque, SubjectOf(id), DriveReasons.WaitsFor.Naming($"/drives/axes/{id}"));
            if (axes.Length == 0) return;
            if (axes.All(a => a.Drive.Value.Kind != MotorKind.Stepper || !a.OpenLoop)) Not(DriveRules.LostStep, "/drives", DriveReasons.WithFeedback);
            foreach (var axis in axes)
            {
                string at = SubjectOf(axis.Axis);
                if (axis.OpenLoop) Not(DriveRules.Continuous, at, DriveReasons.HeldCurrent);
                if ((axis.Arm is null ? DriveReasons.NotOfPlace : axis.Yield is null ? DriveReasons.NoStiffness : null) is not { } reason) continue;
                Not(DriveRules.Following, at, reason);
                Not(DriveRules.Resonance, at, reason);
            }

            var without = axes.Where(a => !a.Belt).ToArray();
            foreach (string at in without.Length == axes.Length ? ["/drives"] : without.Select(a => SubjectOf(a.Axis)))
            {
                Not(DriveRules.Strand, at, DriveReasons.NoBelt);
                Not(DriveRules.Slack, at, DriveReasons.NoBelt);
                Not(DriveRules.Tooth, at, DriveReasons.NoBelt);
            }

            if (without.Length == 0) Not(DriveRules.Transmission, "/drives", DriveReasons.OnlyBelts);
            foreach (var axis in without.Where(a => a.LargestForce is null))
                Not(DriveRules.Transmission, SubjectOf(axis.Axis), DriveReasons.NoLimit.Naming($"/drives/axes/{axis.Axis}/largestForce"));
            if (DriveParts.Tolerance(cell.Brief, new()) is null)
            {
                Not(DriveRules.Following, "/drives", DriveReasons.NoTolerance);
                Not(DriveRules.Resonance, "/drives", DriveReasons.NoTolerance);
            }

            if (cell.Drives.Supply.BrakingVoltage is null) Not(DriveRules.Braking, "/drives/supply", DriveReasons.NoChopper);
            else if (!(cell.Drives.Supply.BrakingPower > 0)) Not(DriveRules.Braking, "/drives/supply", DriveReasons.NoLimit.Naming("/drives/supply/brakingPower"));
        }

        private void Not(Rule rule, string subject, Reason reason) => _coverage.Add(new(rule, new(subject), reason));

        /// <summary>Reads a concern; where it misses something, that is said once for all axes.</summary>
        private Part<T>? Take<T>(Rule rule, Func<Reading, T> read)
        {
            var reading = new Reading();
            var value = read(reading);
            Remember(reading);
            if (reading.Complete) return new(value, reading.Inputs);
            Lacks(rule, reading);
            return null;
        }

        /// <summary>Reads what need not be stated.</summary>
        private Part<T>? Optional<T>(Func<Reading, T?> read) where T : struct
        {
            var reading = new Reading();
            var value = read(reading);
            Remember(reading);
            return value is { } v ? new(v, reading.Inputs) : null;
        }

        private static double? Positive(double value) => value > 0 ? value : null;

        private void Lacks(Rule rule, Reading reading)
        {
            if (!_missing.TryGetValue(rule, out var all)) _missing[rule] = all = new();
            foreach (var (pointer, value) in reading.Key) all.Used(pointer, value);
            foreach (string pointer in reading.MissingFields) all.Missing(pointer);
        }

        /// <summary>What is missing is asked for at the depth of building; before that it waits.</summary>
        private void Ask()
        {
            foreach (var (rule, reading) in _missing)
            {
                if (_asked) _findings.Add(new Unjudged(rule, new("/drives"), Pointers.Joined(_depth.Inputs, _axes.Inputs, reading.Inputs), OpenReason.Missing, reading.MissingFields));
                else Not(rule, "/drives", CommonReasons.NotAskedYet);
            }
        }

        private void Contradicted(Contradiction wrong, ImmutableArray<string> inputs)
        {
            if (_told.Add((wrong.Pointer, wrong.Reason.Id)))
                _findings.Add(new Unjudged(DriveRules.Described, new(wrong.Pointer), inputs, OpenReason.Failed, [], wrong.Reason));
        }

        private void Remember(Reading reading)
        {
            foreach (var (pointer, value) in reading.Key) _used[pointer] = value;
        }
    }
}

/// <summary>Sorted lists of pointers.</summary>
internal static class Pointers
{
    /// <summary>All of several sorted lists, sorted, without repeats.</summary>
    public static ImmutableArray<string> Joined(params ReadOnlySpan<ImmutableArray<string>> lists)
    {
        ImmutableArray<string> all = [];
        foreach (var list in lists) all = list.IsEmpty ? all : all.IsEmpty ? list : Joined(all, list);
        return all;
    }

    private static ImmutableArray<string> Joined(ImmutableArray<string> a, ImmutableArray<string> b)
    {
        var all = ImmutableArray.CreateBuilder<string>(a.Length + b.Length);
        for (int i = 0, j = 0; i < a.Length || j < b.Length;)
        {
            int order = i == a.Length ? 1 : j == b.Length ? -1 : string.CompareOrdinal(a[i], b[j]);
            all.Add(order <= 0 ? a[i] : b[j]);
            if (order <= 0) i++;
            if (order >= 0) j++;
        }

        return all.ToImmutable();
    }
}
