namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>Water that may boil off.</summary>
    public sealed class BoilOff : Demand
    {
        internal BoilOff(double low, double high)
            : base(low, high)
        {
        }

        /// <summary>The low end, g.</summary>
        public double LowGrams => LowEnd;

        /// <summary>The high end, g; equal to the low one where one value is asked for.</summary>
        public double HighGrams => HighEnd;

        internal override Demand Between(double low, double high) => new BoilOff(low, high);

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams) => boiledOffGrams;

        internal override void AddTo(Assembly assembly, bool used) => assembly.LimitBoilOff(this);

        private protected override string Say(string ends) => $"water boiled off {ends}";
    }
}
