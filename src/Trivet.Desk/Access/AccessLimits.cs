using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;
using Trivet.Desk.Network;

namespace Trivet.Desk.Access;

/// <summary>How often one address of the network may ask. At the machine itself nothing is counted.</summary>
/// <param name="PairPerMinute">Pairing codes typed.</param>
/// <param name="SignInPerMinute">PINs typed; the store counts wrong ones for each person besides.</param>
/// <param name="RequestsPerSecond">Of any kind, lasting; ten times as many at once, as opening the floor page asks for all its files.</param>
public sealed record AccessLimits(int PairPerMinute = 10, int SignInPerMinute = 20, int RequestsPerSecond = 200)
{
    public const string PairPolicy = "pair", SignInPolicy = "sign-in";

    internal void Configure(RateLimiterOptions options)
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = async (rejected, stop) =>
        {
            var response = rejected.HttpContext.Response;
            if (rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after))
                response.Headers.RetryAfter = ((int)Math.Ceiling(after.TotalSeconds)).ToString(System.Globalization.CultureInfo.InvariantCulture);
            response.ContentType = "text/plain; charset=utf-8";
            await response.WriteAsync(Spoken.Of(rejected.HttpContext).TooOften, stop);
        };
        options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => context.IsAtTheMachine()
            ? RateLimitPartition.GetNoLimiter("")
            : RateLimitPartition.GetTokenBucketLimiter(AddressOf(context), _ => new()
            {
                TokenLimit = 10 * RequestsPerSecond,
                TokensPerPeriod = RequestsPerSecond,
                ReplenishmentPeriod = TimeSpan.FromSeconds(1),
            }));
        options.AddPolicy(PairPolicy, context => PerMinute(context, PairPerMinute));
        options.AddPolicy(SignInPolicy, context => PerMinute(context, SignInPerMinute));
    }

    /// <summary>Only what sends something is counted; looking at the form is free.</summary>
    private static RateLimitPartition<string> PerMinute(HttpContext context, int most) => context.IsAtTheMachine() || !HttpMethods.IsPost(context.Request.Method)
        ? RateLimitPartition.GetNoLimiter("")
        : RateLimitPartition.GetSlidingWindowLimiter(AddressOf(context), _ => new() { PermitLimit = most, Window = TimeSpan.FromMinutes(1), SegmentsPerWindow = 6 });

    private static string AddressOf(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";
}
