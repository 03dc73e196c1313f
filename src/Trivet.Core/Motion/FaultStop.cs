namespace Trivet.Motion;

/// <summary>
/// By how much harder a stop after a fault (emergency stop, loss of power, following error) may be than the planned motion where the cell states nothing:
/// common practice, no source. What the drives' own ramps or brakes do is measured at the machine.
/// </summary>
public static class FaultStop
{
    public const double UsualFactor = 2;
}
