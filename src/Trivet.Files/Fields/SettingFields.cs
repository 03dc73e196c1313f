using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of the controller's parameters, and of how an export of them is read.</summary>
internal static class SettingFields
{
    public static readonly Shape Setting = new Table<ControllerSetting>(new ControllerSetting())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in the list to be typed; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "The name the controller shows.")
        .Text("where", s => s.Where, (s, v) => s with { Where = v }, "Where it is found in the controller: menu or page, in your own words.")
        .Text("key", s => s.Key, (s, v) => s with { Key = v }, "Its name in an export, where that is another one.")
        .Choice("quantity", Words.SettingQuantity, s => s.Quantity, (s, v) => s with { Quantity = v }, "What of the plan it holds; left out, `value` is typed as it stands.")
        .Text("of", s => s.Of, (s, v) => s with { Of = v }, "Id of the chain, axis (a chain, \"rotary\" or \"linear\"), module, message or cycle; left out where all chains have the same.")
        .Text("value", s => s.Value, (s, v) => s with { Value = v }, "What is typed where nothing of the plan is held.")
        .Text("unit", s => s.Unit, (s, v) => s with { Unit = v }, "Unit that the controller writes, for the list; that of `perUnit` where nothing is stated.")
        .Quantity("perUnit", Dimension.Setting, s => s.PerUnit, (s, v) => s with { PerUnit = v },
            "How much one unit of the controller is: \"1 mm\", \"0.001 deg\"; left out, that of the controller's axis for what is of an axis, and 1 for what is a number.")
        .Quantity("zeroAt", Dimension.Setting, s => s.ZeroAt, (s, v) => s with { ZeroAt = v }, "The planned value where the controller shows zero; left out, that of the controller's axis for its readings, else 0.")
        .YesNo("reversed", s => s.Reversed, (s, v) => s with { Reversed = v }, "The controller's value grows against the planned one; left out, as the controller's axis does for its readings, else no.")
        .YesNo("inverse", s => s.Inverse, (s, v) => s with { Inverse = v }, "The controller asks how many go into one unit: `perUnit` divided by the value, as in steps for a millimetre.")
        .Whole("digits", s => s.Digits, (s, v) => s with { Digits = v }, "Decimals that the controller takes, 0 to 12.")
        .Quantity("step", Dimension.One, s => s.Step, (s, v) => s with { Step = v }, "Smallest step in the controller's own numbers, in place of the decimals.")
        .Choice("rounding", Words.SettingRounding, s => s.Rounding, (s, v) => s with { Rounding = v }, "To which side it is rounded; left out, limits so that the controller never allows more than the plan, all else to the nearest.")
        .Quantity("tolerance", Dimension.Setting, s => s.Tolerance, (s, v) => s with { Tolerance = v },
            "How far rounding may move it; left out, what decides where the platform goes may move it by a tenth of the tightest tolerance of the brief, and all else may be off by 1 %.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Exception = new Table<ExportException>(new ExportException())
        .Whole("order", e => e.Order, (e, v) => e with { Order = v }, "Place in the list; equal or missing orders follow the id.")
        .Text("name", e => e.Name, (e, v) => e with { Name = v }, "Its name in the export; a star at its end stands for any rest.")
        .Text("reason", e => e.Reason, (e, v) => e with { Reason = v }, "Why it may differ: a counter, a time, a serial number.")
        .Text("note", e => e.Note, (e, v) => e with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Export = new Table<ExportMapping>(new ExportMapping())
        .Choice("form", Words.ExportForm, e => e.Form, (e, v) => e with { Form = v }, "Columns or pairs of name and value, a parameter a line; or a tree.")
        .Choice("encoding", Words.ExportEncoding, e => e.Encoding, (e, v) => e with { Encoding = v }, "UTF-8 where nothing is stated; XML says it itself.")
        .Text("separator", e => e.Separator, (e, v) => e with { Separator = v }, "Sign between columns (or the word tab or blank), or between name and value.")
        .Text("comment", e => e.Comment, (e, v) => e with { Comment = v }, "A line that begins so is passed over.")
        .Whole("headLines", e => e.HeadLines, (e, v) => e with { HeadLines = v }, "Lines before the first parameter.")
        .Whole("nameColumn", e => e.NameColumn, (e, v) => e with { NameColumn = v }, "Column of the names, from 1.")
        .Whole("valueColumn", e => e.ValueColumn, (e, v) => e with { ValueColumn = v }, "Column of the values, from 1.")
        .Whole("groupColumn", e => e.GroupColumn, (e, v) => e with { GroupColumn = v }, "Column whose text and a slash lead the name: an axis that stands apart.")
        .YesNo("sections", e => e.Sections, (e, v) => e with { Sections = v }, "A line in square brackets and a slash lead the names that follow.")
        .Text("list", e => e.List, (e, v) => e with { List = v }, "Where in a tree the parameters are: \"/axes/*/parameters\" (JSON; what a star met and a slash lead the name), \"/drive/axis/parameter\" (XML). Left out, every value is one, named by its way from the root.")
        .Text("nameAt", e => e.NameAt, (e, v) => e with { NameAt = v }, "Where the name is from there: a member, an element, \"@attribute\", \"../@attribute\"; left out, the member's or element's own.")
        .Text("valueAt", e => e.ValueAt, (e, v) => e with { ValueAt = v }, "Where the value is from there; left out, the member's or element's own.")
        .Text("groupAt", e => e.GroupAt, (e, v) => e with { GroupAt = v }, "Where a text is that leads the name with a slash.")
        .Keyed("exceptions", Exception, e => e.Exceptions, (e, v) => e with { Exceptions = v }, "Parameters that may differ between a backup and what is read out after it was restored.")
        .Text("note", e => e.Note, (e, v) => e with { Note = v }, "Anything worth keeping.")
        .Done();
}
