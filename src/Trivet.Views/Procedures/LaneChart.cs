using System.Globalization;
using Trivet.Procedures;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>
/// Who does what when: a row for each working day, a lane for each person, a box for each step. Only the numbers of the list stand in it, so that it needs no
/// translation. Plain is isolated, hatched is energised; a thick end is a hold point, a thick upper edge the longest way.
/// </summary>
public static class LaneChart
{
    private const double Day = 480, Left = 66, Right = 14, Lane = 30, Head = 30, Gap = 16, Size = 10.5;

    /// <param name="link">Where a step's box leads to.</param>
    public static Drawing Of(ProcedureSheet sheet, double width = 1100, Func<string, string>? link = null)
    {
        var labels = sheet.Words.Labels;
        int days = Math.Max(1, (int)Math.Ceiling(sheet.Schedule.Minutes / Day - 1e-9));
        double row = sheet.People * Lane + Head + Gap, scale = (width - Left - Right) / Day;
        var paper = new Sheet(labels.Lanes, sheet.Summary, width, days * row + 10);
        for (int d = 0; d < days; d++)
        {
            double top = d * row + Head;
            paper.Text(10, top - 8, Fill(labels.LaneDay, d + 1), 11.5, "k");
            for (int h = 0; h <= 8; h++)
            {
                double at = Left + h * 60 * scale;
                paper.Line(at, top - 4, at, top + sheet.People * Lane, "g");
                paper.Text(at, top - 8, (8 * d + h).ToString(CultureInfo.InvariantCulture) + (h == 0 ? " h" : ""), Size, "s", Anchor.Middle);
            }
            for (int p = 0; p < sheet.People; p++) paper.Text(Left - 10, top + p * Lane + Lane / 2 + 4, Fill(labels.LanePerson, p + 1), 11.5, "k", Anchor.End);
        }
        foreach (var step in sheet.Steps)
        {
            var plan = sheet.PlanOf(step.Step.Id);
            if (link is not null) paper.OpenLink(link(step.Step.Id));
            else paper.Open(("data-step", step.Step.Id));
            paper.Tooltip($"{step.Number} {step.Title}: {step.Energy}, {step.Minutes}");
            foreach (int person in plan.People)
                for (int d = (int)(plan.Begin / Day); d * Day < plan.End - 1e-9; d++)
                    Box(paper, sheet, step, d, d * row + Head + person * Lane, Left + (Math.Max(plan.Begin, d * Day) - d * Day) * scale, Left + (Math.Min(plan.End, (d + 1) * Day) - d * Day) * scale, plan.End <= (d + 1) * Day + 1e-9);
            if (link is not null) paper.CloseLink();
            else paper.Close();
        }
        return paper.Finish();
    }

    private static void Box(Sheet paper, ProcedureSheet sheet, WordedStep step, int day, double top, double left, double right, bool ends)
    {
        var box = new Drawings.Box(left, top + 2, Math.Max(right - left, 1), Lane - 4);
        bool powered = step.Step.Energy != EnergyLevel.Isolated;
        paper.Rectangle(box, powered ? "b" : "");
        // Hatching by lines, so that it prints and needs no colour.
        if (powered)
            for (double x = box.X - box.Height; x < box.Right; x += 5)
            {
                double from = Math.Max(x, box.X), to = Math.Min(x + box.Height, box.Right);
                if (to > from) paper.Line(from, box.Bottom - (from - x), to, box.Bottom - (to - x), "g");
            }
        if (sheet.Schedule.OnCriticalWay.Contains(step.Step.Id)) paper.Line(box.X, box.Y, box.Right, box.Y, "w");
        if (step.Step.HoldPoint && ends) paper.Line(box.Right, box.Y, box.Right, box.Bottom, "w");
        string number = step.Number.ToString(CultureInfo.InvariantCulture);
        if (TextMetrics.Width(number, Size) + 3 < box.Width) paper.Text(box.X + box.Width / 2, box.Y + box.Height / 2 + 4, number, Size, "k o", Anchor.Middle);
    }

    private static string Fill(string template, int number) => Locale.Fill(template, ("number", number.ToString(CultureInfo.InvariantCulture)));
}
