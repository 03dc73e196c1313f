using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Trivet.Journal;

namespace Trivet.Files.Entries;

/// <summary>An entry or receipt read from its canonical text, or why it is refused as damaged.</summary>
public sealed record EntryRead(Entry? Entry, Receipt? Receipt, string Hash, string Problem)
{
    public bool Ok => Problem.Length == 0;
}

/// <summary>
/// Reads the canonical text of entries and receipts. Refused is only what is damaged: too large, not in the canonical form, or without what
/// every entry has. What a statement says in words this program does not know is kept as <see cref="Unread"/>.
/// </summary>
public static class EntryReader
{
    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = CanonicalJson.Deepest, AllowDuplicateProperties = false };
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads one text. Never throws, whatever the text.</summary>
    public static EntryRead Read(string text)
    {
        try
        {
            if (text.Length > EntryText.Largest || Utf8.GetByteCount(text) > EntryText.Largest)
                return Damaged($"it is larger than {EntryText.Largest / 1024} KB");
            using var document = JsonDocument.Parse(text, Strict);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object) return Damaged("it is no JSON object");
            if (CanonicalJson.Of(root) != text) return Damaged("it is not in the canonical form");
            string hash = EntryText.Hash(text);
            if (root.TryGetProperty("receipt", out _)) return new(null, ReceiptOf(root), hash, "");
            if (!root.TryGetProperty("entry", out var version)) return Damaged("it is neither an entry nor a receipt");
            return new(EntryOf(root, version.GetInt64()), null, hash, "");
        }
        // The reader's own exceptions: text that is not JSON, half a character, a member that is not there, of another kind or out of range.
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException or OverflowException)
        {
            return Damaged(e is FormatException own && own.Data.Contains(Own) ? own.Message : "it lacks what every entry has, or says it in another form");
        }
    }

    private const string Own = "own";

    private static EntryRead Damaged(string problem) => new(null, null, "", problem);

    private static FormatException Bad(string problem)
    {
        var bad = new FormatException(problem);
        bad.Data[Own] = true;
        return bad;
    }

    private static Receipt ReceiptOf(JsonElement root) =>
        new(Whole(root, "number", 1), HashIn(root, "entry"), HashIn(root, "previous", mayBeEmpty: true), MomentIn(root, "received"));

    private static Entry EntryOf(JsonElement root, long version) => new()
    {
        Device = Id(root, "device"),
        Sequence = Whole(root, "sequence", 1),
        Previous = HashIn(root, "previous", mayBeEmpty: true),
        Ticks = MomentIn(root, "at"),
        LocalOffset = (int)Whole(root, "localOffset", -24 * 60, 24 * 60),
        ClockOffset = root.TryGetProperty("clockOffset", out _) ? Whole(root, "clockOffset", -CanonicalJson.LargestWhole) : null,
        Person = Id(root, "person"),
        Cell = Id(root, "cell"),
        Revision = HashIn(root, "revision", mayBeEmpty: true),
        Step = OptionalId(root, "step"),
        Ask = OptionalId(root, "ask"),
        Instrument = Words(root, "instrument", optional: true),
        Note = Words(root, "note", optional: true),
        Says = SaysOf(root.GetProperty("says"), version),
    };

    private static Statement SaysOf(JsonElement says, long version)
    {
        string kind = Words(says, "kind");
        if (version > EntryText.Version) return new Unread(kind);
        try
        {
            return Understood(says, kind) ?? new Unread(kind);
        }
        // A known kind said in a way not known: kept like an unknown one.
        catch (Exception e) when (e is KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return new Unread(kind);
        }
    }

    private static Statement? Understood(JsonElement says, string kind) => kind switch
    {
        "begun" => new Begun(),
        "energy declared" => new EnergyDeclared(
            Among(says, "level", EntryText.Levels), says.TryGetProperty("dead", out var dead) ? AnswerOf(dead, Words(dead, "kind")) as Measured ?? throw new FormatException(kind) : null),
        "happened" => new Happened(Among(says, "upset", EntryText.Upsets), Words(says, "words", optional: true)),
        "interrupted" => new Interrupted(Words(says, "words", optional: true)),
        "seen" => new Seen(OptionalId(says, "what"), Words(says, "words", optional: true)),
        "released" => new Released(HashIn(says, "entry")),
        "corrected" => new Corrected(HashIn(says, "entry"), Words(says, "reason"),
            says.TryGetProperty("instead", out var instead) ? AnswerOf(instead, Words(instead, "kind")) ?? throw new FormatException(kind) : null),
        "erased" => new Erased(HashIn(says, "photograph"), Words(says, "reason")),
        _ => AnswerOf(says, kind),
    };

    private static Answer? AnswerOf(JsonElement says, string kind) => kind switch
    {
        "measured" => new Measured(Words(says, "typed"), Id(says, "unit"), Number(says, "value"), says.TryGetProperty("readTo", out _) ? Number(says, "readTo") : 0),
        "chosen" => new Chosen(Id(says, "option")),
        "counted" => new Counted(Whole(says, "count", -CanonicalJson.LargestWhole)),
        "written" => new Written(Words(says, "text")),
        "ticked" => new Ticked(),
        "photographed" => new Photographed(HashIn(says, "photograph")),
        "signed" => new Signed(Among(says, "as", EntryText.Skills), Words(says, "engine"), says.TryGetProperty("head", out _) ? HashIn(says, "head") : "",
            [.. says.GetProperty("findings").EnumerateArray().Select(f => new ShownFinding(
                Words(f, "id"), Among(f, "verdict", EntryText.Verdicts), f.TryGetProperty("value", out _) ? Number(f, "value") : double.NaN))]),
        "not possible" => new NotPossible(Words(says, "reason")),
        "differs" => new Differs(Words(says, "words")),
        _ => null,
    };

    private static T Among<T>(JsonElement element, string name, ImmutableArray<(T Value, string Word)> words)
    {
        string word = Words(element, name);
        foreach (var (value, known) in words)
            if (known == word) return value;
        throw new FormatException(word);
    }

    private static string Words(JsonElement element, string name, bool optional = false)
    {
        if (optional && !element.TryGetProperty(name, out _)) return "";
        string text = element.GetProperty(name).GetString() ?? throw new FormatException(name);
        return text.Length <= EntryText.LongestWords ? text : throw Bad($"\"{name}\" is longer than {EntryText.LongestWords} characters");
    }

    private static string Id(JsonElement element, string name)
    {
        string text = Words(element, name);
        return text.Length is > 0 and <= EntryText.LongestId && !text.Any(char.IsControl)
            ? text
            : throw Bad($"\"{name}\" is empty, longer than {EntryText.LongestId} characters or holds a control character");
    }

    private static string OptionalId(JsonElement element, string name) => element.TryGetProperty(name, out _) ? Id(element, name) : "";

    private static string HashIn(JsonElement element, string name, bool mayBeEmpty = false)
    {
        string text = Words(element, name);
        return (mayBeEmpty && text.Length == 0) || (text.Length == 64 && text.All(char.IsAsciiHexDigitLower)) ? text : throw Bad($"\"{name}\" is no SHA-256");
    }

    private static long MomentIn(JsonElement element, string name) =>
        EntryText.MomentOf(Words(element, name)) ?? throw Bad($"\"{name}\" is no moment of the form 2030-05-06T07:08:09.0000000Z");

    private static long Whole(JsonElement element, string name, long least, long most = CanonicalJson.LargestWhole)
    {
        long value = element.GetProperty(name).GetInt64();
        return value >= least && value <= most ? value : throw Bad($"\"{name}\" is out of range");
    }

    private static double Number(JsonElement element, string name) =>
        double.TryParse(Words(element, name), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new FormatException(name);
}
