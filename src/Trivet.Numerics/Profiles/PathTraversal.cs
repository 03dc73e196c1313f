using System.Collections.Immutable;

namespace Trivet.Numerics.Profiles;

/// <summary>Why a path can not be run through.</summary>
public enum PathProblem
{
    None,
    /// <summary>A coefficient is not a number.</summary>
    NotFinite,
    /// <summary>The start speed is beyond what the limits allow there, now or further on.</summary>
    StartTooFast,
    /// <summary>The limits can only be kept by starting faster: something has to be kept moving.</summary>
    StartTooSlow,
    /// <summary>The end speed is beyond what the limits allow there.</summary>
    EndTooFast,
    /// <summary>Limits contradict each other at a point whatever the speed, or between them no speed leads on from there.</summary>
    Contradiction,
    /// <summary>Nothing gets it moving: from rest the limits leave no acceleration ahead.</summary>
    Stuck,
}

/// <summary>
/// The fastest traversal of a path. Between two points of the grid u = s̈ is constant, so x = ṡ² is linear in s, and time along the path has a
/// closed form.
/// </summary>
/// <param name="S">The grid.</param>
/// <param name="X">ṡ² at each point; empty where there is no solution.</param>
/// <param name="U">s̈ between a point and the next.</param>
/// <param name="T">Time at each point from the start, seconds.</param>
/// <param name="Limiting">Between a point and the next: number of the limit that holds it back, or <see cref="NoLimit"/>.</param>
/// <param name="Gains">Seconds won by each round after the first with limits that fall with speed; empty without such limits. The last is what further
/// rounds may still be expected to win, or less.</param>
/// <param name="Point">Where there is no solution: the point of the grid that shows it, or −1.</param>
/// <param name="Limit">And the limit, or <see cref="NoLimit"/>.</param>
public sealed record PathTraversal(
    PathProblem Problem, ImmutableArray<double> S, ImmutableArray<double> X, ImmutableArray<double> U, ImmutableArray<double> T,
    ImmutableArray<int> Limiting, ImmutableArray<double> Gains, int Point, int Limit)
{
    public const int NoLimit = -1;

    public bool Found => Problem == PathProblem.None;

    /// <summary>Seconds; not a number where there is no solution.</summary>
    public double Duration => Found ? T[^1] : double.NaN;

    /// <summary>Position s, ṡ and s̈ at a time, seconds; held at the ends beyond them.</summary>
    public (double S, double Speed, double Acceleration) At(double time)
    {
        int i = Interval(T, time);
        double t = Math.Clamp(time, T[0], T[^1]) - T[i], v = Math.Sqrt(X[i]);
        return (Math.Min(S[i] + t * (v + t * U[i] / 2), S[i + 1]), Math.Max(0, v + t * U[i]), U[i]);
    }

    /// <summary>Seconds from the start to a place of the path; held at the ends beyond them.</summary>
    public double TimeAt(double s)
    {
        int i = Interval(S, s);
        double x = SpeedSquaredAt(s), ahead = Math.Sqrt(X[i]) + Math.Sqrt(x);
        return ahead > 0 ? T[i] + 2 * (Math.Clamp(s, S[0], S[^1]) - S[i]) / ahead : T[i];
    }

    /// <summary>ṡ² at a place of the path.</summary>
    public double SpeedSquaredAt(double s)
    {
        int i = Interval(S, s);
        double part = (Math.Clamp(s, S[0], S[^1]) - S[i]) / (S[i + 1] - S[i]);
        return Math.Max(0, X[i] + part * (X[i + 1] - X[i]));
    }

    private static int Interval(ImmutableArray<double> values, double value)
    {
        int at = values.BinarySearch(value);
        return Math.Clamp(at < 0 ? ~at - 1 : at, 0, values.Length - 2);
    }

    internal static PathTraversal No(PathProblem problem, ReadOnlySpan<double> s, int point, int limit) => new(problem, [.. s], [], [], [], [], [], point, limit);
}
