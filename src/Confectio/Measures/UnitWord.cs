namespace Confectio.Measures;

/// <summary>
/// A unit as people write it: the value in the fixed unit is (number + <see cref="Before"/>)·<see cref="Times"/>/<see cref="Per"/>.
/// </summary>
/// <remarks>Two whole numbers where there are any, so that the change of unit rounds once.</remarks>
internal readonly record struct UnitWord(string Word, double Times, double Per, double Before = 0);
