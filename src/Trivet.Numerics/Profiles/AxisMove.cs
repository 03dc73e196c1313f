namespace Trivet.Numerics.Profiles;

/// <summary>A move of one coordinate, metres or radians: where it is and how fast at both ends. It begins and ends without acceleration.</summary>
public readonly record struct AxisMove(double From, double To, double StartVelocity = 0, double EndVelocity = 0)
{
    public double Distance => To - From;
}

/// <summary>Largest magnitudes along one coordinate, the same both ways, each above zero: per s, s² and s³.</summary>
/// <param name="Jerk">Infinite for none: the profile is then a trapezoid in velocity.</param>
public readonly record struct AxisLimits(double Velocity, double Acceleration, double Jerk = double.PositiveInfinity);

/// <summary>What a coordinate does at one moment.</summary>
public readonly record struct AxisState(double Position, double Velocity, double Acceleration, double Jerk);

/// <summary>Why there is no profile.</summary>
public enum ProfileProblem
{
    None,
    /// <summary>A number of the move is not finite.</summary>
    NotFinite,
    /// <summary>A limit is not above zero, or velocity or acceleration are not limited.</summary>
    LimitNotPositive,
    /// <summary>Velocity at the start or the end is beyond its limit.</summary>
    VelocityBeyondLimit,
    /// <summary>The given duration is shorter than the fastest, or lies in a gap: with moving ends an axis can often arrive soon, by going
    /// fast, or late, by turning back, and not in between.</summary>
    NotInThisTime,
    /// <summary>No candidate reached the end within its limits when it was integrated. It would be a mistake of Trivet's own, so it is told, never hidden.</summary>
    NotConfirmed,
}

/// <summary>Which limits shape a profile. An excursion goes to one highest (or lowest) velocity between two ramps of velocity.</summary>
public enum ProfilePattern
{
    None,
    /// <summary>Stays at the velocity limit for a while.</summary>
    VelocityReached,
    /// <summary>Both ramps reach the acceleration limit; the velocity limit is not reached for more than a moment.</summary>
    AccelerationReachedTwice,
    /// <summary>One ramp reaches the acceleration limit.</summary>
    AccelerationReachedOnce,
    /// <summary>The jerk limit alone shapes it.</summary>
    JerkOnly,
    /// <summary>Made for a given duration with a share of acceleration and jerk, the smallest that does.</summary>
    Gentle,
}
