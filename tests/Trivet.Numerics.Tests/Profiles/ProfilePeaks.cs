using Trivet.Numerics.Profiles;

namespace Trivet.Numerics.Tests.Profiles;

internal static class ProfilePeaks
{
    /// <summary>Largest magnitudes of velocity, acceleration and jerk that occur, from the phases alone.</summary>
    public static AxisLimits Peaks(this in Profile profile)
    {
        double v = profile.StartVelocity, velocity = Math.Abs(v), acceleration = 0, jerk = 0;
        foreach (var phase in profile.Phases)
        {
            double end = phase.Acceleration + phase.Jerk * phase.Duration;
            // Where the acceleration passes through zero the velocity turns.
            if (phase.Acceleration * end < 0) velocity = Math.Max(velocity, Math.Abs(v - phase.Acceleration * phase.Acceleration / (2 * phase.Jerk)));
            v += (phase.Acceleration + end) / 2 * phase.Duration;
            velocity = Math.Max(velocity, Math.Abs(v));
            acceleration = Math.Max(acceleration, Math.Max(Math.Abs(phase.Acceleration), Math.Abs(end)));
            jerk = Math.Max(jerk, Math.Abs(phase.Jerk));
        }

        return new(velocity, acceleration, jerk);
    }
}
