using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Settings;
using Trivet.Views.Cabinets;
using Trivet.Views.Words;

namespace Trivet.Views.Settings;

/// <summary>The parameters of the controller in finished texts: what is to be typed, what it holds, what its rounding costs.</summary>
public static class SettingSections
{
    public const string Id = "settings";

    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        if (cell.Controller.Settings.IsEmpty) return [];
        var words = (locale ?? Locale.English).Language.Setting;
        var planned = SettingInputs.Read(cell);
        bool comma = cell.Controller.DecimalComma == true;
        var judged = SettingStage.Of(cell).Findings.OfType<Judged>().ToDictionary(f => f.Subject.Pointer);
        string[] open = [.. cell.Controller.Settings.InOrder().Where(s => !planned.Any(p => p.Id == s.Key)).Select(s => s.Value.Name ?? s.Key)];
        ImmutableArray<Fact> facts = open.Length == 0 ? [] : [new("not-computed", words.List, Locale.Fill(words.NotComputed, ("names", string.Join(", ", open))), open.Length, "1")];
        return
        [
            new(Id, words.Title, words.Cautions, facts,
            [
                new(Id, words.List,
                    [
                        new("parameter", words.HeadParameter), new("where", words.HeadWhere), new("typed", words.HeadTyped, "1"), new("unit", words.HeadUnit), new("holds", words.HeadHolds),
                        new("plan", words.HeadPlan), new("rounding", words.HeadOff), new("costs", words.HeadCosts),
                    ],
                    [
                        .. planned.Select(p => ImmutableArray.Create<Entry>(
                            new(p.Name), new(p.Stated.Where ?? "–"), new(SettingTexts.Typed(p, comma), p.Typed), new(SettingTexts.Unit(cell, p, words)), new(SettingTexts.Holds(cell, p.Stated, locale)),
                            new(SettingTexts.Planned(p.Plan, p.SiUnit, locale)), new(p.Held ? Off(p) : "–"), new(Costs(judged.GetValueOrDefault(p.Pointer))))),
                    ],
                    [.. planned.Select(p => p.Pointer)]),
            ],
            [.. SettingRules.Rules.Select(r => r.Id)]),
        ];

        // In the controller's own numbers, beside which it stands.
        string Off(PlannedSetting p) => p.Off == 0 ? "0" : Numbers.Plain(p.Typed - p.Scale.Shown(p.Plan), p.Decimals + 2, locale);

        string Costs(Judged? finding) => finding is null || finding.Value == 0 ? "–"
            : finding.Rule == SettingRules.Accuracy ? Locale.Fill(words.MovesTool, ("distance", Numbers.Quantity(finding.Value, "m", locale)))
            : Locale.Fill(words.ShareUsed, ("share", Numbers.Percent(finding.Value, locale)));
    }
}
