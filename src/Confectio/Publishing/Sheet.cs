namespace Confectio.Publishing;

/// <summary>A cell of a table: a text, and what is said of it in small print.</summary>
internal readonly record struct SheetCell(string Text, string Note = "")
{
    public static implicit operator SheetCell(string text) => new(text);

    /// <summary>The whole, on one line.</summary>
    public string Whole => Note.Length == 0 ? Text : $"{Text} ({Note})";
}

/// <summary>A column: its heading, and whether it is one of figures, which stand right.</summary>
internal readonly record struct SheetColumn(string Heading, bool IsFigure = false);

/// <summary>A part of a sheet.</summary>
internal abstract class SheetBlock
{
    private SheetBlock()
    {
    }

    /// <summary>Words.</summary>
    public sealed class Words(string text) : SheetBlock
    {
        public string Text { get; } = text;
    }

    /// <summary>A table whose first column heads its rows.</summary>
    public sealed class Table(string caption, IReadOnlyList<SheetColumn> columns, IReadOnlyList<SheetCell[]> rows, SheetCell[]? foot = null) : SheetBlock
    {
        public string Caption { get; } = caption;

        public IReadOnlyList<SheetColumn> Columns { get; } = columns;

        public IReadOnlyList<SheetCell[]> Rows { get; } = rows;

        /// <summary>The last row, which adds the others up.</summary>
        public SheetCell[]? Foot { get; } = foot;
    }

    /// <summary>Terms, each with what is said of it.</summary>
    public sealed class Facts(IReadOnlyList<(string Term, string Value)> all) : SheetBlock
    {
        public IReadOnlyList<(string Term, string Value)> All { get; } = all;
    }

    /// <summary>A list.</summary>
    public sealed class Items(IReadOnlyList<string> all, bool isOrdered = false) : SheetBlock
    {
        public IReadOnlyList<string> All { get; } = all;

        public bool IsOrdered { get; } = isOrdered;
    }
}

/// <summary>A headed part of a sheet. What must not be overlooked is framed.</summary>
internal sealed class SheetSection(string title, bool isFramed, params SheetBlock[] blocks)
{
    public string Title { get; } = title;

    public bool IsFramed { get; } = isFramed;

    public IReadOnlyList<SheetBlock> Blocks { get; } = blocks;
}

/// <summary>What stands on paper, before it has a form: a title, a line below it, and sections.</summary>
internal sealed class Sheet(string title, string lead, IReadOnlyList<SheetSection> sections)
{
    public string Title { get; } = title;

    public string Lead { get; } = lead;

    public IReadOnlyList<SheetSection> Sections { get; } = sections;
}
