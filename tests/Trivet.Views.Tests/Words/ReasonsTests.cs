using System.Reflection;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Words;

public sealed class ReasonsTests
{
    /// <summary>Every reason that Trivet.Core gives: all public static properties of type Reason, wherever they stand.</summary>
    private static IReadOnlyList<Reason> All { get; } =
    [
        .. typeof(Reason).Assembly.GetExportedTypes().SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static))
            .Where(p => p.PropertyType == typeof(Reason)).Select(p => (Reason)p.GetValue(null)!),
    ];

    [Fact]
    public void Every_reason_has_words_and_no_words_are_left_of_a_reason_that_is_gone() =>
        Assert.Equal(All.Select(r => r.Id).Order(StringComparer.Ordinal), English.Language.Reasons.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void The_fields_a_reason_names_stand_in_its_sentence() => Assert.Equal(
        "The azimuths of chain a and chain b are the same; each chain needs its own.",
        Sentences.Of(RobotReasons.SameAzimuth.Naming("/robot/chains/a", "/robot/chains/b"), HandMade.Cell));
}
