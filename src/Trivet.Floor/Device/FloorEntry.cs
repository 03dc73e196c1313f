using System.Text.Json.Serialization;

namespace Trivet.Floor.Device;

/// <summary>One measurement as it was typed on this device. Never changed: a second reading of the same step is a second entry.</summary>
/// <param name="Device">Random id this browser gave itself.</param>
/// <param name="Sequence">From 1, without gaps, on this device.</param>
/// <param name="Bundle">Hash of the bundle it was done with.</param>
/// <param name="Step">Id of the step.</param>
/// <param name="Text">What was typed, with its unit.</param>
/// <param name="Metres">The value understood.</param>
/// <param name="ReadTo">Smallest step the text tells apart, metres.</param>
/// <param name="Ticks">When, UTC ticks of 100 ns by the device's clock.</param>
public sealed record FloorEntry(string Device, int Sequence, string Bundle, string Step, string Text, double Metres, double ReadTo, long Ticks);

[JsonSerializable(typeof(List<FloorEntry>))]
[JsonSourceGenerationOptions(WriteIndented = true, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
internal sealed partial class FloorEntryJson : JsonSerializerContext;
