using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files.Floor;
using Trivet.Views.Floor;

namespace Trivet.Desk.Sync;

/// <summary>A bundle as it is sent.</summary>
/// <param name="Hash">SHA-256 of the bytes, hexadecimal: a page that has it need not be sent them again.</param>
internal sealed record ShelvedBundle(byte[] Utf8, string Hash);

/// <summary>
/// The bundle last made of each cell. Making one takes a second, mostly for its pictures, and every tablet asks for it at every start; it only changes
/// with the cell's newest revision and with the revisions that the journal names.
/// </summary>
internal sealed class BundleShelf(Assessor assessor)
{
    private readonly ConcurrentDictionary<string, (string Of, Lazy<Task<ShelvedBundle>> Made)> _made = new(StringComparer.Ordinal);

    /// <param name="revision">Hash of <paramref name="head"/>.</param>
    /// <param name="earlier">Revisions that entries name, by their hash.</param>
    public Task<ShelvedBundle> OfAsync(string cellId, Cell head, string revision, ImmutableDictionary<string, Cell> earlier)
    {
        string of = string.Join(' ', earlier.Keys.Order(StringComparer.Ordinal).Prepend(revision));
        // Who asks while it is being made waits for the same one; one that could not be made is tried anew.
        return _made.AddOrUpdate(cellId, _ => New(), (_, had) => had.Of == of && !(had.Made.IsValueCreated && had.Made.Value.IsFaulted) ? had : New()).Made.Value;

        (string, Lazy<Task<ShelvedBundle>>) New() => (of, new(() => Task.Run(() =>
        {
            byte[] utf8 = Encoding.UTF8.GetBytes(FloorBundleFile.Write(FloorBundles.Of(cellId, head, assessor, earlier)));
            return new ShelvedBundle(utf8, Convert.ToHexStringLower(SHA256.HashData(utf8)));
        })));
    }
}
