using Confectio.Text;

namespace Confectio.Labels;

/// <summary>Letters of a list of ingredients, emphasised or not.</summary>
public sealed class LabelWord
{
    internal LabelWord(string text, bool isEmphasised)
    {
        Text = text;
        IsEmphasised = isEmphasised;
    }

    /// <summary>The letters.</summary>
    public string Text { get; }

    /// <summary>Whether they name an allergen that the law wants to stand out.</summary>
    public bool IsEmphasised { get; }

    /// <summary>The letters.</summary>
    public override string ToString() => VisibleText.Of(Text);
}
