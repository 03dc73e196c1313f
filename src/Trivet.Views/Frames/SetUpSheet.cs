using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Frames;
using Trivet.Views.Words;

namespace Trivet.Views.Frames;

/// <summary>Setting up in finished texts, in the rows of the frame's sheet: what was found, which foot to raise, what to measure next.</summary>
public static class SetUpSheet
{
    private const int NextShown = 3;

    /// <summary>What is measured, from where to where.</summary>
    public static string What(SetUpKind kind, string from, string to, Locale? locale = null) =>
        Locale.Fill((locale ?? Locale.English).Language.Frame.SetUpKinds[(int)kind], ("from", from), ("to", to));

    public static FrameSheet Of(Cell cell, SettingUp result, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Frame;
        var rows = ImmutableArray.CreateBuilder<FrameRow>();
        foreach (var q in result.Quantities)
        {
            string id = q.Corner.Length == 0 ? q.Id : $"{q.Id}:{q.Corner}:{q.Other}";
            string form = q.Within switch { true => words.SetUpWithin, false => words.SetUpBeyond, _ => words.SetUpDoubt };
            Add("set-up", words.SetUp, id, Locale.Fill(words.SetUpAsked[q.Id], ("corner", q.Corner), ("other", q.Other)), q.Value, "m/m", Slope(q.Value),
                Locale.Fill(form, ("doubt", Slope(2 * q.Uncertainty)), ("limit", Slope(q.Limit))));
        }

        foreach (var foot in result.Turns)
        {
            string known = foot.Raise == 0 ? words.SetUpHighest : Locale.Fill(
                foot.Leave ? words.SetUpLeave : cell.Frame.Feet.ThreadPitch is > 0 ? words.SetUpTurns : words.SetUpRaise, ("doubt", Length(2 * foot.Uncertainty)),
                ("turns", Numbers.Plain(foot.Raise / (cell.Frame.Feet.ThreadPitch ?? 1), 2, locale)),
                ("flats", Numbers.Plain(6 * foot.Raise / (cell.Frame.Feet.ThreadPitch ?? 1), 1, locale)));
            Add("feet", words.SetUpFeet, foot.Foot, foot.Foot, foot.Raise, "m", Length(foot.Raise), known);
        }

        foreach (var (next, i) in result.Next(NextShown).Select((n, i) => (n, i)))
        {
            Add("next", words.SetUpNext, $"next-{i + 1}:{next.Kind.ToString().ToLowerInvariant()}:{next.From}:{next.To}",
                What(next.Kind, next.From, next.To, locale), next.Left, "1", "",
                Locale.Fill(words.SetUpLeft, ("left", Numbers.Percent(next.Left, locale))));
        }

        return new(cell.Name ?? language.UnnamedCell, rows.ToImmutable());

        void Add(string group, string name, string id, string what, double value, string unit, string shown, string known) =>
            rows.Add(new(group, name, id, what, value, value, unit, shown, known));

        string Slope(double si) => Numbers.Plain(1000 * si, 2, locale) + " mm/m";

        string Length(double si) => Numbers.Plain(1000 * si, 2, locale) + " mm";
    }
}
