using Trivet.Store;

namespace Trivet.Cli;

/// <summary>Opening the job that a command was given.</summary>
internal static class JobInput
{
    /// <summary>Null when it was refused; standard error then says why.</summary>
    /// <param name="mayBeNew">False: a folder that holds no job is refused rather than made into one.</param>
    public static async Task<JobStore?> OpenAsync(string path, bool mayBeNew, TextWriter error, CancellationToken stop)
    {
        var location = JobLocation.Parse(path);
        if (!mayBeNew && location is JobLocation.Folder folder && !File.Exists(Path.Combine(folder.Path, JobLocation.Folder.FileName)))
        {
            error.WriteLine($"trivet: {path} is a folder, but no job folder: it has no {JobLocation.Folder.FileName}. `trivet desk {path}` makes it one.");
            return null;
        }

        switch (await JobStore.OpenAsync(location, stop))
        {
            case OpenOutcome.Opened opened:
                return opened.Store;
            case OpenOutcome.TooNew:
                error.WriteLine($"trivet: {location} was written by a later Trivet. Use that one; nothing was changed.");
                return null;
            case OpenOutcome.Refused refused:
                error.WriteLine($"trivet: {refused.Problem} {refused.Remedy}");
                return null;
            default:
                throw new InvalidOperationException("OpenOutcome is closed.");
        }
    }
}
