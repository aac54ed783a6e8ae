namespace Confectio.Publishing;

/// <summary>How a sheet looks: on a wide screen, on a narrow one, in the dark, and on A4 or Letter.</summary>
internal static class SheetStyle
{
    /// <summary>The style, without a font, a picture or anything else from elsewhere.</summary>
    public const string Css = """
        :root { color-scheme: light dark; --ink: #1d1b19; --soft: #57524c; --paper: #ffffff; --line: #b9b2a8; --band: #f4f1ec; --alarm: #8a1c0f; }
        @media (prefers-color-scheme: dark) {
          :root { --ink: #eeeae4; --soft: #bdb6ac; --paper: #191817; --line: #5d574f; --band: #24221f; --alarm: #ffb4a6; }
        }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.45 Georgia, "Times New Roman", serif; }
        article { max-width: 62rem; margin: 0 auto; padding: 1rem; overflow-wrap: break-word; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; }
        h2 { font-size: 1.15rem; line-height: 1.25; margin: 1.3rem 0 .4rem; border-bottom: 1px solid var(--line); }
        p { margin: .3rem 0 .6rem; }
        .lead, small, caption { color: var(--soft); }
        small { font-size: .85em; display: block; line-height: 1.3; }
        table { border-collapse: collapse; width: 100%; margin: .3rem 0 .8rem; font-variant-numeric: tabular-nums; }
        caption { text-align: left; font-size: .9rem; padding: 0 0 .3rem; }
        th, td { text-align: left; vertical-align: top; padding: .25rem 1rem .25rem 0; border-bottom: 1px solid var(--line); }
        th:last-child, td:last-child { padding-right: 0; }
        thead th { vertical-align: bottom; font-size: .9rem; }
        tbody th { font-weight: normal; }
        tfoot th, tfoot td { font-weight: bold; border-bottom: 0; }
        .n { text-align: right; }
        td.n { white-space: nowrap; }
        td.n small { white-space: normal; }
        ul, ol { margin: .3rem 0 .8rem; padding-left: 1.4rem; }
        li { margin: .15rem 0; }
        dl { margin: .3rem 0 .8rem; }
        dl div { display: flex; flex-wrap: wrap; gap: 0 .8rem; padding: .1rem 0; }
        dt { min-width: 9rem; color: var(--soft); }
        dd { margin: 0; flex: 1 1 14rem; }
        .framed { border: 2px solid var(--alarm); padding: .2rem .8rem .3rem; margin: 1.3rem 0; }
        .framed h2 { margin-top: .3rem; border: 0; color: var(--alarm); }
        @media screen and (max-width: 46rem) {
          .wide, .wide tbody, .wide tfoot, .wide caption { display: block; }
          .wide thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
          .wide tr { display: block; padding: .35rem 0; border-bottom: 1px solid var(--line); }
          .wide th, .wide td { display: flex; flex-wrap: wrap; gap: 0 .8rem; border: 0; padding: .05rem 0; text-align: left; }
          .wide td.n { flex-wrap: nowrap; }
          .wide tbody th { font-weight: bold; flex-wrap: wrap; }
          .wide td:not([data-h]) { display: none; }
          table:not(.wide) :is(th, td) { padding-right: .5rem; }
          .wide td[data-h]::before { content: attr(data-h); flex: 0 0 8.5rem; color: var(--soft); }
        }
        @media print {
          :root { color-scheme: light; --ink: #000; --soft: #333; --paper: #fff; --line: #777; --band: #fff; --alarm: #000; }
          @page { margin: 15mm 14mm; }
          body { font-size: 10pt; line-height: 1.25; }
          article { max-width: none; padding: 0; }
          h1 { font-size: 18pt; }
          h2 { font-size: 12pt; break-after: avoid; margin: 8pt 0 3pt; }
          caption, thead, h2 + p { break-after: avoid; }
          thead { display: table-header-group; }
          tfoot { display: table-row-group; }
          .short, tr, li, .framed, dl div { break-inside: avoid; }
          td.n small { white-space: nowrap; }
          p { orphans: 3; widows: 3; }
          th, td { padding-top: 1.2pt; padding-bottom: 1.2pt; }
          small { line-height: 1.15; }
          ul, ol, dl, table { margin-bottom: 5pt; }
        }

        """;
}
