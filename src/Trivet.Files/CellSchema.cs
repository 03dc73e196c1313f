namespace Trivet.Files;

/// <summary>The JSON Schema (draft 2020-12) of the cell document, generated from the same field table the reader uses.</summary>
public static class CellSchema
{
    public static string Json() => throw new NotImplementedException();
}
