using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Wiring;

/// <summary>A message of the bus with its share of the bus's time.</summary>
/// <param name="From">Id of the module that sends it; empty where not stated.</param>
/// <param name="WorstBits">Bits, as long as stuffing can make it.</param>
/// <param name="Period">Seconds.</param>
public sealed record BusTraffic(string Id, string From, int Bytes, int WorstBits, double Period)
{
    public string At => $"/cabinet/network/messages/{Id}";

    /// <summary>Null while it is not stated.</summary>
    public uint? Identifier { get; init; }

    /// <summary>Bits without any that stuffing adds.</summary>
    public int LeastBits { get; init; }

    /// <summary>Bits of the frame as stated; null while identifier or data are not.</summary>
    public int? ExactBits { get; init; }

    /// <summary>What makes it be sent, in the user's words; empty where not stated.</summary>
    public string Cause { get; init; } = "";

    /// <summary>Share of the bus's time at worst.</summary>
    public double Load(double bitRate) => WorstBits / (Period * bitRate);

    /// <summary>The same with the frame as stated, at worst where it is not.</summary>
    public double ExactLoad(double bitRate) => (ExactBits ?? WorstBits) / (Period * bitRate);
}

/// <summary>What a node says when it starts: one frame without being asked.</summary>
/// <param name="Identifier">700h and the node's address.</param>
/// <param name="Bits">Exactly.</param>
public sealed record StartUpMessage(string Module, int Node, int Identifier, int Bits)
{
    /// <summary>CiA 301, from memory: one byte, zero, on the identifier of the heartbeat.</summary>
    public static StartUpMessage Of(string module, int node) => new(module, node, 0x700 + node, CanFrame.Bits((uint)(0x700 + node), [0]));
}

