namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>The total after boiling off.</summary>
    public sealed class Total : Demand
    {
        internal Total(double low, double high)
            : base(low, high)
        {
        }

        /// <summary>The low end, g.</summary>
        public double LowGrams => LowEnd;

        /// <summary>The high end, g; equal to the low one where one value is asked for.</summary>
        public double HighGrams => HighEnd;

        internal override bool IsGiven => IsOneValue;

        internal override Demand Between(double low, double high) => new Total(low, high);

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams) =>
            problem.GramsOf(FormulaPart.Everything, grams, boiledOffGrams);

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddTotal(this);

        private protected override string Say(string ends) => IsOneValue ? $"a total of {ends}" : $"a total {ends}";
    }
}
