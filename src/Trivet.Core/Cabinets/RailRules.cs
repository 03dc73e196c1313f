using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Cabinets;

/// <summary>A module on the rail.</summary>
/// <param name="Width">Metres; not a number where not stated.</param>
/// <param name="Placed">Its place is stated; otherwise it stands behind those whose place is, and may be put anywhere.</param>
public sealed record RailModule(string Id, string Role, double Width, bool Placed)
{
    public string At => $"/cabinet/modules/{Id}";

    /// <summary>Whether a rule that names a role or a module means this one.</summary>
    public bool Is(string name) => Role == name || Id == name;
}

/// <summary>A rule of the rail, complete.</summary>
/// <param name="To">Empty where the rule has no others, or a gap is kept to every neighbour.</param>
/// <param name="Gap">Metres.</param>
public sealed record OrderRule(string Id, RailRuleKind Kind, string Of, string To = "", int Count = 0, double Gap = 0)
{
    public string At => $"/cabinet/railRules/{Id}";

    /// <summary>The modules that break it in an order, as indices into it; none where it holds.</summary>
    public ImmutableArray<int> BrokenBy(ImmutableArray<RailModule> order)
    {
        var walk = new RailWalk([this], order);
        for (int i = 0; i < order.Length; i++)
        {
            if (walk.Allows(i)) walk.Place(i);
            else if (Kind is RailRuleKind.NotBeside or RailRuleKind.Beside) return [i - 1, i];
            else return [i];
        }
        return walk.Pending ? [order.Length - 1] : [];
    }

    /// <summary>Free width that it wants between two neighbours, metres.</summary>
    public double Between(RailModule left, RailModule right) =>
        Kind == RailRuleKind.Gap && (left.Is(Of) && Meant(right) || right.Is(Of) && Meant(left)) ? Gap : 0;

    private bool Meant(RailModule other) => To.Length == 0 || other.Is(To);
}

/// <summary>
/// Modules put on the rail one after the other from the left, with all that the rules must know of those that stand already. Modules that no rule tells
/// apart may be exchanged, so what is remembered is how many of each sort stand.
/// </summary>
internal sealed class RailWalk
{
    private readonly ImmutableArray<OrderRule> _rules;
    private readonly ImmutableArray<RailModule> _modules;
    // For each rule and module: is it one of those, is it one of the others.
    private readonly bool[,] _of, _to;
    // For each rule: how many of those, and of all, are not placed yet.
    private readonly int[] _ofLeft;
    private int _left, _last = -1;
    // For each rule: a neighbour still wanted on the right; others counted since the last of those, or none of those so far.
    private readonly bool[] _pending;
    private readonly int[] _since;

    public RailWalk(ImmutableArray<OrderRule> rules, ImmutableArray<RailModule> modules)
    {
        (_rules, _modules, _left) = (rules, modules, modules.Length);
        (_of, _to) = (new bool[rules.Length, modules.Length], new bool[rules.Length, modules.Length]);
        (_ofLeft, _pending, _since) = (new int[rules.Length], new bool[rules.Length], new int[rules.Length]);
        for (int r = 0; r < rules.Length; r++)
        {
            for (int i = 0; i < modules.Length; i++)
            {
                _of[r, i] = modules[i].Is(rules[r].Of);
                _to[r, i] = rules[r].To.Length > 0 && modules[i].Is(rules[r].To);
                if (_of[r, i]) _ofLeft[r]++;
            }
            _since[r] = -1;
        }
    }

    private RailWalk(RailWalk other)
    {
        (_rules, _modules, _of, _to, _left, _last) = (other._rules, other._modules, other._of, other._to, other._left, other._last);
        (_ofLeft, _pending, _since) = ([.. other._ofLeft], [.. other._pending], [.. other._since]);
    }

    public RailWalk Copy() => new(this);

    /// <summary>A neighbour on the right is still wanted.</summary>
    public bool Pending => Array.IndexOf(_pending, true) >= 0;

    /// <summary>The module placed last; -1 before the first.</summary>
    public int Last => _last;

    /// <summary>All that decides what may follow, besides how many of each sort are left.</summary>
    public string State => string.Create(_rules.Length, this, (span, w) =>
    {
        for (int r = 0; r < span.Length; r++) span[r] = (char)(2 * (w._since[r] + 1) + (w._pending[r] ? 1 : 0));
    });

    /// <summary>Whether a module may come next.</summary>
    public bool Allows(int m)
    {
        for (int r = 0; r < _rules.Length; r++)
            if (!Allows(r, m)) return false;
        return true;
    }

    private bool Allows(int r, int m)
    {
        bool of = _of[r, m], to = _to[r, m];
        int othersLeft = _ofLeft[r] - (of ? 1 : 0);
        return _rules[r].Kind switch
        {
            RailRuleKind.First => of || _ofLeft[r] == 0,
            RailRuleKind.Last => !of || _ofLeft[r] == _left,
            RailRuleKind.Before => !to || othersLeft == 0,
            RailRuleKind.Beside => !_pending[r] || to,
            RailRuleKind.NotBeside => _last < 0 || !(_of[r, _last] && to || of && _to[r, _last]),
            RailRuleKind.AtMostAfter => of || !to || _since[r] < _rules[r].Count,
            RailRuleKind.Together => !of || _last < 0 || _of[r, _last] || _since[r] < 0,
            _ => true,
        };
    }

    public void Place(int m)
    {
        for (int r = 0; r < _rules.Length; r++)
        {
            bool of = _of[r, m], to = _to[r, m];
            if (of) _ofLeft[r]--;
            _pending[r] = _rules[r].Kind == RailRuleKind.Beside && of && !(_last >= 0 && _to[r, _last]);
            switch (_rules[r].Kind)
            {
                case RailRuleKind.AtMostAfter when of:
                    _since[r] = 0;
                    break;
                case RailRuleKind.AtMostAfter when to && _since[r] >= 0:
                    _since[r]++;
                    break;
                case RailRuleKind.Together when of:
                    _since[r] = 0;
                    break;
            }
        }
        _left--;
        _last = m;
    }
}
