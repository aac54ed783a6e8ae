namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>A share of a part in another: a target to be hit as well as possible, or a requirement that must be kept.</summary>
    public sealed class Share : Demand
    {
        // Of all that is put in.
        private const double Nothing = 1e-12;

        internal Share(FormulaPart part, FormulaPart of, double low, double high)
            : base(low, high)
        {
            Part = part;
            Of = of;
        }

        /// <summary>The part whose share is asked for.</summary>
        public FormulaPart Part { get; }

        /// <summary>The part it is a share of.</summary>
        public FormulaPart Of { get; }

        /// <summary>The low end, as a mass fraction; minus infinity where there is none.</summary>
        public double LowFraction => LowEnd;

        /// <summary>
        /// The high end, as a mass fraction; equal to the low one where one value is asked for, infinity where there is none.
        /// </summary>
        public double HighFraction => HighEnd;

        /// <summary>Whether it is a target, which may be missed; a requirement must be kept.</summary>
        public bool IsTarget => Tolerance is not null;

        /// <summary>
        /// The miss that counts as one, as a mass fraction: targets are weighed against each other by it. <see langword="null"/> of a
        /// requirement.
        /// </summary>
        public double? Tolerance { get; internal init; }

        /// <summary>Of a target: 1 comes before 2. <see langword="null"/> of a requirement, which comes before all of them.</summary>
        public int? Priority { get; internal init; }

        internal override (double Tolerance, int Priority)? Aim => Tolerance is double tolerance ? (tolerance, Priority!.Value) : null;

        internal override bool GivesWayFirst => true;

        internal override double Factor => 100;

        internal override string UnitText => " %";

        internal override Demand Between(double low, double high) =>
            new Share(Part, Of, low, high) { Tolerance = Tolerance, Priority = Priority };

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
        {
            double whole = problem.GramsOf(Of, grams, boiledOffGrams), part = problem.GramsOf(Part, grams, boiledOffGrams);
            // Of nothing there is no share; nothing of nothing keeps every one that must be kept.
            // What rounding leaves of water that has all boiled off is nothing.
            double nothing = Nothing * problem.GramsOf(FormulaPart.Everything, grams, 0);
            return whole > nothing ? part / whole : part > nothing || IsTarget ? double.PositiveInfinity : double.IsFinite(LowEnd) ? LowEnd : 0;
        }

        internal override string SayMeasure(double? achieved) => achieved is null ? $"there is nothing of the {Of}"
            : base.SayMeasure(achieved);

        internal override bool Allows(double missedBy, double slack) => base.Allows(missedBy, Tolerance ?? slack);

        internal override (double Least, double Most) EndRange => (0, Of.Equals(FormulaPart.Everything) ? 1 : FormulaProblem.MaximumShare);

        internal override double MaximumEnd(double at) => Of.Equals(FormulaPart.Everything) ? 1 : Math.Max(1, 2 * at);

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddShare(this);

        private protected override string Say(string ends) => $"{Part} {ends}{(Of.Equals(FormulaPart.Everything) ? "" : $" of the {Of}")}";
    }
}
