using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>Texts about cabinet, addresses and bus.</summary>
public sealed record WiringWords
{
    public required string Strip { get; init; }
    /// <summary>{cell}</summary>
    public required string StripDescription { get; init; }
    public required string Addresses { get; init; }
    public required string HeadPlace { get; init; }
    public required string HeadModule { get; init; }
    public required string HeadRole { get; init; }
    public required string HeadAddress { get; init; }
    public required string HeadPlan { get; init; }
    public required string HeadSet { get; init; }
    public required string HeadWidth { get; init; }
    public required string Sends { get; init; }
    public required string OpenModule { get; init; }
    public required string Close { get; init; }
    public required string Describe { get; init; }
    public required string OneMore { get; init; }
    /// <summary>In the order of <see cref="Cells.AddressSetting"/>: {digits} or {levers}.</summary>
    public required ImmutableArray<string> SetBy { get; init; }
    public required string LeverOn { get; init; }
    public required string LeverOff { get; init; }
    public required string NotOnSwitches { get; init; }
    public required string Keep { get; init; }
    /// <summary>{address}</summary>
    public required string Change { get; init; }
    public required string NoRoom { get; init; }
    /// <summary>{count}</summary>
    public required string Changes { get; init; }
    public required string NoChanges { get; init; }
    public required string Bus { get; init; }
    public required string BitRate { get; init; }
    public required string Length { get; init; }
    /// <summary>{length} {limit}</summary>
    public required string LengthOf { get; init; }
    public required string Ohms { get; init; }
    /// <summary>{ohms} {fitted}</summary>
    public required string OhmsOf { get; init; }
    public required string OhmsRight { get; init; }
    public required string Load { get; init; }
    /// <summary>{load} {limit}</summary>
    public required string LoadOf { get; init; }
    public required string Traffic { get; init; }
    public required string HeadMessage { get; init; }
    public required string HeadFrom { get; init; }
    public required string HeadBytes { get; init; }
    public required string HeadPeriod { get; init; }
    public required string HeadCause { get; init; }
    public required string HeadLeast { get; init; }
    public required string HeadExact { get; init; }
    public required string HeadBits { get; init; }
    public required string ExactLoad { get; init; }
    public required string StartUpCause { get; init; }
    public required string HeadLoad { get; init; }
    public required string StartUp { get; init; }
    public required string HeadIdentifier { get; init; }
    public required string HeadBusTime { get; init; }
    public required string StartUpNote { get; init; }
    public required string Caution { get; init; }
    public required string NoModules { get; init; }
    /// <summary>{fields}</summary>
    public required string Waits { get; init; }
    public required string Take { get; init; }
}
