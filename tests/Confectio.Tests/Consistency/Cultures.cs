using System.Globalization;

namespace Confectio.Tests.Consistency;

/// <summary>Runs a check as it runs on machines of other countries.</summary>
internal static class Cultures
{
    public static void In(string culture, Action action) => InEach([culture], action);

    public static void InEach(ReadOnlySpan<string> cultures, Action action)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            foreach (string culture in cultures)
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                action();
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
