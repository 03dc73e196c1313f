using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>
/// The tool while it picks or places: still over a nest or a tray, or moving with the belt from one point to another.
/// </summary>
/// <param name="Station">Id of the station.</param>
/// <param name="Begin_C">Tool centre point when the wait begins, cell frame, metres.</param>
/// <param name="End_C">And when it ends.</param>
/// <param name="Velocity_C">Velocity throughout, m/s; zero but on a belt.</param>
/// <param name="Duration">Settling and dwell together, seconds.</param>
/// <param name="Angle">Rotary angle throughout, radians.</param>
/// <param name="WindowUsed">Belt: length of the tracking window that approach and wait take, metres; not a number elsewhere.</param>
/// <param name="Window">Belt: length of the window, metres.</param>
public sealed record Contact(
    string Station, Vec3 Begin_C, Vec3 End_C, Vec3 Velocity_C, double Duration, double Angle, double WindowUsed = double.NaN, double Window = double.NaN)
{
    public bool Moves => Velocity_C != Vec3.Zero;
}

/// <summary>One cycle as geometry: where it waits, and both ways between.</summary>
public sealed record CyclePlan(string Id, Contact Pick, Contact Place, PlatformPath Loaded, PlatformPath Empty, CellGeometry Geometry)
{
    public static string Pointer(string id) => $"/motion/cycles/{id}";
}

/// <summary>What became of reading a cycle. The plan is null while a field is missing (the reading lists it), contradicts itself, or the cycle is of a
/// kind that is not judged.</summary>
public sealed record CycleRead(CyclePlan? Plan, ImmutableArray<Contradiction> Contradictions, Reason? NotJudged = null);

/// <summary>
/// Reads a cycle into its geometry. Places in a station's zone are at its working height.
/// <para>
/// Gate: up to the rise above the higher of both places, straight across, down. Other shapes: straight, an arc, or from waypoint to waypoint; the
/// empty move goes the same way back. The rotary axis turns between the first corner and the last (over the whole way where there are not two), so
/// never while the tool goes straight up from a place or down to one.
/// </para>
/// <para>
/// Belt: during the wait the tool moves with it. It leaves along the belt for a run of 4v²/g₀, at the belt's speed to begin with, turns upward there,
/// and rises leaning along the belt by v·√(2h/g₀), as far as the part would have come while the tool rises by h at g₀ = 10 m/s² (common practice,
/// no source); it arrives likewise. First and last in the window: the approach begins as the part enters, the wait ends as it leaves.
/// </para>
/// </summary>
public static class CycleInputs
{
    /// <summary>Acceleration at which lean and run beside a belt are laid out, m/s².</summary>
    private const double Nominal = 10;

