namespace Trivet.Store;

/// <summary>How opening a job ended. Closed.</summary>
public abstract record OpenOutcome
{
    private OpenOutcome() { }

    /// <summary>The job is open and its tables are those of this program.</summary>
    public sealed record Opened(JobStore Store) : OpenOutcome;

    /// <summary>A later program wrote this job. Nothing was changed.</summary>
    /// <param name="Unknown">The steps of its tables that this program does not know.</param>
    public sealed record TooNew(IReadOnlyList<string> Unknown) : OpenOutcome;

    /// <summary>The job cannot be opened: no such place, no permission, not a database, damaged.</summary>
    public sealed record Refused(string Problem, string Remedy) : OpenOutcome;
}

/// <summary>How a save ended. Closed. A conflict is an everyday answer, not an exception.</summary>
public abstract record SaveOutcome
{
    private SaveOutcome() { }

    /// <summary>The revision is on disk.</summary>
    public sealed record Saved(Revision Revision) : SaveOutcome;

    /// <summary>The content equals that of the head: nothing was written.</summary>
    public sealed record Unchanged(Revision Head) : SaveOutcome;

    /// <summary>Someone saved since: the head is no longer the one expected. Nothing was written.</summary>
    public sealed record Conflict(Revision Head) : SaveOutcome;

    /// <summary>A new cell's id is taken.</summary>
    public sealed record Taken(Revision Head) : SaveOutcome;

    /// <summary>There is no such cell or revision.</summary>
    public sealed record NotFound : SaveOutcome;

    /// <summary>The input is not fit to be kept.</summary>
    public sealed record Refused(string Problem, string Remedy) : SaveOutcome;
}

/// <summary>How a change of a draft ended. Closed.</summary>
public abstract record DraftOutcome
{
    private DraftOutcome() { }

    /// <summary>The draft as it now stands on disk.</summary>
    public sealed record Kept(Draft Draft) : DraftOutcome;

    /// <summary>The draft was changed elsewhere (a second page of the same person) since it was read. Nothing was written.</summary>
    public sealed record Moved(Draft Now) : DraftOutcome;

    public sealed record NotFound : DraftOutcome;

    public sealed record Refused(string Problem, string Remedy) : DraftOutcome;
}

/// <summary>The database failed under a call: disk full, connection lost, damaged. What was acknowledged before still stands.</summary>
public sealed class StoreFailedException(string message, Exception? inner = null) : IOException(message, inner);
