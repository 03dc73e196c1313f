using System.Globalization;
using Microsoft.AspNetCore.Components;
using Trivet.AsBuilt;
using Trivet.Files;
using Trivet.Files.Floor;
using Trivet.Findings;
using Trivet.Floor.Device;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Floor.Pages;

/// <summary>What is typed or touched becomes an answer here; everything else of an ask is its markup.</summary>
public sealed partial class AskSheet
{
    private string _text = "", _unit = "", _reason = "", _instrument = "", _note = "", _problem = "", _shown = "";
    private bool _open, _correcting, _more;
    private ElementReference _file;

    [Parameter, EditorRequired] public FloorStep Step { get; set; } = null!;
    [Parameter, EditorRequired] public AskState State { get; set; } = null!;

    private FloorWords W => Work.Words;
    private FloorText Text => Work.TextOf(Step);
    // A photograph of something asked bears the same id as what it shows.
    private string Id => (State.Asked is AskedPhotograph ? "photograph-" : "ask-") + State.Asked.Id;
    private string Label => Text.Label(State.Asked.Id);
    private string Photograph { get; set; } = "";

    private Dimension Kind => State.Asked is AskedValue value ? TypedReading.DimensionOf(value.Unit) ?? Dimension.One : Dimension.One;
    private string[] Units => TypedReading.UnitsFor(Kind);
    private string Unit => _unit.Length > 0 ? _unit : Units.Length > 0 ? Units[0] : "";
    private string Example => Show(State.Asked is AskedValue { ShownAfter: false, Expected: var e } && double.IsFinite(e) ? e : 1);

    private Measured? Understood => State.Asked is AskedValue asked && TypedReading.Of(_text, Unit, Kind) is { Quantity.Ok: true } read
        ? new(read.Text, asked.Unit, read.Quantity.Value, read.Step)
        : null;

    private long? Count => long.TryParse(_text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out long n) && n <= 1_000_000 ? n : null;

    /// <summary>The answer in the field; null where it holds none yet.</summary>
    private Answer? Typed => State.Asked switch
    {
        AskedValue => Understood,
        AskedCount => Count is { } n ? new Counted(n) : null,
        AskedText => _text.Trim().Length > 0 ? new Written(_text.Trim()) : null,
        _ => null,
    };

    private bool MayAnswer => !_correcting || _reason.Trim().Length > 0;

    protected override async Task OnParametersSetAsync()
    {
        string hash = State.Answer is Photographed photographed ? photographed.Photograph : "";
        if (hash == _shown) return;
        _shown = hash;
        Photograph = hash.Length == 0 ? "" : await Device.PhotographAsync(hash) ?? "";
    }

    private void OpenAgain(bool correcting) => (_open, _correcting, _text, _reason, _instrument) = (true, correcting, "", "", Work.Instrument);

    private async Task SubmitAsync()
    {
        if (Typed is { } answer && MayAnswer) await AnswerAsync(answer);
    }

    private async Task AnswerAsync(Answer answer)
    {
        Statement says = _correcting && State.Entry is { } wrong ? new Corrected(wrong.Hash, _reason.Trim(), answer) : answer;
        if (!await Work.WriteAsync(says, Step.Step.Id, State.Asked.Id, _instrument.Trim(), _note.Trim())) return;
        (_open, _correcting, _text, _reason, _note, _problem) = (false, false, "", "", "", "");
    }

    private async Task PhotographAsync()
    {
        string hash = await Device.KeepPhotographAsync(_file, Work.PhotographLine(Step.Step.Id));
        if (hash.Length == 0) return;
        _problem = hash.Length == 64 ? "" : hash == DeviceStore.NoRoom ? W.NoRoom : W.NoPhotograph;
        if (_problem.Length == 0) await AnswerAsync(new Photographed(hash));
    }

    /// <summary>A signature stores what it was given for: the verdicts of this step as they stand on the screen.</summary>
    private Task SignAsync(Skill skill)
    {
        var shown = Work.Progress!.Of(Step.Step.Id)!.Asks.Where(a => a.Answer is Measured or Chosen or Counted)
            .Select(a => new ShownFinding($"{Step.Step.Id}/{a.Asked.Id}", a.Verdict, a.Answer is Measured m ? m.Value : double.NaN));
        return AnswerAsync(new Signed(skill, typeof(Signed).Assembly.GetName().Version!.ToString(3), Work.HeadHash, [.. shown]));
    }

    private string Said(Answer answer) => answer switch
    {
        Measured m => $"{(W.DecimalComma ? m.Typed.Replace('.', ',') : m.Typed)}{Beside(m)}",
        Chosen c => Text.Label($"{State.Asked.Id}={c.Option}"),
        Photographed => W.PhotographHere,
        _ => JournalSentences.Of(answer, W.Journal),
    };

    private string Beside(Measured measured) => State.Asked is AskedValue asked && double.IsFinite(asked.Expected) ? $" ({Difference(asked, measured.Value)})" : "";

    private string Difference(AskedValue asked, double value)
    {
        if (!double.IsFinite(asked.Expected)) return "";
        double off = value - asked.Expected;
        // Below a millionth of the planned value nothing at a machine tells them apart.
        if (Math.Abs(off) <= 1e-6 * Math.Max(Math.Abs(asked.Expected), 1e-3)) return W.AsPlanned;
        return FloorWords.Fill(off > 0 ? W.More : W.Less, ("value", Show(Math.Abs(off))));
    }

    private string Accepted(Limit limit) => (double.IsFinite(limit.Lower), double.IsFinite(limit.Upper)) switch
    {
        (true, true) => $"{Show(limit.Lower)} {W.To} {Show(limit.Upper)}",
        (true, false) => $"{W.AtLeast} {Show(limit.Lower)}",
        (false, true) => $"{W.AtMost} {Show(limit.Upper)}",
        _ => "",
    };

    private string Show(double si) => TypedReading.Shown(si, Kind, W.DecimalComma);
}
