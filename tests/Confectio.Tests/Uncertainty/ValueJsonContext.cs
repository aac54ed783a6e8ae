using System.Text.Json.Serialization;
using Confectio.Cakes;
using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Tests.Uncertainty;

/// <summary>Source-generated, as a program compiled ahead of time has it.</summary>
[JsonSerializable(typeof(Spread))]
[JsonSerializable(typeof(AirPressure))]
[JsonSerializable(typeof(Brix))]
[JsonSerializable(typeof(CakeLength))]
[JsonSerializable(typeof(Amount))]
[JsonSerializable(typeof(Fraction))]
[JsonSerializable(typeof(ThermometerReading))]
[JsonSerializable(typeof(PlanPoint))]
internal sealed partial class ValueJsonContext : JsonSerializerContext;
