using System.Globalization;

namespace Confectio.Cakes;

/// <summary>One thing that a cake takes icing for.</summary>
public sealed class CoveragePart
{
    internal CoveragePart(int? tier, CoverageKind kind, string name, string icing, double millilitres, double? thickness = null,
        double? area = null, double? thin = null)
    {
        Tier = tier;
        Kind = kind;
        Name = name;
        Icing = icing;
        Millilitres = millilitres;
        ThicknessCentimetres = thickness;
        AreaSquareCentimetres = area;
        ThinMillilitres = thin;
    }

    /// <summary>The tier, counted from 1 at the bottom; <see langword="null"/> for cupcakes.</summary>
    public int? Tier { get; }

    /// <summary>What it is for.</summary>
    public CoverageKind Kind { get; }

    /// <summary>What it is, such as <c>filling 1</c> or <c>crumb coat</c>.</summary>
    public string Name { get; }

    /// <summary>The name of the icing.</summary>
    public string Icing { get; }

    /// <summary>How much, mL: by exact offset where it is a coat.</summary>
    public double Millilitres { get; }

    /// <summary>The thickness of a coat or a filling, cm.</summary>
    public double? ThicknessCentimetres { get; }

    /// <summary>The area that a coat covers, cm²: of the bare body, less what is left bare under the next tier.</summary>
    public double? AreaSquareCentimetres { get; }

    /// <summary>Of a coat, area times thickness, mL: what most people reckon with. It leaves out the edges.</summary>
    public double? ThinMillilitres { get; }

    /// <summary>One line, such as <c>tier 1, crumb coat: 212.3 mL of buttercream</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{(Tier is int tier ? $"tier {tier}, " : "")}{Name}: {Millilitres:0.#} mL of {Icing}");
}
