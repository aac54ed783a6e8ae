using System.Globalization;
using Confectio.Numerics;

namespace Confectio.Cakes;

/// <summary>
/// The inside of a tin: what it holds to the brim, how much batter goes in, and how a formula scales from one tin to another.
/// </summary>
/// <remarks>
/// Geometry is what the nominal size says. Trade figures for the same tins lie from 14 % below it to 2 % above, those of muffin cups 19 %
/// below (docs/tables/cakes.md), as tins taper and are measured over the rim: fill your own with water from a measuring jug, and use
/// <see cref="Measured"/>.
/// </remarks>
public sealed class CakePan
{
    /// <summary>The share of the depth to which a tin is filled at least: one half; common practice.</summary>
    public const double MinimumUsualFill = 0.5;

    /// <summary>The share of the depth to which a tin is filled at most: two thirds; common practice.</summary>
    public const double MaximumUsualFill = 2.0 / 3;

    private readonly CakeBody? _inside;

    private CakePan(string name, double brimMillilitres, double depthCentimetres, CakeBody? inside)
    {
        Name = name;
        BrimMillilitres = brimMillilitres;
        DepthCentimetres = depthCentimetres;
        _inside = inside;
    }

    /// <summary>What to call it.</summary>
    public string Name { get; }

    /// <summary>What it holds to the brim, mL.</summary>
    public double BrimMillilitres { get; }

    /// <summary>Its depth inside, cm.</summary>
    public double DepthCentimetres { get; }

    /// <summary>A tin by the form of its inside.</summary>
    /// <param name="inside">
    /// The form, its foot the bottom of the tin, as for a <see cref="CakeBody.TaperedRound"/> that widens to the mouth. A ball, half ball
    /// or cap is the mould of that cake: its flat is the mouth.
    /// </param>
    /// <param name="name">What to call it; the form where nothing is said.</param>
    /// <returns>The tin. Worked number: a round of 9 in, 2 in deep, holds 2085.0 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="inside"/> is null.</exception>
    public static CakePan Of(CakeBody inside, string? name = null)
    {
        Guard.NotNull(inside);
        return new CakePan(name ?? $"{inside}", inside.VolumeMillilitres, inside.HeightCentimetres, inside);
    }

    /// <summary>A tin by what it was found to hold, whatever its form.</summary>
    /// <param name="brimMillilitres">What it holds to the brim, mL, from 1 to 1e6: 1 g of water is 1 mL.</param>
    /// <param name="depth">Its depth inside, cm, from 0.1 to 1000.</param>
    /// <param name="name">What to call it.</param>
    /// <returns>
    /// The tin. Its walls are taken as straight where part of it is filled: one that widens upward then holds a little less.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakePan Measured(double brimMillilitres, CakeLength depth, string? name = null)
    {
        Guard.InRange(brimMillilitres, 1, 1e6);
        double deep = depth.Within(0.1, 1000);
        return new CakePan(name ?? string.Create(CultureInfo.InvariantCulture, $"tin of {brimMillilitres:0.#} mL"), brimMillilitres, deep,
            null);
    }

    /// <summary>What the tin holds when it is filled to a share of its depth.</summary>
    /// <param name="fill">
    /// The share of the depth, from 0 to 1; see <see cref="MinimumUsualFill"/> and <see cref="MaximumUsualFill"/>. What rises more needs
    /// less.
    /// </param>
    /// <returns>mL. Worked number: a round of 9 in, 2 in deep, half full: 1042.5 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fill"/> is outside its range.</exception>
    public double BatterMillilitres(double fill) => Below(Guard.InRange(fill, 0, 1) * DepthCentimetres);

    /// <summary>To what share of its depth so much batter fills the tin.</summary>
    /// <param name="millilitres">The batter, mL, from 0 to what the tin holds.</param>
    /// <returns>The share, from 0 to 1. Worked number: 1251 mL in a round of 9 in, 2 in deep: 0.60.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="millilitres"/> is outside its range.</exception>
    public double FillOf(double millilitres)
    {
        Guard.InRange(millilitres, 0, BrimMillilitres);
        return _inside is null ? millilitres / BrimMillilitres
            : Roots.Rising(fill => Below(fill * DepthCentimetres) / BrimMillilitres - millilitres / BrimMillilitres, 0, 1);
    }

    /// <summary>
    /// What a formula that fills this tin is multiplied by to fill another to the same share of its brim: the ratio of the volumes.
    /// </summary>
    /// <param name="other">The other tin.</param>
    /// <returns>The factor. Worked number: from a round of 8 in to one of 9 in, both 2 in deep: 1.2656.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <remarks>A batter as deep in a wider tin bakes as long; deeper or lower it does not: watch the cake, not the clock.</remarks>
    public double FactorTo(CakePan other) => Guard.NotNull(other).BrimMillilitres / BrimMillilitres;

    /// <summary>What a formula is multiplied by so that it stands as high in another tin as in this one, whatever their depths.</summary>
    /// <param name="other">The other tin.</param>
    /// <param name="height">How high it stands, cm, from 0.1 to the depth of the lower tin.</param>
    /// <returns>The factor. Worked number: from 8 in square to 9 by 13 in: 1.828, at every height.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="height"/> is outside its range.</exception>
    public double FactorAsHighTo(CakePan other, CakeLength height)
    {
        Guard.NotNull(other);
        double high = height.Within(0.1, Math.Min(DepthCentimetres, other.DepthCentimetres));
        return other.Below(high) / Below(high);
    }

    /// <summary>The name and what it holds, such as <c>9 in round, 2085 mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, {BrimMillilitres:0} mL");

    private double Below(double height) => _inside?.HeldMillilitres(height) ?? BrimMillilitres * height / DepthCentimetres;
}
