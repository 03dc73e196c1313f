using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;

namespace Trivet.Adapters;

/// <summary>All that the design of a plate rests on, SI.</summary>
/// <param name="Clockings">Angles of the lower pattern against the upper one to be tried, radians.</param>
/// <param name="Orders">The part the plate is screwed to first, to be tried in this order.</param>
/// <param name="Thicknesses">To be tried, rising.</param>
/// <param name="KeyRoom">Free radius round a screw's axis that key or driver needs; zero for that of the screw's own key.</param>
public sealed record AdapterInput(
    string Id, BoltPattern Above, BoltPattern Below, ImmutableArray<double> Clockings, Stuff Stuff, ImmutableArray<PlateFace> Orders,
    ImmutableArray<double> Thicknesses, bool Round, double Wall, double Edge, double Floor, double Bore, double KeyRoom, bool Lighten, int Pieces, MetricThread Joining)
{
    // What a small shop can do, and the sheets it keeps: common practice, no source.
    private const double UsualWall = 1.5e-3, UsualEdge = 3e-3, UsualFloor = 2e-3, UsualStep = 5 * Math.PI / 180;
    private static readonly ImmutableArray<double> UsualStock = [0.005, 0.006, 0.008, 0.010, 0.012, 0.015, 0.020, 0.025, 0.030];
    private const int MostClockings = 720;

    public static string Pointer(string id) => $"/plates/{id}";

    /// <summary>What it was read from.</summary>
    public ReadKey From { get; private init; }

    /// <summary>Null where something is missing (the reading lists it) or can not be as stated.</summary>
    public static AdapterInput? Read(Cell cell, string id, Reading reading, ICollection<Contradiction> wrong)
    {
        var own = new Reading();
        var input = ReadOwn(cell, id, own, wrong);
        reading.Include(own);
        return input is null ? null : input with { From = new(id, own.Key) };
    }

    private static AdapterInput? ReadOwn(Cell cell, string id, Reading reading, ICollection<Contradiction> wrong)
    {
        string at = Pointer(id);
        var plan = cell.Plates[id];
        int before = wrong.Count;
        var above = BoltPattern.Read(cell, plan.Above, $"{at}/above", reading, wrong);
        var below = BoltPattern.Read(cell, plan.Below, $"{at}/below", reading, wrong);
        reading.Used($"{at}/material", plan.Material);
        Stuff? stuff = null;
        if (string.IsNullOrWhiteSpace(plan.Material)) reading.Missing($"{at}/material");
        else stuff = Stuff.Read(cell, plan.Material, $"{at}/material", reading);

        double step = reading.Or(plan.ClockingStep, $"{at}/clockingStep", UsualStep);
        reading.Used($"{at}/clocking", plan.Clocking);
        reading.Used($"{at}/firstFitted", plan.FirstFitted);
        ImmutableArray<PlateFace> orders = plan.FirstFitted is { } first ? [first] : [PlateFace.Above, PlateFace.Below];
        double wall = reading.Or(plan.Wall, $"{at}/wall", UsualWall), edge = reading.Or(plan.Edge, $"{at}/edge", UsualEdge), floor = reading.Or(plan.Floor, $"{at}/floor", UsualFloor);
        double bore = reading.Or(plan.Bore, $"{at}/bore", 0), room = reading.Or(plan.KeyRoom, $"{at}/keyRoom", 0);
        bool round = reading.Or(plan.Outline, $"{at}/outline", PlateOutline.Fitted) == PlateOutline.Round, lighten = reading.Or(plan.Lighten, $"{at}/lighten", false);
        int pieces = reading.Or(plan.Pieces, $"{at}/pieces", 1);
        reading.Used($"{at}/joiningThread", plan.JoiningThread);
        var joining = MetricThread.Find(plan.JoiningThread ?? "M5");
        var stock = Stock(plan, at, reading);

        foreach (var (field, value) in new[] { ("wall", wall), ("edge", edge), ("floor", floor) })
            if (!(value > 0)) wrong.Add(new($"{at}/{field}", AdapterReasons.NotPositive));
        if (!(step >= Math.PI / MostClockings)) wrong.Add(new($"{at}/clockingStep", AdapterReasons.NotPositive));
        if (stock.Any(t => !(t > 0) && !double.IsNaN(t))) wrong.Add(new($"{at}/stock", AdapterReasons.NotPositive));
        if (pieces is not (1 or 2)) wrong.Add(new($"{at}/pieces", AdapterReasons.OneOrTwoPieces));
        if (joining is null) wrong.Add(new($"{at}/joiningThread", AdapterReasons.NoSuchThread));
        if (above is null || below is null || stuff is null || joining is null || !reading.Complete || wrong.Count > before) return null;
        ImmutableArray<double> clockings = plan.Clocking is { } fixedAt ? [fixedAt] : ClockingsOf(above, below, step);
        return new(id, above, below, clockings, stuff, orders, stock, round, wall, edge, floor, bore, room, lighten, pieces, joining);
    }

    /// <summary>All clockings that differ: a turn by a symmetry of either pattern gives the same plate again.</summary>
    public static ImmutableArray<double> ClockingsOf(BoltPattern above, BoltPattern below, double step)
    {
        int a = above.Symmetry(), b = below.Symmetry(), common = a * b / (int)System.Numerics.BigInteger.GreatestCommonDivisor(a, b);
        double range = 2 * Math.PI / common;
        int count = Math.Max(1, (int)Math.Ceiling(range / step - 1e-9));
        return [.. Enumerable.Range(0, count).Select(i => i * step)];
    }

    private static ImmutableArray<double> Stock(PlatePlan plan, string at, Reading reading)
    {
        reading.Used($"{at}/thickness", plan.Thickness);
        reading.Used($"{at}/stock", string.Join('\n', plan.Stock.Keys));
        var listed = plan.Stock.Select(s => reading.Need(s.Value.Thickness, $"{at}/stock/{s.Key}/thickness")).Order().ToImmutableArray();
        return plan.Thickness is { } one ? [one] : listed.IsEmpty ? UsualStock : listed;
    }
}