    public static CycleRead Read(Cell cell, string id, Reading reading, double? blend = null)
    {
        var cycle = cell.Motion.Cycles[id];
        string at = CyclePlan.Pointer(id);
        var wrong = ImmutableArray.CreateBuilder<Contradiction>();
        var geometry = ReachCase.Shared(cell, reading);

        var pickBox = Station(cycle.Pick, "pick");
        var placeBox = Station(cycle.Place, "place");
        var pickAt = reading.Or(cycle.PickAt, at + "/pickAt", PlaceWithin.Farthest);
        var placeAt = reading.Or(cycle.PlaceAt, at + "/placeAt", PlaceWithin.Farthest);
        var shape = reading.Or(cycle.Shape, at + "/shape", PathShape.Gate);
        double settle = NotNegative(reading.Or(cycle.Settle, at + "/settle", 0), "/settle");
        double pickDwell = NotNegative(reading.Need(cycle.PickDwell, at + "/pickDwell"), "/pickDwell");
        double placeDwell = NotNegative(reading.Need(cycle.PlaceDwell, at + "/placeDwell"), "/placeDwell");
        double rise = NotNegative(reading.Or(cycle.Rise, at + "/rise", Math.Max(pickBox?.High.Z ?? 0, placeBox?.High.Z ?? 0)), "/rise");
        reading.Used(at + "/blend", cycle.Blend);
        double half = blend ?? cycle.Blend ?? reading.Need(cell.Motion.Settings.Blend, "/motion/settings/blend");
        if (half < 0) wrong.Add(new(cycle.Blend is null ? "/motion/settings/blend" : at + "/blend", MotionReasons.Negative));
        double pickSpeed = BeltSpeed(cycle.Pick, pickBox), placeSpeed = BeltSpeed(cycle.Place, placeBox);
        var way = Waypoints();
        bool turns = cell.Robot.Rotary.Fitted == true;
        double turnFrom = turns ? reading.Need(cell.Robot.Rotary.TravelFrom, "/robot/rotary/travelFrom") : 0;
        double turnTo = turns ? reading.Need(cell.Robot.Rotary.TravelTo, "/robot/rotary/travelTo") : 0;

        if (!reading.Complete || wrong.Count > 0 || geometry.Robot is not { } robot || pickBox is null || placeBox is null) return new(null, wrong.ToImmutable());
        if (Math.Abs(pickBox.LinearAxisAt - placeBox.LinearAxisAt) > 1e-9) return new(null, [], MotionReasons.LinearAxisMoves);

        double pickTop = Top(pickBox), placeTop = Top(placeBox), top = Math.Max(pickTop, placeTop) + rise;
        // A move that does not lift leaves along the belt only.
        var pick = WaitIn(pickBox, pickAt, placeBox, settle + pickDwell, pickSpeed, shape == PathShape.Gate ? top - pickTop : 0, cycle.Pick!, IsTray(cycle.Pick!));
        var place = WaitIn(placeBox, placeAt, pickBox, settle + placeDwell, placeSpeed, shape == PathShape.Gate ? top - placeTop : 0, cycle.Place!, IsTray(cycle.Place!));
        pick = pick with { Angle = AngleIn(pickBox, pickAt, (placeBox.RotaryFrom + placeBox.RotaryTo) / 2) };
        place = place with { Angle = TurnLaw.Nearest(pick.Angle, AngleIn(placeBox, placeAt, pick.Angle), turnFrom, turnTo) };

        PlatformPath? loaded = Way(pick, place, way), empty = Way(place, pick, way.Reverse());
        if (loaded is null || empty is null || !(loaded.Length > 0) || !(empty.Length > 0))
        {
            if (wrong.Count == 0) wrong.Add(new(at + "/place", MotionReasons.NoWay));
            return new(null, wrong.ToImmutable());
        }
        return new(new(id, pick, place, loaded, empty, geometry), []);

        bool IsTray(string name) => cell.Stations[name].Kind == StationKind.Tray;

        StationBox? Station(string? name, string field)
        {
            reading.Used($"{at}/{field}", name);
            if (name is null)
            {
                reading.Missing($"{at}/{field}");
                return null;
            }
            reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
            if (cell.Stations.ContainsKey(name))
            {
                var read = StationInputs.Read(cell, name, reading);
                wrong.AddRange(read.Contradictions);
                return read.Box;
            }
            wrong.Add(new($"{at}/{field}", MotionReasons.NoSuchStation.Naming([.. cell.Stations.Keys.Select(StationInputs.Pointer)])));
            return null;
        }

        double BeltSpeed(string? name, StationBox? box)
        {
            if (box is null || cell.Stations[name!] is not { Kind: StationKind.Belt } belt) return 0;
            double speed = reading.Need(belt.Speed, StationInputs.Pointer(name!) + "/speed");
            if (speed < 0) wrong.Add(new(StationInputs.Pointer(name!) + "/speed", MotionReasons.Negative));
            return speed;
        }

        ImmutableArray<Vec3> Waypoints()
        {
            reading.Used(at + "/waypoints", string.Join('\n', cycle.Waypoints.Keys));
            if (shape is PathShape.Gate or PathShape.Straight) return [];
            if (shape == PathShape.Arc && cycle.Waypoints.Count != 1) wrong.Add(new(at + "/waypoints", MotionReasons.ArcNeedsOneWaypoint));
            return [.. cycle.Waypoints.InOrder().Select(w =>
            {
                string own = $"{at}/waypoints/{w.Key}";
                reading.Used(own + "/order", w.Value.Order);
                return new Vec3(reading.Need(w.Value.X, own + "/x"), reading.Need(w.Value.Y, own + "/y"), reading.Need(w.Value.Z, own + "/z"));
            })];
        }

        double NotNegative(double value, string field)
        {
            if (value < 0) wrong.Add(new(at + field, MotionReasons.Negative));
            return value;
        }

        PlatformPath? Way(Contact from, Contact to, IEnumerable<Vec3> between)
        {
            var path = shape == PathShape.Arc ? Arc(from, to, between.Single()) : ToolPath.Through(Points(from, to, between));
            if (path is null) return null;
            var corners = path.Corners.AsSpan()[(from.Moves ? 1 : 0)..^(to.Moves ? 1 : 0)];
            var turn = corners.Length >= 2
                ? new TurnLaw(from.Angle, to.Angle, corners[0].S - corners[0].Half, corners[^1].S + corners[^1].Half)
                : new TurnLaw(from.Angle, to.Angle, 0, path.Length);
            return new(geometry, robot, path, turn, turns, pickBox.LinearAxisAt);
        }

        ToolPath? Arc(Contact from, Contact to, Vec3 over)
        {
            if (from.Moves || to.Moves) wrong.Add(new(at + "/shape", MotionReasons.ArcOnBelt));
            else if (ToolPath.Arc(from.End_C, over, to.Begin_C) is { } arc) return arc;
            else wrong.Add(new(at + "/waypoints", MotionReasons.ArcIsStraight));
            return null;
        }

        IEnumerable<(Vec3, double)> Points(Contact from, Contact to, IEnumerable<Vec3> between)
        {
            double run = Run(from), arrive = Run(to);
            Vec3 left = from.End_C + run * Along(from), reached = to.Begin_C - arrive * Along(to);
            yield return (from.End_C, 0);
            if (run > 0) yield return (left, run);
            if (shape == PathShape.Gate)
            {
                yield return (left + Lean(from, top - left.Z) * Along(from) + (top - left.Z) * Vec3.UnitZ, half);
                yield return (reached - Lean(to, top - reached.Z) * Along(to) + (top - reached.Z) * Vec3.UnitZ, half);
            }
            foreach (var point in between) yield return (point, half);
            if (arrive > 0) yield return (reached, arrive);
            yield return (to.Begin_C, 0);
        }
    }

