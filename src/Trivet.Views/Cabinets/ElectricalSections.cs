using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Views.Cabling;
using Trivet.Views.Settings;
using Trivet.Views.Stopping;
using Trivet.Views.Words;

namespace Trivet.Views.Cabinets;

/// <summary>All sections of the electrical sheet besides addresses and bus, in their order.</summary>
public static class ElectricalSections
{
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null) =>
    [
        .. CabinetSections.Of(cell, locale),
        .. PowerSections.Of(cell, locale),
        .. MotorFeedSection.Of(cell, locale),
        .. CableSections.Of(cell, locale),
        .. SignalSections.Of(cell, locale),
        .. SettingSections.Of(cell, locale),
        .. StopSections.Of(cell, locale),
        .. HazardSections.Of(cell, locale),
    ];
}
