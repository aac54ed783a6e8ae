namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>A ceiling on what a kilogram of the formula costs, of what is made after boiling off.</summary>
    public sealed class UnitCost : Demand
    {
        internal UnitCost(double high)
            : base(double.NegativeInfinity, high)
        {
        }

        /// <summary>The most that a kilogram may cost, in the currency of the prices.</summary>
        public double MostPerKilogram => HighEnd;

        internal override string UnitText => " a kilogram";

        internal override bool GivesWayFirst => true;

        internal override Demand Between(double low, double high) => new UnitCost(high);

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            double cost = 0;
            for (int j = 0; j < grams.Length; j++)
                cost += problem.Candidates[j].CostPerKilogram * grams[j];
            double whole = problem.GramsOf(FormulaPart.Everything, grams, boiledOffGrams);
            return whole > 0 ? cost / whole : cost > 0 ? double.PositiveInfinity : 0;
        }

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddUnitCost(this);

        private protected override string Say(string ends) => $"cost {ends}";
    }
}
