namespace Trivet.Cli;

/// <summary>Files and folders that the system refuses, in words with a next step: its own text names neither.</summary>
internal static class Places
{
    /// <summary>True for what the system throws when a path cannot be opened; anything else is a fault of the program.</summary>
    public static bool Refuses(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    /// <summary>Why a file cannot be read, and what to do.</summary>
    public static string Unreadable(string path, Exception e) => path.Trim().Length == 0
        ? "the name of the file to be read is empty. Name a file, or - for standard input."
        : $"{path} cannot be read: " + e switch
        {
            FileNotFoundException or DirectoryNotFoundException => "there is no such file. Check the name, or give - for standard input.",
            _ when Directory.Exists(path) => "it is a folder. Name a file in it.",
            UnauthorizedAccessException => "you may not read it. Give yourself the right, or name another file.",
            _ => $"{Ended(e.Message)} See that no other program holds it and that its place can be reached.",
        };

    /// <summary>Why a file or folder cannot be written, and what to do.</summary>
    public static string Unwritable(string path, Exception e) => path.Trim().Length == 0
        ? "the name of the file to be written is empty. Name a file."
        : $"{path} cannot be written: " + e switch
        {
            _ when Directory.Exists(path) => "it is a folder. Name a file in it.",
            DirectoryNotFoundException => $"there is no folder {Path.GetDirectoryName(path)}. Make it first, or name another place.",
            UnauthorizedAccessException => "you may not write there. Give yourself the right, or name another place.",
            _ => $"{Ended(e.Message)} See that the disk has room and that its place can be reached, or name another one.",
        };

    /// <summary>Why a folder cannot be made, and what to do.</summary>
    public static string Unmakable(string path, Exception e) => File.Exists(path)
        ? $"{path} is a file. Name a folder; it is made if need be."
        : $"the folder {path} cannot be made or written: {(e is UnauthorizedAccessException ? "you may not write there." : Ended(e.Message))} Name a place where you may write.";

    /// <summary>The system's own sentence with a full stop, whether it came with one or not.</summary>
    public static string Ended(string sentence) => sentence.EndsWith('.') ? sentence : sentence + ".";

    /// <summary>Why a file that a command will write at its end cannot be written; null where it can. What stands there is left as it is.</summary>
    public static string? WhyNotWritable(string path)
    {
        try
        {
            bool stood = File.Exists(path);
            using (new FileStream(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.ReadWrite)) { }
            if (!stood) File.Delete(path);
            return null;
        }
        catch (Exception e) when (Refuses(e))
        {
            return Unwritable(path, e);
        }
    }
}
