using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// The foods that the assembly carries (ingredients.csv, weights.csv). Their names are read at once, and the rest of a row and the weights
/// of a food when somebody first asks for them: a program that converts icing sugar need not read what three hundred others are made of.
/// </summary>
/// <remarks>
/// The rows are read by the code that reads a user's own table. That every one can be read, and that all of them give what reading the
/// whole table gives, is tested (CarriedFoodsTests) and not checked again in every program that uses the library.
/// </remarks>
internal sealed class CarriedFoods
{
    private const string Foods = "ingredients.csv", Weights = "weights.csv";

    private readonly CarriedRows _foods, _weights;

    private CarriedFoods(byte[] foods, byte[] weights)
    {
        _foods = new CarriedRows(Foods, foods);
        _weights = new CarriedRows(Weights, weights);
    }

    /// <summary>The ingredients of the built-in tables, in their order.</summary>
    public static Ingredient[] Read() => Read(EmbeddedTable.Bytes(Foods), EmbeddedTable.Bytes(Weights));

    /// <summary>The ingredients of such tables.</summary>
    /// <exception cref="InvalidOperationException">
    /// The names of a row cannot be read, or a weight is of no ingredient; later, where what is asked for cannot be read.
    /// </exception>
    internal static Ingredient[] Read(byte[] ingredients, byte[] weighings)
    {
        CarriedFoods carried = new(ingredients, weighings);
        LineCells cells = new();
        Ingredient[] foods = new Ingredient[carried._foods.Count];
        Dictionary<string, List<int>> weights = new(foods.Length, StringComparer.Ordinal);
        for (int i = 0; i < foods.Length; i++)
        {
            ProblemList problems = [];
            IngredientNames names = IngredientReader.ReadNames(new RowFields(carried._foods.Table, carried._foods.Row(i, cells), problems));
            Require(carried._foods, problems);
            Food food = new(carried, i);
            weights.Add(names.Id, food.Weights);
            foods[i] = new Ingredient(names, food.ReadRecord, food.ReadWeights);
        }
        int ingredient = carried._weights.Table.Find("ingredient");
        for (int i = 0; i < carried._weights.Count; i++)
        {
            string id = carried._weights.Row(i, cells)[ingredient].ToString();
            if (!weights.TryGetValue(id, out List<int>? rows))
                throw new InvalidOperationException($"{carried._weights.FileName}: {Excerpt.Of(id)} is not the id of an ingredient");
            rows.Add(i);
        }
        return foods;
    }

    private static void Require(CarriedRows rows, ProblemList problems)
    {
        if (problems.Count > 0)
            throw new InvalidOperationException($"{rows.FileName}: {problems[0]}");
    }

    /// <summary>Where a food stands in the tables.</summary>
    private sealed class Food(CarriedFoods carried, int row)
    {
        public List<int> Weights { get; } = [];

        public IngredientRecord ReadRecord()
        {
            ProblemList problems = [];
            IngredientRecord? record = IngredientReader.ReadRecord(
                new RowFields(carried._foods.Table, carried._foods.Row(row, new LineCells()), problems), 0);
            Require(carried._foods, problems);
            return record! with { IsCarried = true };
        }

        public WeightFact[] ReadWeights()
        {
            ProblemList problems = [];
            LineCells cells = new();
            List<WeightFact> facts = new(Weights.Count);
            foreach (int weight in Weights)
            {
                if (WeightReader.ReadFact(new RowFields(carried._weights.Table, carried._weights.Row(weight, cells), problems))
                    is WeightFact fact)
                    facts.Add(fact);
            }
            Require(carried._weights, problems);
            return facts.ToArray();
        }
    }
}
