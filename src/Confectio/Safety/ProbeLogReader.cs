using System.Globalization;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Safety;

/// <summary>Reads a probe's log from text and mends what can be mended, noting it; what cannot is left out, never guessed.</summary>
internal sealed class ProbeLogReader(ProbeLogOptions options)
{
    // A mix of egg with water in it cannot be hotter than this at any altitude: a column that is, is not in Celsius.
    private const double HottestWetCelsius = 105;

    // A heat log in Fahrenheit that never gets above this (32 °C) looks as if it were in Celsius.
    private const double CoolestHotFahrenheit = 90;

    // Nothing kills and nothing is held below this. A column under the heading of Celsius that gets above it, and never to what would be
    // ice in Fahrenheit, may be of a cold or cool bowl in Fahrenheit: 38 to 68 °F is a mix from the refrigerator, and would be counted as
    // 38 to 68 °C.
    private const double CoolestKillCelsius = 50, IceFahrenheit = 32;

    // A probe does not leap by this and come back by the next reading while the mix around it stays.
    private const double SpikeKelvin = 5, CalmKelvin = 2;

    // Times are kept to a million minutes, as readings are.
    private const double MostMinutes = 1e6;

    private const double DayMinutes = 24 * 60;

    private static readonly string[] s_minutesAndSeconds = ["mm:ss", "m:ss", "min:s", "min:sec", "min:ss", "time (mm:ss)", "time (m:ss)",
        "time (min:s)", "time (min:sec)", "time (min:ss)"];
    private static readonly string[] s_hoursAndMinutes = ["h:mm", "hh:mm", "time (h:mm)", "time (hh:mm)"];

