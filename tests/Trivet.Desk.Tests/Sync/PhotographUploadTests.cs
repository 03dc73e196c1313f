using System.Net;
using System.Security.Cryptography;
using Trivet.Desk.Access;
using Trivet.Files.Entries;
using Trivet.Files.Floor;
using Trivet.Journal;
using Trivet.Store;
using Trivet.Testing;

namespace Trivet.Desk.Sync;

/// <summary>A photograph on its way from a device to the store, over the network.</summary>
public sealed class PhotographUploadTests : IAsyncLifetime
{
    private static readonly byte[] Picture = File.ReadAllBytes(ReferenceData.Path(Path.Combine("pictures", "progressive.jpg")));

    private NetworkDesk _desk = null!;

    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _desk = await NetworkDesk.StartAsync();

    public ValueTask DisposeAsync() => _desk.DisposeAsync();

    [Fact]
    public async Task A_sound_picture_is_kept_under_its_hash_in_the_name_of_who_signed_in_and_may_be_sent_again()
    {
        var client = await _desk.SignedInAsync("eve", Role.Look, Role.Record);
        for (int time = 0; time < 2; time++) Assert.Equal(HttpStatusCode.NoContent, (await PutAsync(client, Picture)).Status);
        var kept = (await _desk.Store.PhotographAsync(Hash(Picture), Stop))!;
        Assert.Equal(Picture, kept.Content);
        Assert.Equal("eve", kept.By.Person);
    }

    [Fact]
    public async Task What_is_no_bare_picture_or_has_another_hash_is_refused_with_the_reason_and_not_kept()
    {
        var client = await _desk.SignedInAsync("eve", Role.Look, Role.Record);
        byte[] behind = [.. Picture, .. "hidden"u8], cut = Picture[..^2], place = [.. Picture[..2], 0xFF, 0xE1, 0, 8, .. "Exif\0\0"u8, .. Picture[2..]];
        foreach (var (bytes, why) in ((byte[], string)[])[(behind, "behind the picture"), (cut, "damaged"), (place, "tells more"), ([], "no JPEG")])
        {
            var (status, text) = await PutAsync(client, bytes);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
            Assert.Contains(why, text, StringComparison.Ordinal);
            Assert.Null(await _desk.Store.PhotographAsync(Hash(bytes), Stop));
        }
        string other = new('0', 64);
        Assert.Contains("does not have the hash", (await PutAsync(client, Picture, other)).Text, StringComparison.Ordinal);
        Assert.Null(await _desk.Store.PhotographAsync(other, Stop));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await PutAsync(client, [.. Picture, .. new byte[JobStore.LargestPhotograph]])).Status);
    }

    [Fact]
    public async Task One_that_was_erased_is_not_kept_again_and_the_device_need_not_send_it_again()
    {
        var client = await _desk.SignedInAsync("eve", Role.Look, Role.Record);
        await PutAsync(client, Picture);
        var erased = new WritingDevice("tablet-1").Write(new Erased(Hash(Picture), "shows a person"));
        Assert.IsType<AppendOutcome.Received>(Assert.Single(await _desk.Store.AppendAsync([new Arrival(EntryText.Of(erased.Entry))], DateTimeOffset.UtcNow, Stop)));
        Assert.Equal(HttpStatusCode.NoContent, (await PutAsync(client, Picture)).Status);
        Assert.Null((await _desk.Store.PhotographAsync(Hash(Picture), Stop))!.Content);
    }

    [Fact]
    public async Task Who_may_not_record_sends_none()
    {
        var client = await _desk.SignedInAsync("eve", Role.Look);
        Assert.Equal(HttpStatusCode.Forbidden, (await PutAsync(client, Picture)).Status);
        Assert.Null(await _desk.Store.PhotographAsync(Hash(Picture), Stop));
    }

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static async Task<(HttpStatusCode Status, string Text)> PutAsync(HttpClient client, byte[] bytes, string? hash = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, $"{FloorApi.Root[1..]}/photographs/{hash ?? Hash(bytes)}") { Content = new ByteArrayContent(bytes) };
        request.Content.Headers.ContentType = new("image/jpeg");
        request.Headers.ExpectContinue = true;
        request.Headers.Add("RequestVerificationToken", (await NetworkDesk.MeAsync(client)).GetProperty("token").GetString());
        using var answer = await client.SendAsync(request, Stop);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }
}
