using System.Collections.Immutable;

namespace Trivet.Drives;

/// <summary>How a motor turns electric power into torque.</summary>
/// <param name="TorqueConstant">N·m/A.</param>
/// <param name="Resistance">Resistance as the torque constant's current sees it, Ω.</param>
/// <param name="HeldCurrent">
/// A stepper motor without feedback is fed its set current whatever torque is asked, A: the one of the continuous torque. Not a number
/// where the current follows the torque.
/// </param>
public readonly record struct ElectricSide(double TorqueConstant, double Resistance, double HeldCurrent = double.NaN)
{
    /// <summary>Power lost as heat in the winding at a torque, W. Iron and drive losses are left out.</summary>
    public double Heat(double torque)
    {
        double current = double.IsNaN(HeldCurrent) ? torque / TorqueConstant : HeldCurrent;
        return current * current * Resistance;
    }
}

/// <summary>What a cycle asks of one axis's motor, at the times of its series; straight between them.</summary>
/// <param name="Speed">Of the motor's shaft, rad/s.</param>
/// <param name="Torque">At the motor's shaft, N·m, rotor, transmission and its loss included.</param>
public sealed record AxisLoad(Drive Drive, ImmutableArray<double> Times, ImmutableArray<double> Speed, ImmutableArray<double> Torque)
{
    public static AxisLoad Of(Drive drive, ImmutableArray<double> times, AxisSeries axis)
    {
        var speed = ImmutableArray.CreateBuilder<double>(times.Length);
        var torque = ImmutableArray.CreateBuilder<double>(times.Length);
        for (int i = 0; i < times.Length; i++)
        {
            speed.Add(drive.Gearing * axis.Speed[i]);
            torque.Add(drive.Torque(axis.Force[i], axis.Speed[i], axis.Acceleration[i]));
        }

        return new(drive, times, speed.MoveToImmutable(), torque.MoveToImmutable());
    }

    /// <summary>Root of the mean square of the torque over the cycle, N·m: √(∫T²dt / duration), exact for what is straight between the times.</summary>
    public double RmsTorque
    {
        get
        {
            double sum = 0;
            for (int i = 1; i < Times.Length; i++)
            {
                double a = Torque[i - 1], b = Torque[i];
                sum += (Times[i] - Times[i - 1]) * (a * a + a * b + b * b) / 3;
            }

            return Math.Sqrt(sum / (Times[^1] - Times[0]));
        }
    }

    /// <summary>Electric power at one of the times, W: shaft power and heat in the winding; negative where the motor gives back.</summary>
    public double Power(int i, in ElectricSide electric) => Torque[i] * Speed[i] + electric.Heat(Torque[i]);

    /// <summary>
    /// Use of the torque that the curve has at the speed and voltage of that moment: 1 is all of it; infinite where the curve has none.
    /// While braking the same curve is taken, though a motor then has somewhat more.
    /// </summary>
    public double Use(int i, double voltage)
    {
        double asked = Math.Abs(Torque[i]), has = Drive.Curve.At(Speed[i], voltage);
        return asked == 0 ? 0 * has : asked / has;
    }
}