    private static readonly NumberFormatInfo s_comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "." };

    private readonly NumberFormatInfo _format = options.Reading == AmountReading.DecimalComma ? s_comma : NumberFormatInfo.InvariantInfo;
    private readonly List<(int Line, ThermometerReading Reading)> _rows = [];
    private int _headerLine = 1;
    private bool _isFahrenheit, _isFull;
    private double _days, _lastClock; // minutes

    public ProblemList Problems { get; } = [];

    public ThermometerReading[]? Read(TextReader text)
    {
        DelimitedTable.Read(text, Problems, Open);
        Sort();
        DropSpikes();
        bool isScaleSure = ScaleIsSure();
        TellGaps();
        if (_rows.Count < 2)
            Problems.Add(new Problem(_headerLine, null, string.Create(CultureInfo.InvariantCulture,
                $"{_rows.Count} readings can be used; a log needs at least 2")));
        Problems.SortByLine();
        return isScaleSure && _rows.Count >= 2 ? [.. _rows.Select(row => row.Reading)] : null;
    }

    private DelimitedTable.RowReader? Open(DelimitedTable table)
    {
        int minutes = table.Find("minutes"), seconds = table.Find("seconds"), time = table.Find("time");
        int minutesAndSeconds = FirstOf(table, s_minutesAndSeconds), hoursAndMinutes = FirstOf(table, s_hoursAndMinutes);
        int celsius = table.Find("celsius"), fahrenheit = table.Find("fahrenheit");
        _headerLine = table.Line;
        long before = Problems.Total;
        table.RequireColumns([], Problems);
        if (new[] { minutes, seconds, time, minutesAndSeconds, hoursAndMinutes }.Count(column => column >= 0) != 1)
            Problems.Add(new Problem(table.Line, "minutes", "one column of times was expected: minutes, seconds, time (h:mm:ss), mm:ss or "
                + "h:mm"));
        if (celsius >= 0 == fahrenheit >= 0)
            Problems.Add(new Problem(table.Line, "celsius", "one column of temperatures was expected: celsius or fahrenheit"));
        if (Problems.Total > before)
            return null;
        _isFahrenheit = options.ConfirmedScale is TemperatureScale scale ? scale == TemperatureScale.Fahrenheit : fahrenheit >= 0;
        int shownAt = Math.Max(celsius, fahrenheit);
        return row =>
        {
            // Decimal commas between commas make fields of their own.
            if (row.Count > table.Header.Count)
            {
                Problems.Add(new Problem(row.Line, null, "the row has more fields than the header; the reading is left out"));
                return;
            }
            if (_rows.Count == ProbeLog.MaximumReadings)
            {
                if (!_isFull)
                    Problems.Add(new Problem(row.Line, null, string.Create(CultureInfo.InvariantCulture,
                        $"a log has at most {ProbeLog.MaximumReadings} readings; the rest is not read")));
                _isFull = true;
                return;
            }
            double? at = minutes >= 0 ? Number(row, minutes, "minutes", 0, MostMinutes) : seconds >= 0
                ? Number(row, seconds, "seconds", 0, 60 * MostMinutes) / 60
                : time >= 0 ? Clock(row, time, 3, 60) : minutesAndSeconds >= 0 ? Clock(row, minutesAndSeconds, 2, 1)
                    : Clock(row, hoursAndMinutes, 2, 60);
            double? shown = _isFahrenheit ? Number(row, shownAt, "fahrenheit", -40, 420) : Number(row, shownAt, "celsius", -40, 215);
            if (at is double when && shown is double degrees)
                _rows.Add((row.Line, new ThermometerReading(when, _isFahrenheit ? (degrees - 32) / 1.8 : degrees)));
        };
    }

    private double? Number(DelimitedRow row, int column, string name, double low, double high)
    {
        ReadOnlySpan<char> field = row[column];
        if (double.TryParse(field, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, _format, out double value)
            && value >= low && value <= high)
            return value;
        Problems.Add(new Problem(row.Line, name, field.IsEmpty ? "the field is empty; the reading is left out"
            : string.Create(CultureInfo.InvariantCulture, $"{Excerpt.Of(field)} is not a number from {low:0} to {high:0}; the reading is "
                + $"left out")));
        return null;
    }

    private static int FirstOf(DelimitedTable table, string[] names) =>
        names.Select(name => table.Find(name)).FirstOrDefault(column => column >= 0, -1);

    // As minutes: h:mm:ss, or under a heading that says so m:ss or h:mm. Under "time" one colon may be either, sixty times apart: refused.
    private double? Clock(DelimitedRow row, int column, int parts, double firstMinutes)
    {
        ReadOnlySpan<char> field = row[column];
        Span<Range> found = stackalloc Range[4];
        int count = field.Split(found, ':');
        double sum = 0;
        bool isClock = count == parts;
        for (int i = 0; i < count && isClock; i++)
        {
            isClock = double.TryParse(field[found[i]], i == count - 1 ? NumberStyles.AllowDecimalPoint : NumberStyles.None, _format,
                out double part)
                && part >= 0 && part < (i == 0 ? 10000 : 60);
            sum += part * (i == 0 ? firstMinutes : i == 1 ? firstMinutes / 60 : 1 / 60.0);
        }
        if (!isClock)
        {
            Problems.Add(new Problem(row.Line, "time", field.IsEmpty ? "the field is empty; the reading is left out"
                : parts == 2 ? $"{Excerpt.Of(field)} is not a time with one colon, as the heading has it; the reading is left out"
                : $"{Excerpt.Of(field)} is not a time such as 0:05:30, with hours, minutes and "
                    + $"seconds{(count == 2 ? "; if it is minutes and seconds, head the column mm:ss, if hours and minutes, h:mm" : "")}; "
                    + $"the reading is left out"));
            return null;
        }
        // A clock of the day that jumps back by more than half a day has passed midnight; a smaller step is a row out of order.
        if (firstMinutes > 1 && sum < _lastClock - DayMinutes / 2)
        {
            _days += DayMinutes;
            Problems.Add(new Problem(row.Line, "time", "the clock passes midnight here; what follows is of the next day"));
        }
        _lastClock = sum;
        if (sum + _days <= MostMinutes)
            return sum + _days;
        Problems.Add(new Problem(row.Line, "time", string.Create(CultureInfo.InvariantCulture,
            $"the clock is past {MostMinutes:0} minutes, the longest log; the reading is left out")));
        return null;
    }

    // A heat log in Celsius that is read as Fahrenheit promises nothing; it is told of and used.
    private bool ScaleIsSure()
    {
        if (_isFahrenheit && _rows.Count > 0 && _rows.Max(row => row.Reading.Celsius) * 1.8 + 32 < CoolestHotFahrenheit)
            Problems.Add(new Problem(_headerLine, "fahrenheit", string.Create(CultureInfo.InvariantCulture,
                $"no reading is above {CoolestHotFahrenheit:0} °F; if something was heated, the column is in Celsius")));
        (int Line, ThermometerReading Reading)[] hot = [.. _rows.Where(row => row.Reading.Celsius > HottestWetCelsius)];
        if (hot.Length == 0)
            return _isFahrenheit || options.ConfirmedScale is not null || CannotBeFahrenheit();
        string column = _isFahrenheit ? "fahrenheit" : "celsius";
        Problems.Add(new Problem(_headerLine, column, string.Create(CultureInfo.InvariantCulture,
            $"{hot.Length} readings, the first in line {hot[0].Line}, are above {HottestWetCelsius:0} °C, where no mix of egg can "
                + $"be{(_isFahrenheit ? "" : ": the column reads like Fahrenheit")}; the log is not used")));
        return false;
    }

    // A question and no verdict: two units are nearly two in one, and the kill between them is all or nothing.
    private bool CannotBeFahrenheit()
    {
        if (_rows.Count == 0)
            return true;
        double highest = _rows.Max(row => row.Reading.Celsius), lowest = _rows.Min(row => row.Reading.Celsius);
        if (highest < CoolestKillCelsius || lowest < IceFahrenheit)
            return true;
        // In front, so that a thousand odd rows do not hide it.
        Problems.Insert(0, new Problem(_headerLine, "celsius", string.Create(CultureInfo.InvariantCulture,
            $"is this Celsius? The first reading is {_rows[0].Reading.Celsius:0.#} and none is below {lowest:0.#}: in Fahrenheit it would "
                + $"be a mix of {(lowest - 32) / 1.8:0.#} to {(highest - 32) / 1.8:0.#} °C that was never heated. The log is not used "
                + $"until the unit is confirmed")));
        return false;
    }

    private void Sort()
    {
        bool isSorted = true;
        for (int i = 1; i < _rows.Count && isSorted; i++)
            isSorted = _rows[i].Reading.Minutes >= _rows[i - 1].Reading.Minutes;
        if (!isSorted)
        {
            int at = Enumerable.Range(1, _rows.Count - 1).First(i => _rows[i].Reading.Minutes < _rows[i - 1].Reading.Minutes);
            Problems.Add(new Problem(_rows[at].Line, null, "the time goes back here; the readings were put in order of time"));
            (int, ThermometerReading)[] sorted = [.. _rows.OrderBy(row => row.Reading.Minutes).ThenBy(row => row.Line)];
            _rows.Clear();
            _rows.AddRange(sorted);
        }
        int kept = 0;
        for (int i = 1; i < _rows.Count; i++)
        {
            ((int line, ThermometerReading later), (int other, ThermometerReading earlier)) = (_rows[i], _rows[kept]);
            if (later.Minutes != earlier.Minutes)
            {
                _rows[++kept] = _rows[i];
                continue;
            }
            bool isColder = later.Celsius < earlier.Celsius;
            Problems.Add(new Problem(isColder ? other : line, null, later.Celsius == earlier.Celsius
                ? "the same time stands twice; the second reading is left out"
                    : "the same time stands twice with two temperatures; the colder is kept"));
            if (isColder)
                _rows[kept] = _rows[i];
        }
        if (_rows.Count > 0)
            _rows.RemoveRange(kept + 1, _rows.Count - kept - 1);
    }

    // Upwards only: to leave a spike out takes heat away, to leave a dip out would put heat in that nobody measured.
    private void DropSpikes()
    {
        if (_rows.Count < 3)
            return;
        int kept = 0;
        for (int i = 1; i < _rows.Count - 1; i++)
        {
            double before = _rows[kept].Reading.Celsius, now = _rows[i].Reading.Celsius, after = _rows[i + 1].Reading.Celsius;
            // While the mix itself warms or cools, a leap has to be the larger to be one.
            double drift = Math.Abs(after - before), leap = drift <= CalmKelvin ? SpikeKelvin : SpikeKelvin + 2 * drift;
            bool isSpike = Math.Min(now - before, now - after) > leap, isDip = Math.Min(before - now, after - now) > leap, isOdd = isSpike
                || isDip;
            if (isOdd)
            {
                Problems.Add(new Problem(_rows[i].Line, null, string.Create(CultureInfo.InvariantCulture,
                    $"{now:0.#} °C {(isSpike ? "leaps" : "dips")} out of its neighbours, {before:0.#} and {after:0.#} °C; the reading is "
                        + $"{(isSpike ? "left out" : "kept, for it may have been so")}")));
            }
            if (!isSpike)
                _rows[++kept] = _rows[i];
        }
        _rows[++kept] = _rows[^1];
        _rows.RemoveRange(kept + 1, _rows.Count - kept - 1);
    }

    // The log keeps them as facts; here they are told with their lines.
    private void TellGaps()
    {
        for (int i = 1; i < _rows.Count; i++)
        {
            ThermometerReading from = _rows[i - 1].Reading, to = _rows[i].Reading;
            if (LogGap.IsBetween(from, to, options.GapSeconds))
                Problems.Add(new Problem(_rows[i].Line, null, string.Create(CultureInfo.InvariantCulture,
                    $"{(to.Minutes - from.Minutes) * 60:0.#} s without a reading before this, more than {options.GapSeconds:0.#} s: "
                        + $"nothing is counted across it"), ProblemCodes.Gap));
        }
    }
}
