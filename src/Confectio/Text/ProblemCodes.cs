namespace Confectio.Text;

/// <summary>The codes of problems; <see cref="Problem.Code"/> says them to the caller, and they never change.</summary>
internal static class ProblemCodes
{
    public const string Row = "row", Field = "field", More = "more", Gap = "gap";

    public const string NotJson = "not-json", TooLong = "too-long", WrongType = "wrong-type", Missing = "missing",
        UnknownMember = "unknown-member",
        WrongVersion = "wrong-version", TooMany = "too-many", UnknownName = "unknown-name", WrongValue = "wrong-value";
}
