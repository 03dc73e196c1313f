using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Trivet.Cells;
using Trivet.Files.Fields;

namespace Trivet.Files;

/// <summary>
/// Reads a document token by token against the field tables. Whatever is wrong is listed with its place and reading goes on;
/// only broken JSON ends it. Comments and trailing commas are read and dropped.
/// </summary>
internal ref struct CellReader
{
    private const int DeepestNesting = 32;

    private readonly ImmutableArray<FormatStep> _steps;
    private readonly ErrorList _errors;
    private readonly List<(long At, string Pointer, Dimension Wanted, Dimension Stated)> _driveValues = [];
    private Utf8JsonReader _json;
    private int _version = CellFormat.Current;

    private CellReader(ReadOnlySpan<byte> utf8, ErrorList errors, ImmutableArray<FormatStep> steps)
    {
        _json = new Utf8JsonReader(utf8, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = DeepestNesting });
        _errors = errors;
        _steps = steps;
    }

    /// <summary>Reads valid UTF-8 without a byte order mark; null when there were errors.</summary>
    /// <exception cref="JsonException">The text is not JSON; what was wrong before that is listed already.</exception>
    public static Cell? Read(ReadOnlySpan<byte> utf8, ErrorList errors, int newest, ImmutableArray<FormatStep> steps)
    {
        var reader = new CellReader(utf8, errors, steps);
        return reader.Document(utf8, newest);
    }

    private Cell? Document(ReadOnlySpan<byte> utf8, int newest)
    {
        if (!CheckVersion(utf8, newest)) return null;
        _json.Read();
        object cell = ReadObject(CellShape.Cell, "");
        _json.Read();
        CheckDriveUnits((Cell)cell);
        return _errors.Any ? null : (Cell)cell;
    }

    /// <summary>Looks for the version first: a document of another one would only give misleading errors.</summary>
    private bool CheckVersion(ReadOnlySpan<byte> utf8, int newest)
    {
        var ahead = _json;
        try
        {
            if (!ahead.Read() || ahead.TokenType != JsonTokenType.StartObject) return true;
            while (ahead.Read() && ahead.TokenType == JsonTokenType.PropertyName)
            {
                bool here = ahead.ValueTextEquals("trivet"u8);
                ahead.Read();
                if (!here)
                {
                    ahead.Skip();
                    continue;
                }

                long at = ahead.TokenStartIndex;
                if (ahead.TokenType != JsonTokenType.Number || !ahead.TryGetInt32(out int version))
                {
                    _errors.Add(at, "/trivet", "the format version is not a whole number", $"write \"trivet\": {newest}");
                    return true;
                }

                _version = version;
                if (version > newest)
                {
                    _errors.Add(at, "/trivet", $"this file has format version {version}; this Trivet reads up to {newest}", "open it with a newer Trivet; nothing was changed");
                    return false;
                }

                if (version < CellFormat.Oldest)
                {
                    _errors.Add(at, "/trivet", $"there is no format version {version}", $"write \"trivet\": {newest}");
                    return false;
                }

                return true;
            }

            _errors.Add(0, "/trivet", "the format version is missing", $"begin the document with \"trivet\": {newest}");
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // Broken before the version, or a name there holds half a character: the reading proper says where.
        }

        return true;
    }

    private object ReadObject(Shape shape, string pointer)
    {
        if (!IsObject(pointer, shape.Fields.Length > 0 ? $"write an object: {{ \"{shape.Fields[0].Name}\": … }}" : "write an object")) return shape.Empty;
        object value = shape.Empty;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (_json.Read() && _json.TokenType == JsonTokenType.PropertyName)
        {
            long at = _json.TokenStartIndex;
            string? name = Name(pointer, seen);
            _json.Read();
            // The version was read ahead; "$schema" names the schema for editors and is dropped like a comment.
            if (name is null || (pointer.Length == 0 && (name is "trivet" or "$schema")))
            {
                _json.Skip();
                continue;
            }

            string place = pointer + "/" + name;
            string nameNow = _version == CellFormat.Current && _steps.IsEmpty ? name : LastOf(CellFormat.MapPointer(place, _version, _steps));
            if (shape.Find(nameNow) is not { } field)
            {
                if (_errors.Full) _errors.Add(at, "", "", "");
                else Unknown(at, pointer, name, shape);
                _json.Skip();
                continue;
            }

            if (_json.TokenType == JsonTokenType.Null) continue;
            value = field switch
            {
                Leaf leaf => ReadLeaf(leaf, value, place),
                Section section => section.With(value, ReadObject(section.Shape, place)),
                Collection collection => collection.With(value, ReadCollection(collection, place)),
                _ => throw new InvalidOperationException($"unknown kind of field {field.Name}"),
            };
        }

        return value;
    }

    private List<KeyValuePair<string, object>> ReadCollection(Collection collection, string pointer)
    {
        var entries = new List<KeyValuePair<string, object>>();
        if (!IsObject(pointer, "write an object keyed by id: { \"an-id\": { … } }")) return entries;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (_json.Read() && _json.TokenType == JsonTokenType.PropertyName)
        {
            long at = _json.TokenStartIndex;
            string? id = Name(pointer, seen);
            _json.Read();
            if (id is null)
            {
                _json.Skip();
                continue;
            }

            if (!Ids.IsValid(id)) _errors.Add(at, pointer + "/" + Escaped(id), $"\"{Shown.Short(id)}\" is not an id", Ids.Remedy(id));
            if (_json.TokenType == JsonTokenType.Null) continue;
            entries.Add(KeyValuePair.Create(id, ReadObject(collection.Shape, pointer + "/" + Escaped(id))));
        }

        return entries;
    }

    /// <summary>The member's name; null (with the error listed) when it can not be read or was there before.</summary>
    private readonly string? Name(string pointer, HashSet<string> seen)
    {
        if (!TryText(out string name))
        {
            _errors.Add(_json.TokenStartIndex, pointer, "this name holds half a character (a lone surrogate)", "write the whole character");
            return null;
        }

        if (seen.Add(name)) return name;
        _errors.Add(_json.TokenStartIndex, pointer + "/" + Escaped(name), $"\"{Shown.Short(name)}\" is stated twice in one object", "keep one of the two");
        return null;
    }

    private object ReadLeaf(Leaf leaf, object owner, string pointer)
    {
        long at = _json.TokenStartIndex;
        string text = "";
        if (_json.TokenType == JsonTokenType.String && !TryText(out text))
        {
            _errors.Add(at, pointer, "this text holds half a character (a lone surrogate)", "write the whole character");
            return owner;
        }

        var (value, problem, remedy) = (leaf.Kind, _json.TokenType) switch
        {
            (FieldKind.Text, JsonTokenType.String) => (text, "", ""),
            (FieldKind.YesNo, JsonTokenType.True) => (true, "", ""),
            (FieldKind.YesNo, JsonTokenType.False) => (false, "", ""),
            (FieldKind.Whole, JsonTokenType.Number) => _json.TryGetInt32(out int whole) ? (whole, "", "") : (null, $"{Raw()} is not a whole number in range", "write a whole number such as 3"),
            (FieldKind.Choice, JsonTokenType.String) => LeafText.Read(leaf, text, leaf.Dimension).AsTuple,
            (FieldKind.Quantity, JsonTokenType.Number) when leaf.Dimension == Dimension.One =>
                _json.TryGetDouble(out double number) && double.IsFinite(number) ? (number, "", "") : ((object?)null, $"{Raw()} is too large", "write a number that a machine can have"),
            (FieldKind.Quantity, JsonTokenType.String) when leaf.Dimension != Dimension.One => Quantity(leaf, text, at, pointer),
            (FieldKind.Quantity, JsonTokenType.Number) => (null, $"{Raw()} has no unit, so it may mean anything",
                $"write it as text with its unit: \"{Raw()} {LeafText.UsualUnit(leaf)}\" (units that fit: {Files.Quantity.UnitsThatFit(leaf.Dimension)})"),
            _ => (null, $"{TokenWords()} stands where {LeafText.Wanted(leaf)} belongs", $"write it like {LeafText.Example(leaf)}"),
        };

        if (problem.Length == 0) return leaf.With(owner, value);
        _errors.Add(at, pointer, problem, remedy);
        _json.Skip();
        return owner;
    }

    private readonly (object?, string, string) Quantity(Leaf leaf, string text, long at, string pointer)
    {
        var read = Files.Quantity.Parse(text, leaf.Dimension);
        if (read.Ok && DriveUnits.Either(leaf.Dimension)) _driveValues.Add((at, pointer, leaf.Dimension, read.Dimension));
        return read.Ok ? (read.Value, "", "") : (null, read.Problem, read.Remedy);
    }

    /// <summary>Length or angle of a drive's coordinate can be judged only once the robot's family is known.</summary>
    private readonly void CheckDriveUnits(Cell cell)
    {
        foreach (var (at, pointer, wanted, stated) in _driveValues)
        {
            var (problem, remedy) = LeafText.DriveUnitProblem(cell, pointer, wanted, stated);
            if (problem.Length > 0) _errors.Add(at, pointer, problem, remedy);
        }
    }

    private bool IsObject(string pointer, string remedy)
    {
        if (_json.TokenType == JsonTokenType.StartObject) return true;
        _errors.Add(_json.TokenStartIndex, pointer, $"{TokenWords()} stands where an object belongs", remedy);
        _json.Skip();
        return false;
    }

    private readonly void Unknown(long at, string pointer, string name, Shape shape)
    {
        var names = shape.Fields.Select(f => f.Name);
        string remedy = Nearest.To(name, names) is { } near ? $"\"{near}\" is meant?" : $"fields here: {string.Join(", ", names)}";
        _errors.Add(at, pointer + "/" + Escaped(name), $"there is no field \"{Shown.Short(name)}\" here", remedy);
    }

    /// <summary>The text of a name or value; false for escapes that make no character.</summary>
    private readonly bool TryText(out string text)
    {
        try
        {
            text = _json.GetString() ?? "";
            return true;
        }
        catch (InvalidOperationException)
        {
            text = "";
            return false;
        }
    }

    private readonly string Raw() => Shown.Short(Encoding.UTF8.GetString(_json.ValueSpan[..Math.Min(_json.ValueSpan.Length, 60)]));

    private readonly string TokenWords() => _json.TokenType switch
    {
        JsonTokenType.StartObject => "an object",
        JsonTokenType.StartArray => "a list",
        JsonTokenType.String => "a text",
        JsonTokenType.Number => "a number",
        JsonTokenType.True or JsonTokenType.False => "true or false",
        _ => "null",
    };

    private static string LastOf(string pointer) => pointer[(pointer.LastIndexOf('/') + 1)..];

    /// <summary>A name as a pointer holds it (RFC 6901), cut where it is absurdly long.</summary>
    private static string Escaped(string name) =>
        (name.Length > 80 ? Shown.Short(name) : name).Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
