using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Protecting;

/// <summary>Distances and gaps of ISO 13855, 13857 and 13854, millimetres in the tables as in the standards, metres outside.</summary>
public static class GuardTables
{
    /// <summary>A guard lower than this needs extra measures (ISO 13857, 4.2.2).</summary>
    public const double LowestFence = 1.4;

    /// <summary>Largest open height below a guard, as a slot (ISO 13857, lower limbs).</summary>
    public const double LargestFloorGap = 0.18;

    private static readonly int[] FenceHeights = [1000, 1200, 1400, 1600, 1800, 2000, 2200, 2400, 2500, 2700];

    // ISO 13857 table 2, high risk: height of the place of danger, then the distance for each height of the guard above. Rows in part seen in a reproduction, the
    // rest from memory.
    private static readonly int[][] Over =
    [
        [0, 1100, 500, 0, 0, 0, 0, 0, 0, 0, 0],
        [200, 1200, 900, 0, 0, 0, 0, 0, 0, 0, 0],
        [400, 1400, 1200, 400, 0, 0, 0, 0, 0, 0, 0],
        [600, 1400, 1300, 800, 0, 0, 0, 0, 0, 0, 0],
        [800, 1500, 1300, 900, 600, 0, 0, 0, 0, 0, 0],
        [1000, 1500, 1400, 1000, 800, 0, 0, 0, 0, 0, 0],
        [1200, 1500, 1400, 1100, 900, 700, 0, 0, 0, 0, 0],
        [1400, 1500, 1400, 1100, 900, 800, 0, 0, 0, 0, 0],
        [1600, 1500, 1400, 1100, 900, 800, 500, 0, 0, 0, 0],
        [1800, 1500, 1400, 1100, 900, 800, 600, 0, 0, 0, 0],
        [2000, 1400, 1300, 1100, 900, 800, 600, 400, 0, 0, 0],
        [2200, 1300, 1200, 1000, 900, 800, 600, 400, 300, 0, 0],
        [2400, 1100, 1000, 900, 800, 700, 600, 400, 300, 100, 0],
        [2600, 900, 800, 700, 600, 600, 500, 400, 300, 100, 0],
        [2700, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    ];

    // ISO 13857 table 4: largest opening, then distances for slot, square, round. From memory; 40 mm square seen in a reproduction.
    private static readonly int[][] Through =
    [
        [4, 2, 2, 2], [6, 10, 5, 5], [8, 20, 15, 5], [10, 80, 25, 20], [12, 100, 80, 80], [20, 120, 120, 120], [30, 850, 120, 120], [40, 850, 200, 120], [120, 850, 850, 850],
    ];

    // ISO 13854 table 1, in the order of the parts of the body.
    private static readonly int[] Gaps = [500, 300, 180, 120, 50, 120, 100, 25];

    /// <summary>
    /// How far an arm reaches over a guard to a place of danger anywhere between two heights, metres; not a number below the lowest guard of the table. Not
    /// interpolated: between two guards the lower one counts, and between two heights of danger the one that asks for more.
    /// </summary>
    public static double ReachOver(double fence, double lowest, double highest)
    {
        int column = Array.FindLastIndex(FenceHeights, h => h <= 1000 * fence + 1e-6);
        if (column < 0) return double.NaN;
        double most = 0;
        for (int i = 0; i < Over.Length; i++)
        {
            double below = i == 0 ? double.NegativeInfinity : Over[i - 1][0], above = i + 1 == Over.Length ? double.PositiveInfinity : Over[i + 1][0];
            // A row speaks for all heights up to its neighbours.
            if (below < 1000 * highest && above > 1000 * lowest) most = Math.Max(most, Over[i][column + 1]);
        }
        return most / 1000;
    }

    /// <summary>How far somebody reaches through an opening, metres; infinite for one that lets more than an arm through.</summary>
    public static double ReachThrough(OpeningShape shape, double size)
    {
        var row = Array.Find(Through, r => 1000 * size <= r[0] + 1e-9);
        return row is null ? double.PositiveInfinity : row[1 + (int)shape] / 1000.0;
    }

    public static double SmallestGap(BodyPart part) => Gaps[(int)part] / 1000.0;

    /// <summary>Lowest height of a field that people go along with their legs in it, metres: H ≥ 15·(d − 50 mm) (ISO 13855:2010, from memory); a lower one passes
    /// over what it should see.</summary>
    public static double LowestField(double resolution) => Math.Max(0, 15 * (resolution - 0.05));

    /// <summary>
    /// Distance of a device from the nearest place of danger by ISO 13855:2010, metres; not a number where the edition's formula on record does not reach (a
    /// resolution above 70 mm, a field above 1 m). Straight through the field (6.2.3): 2000 mm/s·T + 8·(d − 14), at least 100 mm; where that is above
    /// 500 mm, with 1600 mm/s, at least 500 mm; for d above 40 up to 70 mm 1600 mm/s·T + 850 mm. Along the field: 1600 mm/s·T + 1200 mm − 0.4·H, the
    /// last two at least 850 mm.
    /// </summary>
    /// <param name="time">T: from the interruption until what moves has stopped, seconds.</param>
    public static double Device(ApproachDirection approach, double time, double resolution, double fieldHeight)
    {
        double t = 1000 * time, d = 1000 * resolution;
        if (approach == ApproachDirection.Parallel)
            return fieldHeight > 1 || double.IsNaN(fieldHeight) ? double.NaN : (1.6 * t + Math.Max(850, 1200 - 400 * fieldHeight)) / 1000;
        if (d > 70 || double.IsNaN(d)) return double.NaN;
        if (d > 40) return (1.6 * t + 850) / 1000;
        double supplement = Math.Max(0, 8 * (d - 14)), near = Math.Max(100, 2 * t + supplement);
        return (near > 500 ? Math.Max(500, 1.6 * t + supplement) : near) / 1000;
    }
}
