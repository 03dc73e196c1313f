using Trivet.Findings;

namespace Trivet.Dynamics;

/// <summary>What masses and friction can not be, and why a chain's holding is not judged.</summary>
public static class DynamicsReasons
{
    public static Reason Negative { get; } = new("dynamics.negative");

    /// <summary>An arm's inertia about the shoulder is at least its mass times the square of its centre's distance.</summary>
    public static Reason ArmInertiaTooSmall { get; } = new("dynamics.arm-inertia-too-small");

    /// <summary>The part that was asked for is not in the brief.</summary>
    public static Reason NoSuchPart { get; } = new("dynamics.no-such-part");

    /// <summary>Motor or transmission of an axis can not be as stated; the drives' own findings say where.</summary>
    public static Reason DriveContradictsItself { get; } = new("dynamics.drive-contradicts-itself");

    /// <summary>A prop holds where somebody sets one; the calculation can not know when.</summary>
    public static Reason HeldByProp { get; } = new("dynamics.held-by-prop");
}
