using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Eggs;

/// <summary>A replacement in the cups and spoons of one system: what comes in, and the water.</summary>
public sealed class EggMeasures
{
    private readonly EggForm _form;

    private EggMeasures(EggForm form, MeasuringSystem system, ConvertedVolume incoming, PracticalMeasure? incomingMeasure,
        ConvertedVolume? water, PracticalMeasure? waterMeasure)
    {
        _form = form;
        MeasuringSystem = system;
        Incoming = incoming;
        IncomingMeasure = incomingMeasure;
        Water = water;
        WaterMeasure = waterMeasure;
    }

    /// <summary>Whose cups and spoons.</summary>
    public MeasuringSystem MeasuringSystem { get; }

    /// <summary>The volume of what comes in, in its usual packing, with the spread of its density, its source and its cautions.</summary>
    public ConvertedVolume Incoming { get; }

    /// <summary>The fewest fills for it; <see langword="null"/> where no filling comes near enough.</summary>
    public PracticalMeasure? IncomingMeasure { get; }

    /// <summary>The volume of the water that is added; <see langword="null"/> where none is, because the formula gives up water.</summary>
    public ConvertedVolume? Water { get; }

    /// <summary>The fewest fills for the water; <see langword="null"/> where none is added or no filling comes near enough.</summary>
    public PracticalMeasure? WaterMeasure { get; }

    /// <summary>
    /// The solids, per cent, of what the fills hold together, at the likely densities: what the nearest spoons have made of the number that
    /// was asked for. <see langword="null"/> where no filling came near enough.
    /// </summary>
    public double? SolidsPercent
    {
        get
        {
            if (IncomingMeasure is null || (Water is not null && WaterMeasure is null))
                return null;
            double incoming = Incoming.By!.ToMass(IncomingMeasure.Millilitres).Grams.Likely;
            double water = Water is ConvertedVolume wet ? wet.By!.ToMass(WaterMeasure!.Millilitres).Grams.Likely : 0;
            return 100 * incoming * _form.SolidsFraction.Likely / (incoming + water);
        }
    }

    /// <summary>
    /// One line, such as <c>dried egg white: 2 Tbsp; water: 1/3 cup + 1 tsp</c>; millilitres where no measure comes near enough.
    /// </summary>
    public override string ToString() => $"{Incoming.By!.Ingredient.Name}: "
        + $"{Text(IncomingMeasure, Incoming)}" + (Water is ConvertedVolume water ? $"; water: {Text(WaterMeasure, water)}" : "");

    internal static EggMeasures Of(EggForm incoming, double incomingGrams, Ingredient water, double waterGrams, MeasuringSystem system,
        double allowedError)
    {
        ConvertedVolume volume = Conversion.Of(incoming.Ingredient, Guard.NotNull(system)).ToVolume(incomingGrams);
        // A last bit of water is none.
        if (waterGrams <= 1e-9 * incomingGrams)
            return new EggMeasures(incoming, system, volume, Find(volume.Millilitres.Likely, system, allowedError), null, null);
        ConvertedVolume wet = Conversion.Of(water, system).ToVolume(waterGrams);
        return new EggMeasures(incoming, system, volume, Find(volume.Millilitres.Likely, system, allowedError), wet,
            Find(wet.Millilitres.Likely, system, allowedError));
    }

    /// <summary>The usual cups and spoons for a volume, where it is one that is measured with them.</summary>
    internal static PracticalMeasure? Find(double millilitres, MeasuringSystem system, double allowedError) =>
        millilitres is >= 0.01 and <= 1e6 ? PracticalMeasure.Find(millilitres, MeasuringTools.Usual(system), allowedError) : null;

    private static string Text(PracticalMeasure? measure, ConvertedVolume volume) =>
        measure?.Amount.ToString() ?? string.Create(CultureInfo.InvariantCulture, $"{volume.Millilitres.Likely:0.#} mL");
}
