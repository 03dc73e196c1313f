using Xunit;

namespace Trivet.Design.Tests;

/// <summary>How the desk compares secrets, seen in the compiled code: a test of time would measure the machine.</summary>
public sealed class SecretsTests
{
    private const string Folder = "Trivet.Desk.Access.";

    [Fact]
    public void Secrets_are_compared_in_fixed_time_and_in_one_place()
    {
        var calls = Compiled.Types(Compiled.Projects["Desk"]).Where(t => t.FullName.StartsWith(Folder, StringComparison.Ordinal)).SelectMany(Compiled.Calls).Distinct().ToList();
        Assert.Contains(calls, c => c.User.StartsWith(Folder + "Secrets.Same", StringComparison.Ordinal) && c.Member.Contains("CryptographicOperations::FixedTimeEquals", StringComparison.Ordinal));
        foreach (string keeper in new[] { "PairingCodes", "DeviceKeys" })
        {
            var own = calls.Where(c => c.User.StartsWith(Folder + keeper, StringComparison.Ordinal)).Select(c => c.Member).ToList();
            Assert.Contains(own, m => m.Contains("Secrets::Same", StringComparison.Ordinal));
            Assert.DoesNotContain(own, m => m.Contains("String::op_Equality", StringComparison.Ordinal) || m.Contains("String::Equals", StringComparison.Ordinal));
        }
    }
}
