using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Settings;
using Trivet.Views.Answers;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Settings;

/// <summary>The list to be typed, and what became of an export or a backup, as text, Markdown, CSV and JSON; CSV and JSON are for programs (docs/output-json.md).</summary>
public static class SettingForms
{
    public const string Format = "trivet-settings";
    public const int Version = 1;

    public static string Text(Cell cell, ImmutableArray<Finding> findings, Locale? locale = null)
    {
        var sections = SettingSections.Of(cell, locale);
        if (sections.IsEmpty) return (locale ?? Locale.English).Language.Setting.NoSettings + "\n";
        var text = new StringBuilder(SettingTitle(cell, locale)).Append('\n').Append(SectionForms.Text(sections)).Append('\n');
        foreach (string sentence in NotHolding(cell, findings, locale)) text.Append("- ").Append(sentence).Append('\n');
        return text.ToString();
    }

    public static string Markdown(Cell cell, ImmutableArray<Finding> findings, Locale? locale = null)
    {
        var text = new StringBuilder("# ").Append(SettingTitle(cell, locale)).Append('\n').Append(SectionForms.Markdown(SettingSections.Of(cell, locale))).Append('\n');
        foreach (string sentence in NotHolding(cell, findings, locale)) text.Append("- ").Append(sentence).Append('\n');
        return text.ToString();
    }

    /// <summary>A parameter a row; plan, value and rounding in the SI unit that stands in the row.</summary>
    public static string Csv(Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        var text = new StringBuilder("id,parameter,where,key,quantity,of,typed,unit,plan,value,rounding,step,si\r\n");
        foreach (var p in SettingInputs.Read(cell))
        {
            text.AppendJoin(',', CsvCell.Harmless(p.Id), CsvCell.Harmless(p.Name), CsvCell.Harmless(p.Stated.Where ?? ""), CsvCell.Harmless(p.Key),
                CsvCell.Of(p.Stated.Quantity is { } q ? words.Quantities[(int)q] : ""), CsvCell.Harmless(p.Stated.Of ?? ""),
                p.Held ? SettingTexts.Typed(p, decimalComma: false) : CsvCell.Harmless(SettingTexts.Typed(p, false)), CsvCell.Harmless(SettingTexts.Unit(cell, p, words)),
                CsvCell.Of(p.Plan), CsvCell.Of(p.Held ? p.Value : double.NaN), CsvCell.Of(p.Held ? p.Off : double.NaN), CsvCell.Of(p.Held ? p.Step : double.NaN), CsvCell.Of(p.Held ? p.SiUnit : "")).Append("\r\n");
        }
        return text.ToString();
    }

    public static string Json(Cell cell, string revision, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        return JsonAnswer.Of(Format, Version, Name(cell, locale), revision, json =>
        {
            json.WriteStartArray("settings");
            foreach (var p in SettingInputs.Read(cell))
            {
                json.WriteStartObject();
                json.WriteString("id", p.Id);
                json.WriteString("parameter", p.Name);
                json.WriteString("key", p.Key);
                json.WriteString("where", p.Stated.Where ?? "");
                json.WriteString("quantity", p.Stated.Quantity is { } q ? words.Quantities[(int)q] : "");
                json.WriteString("of", p.Stated.Of ?? "");
                json.WriteString("typed", SettingTexts.Typed(p, cell.Controller.DecimalComma == true));
                json.WriteString("unit", SettingTexts.Unit(cell, p, words));
                json.WriteString("field", p.Field);
                json.WriteString("si", p.SiUnit);
                json.WriteFinite("plan", p.Plan);
                json.WriteFinite("number", p.Typed);
                json.WriteFinite("value", p.Held ? p.Value : double.NaN);
                json.WriteFinite("rounding", p.Held ? p.Off : double.NaN);
                json.WriteFinite("step", p.Held ? p.Step : double.NaN);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });
    }

    public static string Text(ExportSheet sheet)
    {
        var text = new StringBuilder(sheet.Title).Append('\n').Append(sheet.Verdict).Append('\n');
        foreach (string line in sheet.Lines) text.Append(line).Append('\n');
        return text.Append(SectionForms.Text([AsSection(sheet)])).ToString();
    }

    public static string Markdown(ExportSheet sheet)
    {
        var text = new StringBuilder("# ").Append(sheet.Title).Append("\n\n**").Append(sheet.Verdict).Append("**\n");
        foreach (string line in sheet.Lines) text.Append('\n').Append(line).Append('\n');
        return text.Append(SectionForms.Markdown([AsSection(sheet)])).ToString();
    }

    /// <summary>The parameters compared, or those that differ.</summary>
    public static string Csv(ExportSheet sheet) => SectionForms.Csv(sheet.Tables[^1]);

    public static string Json(ExportSheet sheet, Cell cell, string revision, Locale? locale = null) => JsonAnswer.Of(Format, Version, Name(cell, locale), revision, json =>
    {
        json.WriteString("what", sheet.Id);
        json.WriteBoolean("same", sheet.Good);
        json.WriteString("verdict", sheet.Verdict);
        json.WriteStartArray("lines");
        foreach (string line in sheet.Lines) json.WriteStringValue(line);
        json.WriteEndArray();
        SectionForms.Write(json, [AsSection(sheet)]);
    });

    public static string SettingTitle(Cell cell, Locale? locale = null) => $"{Name(cell, locale)}: {(locale ?? Locale.English).Language.Setting.Title}";

    private static string Name(Cell cell, Locale? locale) => cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell;

    private static Section AsSection(ExportSheet sheet) => new(sheet.Id, sheet.Title, [], [], sheet.Tables, []);

    private static IEnumerable<string> NotHolding(Cell cell, ImmutableArray<Finding> findings, Locale? locale) =>
        Ledger.Of(findings, []).Findings.Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open).Select(f => Sentences.Of(f, cell, locale));
}
