namespace Trivet.Views.Drawings;

/// <summary>
/// How a drawing is inked: one ink, one accent, colours as CSS variables with fallbacks for paper. Line widths are two to one as
/// ISO 128 asks (0.5 mm wide, 0.25 mm narrow; common practice from memory); dash patterns tell hidden, centre and limit lines apart.
/// </summary>
internal static class Ink
{
    // Classes: w wide outline, n narrow, h hidden (dashed), c centre (long dash, dot), m limit of movement (long dash, two dots),
    // d dimension line, f filled with ink, p filled with paper (hides what is behind), x accent line, xf accent fill,
    // t text, s soft text, k strong text, a accent text, o text with a halo that parts the lines under it.
    public const string Style = """
        .tv{--tv-ink:var(--ink,#12222e);--tv-soft:var(--ink-soft,#485a67);--tv-paper:var(--paper,#f6f8f7);--tv-low:var(--paper-low,#edf1f0);--tv-accent:var(--accent,#b8330b);font-family:var(--sans,"Barlow Semi Condensed","Arial Narrow","Liberation Sans Narrow",Arial,Helvetica,sans-serif);font-variant-numeric:tabular-nums lining-nums}
        .tv path,.tv line,.tv polyline,.tv polygon,.tv rect,.tv circle{fill:none;stroke:var(--tv-ink);stroke-width:.95;stroke-linecap:butt;stroke-linejoin:round}
        .tv .page{fill:var(--tv-paper);stroke:none}
        .tv .w{stroke-width:1.9}
        .tv .b{stroke-width:1.4}
        .tv .h{stroke-dasharray:6 3}
        .tv .c{stroke-dasharray:14 3 2 3;stroke:var(--tv-soft);stroke-width:.8}
        .tv .q{stroke-dasharray:2 3}
        .tv .m{stroke-dasharray:14 3 2 3 2 3;stroke:var(--tv-soft)}
        .tv .d{stroke:var(--tv-soft);stroke-width:.8}
        .tv .g{stroke:var(--tv-soft);stroke-width:.5;stroke-opacity:.5}
        .tv .p{fill:var(--tv-paper)}
        .tv .hatch{stroke:var(--tv-soft);stroke-width:.7}
        .tv .l{fill:var(--tv-low)}
        .tv .f{fill:var(--tv-ink);stroke:none}
        .tv .ff{fill:var(--tv-soft);stroke:none}
        .tv .x{stroke:var(--tv-accent);stroke-width:1.4}
        .tv .xf{fill:var(--tv-accent);stroke:none}
        .tv .z{stroke:none}
        .tv text{fill:var(--tv-ink);stroke:none}
        .tv .s{fill:var(--tv-soft)}
        .tv .k{font-weight:600}
        .tv .a{fill:var(--tv-accent)}
        .tv .o{paint-order:stroke;stroke:var(--tv-paper);stroke-width:4;stroke-linejoin:round}
        """;

    // Pictures of a step, read at arm's length and farther: three widths, 0.25, 0.5 and 1 mm on a page 170 mm wide (ISO 128, from memory).
    // e edge between two faces that are seen, o outline, i edge and r outline of the marked part, w its outline where all is small, v its hidden edges, n hatch, y leader,
    // u arrow and p plain shape (filled with paper), j its dot, h what may be taken for the part, t text, k label, s soft text, b border of a detail.
    public const string Picture = """
        .tp{--tv-ink:var(--ink,#12222e);--tv-soft:var(--ink-soft,#485a67);--tv-paper:var(--paper,#f6f8f7);--tv-low:var(--paper-low,#edf1f0);--tv-accent:var(--accent,#b8330b);font-family:var(--sans,"Barlow Semi Condensed","Arial Narrow","Liberation Sans Narrow",Arial,Helvetica,sans-serif)}
        .tp *{fill:none;stroke:var(--tv-soft);stroke-linecap:round;stroke-linejoin:round}
        .tp .page{fill:var(--tv-paper);stroke:none}
        .tp .e{stroke-width:.8;stroke-opacity:.7}
        .tp .o{stroke-width:1.3}
        .tp .i{stroke:var(--tv-accent);stroke-width:1.6}
        .tp .r{stroke:var(--tv-accent);stroke-width:3.6}
        .tp .w{stroke:var(--tv-accent);stroke-width:2}
        .tp .v{stroke:var(--tv-accent);stroke-width:1.3;stroke-dasharray:7 5}
        .tp .n{stroke:var(--tv-accent);stroke-width:.9}
        .tp .h{stroke-width:1.3;stroke-dasharray:7 5}
        .tp .y{stroke:var(--tv-ink);stroke-width:1.5}
        .tp .u{stroke:var(--tv-ink);stroke-width:2.4;fill:var(--tv-paper)}
        .tp .p{stroke:var(--tv-soft);stroke-width:1.3;fill:var(--tv-paper)}
        .tp .j{fill:var(--tv-ink);stroke:var(--tv-paper);stroke-width:2}
        .tp .b{stroke-width:1;stroke-opacity:.6}
        .tp text{fill:var(--tv-ink);stroke:none}
        .tp .s{fill:var(--tv-soft)}
        .tp .k{font-weight:600}
        """;
}
