using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Settings;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Settings;

/// <summary>An export held against the plan, or a backup against what was read out, in finished texts.</summary>
/// <param name="Good">Nothing differs that may not.</param>
/// <param name="Verdict">That in a sentence.</param>
/// <param name="Lines">Counts, and what else is to be said.</param>
/// <param name="Tables">Differences first, or all that was compared; the files of a proof.</param>
public sealed record ExportSheet(string Id, string Title, bool Good, string Verdict, ImmutableArray<string> Lines, ImmutableArray<SheetTable> Tables)
{
    /// <summary>More names than this are counted only; programs get them all.</summary>
    private const int MostNamed = 12;

    public static ExportSheet Compared(Cell cell, ReadOut export, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        var comparison = ExportComparison.Of(cell, export.Parameters);
        bool comma = cell.Controller.DecimalComma == true;
        var lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(Locale.Fill(words.Counted, ("equal", N(comparison.Count(SettingMatch.Equal))), ("differs", N(comparison.Count(SettingMatch.Differs) + comparison.Count(SettingMatch.NoNumber))), ("missing", N(comparison.Count(SettingMatch.Missing)))));
        if (!comparison.NotComputed.IsEmpty) lines.Add(Locale.Fill(words.NotComputed, ("names", string.Join(", ", comparison.NotComputed.Select(id => cell.Controller.Settings[id].Name ?? id)))));
        if (!comparison.NotPlanned.IsEmpty)
            lines.Add(Locale.Fill(words.NotPlanned, ("count", N(comparison.NotPlanned.Length)), ("names", string.Join(", ", comparison.NotPlanned.Take(MostNamed).Select(p => p.Name)) + (comparison.NotPlanned.Length > MostNamed ? ", …" : "."))));
        var ordered = comparison.Settings.OrderBy(s => s.Match == SettingMatch.Equal).ToArray();
        return new(
            "export", Locale.Fill(words.Compared, ("file", export.File)), comparison.Same, comparison.Same ? words.Same : lines[0], [.. lines.Skip(1)],
            [
                new("compared", words.HeadParameters,
                    [
                        new("parameter", words.HeadParameter), new("result", words.HeadMatch), new("typed", words.HeadTyped, "1"), new("found", words.HeadFound, "1"), new("unit", words.HeadUnit), new("difference", words.HeadDifference),
                        new("then", words.HeadThen),
                    ],
                    [
                        .. ordered.Select(s => ImmutableArray.Create<Entry>(
                            new(s.Setting.Name), new(words.Matches[(int)s.Match]), new(SettingTexts.Typed(s.Setting, comma), s.Setting.Typed), new(s.Found?.Text ?? "–", s.Found?.Number ?? double.NaN),
                            new(SettingTexts.Unit(cell, s.Setting, words)), new(s.Match == SettingMatch.Equal || double.IsNaN(s.Difference) ? "–" : SettingTexts.Planned(s.Difference, s.Setting.SiUnit, locale)), new(Then(s)))),
                    ],
                    [.. ordered.Select(s => s.Setting.Pointer)]),
            ]);

        string Then(ComparedSetting s)
        {
            string typed = SettingTexts.Typed(s.Setting, comma);
            return s.Match switch
            {
                SettingMatch.Equal => "–",
                SettingMatch.Missing => words.LookForName,
                SettingMatch.Differs when s.Setting.Field.Length > 0 => Locale.Fill(words.TypeOrChange, ("typed", typed), ("field", Fields.Words(cell, s.Setting.Field, locale))),
                _ => Locale.Fill(words.TypeIt, ("typed", typed)),
            };
        }
    }

    public static ExportSheet Proof(Cell cell, ReadOut backup, ReadOut restored, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        var proof = RestoreProof.Of(backup.Parameters, restored.Parameters, cell.Controller.Export.Exceptions);
        string counted = Locale.Fill(words.ProofCounted, ("equal", N(proof.Equal)), ("different", N(proof.Differences.Length)), ("excepted", N(proof.Excepted)));
        ImmutableArray<ReadOut> files = [backup, restored];
        var ordered = proof.Differences.OrderBy(d => d.Excepted is not null).ToArray();
        return new(
            "restored", words.Proof, proof.RestoredEqual, proof.RestoredEqual ? words.RestoredEqual : words.NotRestored,
            backup.Hash == restored.Hash ? [counted, words.SameFile] : [counted],
            [
                new("files", words.HeadFile, [new("which", words.HeadWhich), new("file", words.HeadFile), new("parameters", words.HeadParameters, "1"), new("sha256", words.HeadHash)],
                    [.. files.Select((f, i) => ImmutableArray.Create<Entry>(new(i == 0 ? words.BackupFile : words.RestoredFile), new(f.File), new(N(f.Parameters.Length), f.Parameters.Length), new(f.Hash)))], ["/controller/export", "/controller/export"]),
                new("differences", words.Differences, [new("parameter", words.HeadParameter), new("before", words.HeadBefore), new("after", words.HeadAfter), new("because", words.HeadExcepted)],
                    [.. ordered.Select(d => ImmutableArray.Create<Entry>(new(d.Name), new(d.Before ?? words.NotThere), new(d.After ?? words.NotThere), new(d.Excepted is { } e ? e.Reason ?? e.Name! : words.NotExcepted)))],
                    [.. ordered.Select(_ => "/controller/export/exceptions")]),
            ]);
    }

    private static string N(int count) => count.ToString(CultureInfo.InvariantCulture);
}
