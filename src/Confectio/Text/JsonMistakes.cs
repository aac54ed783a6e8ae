namespace Confectio.Text;

/// <summary>The mistakes of one JSON text by their paths; the first thousand are kept, the others counted.</summary>
internal sealed class JsonMistakes
{
    // Looking for near names is slow, and no more are told in one message.
    private const int MostNear = 20;

    // The guard has refused what goes deeper than a form allows, and none allows as much.
    private const int MostDepth = 64;

    private readonly List<(string Path, string Code, string Message)> _kept = [];

    /// <summary>
    /// The members that were asked for, of the object that is read and those around it: a stack, so that an object costs no list of its
    /// own.
    /// </summary>
    public List<string> Asked { get; } = new(24);

    /// <summary>
    /// Told of every member that is asked for, with the path of its object: what a reader knows is held against its schema.
    /// </summary>
    public Action<string, string>? Heard { get; init; }

    /// <summary>How many there are.</summary>
    public long Count { get; private set; }

    /// <summary>Whether it is still worth looking for what may have been meant.</summary>
    public bool WantsNearNames => Count < MostNear;

    /// <summary>The mistakes with their paths, in the order in which they were noted.</summary>
    public IReadOnlyList<(string Path, string Code, string Message)> Kept => _kept;

    /// <summary>Adds a mistake at a path; the path is asked for only if it is kept.</summary>
    public void Add(JsonFields at, string? member, string code, string message)
    {
        if (Count++ < ProblemList.Most)
            _kept.Add((at.PathOf(member), code, message));
    }

    /// <summary>The mistakes with their places, in the order of the text.</summary>
    public IReadOnlyList<Problem> Located(ReadOnlySpan<byte> utf8)
    {
        // A member that should not be there stands where its name does, everything else where the value does.
        Dictionary<(string Path, bool IsName), int> offsets = [];
        foreach ((string path, string code, _) in _kept)
            offsets[(path, code == ProblemCodes.UnknownMember)] = 0;
        JsonWalker walker = new(utf8, MostDepth);
        for (int missing = offsets.Count; missing > 0 && walker.Read();)
        {
            if ((walker.IsValue || walker.IsName) && (walker.Path, walker.IsName) is var place
                && offsets.TryGetValue(place, out int found) && found == 0)
            {
                offsets[place] = walker.Offset;
                missing--;
            }
        }
        List<(int Offset, Problem Problem)> placed = [];
        foreach ((string path, string code, string message) in _kept)
        {
            int offset = offsets[(path, code == ProblemCodes.UnknownMember)];
            placed.Add((offset, JsonGuard.ProblemAt(utf8, offset, path, code, message)));
        }
        List<Problem> problems = [.. placed.OrderBy(one => one.Offset).Select(one => one.Problem)];
        if (Count > problems.Count)
            problems.Add(new Problem(problems[^1].Line, Count - problems.Count));
        return problems;
    }
}
