namespace Confectio.Heat;

/// <summary>Lines in one bowl, and what they have in heat together.</summary>
internal sealed class HeatMixture
{
    private readonly HeatLine[] _lines;
    private readonly double _loss, _water, _sucrose, _dissolved; // kJ and kg

    public HeatMixture(HeatLine[] lines, double lossKilojoules)
    {
        _lines = lines;
        _loss = lossKilojoules;
        Capacity = lines.Sum(line => line.Capacity);
        _water = lines.Sum(line => line.WaterKilograms);
        _sucrose = lines.Sum(line => line.SucroseKilograms);
        CrystalKilograms = lines.Sum(line => line.CrystalGrams) / 1000;
        _dissolved = CrystalKilograms > 0 ? Math.Max(0, _sucrose - CrystalKilograms) : _sucrose;
    }

    public IReadOnlyList<HeatLine> Lines => _lines;

    /// <summary>About its heat capacity, kJ/K.</summary>
    public double Capacity { get; }

    /// <summary>The sucrose that comes in as crystals, kg.</summary>
    public double CrystalKilograms { get; }

    public bool HasWater => _water > 0;

    public bool Melts => Array.Exists(_lines, line => line.Melts);

    public bool HasIce => Array.Exists(_lines, line => line.IsIce && line.Grams > 0);

    public bool HasSpreadOfVessel => Array.Exists(_lines, line => line.HasSpreadOfVessel);

    /// <summary>The sucrose that stays crystals at a temperature, kg, with so many kilograms of water added.</summary>
    public double CrystalsAt(double celsius, double addedWater, SugarDissolves sugar) => sugar switch
    {
        SugarDissolves.All => 0,
        SugarDissolves.None => CrystalKilograms,
        // What is dissolved already stays so, even where the mix is colder than it was.
        _ => CrystalKilograms > 0 ? Math.Max(0, _sucrose - Math.Max(_dissolved,
            ThermalMatter.SucrosePerWater(celsius) * (_water + addedWater))) : 0,
    };

    /// <summary>
    /// What the mix has at a temperature, the loss included, more than the lines brought, kJ. It rises with the temperature.
    /// </summary>
    public double Excess(double celsius, double addedWater, in HeatChoices choices)
    {
        double crystals = CrystalsAt(celsius, addedWater, choices.Sugar);
        double sum = crystals > 0 ? _loss + crystals * HeatLine.CrystalContent(celsius, choices.DissolvingSide) : _loss;
        foreach (HeatLine line in _lines)
            sum += line.ContentMixed(celsius, choices) - line.Content(choices);
        return sum;
    }

    /// <summary>The same with one line at another temperature.</summary>
    public HeatMixture With(int place, double celsius)
    {
        HeatLine[] lines = [.. _lines];
        lines[place] = lines[place].At(celsius);
        return new HeatMixture(lines, _loss);
    }
}
