using Trivet.Findings;

namespace Trivet.Settings;

/// <summary>Why parameters of the controller stay open or can not be as stated.</summary>
public static class SettingReasons
{
    public static Reason NoSettings { get; } = new("settings.none");
    public static Reason NoSuchChain { get; } = new("settings.no-such-chain");
    public static Reason NoSuchAxis { get; } = new("settings.no-such-axis");
    public static Reason NoSuchModule { get; } = new("settings.no-such-module");
    public static Reason NoSuchMessage { get; } = new("settings.no-such-message");
    public static Reason NoSuchCycle { get; } = new("settings.no-such-cycle");
    /// <summary>Axes differ, so the parameter has to say whose it is.</summary>
    public static Reason NotTheSame { get; } = new("settings.not-the-same");
    public static Reason PerUnit { get; } = new("settings.per-unit");
    public static Reason Step { get; } = new("settings.step");
    public static Reason Digits { get; } = new("settings.digits");
    public static Reason NotAxis { get; } = new("settings.not-of-axis");
    public static Reason NoLimit { get; } = new("settings.no-limit");
    public static Reason NoNumber { get; } = new("settings.no-number");
    public static Reason SameName { get; } = new("settings.same-name");
    public static Reason NoTolerance { get; } = new("settings.no-tolerance");
    public static Reason NoHold { get; } = new("settings.nothing-held");
}
