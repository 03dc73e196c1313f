using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English sentences for reasons.</summary>
internal static class EnglishReasons
{
    public static ImmutableDictionary<string, string> All { get; } = new Dictionary<string, string>
    {
        ["not-asked-yet"] = "Not asked for at this depth of the description.",
        ["stopped"] = "The proof was stopped.",

        ["robot.number-of-chains"] = "A delta robot has two chains in a plane, or three.",
        ["robot.same-azimuth"] = "The azimuths of {fields} are the same; each chain needs its own.",
        ["robot.off-plane"] = "With two chains the platform moves in the plane y = 0 of the base frame: azimuths are 0° and 180°, without side offset or side lean.",
        ["robot.numbered-clockwise"] = "The chains' azimuths run clockwise in their stated order, yet they are said to be numbered counter-clockwise.",
        ["robot.numbered-counter-clockwise"] = "The chains' azimuths run counter-clockwise in their stated order, yet they are said to be numbered clockwise.",
        ["robot.rod-positive"] = "The rod needs a length above zero.",
        ["robot.base-radius-positive"] = "The base radius is above zero; the azimuth says the direction.",
        ["robot.upper-arm-positive"] = "The upper arm needs a length above zero.",
        ["robot.platform-radius-negative"] = "The platform radius is zero or more; the azimuth says the direction.",
        ["robot.travel-ends-before-it-begins"] = "The travel ends before it begins: travelTo must be above travelFrom.",
        ["robot.inclination-too-large"] = "A rail leans less than 90° from straight down.",
        ["robot.side-lean-too-large"] = "A side lean is less than 90°.",
        ["robot.rod-too-short"] = "The rod is too short to reach the platform's joint with the platform in the middle.",

        ["dynamics.negative"] = "It can not be below zero.",
        ["dynamics.arm-inertia-too-small"] = "The arm's inertia about the shoulder is at least its mass times the square of its centre's distance from there.",
        ["dynamics.no-such-part"] = "The brief has no part of that id.",

        ["reach.no-frame"] = "The description has no frame members.",
        ["reach.no-walls"] = "No station has walls.",
        ["reach.no-rotary"] = "The robot has no rotary axis.",
        ["reach.no-linear-axis"] = "No linear axis carries the robot.",
        ["reach.three-chains"] = "The robot has three chains.",
        ["reach.waits-for"] = "Waits for the description of {fields}.",
        ["reach.not-reached"] = "The rods do not reach everywhere in the volume, so the quantity has no value there.",
        ["reach.homed-alone"] = "No largest difference of readings at the start of homing is stated, so each chain is taken to be homed alone.",
        ["reach.homed-together"] = "The chains are homed together, from readings that differ by no more than is stated.",
        ["reach.size-negative"] = "A size can not be below zero.",
        ["reach.no-pocket"] = "A tray has at least one pocket each way.",
        ["reach.angles-end-before-they-begin"] = "The rotary angles end before they begin: rotaryTo must not be below rotaryFrom.",

        ["drive.no-such-motor"] = "There is no motor of that id; described are {fields}.",
        ["drive.no-motors"] = "No motor is described.",
        ["drive.screw-turns"] = "A screw moves along; an axis that turns has a gear or a belt.",
        ["drive.gear-is-straight"] = "A gear turns; an axis that moves along has a belt or a screw.",
        ["drive.not-positive"] = "It must be above zero.",
        ["drive.negative"] = "It can not be below zero.",
        ["drive.efficiency-above-one"] = "An efficiency is at most 1: nothing gives more power than it takes.",
        ["drive.one-curve-point"] = "A torque–speed curve has at least two points.",
        ["drive.same-curve-speed"] = "The speed is the same as that of {fields}.",
        ["drive.waits-for"] = "Waits for the description of {fields}.",
        ["drive.chopper-below-source"] = "The chopper must begin above the voltage of the source, or it burns the source's own power.",
        ["drive.no-chopper"] = "The supply has no brake chopper.",
        ["drive.no-belt"] = "The axis has no belt.",
        ["drive.no-limit"] = "No limit is stated in {fields}.",
        ["drive.no-tolerance"] = "The brief states no tolerance of place.",
        ["drive.no-stiffness"] = "No stiffness of the axis is stated that it could yield by.",
        ["drive.held-current"] = "A stepper motor without feedback draws its set current whatever torque is asked.",
        ["drive.with-feedback"] = "No stepper motor runs without feedback.",
        ["drive.beyond-curve"] = "The motor turns faster than its curve goes at the voltage then present, where it is said to have no torque.",
        ["drive.voltage-collapsed"] = "The source can not deliver what the drives ask; the voltage breaks down.",
        ["drive.voltage-not-periodic"] = "The voltage does not come to rest from cycle to cycle.",
        ["drive.load-unknown"] = "The motion does not say what the load weighs at this axis.",
        ["drive.curve-rises"] = "The largest torque does not rise with speed: it is above that of {fields}.",
    }.ToImmutableDictionary();
}
