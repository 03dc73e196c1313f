using System.Collections.Immutable;
using System.Security.Cryptography;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Settings;

namespace Trivet.Views.Settings;

/// <summary>A file that the controller's parameters were exported to, as it was read.</summary>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
public sealed record ReadOut(string File, string Hash, ImmutableArray<FoundParameter> Parameters, ImmutableArray<FileError> Errors)
{
    public static ReadOut Of(Cell cell, string name, byte[] bytes)
    {
        var read = ParameterExport.Read(bytes, cell.Controller, name);
        return new(name, Convert.ToHexStringLower(SHA256.HashData(bytes)), read.Parameters, read.Errors);
    }
}
