namespace Confectio.Layouts;

/// <summary>How the cells of a document are set apart.</summary>
internal enum DocumentForm
{
    /// <summary>Lines as a person types them; each is read as a phrase.</summary>
    Typed,

    Comma,
    Semicolon,
    Tab,

    /// <summary>Bars, with or without the rule below the heading that Markdown has.</summary>
    Bar,

    /// <summary>Two blanks or more.</summary>
    Blanks,

    /// <summary>Tables and lists of HTML.</summary>
    Html,
}
