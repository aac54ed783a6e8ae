using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>An ingredient that has ingredients of its own: as its pack lists them, or by a formula; or a part of the product that is made apart, such as the ganache in a cake.</summary>
public sealed class CompoundIngredient
{
    /// <summary>The most parts that a pack may list here.</summary>
    public const int MaximumParts = 100;

    private CompoundIngredient(string name, Ingredient? ingredient, string[] parts, Formula? formula, double grams)
    {
        Name = name;
        Ingredient = ingredient;
        Parts = parts;
        Formula = formula;
        Grams = grams;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>The ingredient of the formula that it is; <see langword="null"/> where it is a part of its own.</summary>
    public Ingredient? Ingredient { get; }

    /// <summary>Its parts in the words and the order of its pack; empty where a formula says them.</summary>
    public IReadOnlyList<string> Parts { get; }

    /// <summary>The formula that it is made by; <see langword="null"/> where its pack lists the parts.</summary>
    public Formula? Formula { get; }

    /// <summary>What goes into the product, g, of a part of its own; 0 of an ingredient, which the formula says.</summary>
    public double Grams { get; }

    /// <summary>The parts of an ingredient as its pack lists them.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="parts">The parts, from 1 to 100, each from 1 to 200 characters: <c>cocoa mass</c>, <c>sugar</c>, <c>emulsifier: soya lecithin</c>.</param>
    /// <returns>The compound ingredient.</returns>
    /// <exception cref="ArgumentNullException">An argument or a part is null.</exception>
    /// <exception cref="ArgumentException">There are no parts or too many, or one is blank or too long.</exception>
    public static CompoundIngredient Of(Ingredient ingredient, params IEnumerable<string> parts)
    {
        Guard.NotNull(ingredient);
        string[] all = [.. Guard.NotNull(parts).Take(MaximumParts + 1).Select(part => Guard.NotNull(part, nameof(parts)).Trim())];
        if (all.Length is 0 or > MaximumParts)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(parts)} has {all.Length} parts; from 1 to {MaximumParts} are expected."), nameof(parts));
        if (Array.Find(all, part => part.Length is 0 or > 200) is string bad)
            throw new ArgumentException($"{nameof(parts)} has {Excerpt.Of(bad)}; from 1 to 200 characters are expected.", nameof(parts));
        return new CompoundIngredient(ingredient.Name, ingredient, all, null, 0);
    }

    /// <summary>An ingredient that is made by a formula, in the house or by one that is known.</summary>
    /// <param name="ingredient">The ingredient of the product's formula.</param>
    /// <param name="formula">What it is made of, in any quantity.</param>
    /// <returns>The compound ingredient.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static CompoundIngredient Of(Ingredient ingredient, Formula formula) =>
        new(Guard.NotNull(ingredient).Name, ingredient, [], Guard.NotNull(formula), 0);

    /// <summary>A part of the product that is made apart and is no ingredient of a table: the ganache in a cake.</summary>
    /// <param name="name">Its name, from 1 to 200 characters.</param>
    /// <param name="formula">What it is made of, in any quantity.</param>
    /// <param name="grams">What goes of it into the product that the other formula makes, g, from 0.001 to 1e9.</param>
    /// <returns>The compound ingredient.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The name is blank or too long.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static CompoundIngredient Of(string name, Formula formula, double grams)
    {
        string trimmed = Guard.NotNull(name).Trim();
        if (trimmed.Length is 0 or > 200)
            throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; from 1 to 200 characters are expected.", nameof(name));
        return new CompoundIngredient(trimmed, null, [], Guard.NotNull(formula), Guard.InRange(grams, 0.001, 1e9));
    }

    /// <summary>The name and its parts, such as <c>dark couverture 55 % (cocoa mass, sugar)</c>.</summary>
    public override string ToString() => VisibleText.Of($"{Name} ({(Formula is null ? string.Join(", ", Parts) : string.Join(", ", Formula.Lines.Select(line => line.Ingredient.Name).Distinct()))})");
}
