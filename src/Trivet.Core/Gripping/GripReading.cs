using System.Collections.Immutable;
using Trivet.Findings;

namespace Trivet.Gripping;

/// <summary>Reads the fields of one section with what they can not be.</summary>
internal sealed class GripReading(string section, Reading reading)
{
    private readonly ImmutableArray<Contradiction>.Builder _problems = ImmutableArray.CreateBuilder<Contradiction>();

    public Reading Reading => reading;

    public ImmutableArray<Contradiction> Problems => _problems.ToImmutable();

    public bool Good => reading.Complete && _problems.Count == 0;

    public string At(string name) => $"{section}/{name}";

    public double Positive(double? value, string name) => Above(reading.Need(value, At(name)), name);

    public double Above(double value, string name)
    {
        if (value <= 0) Wrong(name, GripReasons.NotPositive);
        return value;
    }

    public double NotNegative(double? value, string name, double fallback)
    {
        double v = reading.Or(value, At(name), fallback);
        if (v < 0) Wrong(name, GripReasons.Negative);
        return v;
    }

    public int Count(int? value, string name)
    {
        int v = reading.Need(value, At(name), 1);
        if (v < 1) Wrong(name, GripReasons.NotPositive);
        return v;
    }

    public void Wrong(string name, Reason reason) => _problems.Add(new(At(name), reason));
}
