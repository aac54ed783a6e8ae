namespace Confectio.Formulas.Solving;

public abstract partial class Demand
{
    /// <summary>The grams of a part: a target to be hit as well as possible, or a requirement that must be kept.</summary>
    public sealed class PartMass : Demand
    {
        internal PartMass(FormulaPart part, double low, double high)
            : base(low, high) => Part = part;

        /// <summary>The part whose grams are asked for.</summary>
        public FormulaPart Part { get; }

        /// <summary>The low end, g; minus infinity where there is none.</summary>
        public double LowGrams => LowEnd;

        /// <summary>The high end, g; equal to the low one where one value is asked for, infinity where there is none.</summary>
        public double HighGrams => HighEnd;

        /// <summary>Whether it is a target, which may be missed; a requirement must be kept.</summary>
        public bool IsTarget => ToleranceGrams is not null;

        /// <summary>The miss that counts as one, g; <see langword="null"/> of a requirement.</summary>
        public double? ToleranceGrams { get; internal init; }

        /// <summary>Of a target: 1 comes before 2. <see langword="null"/> of a requirement, which comes before all of them.</summary>
        public int? Priority { get; internal init; }

        internal override (double Tolerance, int Priority)? Aim => ToleranceGrams is double tolerance ? (tolerance, Priority!.Value) : null;

        internal override bool GivesWayFirst => true;

        internal override Demand Between(double low, double high) =>
            new PartMass(Part, low, high) { ToleranceGrams = ToleranceGrams, Priority = Priority };

        internal override double Measure(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams) =>
            problem.GramsOf(Part, grams, boiledOffGrams);

        internal override bool Allows(double missedBy, double slack) => base.Allows(missedBy, ToleranceGrams ?? slack);

        internal override void AddTo(Assembly assembly, bool used) => assembly.AddPartMass(this);

        private protected override string Say(string ends) => $"{Part} {ends}";
    }
}
