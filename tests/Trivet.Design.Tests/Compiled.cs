using System.Reflection;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;
using Architecture = ArchUnitNET.Domain.Architecture;
using Assembly = System.Reflection.Assembly;

namespace Trivet.Design.Tests;

/// <summary>The compiled code of Trivet as its IL shows it: bodies, lambdas, iterators and state machines included.</summary>
internal static class Compiled
{
    /// <summary>Every assembly of Trivet that is shipped, by the name of its project.</summary>
    public static IReadOnlyDictionary<string, Assembly> Projects { get; } = new SortedDictionary<string, Assembly>(StringComparer.Ordinal)
    {
        ["Numerics"] = Assembly.Load("Trivet.Numerics"),
        ["Core"] = Assembly.Load("Trivet.Core"),
        ["Files"] = Assembly.Load("Trivet.Files"),
        ["Views"] = Assembly.Load("Trivet.Views"),
        ["Store"] = Assembly.Load("Trivet.Store"),
        ["Papers"] = Assembly.Load("Trivet.Papers"),
        ["Desk"] = Assembly.Load("Trivet.Desk"),
        ["Floor"] = Assembly.Load("Trivet.Floor"),
        ["Cli"] = Assembly.Load("trivet"),
    };

    private static readonly Lazy<Architecture> All = new(() => new ArchLoader().LoadAssemblies([.. Projects.Values, typeof(Compiled).Assembly]).Build());

    /// <summary>All types of one assembly, those the compiler made for its own use left out.</summary>
    public static IEnumerable<IType> Types(Assembly assembly) =>
        All.Value.Types.Where(t => AssemblyOf(t) == assembly.GetName().Name && !t.IsCompilerGenerated);

    /// <summary>All types in a namespace of Trivet.Core, those nested or below it included.</summary>
    public static IEnumerable<IType> Folder(string folder) =>
        Types(Projects["Core"]).Where(t => FolderOf(t) == folder);

    /// <summary>The folder of Core a type lives in; null for other types.</summary>
    public static string? FolderOf(IType type)
    {
        if (AssemblyOf(type) != "Trivet.Core") return null;
        string[] parts = type.Namespace.FullName.Split('.');
        return parts is ["Trivet", var folder, ..] ? folder : null;
    }

    /// <summary>Null for what belongs to none, such as a pointer to a function.</summary>
    public static string? AssemblyOf(IType type) => type.Assembly is { } assembly ? assembly.Name : null;

    /// <summary>Every use of another type, as "who uses what".</summary>
    public static IEnumerable<(string User, IType Used)> Uses(IType type) =>
        from d in type.Dependencies select (d is IMemberTypeDependency m ? $"{type.FullName}.{m.OriginMember.Name}" : type.FullName, d.Target);

    /// <summary>Every member called or accessed, as "Namespace.Type::Member".</summary>
    public static IEnumerable<(string User, string Member)> Calls(IType type) =>
        from d in type.Dependencies.OfType<MethodCallDependency>()
        select ($"{type.FullName}.{d.OriginMember.Name}", $"{d.Target.FullName}::{NameOf(d.TargetMember)}");

    private static string NameOf(IMember member)
    {
        int bracket = member.Name.IndexOf('(', StringComparison.Ordinal);
        return (bracket < 0 ? member.Name : member.Name[..bracket]) + (member.Name.EndsWith("()", StringComparison.Ordinal) ? "()" : "");
    }
}
