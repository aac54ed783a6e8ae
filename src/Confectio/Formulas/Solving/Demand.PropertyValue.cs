namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>
    /// A property that is no share of the mass, such as the water activity: a target to be hit as well as possible, or a limit that must be
    /// kept.
    /// </summary>
    public sealed class PropertyValue : Demand
    {
        internal PropertyValue(FormulaProperty asked, double low, double high)
            : base(low, high) => Asked = asked;

        /// <summary>The property.</summary>
        public FormulaProperty Asked { get; }

        /// <summary>The low end, in the unit of the property; minus infinity where there is none.</summary>
        public double Low => LowEnd;

        /// <summary>The high end; equal to the low one where one value is asked for, infinity where there is none.</summary>
        public double High => HighEnd;

        /// <summary>Whether it is a target, which may be missed; a limit must be kept.</summary>
        public bool IsTarget => Tolerance is not null;

        /// <summary>The miss that counts as one, in the unit of the property; <see langword="null"/> of a limit.</summary>
        public double? Tolerance { get; internal init; }

        /// <summary>Of a target: 1 comes before 2; <see langword="null"/> of a limit.</summary>
        public int? Priority { get; internal init; }

        internal override (double Tolerance, int Priority)? Aim => Tolerance is double tolerance ? (tolerance, Priority!.Value) : null;

        internal override bool GivesWayFirst => true;

        internal override string UnitText => Asked.Unit.Length > 0 ? " " + Asked.Unit : "";

        internal override Demand Between(double low, double high) =>
            new PropertyValue(Asked, low, high) { Tolerance = Tolerance, Priority = Priority };

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            double value = Asked.Value(Asked.SumsOf(problem.Ingredients, grams, boiledOffGrams));
            return double.IsFinite(value) ? value : double.NaN;
        }

        internal override (double Least, double Most) EndRange => (Asked.Minimum, Asked.Maximum);

        internal override double MaximumEnd(double at) => Asked.Maximum;

        internal override string SayMeasure(double? achieved) => achieved is null ? "it has none" : base.SayMeasure(achieved);

        internal override bool Allows(double missedBy, double slack) => base.Allows(missedBy, Tolerance ?? slack);

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddProperty(this);

        private protected override string Say(string ends) => $"{Asked.Name} {ends}";
    }
}