/// <summary>The bus as far as it is described.</summary>
/// <param name="Capable">CAN: what frames and lengths mean is known.</param>
public sealed record BusCase(
    bool Capable, double BitRate, double Length, double Stub, int? Terminators, double LargestLoad, ImmutableArray<BusTraffic> Traffic,
    ImmutableArray<Unjudged> Wrong, ImmutableArray<string> Inputs)
{
    /// <summary>Largest length for a bit rate (CiA 301, from memory): bit/s, metres. Between two rates that of the faster counts.</summary>
    public static ImmutableArray<(double BitRate, double Length)> Lengths { get; } =
        [(10e3, 5000), (20e3, 2500), (50e3, 1000), (125e3, 500), (250e3, 250), (500e3, 100), (800e3, 50), (1e6, 25)];

    /// <summary>Ohms of one terminating resistor.</summary>
    public const double Terminator = 120;

    public double LargestLength => Lengths.Where(l => l.BitRate >= BitRate * (1 - 1e-9)).Select(l => l.Length).DefaultIfEmpty(double.NaN).First();

    /// <summary>Metres of a branch: 0.3 m at 1 Mbit/s and longer as bits are (common practice, no source).</summary>
    public double LargestStub => 0.3 * 1e6 / BitRate;

    /// <summary>Ohms between the two lines, all off and with as many terminators as are fitted; infinite with none.</summary>
    public static double Ohms(int terminators) => Terminator / terminators;

    public double Load => Traffic.Sum(t => t.Load(BitRate));

    /// <summary>Load with the frames as stated; not a number while no frame is.</summary>
    public double ExactLoad => Traffic.Any(t => t.ExactBits is not null) ? Traffic.Sum(t => t.ExactLoad(BitRate)) : double.NaN;

    /// <summary>Null while what every check needs is not stated, see the reading.</summary>
    public static BusCase? Read(Cell cell, Reading reading)
    {
        const string at = "/cabinet/network";
        var network = cell.Cabinet.Network;
        bool can = reading.Need(network.Protocol, at + "/protocol", BusProtocol.Other) == BusProtocol.CanOpen;
        double rate = reading.Need(network.BitRate, at + "/bitRate"), length = reading.Need(network.Length, at + "/length");
        double stub = reading.Or(network.LongestStub, at + "/longestStub", 0);
        int terminators = reading.Need(network.Terminators, at + "/terminators", 0);
        double load = reading.Or(network.LargestLoad, at + "/largestLoad", 0.5);
        var traffic = ImmutableArray.CreateBuilder<BusTraffic>();
        var wrong = ImmutableArray.CreateBuilder<Unjudged>();
        reading.Used(at + "/messages", string.Join('\n', network.Messages.Keys));
        foreach (var (id, message) in network.Messages.InOrder())
        {
            string own = $"{at}/messages/{id}";
            int bytes = reading.Need(message.Bytes, own + "/bytes", 0);
            double period = reading.Need(message.Period, own + "/period");
            bool extended = reading.Or(message.Extended, own + "/extended", false);
            reading.Used(own + "/from", message.From);
            if (message.Bytes is < 0 or > 8) Refuse(own + "/bytes", WiringReasons.EightBytes);
            else if (message.Period <= 0) Refuse(own + "/period", WiringReasons.NotPositive);
            else if (message.From is { } from && !cell.Cabinet.Modules.ContainsKey(from)) Refuse(own + "/from", WiringReasons.NoSuchModule.Naming([.. cell.Cabinet.Modules.Keys.Select(m => $"/cabinet/modules/{m}")]));
            else
            {
                uint? identifier = Identifier(message, own, extended);
                byte[]? data = Data(message, own, bytes);
                traffic.Add(new(id, message.From ?? "", bytes, CanFrame.WorstBits(bytes, extended), period)
                {
                    Identifier = identifier,
                    LeastBits = CanFrame.LeastBits(bytes, extended),
                    ExactBits = identifier is { } known && data is not null ? CanFrame.Bits(known, data, extended) : null,
                    Cause = message.Cause ?? "",
                });
            }
        }
        foreach (var twice in traffic.Where(t => t.Identifier is not null).GroupBy(t => t.Identifier).Where(g => g.Count() > 1).SelectMany(g => g.Skip(1)))
            Refuse(twice.At + "/identifier", WiringReasons.SameIdentifier);
        if (network.BitRate <= 0) Refuse(at + "/bitRate", WiringReasons.NotPositive);
        return reading.Complete && (wrong.Count == 0 || rate > 0)
            ? new(can, rate, length, stub, terminators, load, traffic.ToImmutable(), wrong.ToImmutable(), reading.Inputs)
            : null;

        uint? Identifier(BusMessage message, string own, bool extended)
        {
            reading.Used(own + "/identifier", message.Identifier);
            reading.Used(own + "/addressOf", message.AddressOf);
            if (message.Identifier is not { } text) return null;
            string digits = text.Trim().TrimEnd('h', 'H');
            if (!uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out uint identifier))
            {
                Refuse(own + "/identifier", WiringReasons.NotHexadecimal);
                return null;
            }
            if (message.AddressOf is { } module)
            {
                if (!cell.Cabinet.Modules.TryGetValue(module, out var named))
                {
                    Refuse(own + "/addressOf", WiringReasons.NoSuchModule.Naming([.. cell.Cabinet.Modules.Keys.Select(m => $"/cabinet/modules/{m}")]));
                    return null;
                }
                reading.Used($"/cabinet/modules/{module}/address", named.Address);
                if (named.Address is not { } address) return null;
                identifier += (uint)address;
            }
            if (identifier <= (extended ? 0x1FFF_FFFFu : 0x7FFu)) return identifier;
            Refuse(own + "/identifier", WiringReasons.IdentifierTooLarge);
            return null;
        }

        byte[]? Data(BusMessage message, string own, int bytes)
        {
            reading.Used(own + "/data", message.Data);
            if (message.Data is null) return bytes == 0 ? [] : null;
            string digits = message.Data.Replace(" ", "", StringComparison.Ordinal);
            if (digits.Length == 2 * bytes && digits.All(char.IsAsciiHexDigit)) return Convert.FromHexString(digits);
            Refuse(own + "/data", WiringReasons.NotTheBytes);
            return null;
        }

        void Refuse(string pointer, Reason reason) => wrong.Add(new(WiringRules.Described, new(pointer), [pointer], OpenReason.Failed, [], reason));
    }
}
