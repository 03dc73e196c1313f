using CsCheck;

namespace Trivet.Testing;

/// <summary>
/// Random cases that are the same in every run and on any number of threads. (CsCheck's own Sample takes a seed for its first case
/// only.) Every case is tried in turn; the first that fails is shown whole.
/// </summary>
public static class FixedCases
{
    /// <param name="count">Cases of a usual run; a long one has more of them (<see cref="Effort"/>).</param>
    public static void Holds<T>(this Gen<T> cases, int count, Action<T> check, uint stream = 1)
    {
        var random = new PCG(stream, 20_250_101);
        for (int i = 0; i < Effort.Cases(count); i++)
        {
            T one = cases.Generate(random, null, out _);
            try
            {
                check(one);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException(FormattableString.Invariant($"Case {i} of stream {stream}: {one}\n{e.Message}"), e);
            }
        }
    }

    /// <summary>Even spread between two numbers. (CsCheck's own doubles favour special values: right for readers, wrong for geometry.)</summary>
    public static Gen<double> Between(double low, double high) => Gen.Int[0, 1_000_000].Select(i => low + (high - low) * (i * 1e-6));
}
