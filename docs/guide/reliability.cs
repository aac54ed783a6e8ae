// Draws docs/guide/reliability.svg from docs/guide/reliability.csv: in each fifth of P(right), the share of rows that is right.
//
//   CONFECTIO_RELIABILITY=$PWD/docs/guide/reliability.csv dotnet test -c Release   # writes the figures
//   dotnet run docs/guide/reliability.cs                                            # draws them
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

const double Left = 60, Top = 20, Side = 300;
string folder = Path.GetDirectoryName(Here())!;
StringBuilder svg = new();
Line($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 380\" width=\"400\" height=\"380\" font-family=\"sans-serif\" font-size=\"12\">");
Line($"<title>Of the rows to which P(right) gives a probability, the share that is right: five real tables with planted mistakes</title>");
Line($"<rect width=\"400\" height=\"380\" fill=\"#fff\"/>");
for (int tick = 0; tick <= 5; tick++)
{
    double at = tick / 5.0;
    Line($"<path d=\"M{X(at)} {Y(0)}V{Y(1)}M{X(0)} {Y(at)}H{X(1)}\" stroke=\"#ddd\" fill=\"none\"/>");
    Line($"<text x=\"{X(at)}\" y=\"{Y(0) + 18}\" text-anchor=\"middle\">{at:0.0}</text>");
    Line($"<text x=\"{X(0) - 8}\" y=\"{Y(at) + 4}\" text-anchor=\"end\">{at:0.0}</text>");
}
// Within 0.07 of the diagonal.
Line($"<path d=\"M{X(0)} {Y(0.07)}L{X(0.93)} {Y(1)}H{X(1)}V{Y(0.93)}L{X(0.07)} {Y(0)}H{X(0)}Z\" fill=\"#e8f0e0\"/>");
Line($"<path d=\"M{X(0)} {Y(0)}L{X(1)} {Y(1)}\" stroke=\"#888\" fill=\"none\"/>");
foreach (string row in File.ReadLines(Path.Combine(folder, "reliability.csv")).Skip(1))
{
    double[] cells = [.. row.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
    // The bar is two standard deviations of a share of so many rows.
    double error = 2 * Math.Sqrt(Math.Max(cells[2] * (1 - cells[2]), 0.002) / cells[0]);
    Line($"<path d=\"M{X(cells[1])} {Y(Math.Max(0, cells[2] - error))}V{Y(Math.Min(1, cells[2] + error))}\" stroke=\"#7a3b1d\" stroke-width=\"2\"/>");
    Line($"<circle cx=\"{X(cells[1])}\" cy=\"{Y(cells[2])}\" r=\"5\" fill=\"#7a3b1d\"><title>{cells[0]:0} rows: said {cells[1]:0.00}, right {cells[2]:0.00}</title></circle>");
}
Line($"<text x=\"{X(0.5)}\" y=\"{Y(0) + 40}\" text-anchor=\"middle\">P(right), mean of each fifth</text>");
Line($"<text transform=\"translate(18 {Y(0.5)}) rotate(-90)\" text-anchor=\"middle\">share of rows that is right</text>");
Line($"</svg>");
File.WriteAllText(Path.Combine(folder, "reliability.svg"), svg.ToString());
return 0;

double X(double value) => Left + Side * value;

double Y(double value) => Top + Side * (1 - value);

void Line(FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');

static string Here([CallerFilePath] string path = "") => path;
