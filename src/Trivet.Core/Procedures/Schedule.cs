using System.Collections.Immutable;

namespace Trivet.Procedures;

/// <summary>When a step is done, minutes from the start, and by whom.</summary>
/// <param name="People">Numbers of the people who do it, from 0.</param>
public sealed record Planned(Step Step, double Begin, double End, ImmutableArray<int> People);

/// <summary>Somebody stands still because of somebody else.</summary>
/// <param name="Person">Number of who waits, from 0.</param>
/// <param name="From">Minutes from the start.</param>
/// <param name="Before">Id of the step that the person then does.</param>
/// <param name="For">Id of the step that ends then, done by others: one that is needed before, else one that has the machine or those who are needed.</param>
public sealed record Idle(int Person, double From, double Until, string Before, string For);

/// <summary>
/// Who does what when: of the steps that may begin, the one on which most minutes still hang goes first. Work at the machine shares it only while all is
/// isolated; a step that is powered has the machine for itself.
/// </summary>
/// <param name="Minutes">From the first step to the end of the last.</param>
/// <param name="Critical">Minutes of the longest way through the graph: no number of people is quicker.</param>
public sealed record Schedule(ImmutableArray<Planned> Steps, double Minutes, double Critical)
{
    /// <summary>Ids of the steps on a longest way through the graph: a minute lost in one of them is lost at the end.</summary>
    public ImmutableHashSet<string> OnCriticalWay { get; private init; } = [];

    /// <summary>Who waits for whom, in order; nobody waits alone.</summary>
    public ImmutableArray<Idle> Waits { get; private init; } = [];

    /// <param name="steps">Each behind those it needs, as <see cref="Procedure.Steps"/>.</param>
    /// <param name="people">One or more; a step that needs more takes all there are, and says so by its own number.</param>
    /// <param name="done">Ids of steps that need no time any more.</param>
    public static Schedule Of(ImmutableArray<Step> steps, int people, IReadOnlySet<string>? done = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(people, 1);
        var left = steps.Where(s => done?.Contains(s.Id) != true).ToList();
        var hanging = Hanging(left);
        var ends = new Dictionary<string, double>(StringComparer.Ordinal);
        var free = new double[people];
        var planned = ImmutableArray.CreateBuilder<Planned>(left.Count);
        double isolatedUntil = 0, poweredUntil = 0;
        var open = left.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        while (left.Count > 0)
        {
            // The earliest moment at which each of the steps that may begin could; of those at the earliest, the one on which most hangs.
            var next = left.Where(s => s.After.All(a => !open.Contains(a))).Select(s => (Step: s, Begin: Earliest(s))).OrderBy(s => s.Begin).ThenByDescending(s => hanging[s.Step.Id]).First();
            var (step, begin) = next;
            int[] who = [.. Enumerable.Range(0, people).OrderBy(p => free[p]).Take(Math.Min(step.People, people)).Order()];
            double end = begin + step.Minutes;
            foreach (int p in who) free[p] = end;
            if (AtMachine(step))
            {
                if (step.Energy == EnergyLevel.Isolated) isolatedUntil = Math.Max(isolatedUntil, end);
                else poweredUntil = Math.Max(poweredUntil, end);
            }
            ends[step.Id] = end;
            open.Remove(step.Id);
            left.Remove(step);
            planned.Add(new(step, begin, end, [.. who]));
        }
        double critical = hanging.Count == 0 ? 0 : hanging.Values.Max();
        return new([.. planned.OrderBy(p => p.Begin)], planned.Count == 0 ? 0 : planned.Max(p => p.End), critical) { OnCriticalWay = Longest(steps, hanging, critical), Waits = IdleIn(planned) };

        double Earliest(Step step)
        {
            double begin = free.Order().ElementAt(Math.Min(step.People, people) - 1);
            foreach (string after in step.After) begin = Math.Max(begin, ends.GetValueOrDefault(after));
            if (!AtMachine(step)) return begin;
            begin = Math.Max(begin, poweredUntil);
            return step.Energy == EnergyLevel.Isolated ? begin : Math.Max(begin, isolatedUntil);
        }
    }

    private static ImmutableHashSet<string> Longest(ImmutableArray<Step> steps, Dictionary<string, double> hanging, double critical)
    {
        var ends = new Dictionary<string, double>(StringComparer.Ordinal);
        var longest = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        foreach (var step in steps.Where(s => hanging.ContainsKey(s.Id)))
        {
            double begin = step.After.Select(a => ends.GetValueOrDefault(a)).DefaultIfEmpty(0).Max();
            ends[step.Id] = begin + step.Minutes;
            if (begin + hanging[step.Id] >= critical - 1e-9) longest.Add(step.Id);
        }
        return longest.ToImmutable();
    }

    private static ImmutableArray<Idle> IdleIn(IReadOnlyCollection<Planned> planned)
    {
        var free = new Dictionary<int, double>();
        var idle = ImmutableArray.CreateBuilder<Idle>();
        foreach (var p in planned.OrderBy(p => p.Begin))
            foreach (int person in p.People)
            {
                double from = free.GetValueOrDefault(person);
                free[person] = p.End;
                if (p.Begin <= from + 1e-9) continue;
                // A step begins where another ends: one that it needs, before one that only stood in its way.
                var ended = planned.Where(q => Math.Abs(q.End - p.Begin) < 1e-9 && !q.People.Contains(person)).OrderByDescending(q => p.Step.After.Contains(q.Step.Id)).ThenByDescending(q => q.Step.Minutes).First();
                idle.Add(new(person, from, p.Begin, p.Step.Id, ended.Step.Id));
            }
        return idle.ToImmutable();
    }

    private static bool AtMachine(Step step) => step.Place == StepPlace.Site;

    /// <summary>Minutes from the begin of each step to the end of all that stands behind it.</summary>
    private static Dictionary<string, double> Hanging(List<Step> steps)
    {
        var hanging = new Dictionary<string, double>(StringComparer.Ordinal);
        var behind = steps.SelectMany(s => s.After.Select(a => (a, s.Id))).ToLookup(p => p.a, p => p.Id, StringComparer.Ordinal);
        foreach (var step in Enumerable.Reverse(steps)) hanging[step.Id] = step.Minutes + behind[step.Id].Select(id => hanging[id]).DefaultIfEmpty(0).Max();
        return hanging;
    }
}
