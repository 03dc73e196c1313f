using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Wiring;

/// <summary>The modules as plain outlines in their order along the rail, each with its number, name, planned address and what its switches read.</summary>
public static class CabinetStrip
{
    private const double Page = 980, Left = 14, Top = 46, Tall = 190;

    /// <summary>What an outline is drawn as wide as where no width is stated, metres.</summary>
    private const double Unstated = 0.045;

    /// <param name="link">Where a module's outline leads; nowhere where not given.</param>
    public static Drawing Of(WiringSheet sheet, Locale? locale = null, Func<string, string>? link = null)
    {
        var words = (locale ?? Locale.English).Language.Wiring;
        var page = new Sheet($"{words.Strip}: {sheet.Title}", Locale.Fill(words.StripDescription, ("cell", sheet.Title)), Page, Top + Tall + 74);
        double total = sheet.Modules.Sum(m => m.Gap + Width(m)), scale = total > 0 ? Math.Min((Page - 2 * Left) / total, 3000) : 0, x = Left;
        // The rail they stand on.
        page.Line(Left - 8, Top + Tall / 2, Math.Min(Page - 4, Left + total * scale + 8), Top + Tall / 2, "c");
        foreach (var module in sheet.Modules)
        {
            x += module.Gap * scale;
            double width = Width(module) * scale, middle = x + width / 2;
            if (link is not null) page.OpenLink(link(module.Id));
            page.Open(("class", "module"), ("data-pointer", $"/cabinet/modules/{module.Id}"));
            page.Tooltip($"{module.Place} {module.Name}{(module.SetBy.Length > 0 ? $": {module.Planned}, {module.SetBy}" : "")}");
            page.Rectangle(new(x, Top, width, Tall), double.IsNaN(module.Width) ? "w p h" : "w p");
            page.Text(middle, Top - 8, module.Place.ToString(System.Globalization.CultureInfo.InvariantCulture), 12, module.Moves ? "a" : "s", Anchor.Middle);
            page.Text(middle + 4, Top + Tall - 10, Fitted(module.Name, 13, Tall - 66), 13, "", Anchor.Start, upright: true);
            if (module.Planned is { } address)
            {
                page.Text(middle, Top + 22, address.ToString(System.Globalization.CultureInfo.InvariantCulture), 16, module.Changes ? "a" : "k", Anchor.Middle);
                page.Line(x, Top + 32, x + width, Top + 32, "d");
            }
            Switches(page, module, middle, width);
            if (module.Changes) page.Text(middle, Top + Tall + 62, module.Address is { } was ? $"{was} →" : "→", 11, "a", Anchor.Middle);
            page.Close();
            if (link is not null) page.CloseLink();
            x += width;
        }
        return page.Finish();
    }

    private static double Width(WiringRow module) => double.IsFinite(module.Width) && module.Width > 0 ? module.Width : Unstated;

    /// <summary>Below the outline: a square with a digit for each rotary switch, a lever up or down for each lever.</summary>
    private static void Switches(Sheet page, WiringRow module, double middle, double width)
    {
        int n = module.Digits.Length;
        if (n == 0) return;
        bool levers = !module.LeversUp.IsEmpty;
        double size = Math.Min(levers ? 10 : 18, (width - 6) / n), x = middle - n * size / 2, y = Top + Tall + 10;
        for (int i = 0; i < n; i++, x += size)
        {
            if (levers)
            {
                bool on = module.LeversUp[i];
                page.Rectangle(new(x + 1, y, size - 2, 26), "d");
                page.Rectangle(new(x + 1, on ? y : y + 13, size - 2, 13), "f");
            }
            else
            {
                page.Rectangle(new(x + 1, y, size - 2, 22), "b");
                page.Text(x + size / 2, y + 16, module.Digits[i], 13, "k", Anchor.Middle);
            }
        }
    }

    private static string Fitted(string text, double size, double room)
    {
        while (text.Length > 2 && TextMetrics.Width(text, size) > room) text = text[..^2].TrimEnd() + "…";
        return text;
    }
}
