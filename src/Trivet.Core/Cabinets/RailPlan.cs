using System.Collections.Immutable;

namespace Trivet.Cabinets;

/// <summary>How the search for an order ended.</summary>
public enum RailEnd
{
    Found,
    /// <summary>No order obeys all rules.</summary>
    Impossible,
    /// <summary>Too many orders to try.</summary>
    GaveUp,
}

/// <summary>An order along the rail that obeys all rules and moves as few modules as can be.</summary>
/// <param name="Order">Module ids from the left; as it stands where none was found.</param>
/// <param name="Moved">Those taken out and put in elsewhere; modules without a stated place are not counted.</param>
public sealed record RailPlan(RailEnd End, ImmutableArray<string> Order, ImmutableHashSet<string> Moved)
{
    private const int MostStates = 100_000;

    /// <summary>
    /// The nearest order. Moving a module means taking it out and putting it in elsewhere, so the modules that stay keep their sequence among themselves and
    /// their number is that of a longest common subsequence of both orders. A shortest-path search over (how many of the present order are passed, how many
    /// of each sort stand, what the rules remember) finds it: taking the next module of the present order costs nothing, taking another costs one move,
    /// passing one over costs nothing. Of orders with equally few moves one is taken that puts modules behind their like.
    /// </summary>
    public static RailPlan Of(ImmutableArray<RailModule> now, ImmutableArray<OrderRule> rules)
    {
        var search = new Search(now, rules);
        return search.Run();
    }

    private sealed class Search
    {
        private readonly ImmutableArray<RailModule> _now;
        private readonly int[] _sort;
        private readonly int[][] _members;
        private readonly RailWalk _start;

        private sealed record Node(RailWalk Walk, int Passed, int[] Stand, Node? Before, int Sort, bool Taken);

        public Search(ImmutableArray<RailModule> now, ImmutableArray<OrderRule> rules)
        {
            _now = now;
            string[] names = [.. rules.SelectMany(r => new[] { r.Of, r.To }).Where(n => n.Length > 0).Distinct()];
            var sorts = new List<string>();
            _sort = new int[now.Length];
            for (int i = 0; i < now.Length; i++)
            {
                // What rules can tell of it, its role, and whether it may go anywhere.
                string key = string.Concat(names.Select(n => now[i].Is(n) ? '1' : '0')) + (now[i].Placed ? 'p' : 'f') + now[i].Role;
                if (!sorts.Contains(key)) sorts.Add(key);
                _sort[i] = sorts.IndexOf(key);
            }
            _members = [.. sorts.Select((_, s) => Enumerable.Range(0, now.Length).Where(i => _sort[i] == s).ToArray())];
            _start = new(rules, now);
        }

        public RailPlan Run()
        {
            var open = new PriorityQueue<Node, (int Moves, int Strangers, int Number)>();
            var done = new HashSet<string>();
            int number = 0;
            open.Enqueue(new(_start, 0, new int[_members.Length], null, -1, false), (0, 0, 0));
            while (open.TryDequeue(out var node, out var cost))
            {
                if (!done.Add(Key(node))) continue;
                if (done.Count > MostStates) return new(RailEnd.GaveUp, [.. _now.Select(m => m.Id)], []);
                int stand = node.Stand.Sum();
                if (stand == _now.Length)
                {
                    if (!node.Walk.Pending) return Found(node);
                    continue;
                }
                if (node.Passed < _now.Length)
                {
                    int sort = _sort[node.Passed];
                    if (node.Stand[sort] < _members[sort].Length && node.Walk.Allows(node.Passed))
                        open.Enqueue(Next(node, node.Passed, node.Passed + 1, sort, true), (cost.Moves, cost.Strangers, ++number));
                    open.Enqueue(node with { Passed = node.Passed + 1, Sort = -1, Taken = false, Before = node }, (cost.Moves, cost.Strangers, ++number));
                }
                for (int sort = 0; sort < _members.Length; sort++)
                {
                    int like = _members[sort][0];
                    if (node.Stand[sort] == _members[sort].Length || !node.Walk.Allows(like)) continue;
                    bool stranger = node.Walk.Last < 0 || _now[node.Walk.Last].Role != _now[like].Role;
                    open.Enqueue(Next(node, like, node.Passed, sort, false), (cost.Moves + (_now[like].Placed ? 1 : 0), cost.Strangers + (stranger ? 1 : 0), ++number));
                }
            }
            return new(RailEnd.Impossible, [.. _now.Select(m => m.Id)], []);
        }

        private static Node Next(Node node, int module, int passed, int sort, bool taken)
        {
            var walk = node.Walk.Copy();
            walk.Place(module);
            int[] stand = [.. node.Stand];
            stand[sort]++;
            return new(walk, passed, stand, node, sort, taken);
        }

        private string Key(Node node) =>
            $"{(char)node.Passed}{string.Concat(node.Stand.Select(n => (char)n))}{(char)(node.Walk.Last < 0 ? _members.Length : _sort[node.Walk.Last])}{node.Walk.State}";

        private RailPlan Found(Node end)
        {
            var steps = new List<Node>();
            for (Node? n = end; n?.Before is not null; n = n.Before)
                if (n.Sort >= 0) steps.Add(n);
            steps.Reverse();
            // Those taken in sequence keep their name; the rest of each sort follow in their present sequence.
            var taken = steps.Where(s => s.Taken).Select(s => s.Passed - 1).ToHashSet();
            var rest = _members.Select(m => new Queue<int>(m.Where(i => !taken.Contains(i)))).ToArray();
            ImmutableArray<int> order = [.. steps.Select(s => s.Taken ? s.Passed - 1 : rest[s.Sort].Dequeue())];
            return new(RailEnd.Found, [.. order.Select(i => _now[i].Id)], [.. order.Where(i => !taken.Contains(i) && _now[i].Placed).Select(i => _now[i].Id)]);
        }
    }
}
