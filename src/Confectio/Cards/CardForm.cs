namespace Confectio.Cards;

/// <summary>What form a card came in.</summary>
public enum CardForm
{
    /// <summary>Plain text or Markdown: lines, lists, columns set with bars, tabs, blanks or dots.</summary>
    Text,

    /// <summary>A web page, by what a reader of it sees.</summary>
    Page,

    /// <summary>A recipe in the open schema.org vocabulary, alone or in the script of a page (JSON-LD).</summary>
    RecipeData,

    /// <summary>A formula in our own JSON.</summary>
    FormulaJson,
}