    private static double Top(StationBox box) => box.X_CS.P.Z;

    private static Vec3 Along(Contact contact) => contact.Moves ? contact.Velocity_C.Unit() : Vec3.Zero;

    private static double Run(Contact contact) => 4 * contact.Velocity_C.NormSquared / Nominal;

    private static double Lean(Contact contact, double rise) => contact.Velocity_C.Norm * Math.Sqrt(2 * Math.Max(0, rise) / Nominal);

    /// <summary>Where in a station's zone the tool waits.</summary>
    private static Contact WaitIn(StationBox box, PlaceWithin where, StationBox other, double duration, double speed, double rise, string id, bool tray)
    {
        double carried = speed * duration;
        double lead = 4 * speed * speed / Nominal + speed * Math.Sqrt(2 * Math.Max(0, rise) / Nominal);
        // On a belt the wait begins after the approach has matched its speed, and ends within the window.
        double lowX = box.Low.X + lead, highX = Math.Max(lowX, box.High.X - carried);
        Vec3 low = new(lowX, box.Low.Y, 0), high = new(highX, box.High.Y, 0), middle = 0.5 * (low + high);
        bool belt = speed > 0;
        // A tray's first pocket is its origin, whichever way its pitches run.
        Vec3 first = tray ? Vec3.Zero : low, last = new(low.X + high.X - first.X, low.Y + high.Y - first.Y, 0);
        var otherMiddle = other.X_CS * (0.5 * (other.Low + other.High));
        Vec3 at = where switch
        {
            PlaceWithin.Middle => middle,
            PlaceWithin.First => belt ? low with { Y = middle.Y } : first,
            PlaceWithin.Last => belt ? high with { Y = middle.Y } : last,
            _ => new[] { low, high, new(low.X, high.Y, 0), new(high.X, low.Y, 0) }.MaxBy(p => (box.X_CS * p - otherMiddle).Norm),
        };
        var velocity = speed * box.X_CS.R.Column(0);
        var begin = box.X_CS * at;
        return new(id, begin, begin + duration * velocity, velocity, duration, 0, belt ? lead + carried : double.NaN, belt ? box.High.X - box.Low.X : double.NaN);
    }

    private static double AngleIn(StationBox box, PlaceWithin where, double other) => where switch
    {
        PlaceWithin.Middle => (box.RotaryFrom + box.RotaryTo) / 2,
        PlaceWithin.First => box.RotaryFrom,
        PlaceWithin.Last => box.RotaryTo,
        _ => Math.Abs(box.RotaryFrom - other) > Math.Abs(box.RotaryTo - other) ? box.RotaryFrom : box.RotaryTo,
    };
}
