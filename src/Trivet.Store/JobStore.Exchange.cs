using System.Collections.Immutable;
using Trivet.Files;
using Trivet.Files.Entries;

namespace Trivet.Store;

/// <summary>What was written of a journal.</summary>
/// <param name="Failures">Photographs that are damaged in the store, in words: they were left out.</param>
public sealed record JournalWritten(JournalPart Part, int Photographs, ImmutableArray<string> Failures);

/// <summary>What became of a journal brought as a file: how many were new, were here before, were erased here and not taken again.</summary>
/// <param name="Errors">Lines that were not taken.</param>
public sealed record JournalTaken(int Entries, int EntriesAgain, int Photographs, int PhotographsAgain, int PhotographsErased, ImmutableArray<FileError> Errors);

// The journal as a file and back (docs/journal.md): entries with their receipts, then photographs one at a time.
public sealed partial class JobStore
{
    /// <summary>Writes the whole journal, behind it every photograph that was not erased. What the writer throws is the caller's.</summary>
    public async Task<JournalWritten> WriteJournalAsync(TextWriter to, CancellationToken stop = default)
    {
        var part = await JournalAsync(0, stop);
        foreach (string line in part.Export()) await to.WriteAsync(line + "\n");
        var failures = ImmutableArray.CreateBuilder<string>();
        int photographs = 0;
        foreach (string hash in await PhotographsAsync(stop))
        {
            try
            {
                // Erased in the meantime, it is left out.
                if (await PhotographAsync(hash, stop) is not { Content: { } content }) continue;
                await to.WriteAsync(PhotographText.Of(hash, content) + "\n");
                photographs++;
            }
            catch (StoreFailedException failure)
            {
                failures.Add(failure.Message);
            }
        }
        return new(part, photographs, failures.ToImmutable());
    }

    /// <summary>Takes in a journal, line by line, to its end. What the reader throws is the caller's; what came before it is kept, and may come again.</summary>
    /// <param name="file">Name for the errors.</param>
    /// <param name="by">Who brings it, and when: the moment is written into the receipts.</param>
    public async Task<JournalTaken> TakeJournalAsync(TextReader from, string file, Stamp by, CancellationToken stop = default)
    {
        var waiting = new List<Arrival>();
        var errors = ImmutableArray.CreateBuilder<FileError>();
        int entries = 0, again = 0, photographs = 0, photographsAgain = 0, erased = 0;
        foreach (var line in JournalFile.Lines(from, file))
        {
            switch (line)
            {
                case JournalFileLine.OfEntry entry:
                    waiting.Add(new Arrival(entry.Text));
                    if (waiting.Count == LargestBatch) await SendAsync();
                    break;
                case JournalFileLine.OfPhotograph photograph:
                    // An entry before it may erase it.
                    await SendAsync();
                    await KeepAsync(photograph);
                    break;
                case JournalFileLine.Refused refused:
                    errors.Add(refused.Error);
                    break;
            }
        }
        await SendAsync();
        return new(entries, again, photographs, photographsAgain, erased, errors.ToImmutable());

        async Task SendAsync()
        {
            foreach (var outcome in await AppendAsync(waiting, by.When, stop))
            {
                if (outcome is AppendOutcome.Received { Again: true }) again++;
                else if (outcome is AppendOutcome.Received) entries++;
            }
            waiting.Clear();
        }

        async Task KeepAsync(JournalFileLine.OfPhotograph photograph)
        {
            switch (await AddPhotographAsync(photograph.Content, by, stop))
            {
                case PhotographOutcome.Stored { Again: true }: photographsAgain++; break;
                case PhotographOutcome.Stored: photographs++; break;
                case PhotographOutcome.WasErased: erased++; break;
                case PhotographOutcome.Refused refused: errors.Add(new FileError(file, photograph.Line, 1, "", refused.Problem, refused.Remedy)); break;
            }
        }
    }
}
