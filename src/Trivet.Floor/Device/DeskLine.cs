using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Trivet.Files.Floor;

namespace Trivet.Floor.Device;

/// <summary>What became of signing in.</summary>
public enum SignInOutcome
{
    SignedIn,
    Wrong,
    Locked,
    NotPaired,
    NoDesk,
}

/// <summary>
/// The line to the desk: sends what waits, in order, fetches what others wrote, and tells where this device is. Anything may be cut at any
/// moment: what has no receipt is sent again, and the same entry gets the same receipt.
/// </summary>
public sealed class DeskLine(HttpClient desk, Session session, DeviceStore store, TimeProvider clock) : IDisposable
{
    private const string Api = "api/v1/";
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2), Patience = TimeSpan.FromSeconds(10);

    private readonly SemaphoreSlim _hurry = new(0, 1);
    private string _token = "";
    private long _best = long.MaxValue;

    public event Action? Changed;

    public bool Reached { get; private set; }

    /// <summary>The desk is there and wants someone to sign in.</summary>
    public bool SignInNeeded { get; private set; }

    /// <summary>The page came by the machine's own door, where nobody signs in.</summary>
    public bool AtTheDesk { get; private set; }

    public ImmutableArray<AtWork> Others { get; private set; } = [];

    /// <summary>How many still wait to be sent, and how many the desk has said it will not take.</summary>
    public (int Waiting, int Refused) Photographs { get; private set; }

    /// <summary>Step on the screen now, for the others to see.</summary>
    public string Step { get; set; } = "";

    /// <summary>Goes on until stopped; what fails is tried again.</summary>
    public async Task RunAsync(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            bool reached = true;
            try
            {
                if (session.Bundle is not null && session.Keeps && !session.Damaged) await ExchangeAsync(stop);
            }
            // No network, a cut in mid-request, no answer in time, or an answer that is not the desk's.
            catch (Exception e) when (e is HttpRequestException or TaskCanceledException or JsonException or IOException && !stop.IsCancellationRequested)
            {
                reached = false;
                _token = "";
            }
            if (!reached)
            {
                Others = [];
                if (session.Keeps) Photographs = (await store.PhotographsWaitingAsync(), Photographs.Refused);
            }
            Reached = reached;
            Changed?.Invoke();
            try
            {
                await _hurry.WaitAsync(Pause, stop);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    /// <summary>Does not wait for the next turn: there is something to send.</summary>
    public void Hurry()
    {
        if (_hurry.CurrentCount == 0) _hurry.Release();
    }

    public void Dispose() => _hurry.Dispose();

    public async Task<SignInOutcome> SignInAsync(string person, string pin)
    {
        try
        {
            await MeAsync(CancellationToken.None);
            using var body = JsonContent.Create(new SignInSent(person, pin), FloorJson.Default.SignInSent);
            using var answer = await SendAsync(HttpMethod.Post, "sign-in", body, CancellationToken.None);
            if (answer.IsSuccessStatusCode)
            {
                await MeAsync(CancellationToken.None);
                Hurry();
                return SignInOutcome.SignedIn;
            }
            using var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
            return problem.RootElement.GetProperty("problem").GetString() switch
            {
                "locked" => SignInOutcome.Locked,
                "notPaired" => SignInOutcome.NotPaired,
                _ => SignInOutcome.Wrong,
            };
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            return SignInOutcome.NoDesk;
        }
    }

    private async Task ExchangeAsync(CancellationToken stop)
    {
        if (_token.Length == 0) await MeAsync(stop);

        // Where everyone is, and whose clock says what.
        var at = new AtWork(session.Device, session.Person, Step);
        using var body = JsonContent.Create(at, FloorJson.Default.AtWork);
        long sent = clock.GetUtcNow().UtcTicks;
        using var answer = await SendAsync(HttpMethod.Post, "live/" + Uri.EscapeDataString(session.Bundle!.CellId), body, stop);
        SignInNeeded = answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden;
        if (SignInNeeded) return;
        answer.EnsureSuccessStatusCode();
        var live = await answer.Content.ReadFromJsonAsync(FloorJson.Default.LiveAnswer, stop) ?? throw new JsonException();
        await SetClockAsync(sent, clock.GetUtcNow().UtcTicks, live.Now);
        Others = live.Others;

        while (DeviceChain.ToSend(session.Chain) is { Length: > 0 } batch)
        {
            int waiting = session.Waiting;
            using var entries = JsonContent.Create(new EntriesSent([.. batch.Select(e => e.Text)]), FloorJson.Default.EntriesSent);
            using var receipts = await SendAsync(HttpMethod.Post, "entries", entries, stop);
            SignInNeeded = receipts.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden;
            if (SignInNeeded) break;
            receipts.EnsureSuccessStatusCode();
            await session.ConfirmAsync(batch, await receipts.Content.ReadFromJsonAsync(FloorJson.Default.EntriesAnswer, stop) ?? throw new JsonException());
            // What the desk would not take stays and is tried again in the next turn, not at once.
            if (session.Waiting >= waiting) break;
        }
        if (!SignInNeeded) Photographs = await store.SendPhotographsAsync(new Uri(desk.BaseAddress!, Api + "photographs/").ToString(), _token);

        for (bool more = session.Head < live.Head || session.LastReceipt > session.Head; more;)
        {
            using var got = await SendAsync(HttpMethod.Get, $"entries?after={session.Head}", null, stop);
            got.EnsureSuccessStatusCode();
            var part = await got.Content.ReadFromJsonAsync(FloorJson.Default.EntriesPart, stop) ?? throw new JsonException();
            long before = session.Head;
            await session.ReceiveAsync(part.Entries, part.UpTo);
            more = session.Head > before && session.Head < part.Head;
        }
    }

    /// <summary>Who the desk takes this device and person for, and the token that whatever changes something must carry.</summary>
    private async Task MeAsync(CancellationToken stop)
    {
        using var answer = await SendAsync(HttpMethod.Get, "me", null, stop);
        answer.EnsureSuccessStatusCode();
        using var me = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(stop));
        _token = me.RootElement.GetProperty("token").GetString() ?? "";
        AtTheDesk = me.RootElement.GetProperty("atTheDesk").GetBoolean();
        if (!AtTheDesk && me.RootElement.GetProperty("person") is { ValueKind: JsonValueKind.Object } person && person.GetProperty("id").GetString() is { Length: > 0 } id && id != session.Person)
            await session.SetPersonAsync(id);
    }

    private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, HttpContent? body, CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        using var request = new HttpRequestMessage(method, Api + path) { Content = body };
        if (method != HttpMethod.Get) request.Headers.Add("RequestVerificationToken", _token);
        return await desk.SendAsync(request, patience.Token);
    }

    /// <summary>Keeps the offset that was measured over the shortest way, and measures anew now and then: clocks are set while one works.</summary>
    private async Task SetClockAsync(long sent, long received, long now)
    {
        if (DeviceChain.ClockOffset(sent, received, now) is not { } offset) return;
        if (received - sent > _best * 2) return;
        _best = Math.Max(1, received - sent);
        await session.SetClockOffsetAsync(offset);
    }
}
