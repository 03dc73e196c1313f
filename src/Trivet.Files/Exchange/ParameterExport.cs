using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Settings;

namespace Trivet.Files.Exchange;

/// <summary>What became of reading an export: its parameters, or why there are none.</summary>
public sealed record ExportRead(ImmutableArray<FoundParameter> Parameters, ImmutableArray<FileError> Errors);

/// <summary>
/// Reads the parameters that a controller wrote, by the mapping of the cell: no maker's form is known here. Bounded in size, number, length and depth, and linear in the
/// file; XML without document types, entities or anything fetched. A file with an error gives no parameters, since half an export compares as if the rest were missing.
/// </summary>
public static class ParameterExport
{
    public const int LargestFile = 8 << 20, MostParameters = 50_000, LongestText = 4000, Deepest = 64;
    internal const int MostErrors = 20;

    private const string At = "/controller/export";

    private static readonly UTF8Encoding Strict = new(false, true);

    /// <param name="name">What the file is called, for the errors.</param>
    public static ExportRead Read(byte[] file, ControllerMapping controller, string name)
    {
        var gathered = new Gathered(name, controller.DecimalComma == true);
        var mapping = controller.Export;
        if (file.Length > LargestFile) gathered.Wrong(1, 1, "", $"it is larger than {LargestFile >> 20} MB", "export the parameters alone");
        else if (mapping.Form is not { } form) gathered.Wrong(1, 1, At + "/form", "nothing says how an export of this controller is read", "state the form and what belongs to it");
        else if (Lacking(mapping, form) is { Length: > 0 } lacking) gathered.Wrong(1, 1, $"{At}/{lacking}", "an export of this form is not read without it", "state it");
        else if (form == ExportForm.Xml) ParameterTrees.Xml(file, mapping, gathered);
        else if (Decoded(file, mapping.Encoding ?? ExportEncoding.Utf8) is not { } text)
            gathered.Wrong(1, 1, "", "it is not written in UTF-8", $"state {At}/encoding, or export it in UTF-8");
        else if (form == ExportForm.Json) ParameterTrees.Json(text, mapping, gathered);
        else ParameterLines.Read(text, mapping, gathered);
        return gathered.Done();
    }

    private static string Lacking(ExportMapping mapping, ExportForm form) => form switch
    {
        ExportForm.Columns when string.IsNullOrEmpty(mapping.Separator) => "separator",
        ExportForm.Columns when mapping.NameColumn is not >= 1 => "nameColumn",
        ExportForm.Columns when mapping.ValueColumn is not >= 1 => "valueColumn",
        ExportForm.Columns when mapping.GroupColumn is < 1 => "groupColumn",
        ExportForm.Pairs when string.IsNullOrEmpty(mapping.Separator) => "separator",
        _ => "",
    };

    private static string? Decoded(byte[] file, ExportEncoding encoding)
    {
        ReadOnlySpan<byte> bytes = file;
        try
        {
            if (bytes.StartsWith<byte>([0xFF, 0xFE])) return Encoding.Unicode.GetString(bytes[2..]);
            if (bytes.StartsWith<byte>([0xFE, 0xFF])) return Encoding.BigEndianUnicode.GetString(bytes[2..]);
            if (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) return Strict.GetString(bytes[3..]);
            return encoding == ExportEncoding.Latin1 ? Encoding.Latin1.GetString(bytes) : Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    /// <summary>A number with the sign for decimals that the controller writes; a whole number may be hexadecimal as 0x1F. No blanks or signs between thousands.</summary>
    internal static double Number(string text, bool decimalComma)
    {
        const int Longest = 60;
        string t = text.Trim();
        if (t.Length is 0 or > Longest) return double.NaN;
        if (t.StartsWith("0x", StringComparison.OrdinalIgnoreCase))
            return long.TryParse(t.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out long whole) && whole >= 0 ? whole : double.NaN;
        char sign = decimalComma ? ',' : '.';
        foreach (char c in t) if (!char.IsAsciiDigit(c) && c != sign && c is not ('+' or '-' or 'e' or 'E')) return double.NaN;
        return double.TryParse(decimalComma ? t.Replace(',', '.') : t, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value) ? value : double.NaN;
    }

    /// <summary>Parameters and errors as they are found.</summary>
    internal sealed class Gathered(string file, bool decimalComma)
    {
        private readonly ImmutableArray<FoundParameter>.Builder _found = ImmutableArray.CreateBuilder<FoundParameter>();
        private readonly ImmutableArray<FileError>.Builder _errors = ImmutableArray.CreateBuilder<FileError>();
        private readonly Dictionary<string, int> _times = new(StringComparer.Ordinal);

        /// <summary>No more is looked at: what follows would only repeat it.</summary>
        public bool Full => _errors.Count >= MostErrors;

        public void Wrong(int line, int column, string pointer, string problem, string remedy) => _errors.Add(new(file, line, column, pointer, problem, remedy));

        /// <param name="point">The number is written with a point whatever the controller shows: a number of JSON.</param>
        public void Add(string name, string value, int line, bool point = false)
        {
            name = name.Trim();
            value = value.Trim();
            if (Full) return;
            if (name.Length == 0) Wrong(line, 1, "", "a parameter has no name", $"see that {At} tells where names stand");
            else if (name.Length > LongestText || value.Length > LongestText) Wrong(line, 1, "", $"a name or value is longer than {LongestText} characters", $"see that {At} tells where names and values stand");
            else if (_found.Count >= MostParameters)
            {
                Wrong(line, 1, "", $"it has more than {MostParameters} parameters", "export fewer at a time");
                while (!Full) Wrong(line, 1, "", "more than can be told", "mend those above first");
            }
            else
            {
                int times = _times[name] = _times.GetValueOrDefault(name) + 1;
                string own = times == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}#{times}");
                _found.Add(new(own, value, Number(value, decimalComma && !point)));
            }
        }

        public ExportRead Done()
        {
            if (_errors.Count == 0 && _found.Count == 0) Wrong(1, 1, "", "no parameter was found in it", $"see that {At} goes with this file");
            // A name that ends like a repeated one must not be taken for it.
            if (_errors.Count == 0 && _found.Select(f => f.Name).Distinct(StringComparer.Ordinal).Count() != _found.Count) Wrong(1, 1, "", "two parameters have the same name", "export them apart");
            return _errors.Count > 0 ? new([], _errors.ToImmutable()) : new(_found.ToImmutable(), []);
        }
    }
}
