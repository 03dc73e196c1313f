namespace Trivet.Gripping;

/// <summary>
/// Pressure in hose and cups over time. The generator takes a constant volume S in a time, less what it can not reach below its end pressure; air leaks in as
/// the difference to ambient drives it: V·dp/dt = −S·(p − p_end) + c·(p₀ − p), c = leakage·p₀/level (isothermal, as usual in rough vacuum; with p_end and c
/// zero it is the well-known t = V/S·ln(p₀/p)). Everything follows from its solution, an exponential towards the pressure at which both flows are equal.
/// </summary>
/// <param name="Reached">Vacuum after a long time, pascals below ambient.</param>
/// <param name="UntilHeld">From the signal to the level, valve included, seconds; infinite where the level is not reached.</param>
/// <param name="UntilFree">From the signal to ambient pressure by the blow-off, valve included, seconds; not a number without one. Air flows in evenly:
/// V·(level/p₀)/Q.</param>
public readonly record struct Evacuation(double Reached, double UntilHeld, double UntilFree)
{
    public static Evacuation Of(CupFlow flow)
    {
        double end = flow.Ambient - flow.Deepest, held = flow.Ambient - flow.Level;
        double leak = flow.Leakage * flow.Ambient / flow.Level;
        double equal = (flow.Suction * end + leak * flow.Ambient) / (flow.Suction + leak);
        double time = equal < held
            ? flow.Volume / (flow.Suction + leak) * Math.Log((flow.Ambient - equal) / (held - equal))
            : double.PositiveInfinity;
        return new(flow.Ambient - equal, flow.ValveTime + time, flow.ValveTime + flow.Volume * flow.Level / (flow.Ambient * flow.BlowOff));
    }
}
