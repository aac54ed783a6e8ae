// Draws docs/icon.png, the icon of the package, from the strokes of docs/logo.svg: 128 x 128 pixels, smooth edges, no library.
//
//   dotnet run docs/icon.cs
using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

const int Size = 128;
const double Scale = Size / 32.0, HalfWidth = 1.25; // the logo is drawn in 32 x 32 with strokes 2.5 wide
(byte Red, byte Green, byte Blue) rose = (0xB0, 0x56, 0x7A);
// The jug, its handle and its two graduations, as in the logo.
double[][] strokes = [[5, 8, 22, 8, 20, 25, 7, 25, 5, 8], [22, 11, 27, 11, 27, 19, 21, 19], [10, 14, 14, 14], [10.5, 19, 14.5, 19]];

using MemoryStream rows = new();
for (int y = 0; y < Size; y++)
{
    rows.WriteByte(0); // no filter
    for (int x = 0; x < Size; x++)
    {
        double near = strokes.Min(stroke => Distance(stroke, (x + 0.5) / Scale, (y + 0.5) / Scale));
        double cover = Math.Clamp((HalfWidth - near) * Scale + 0.5, 0, 1);
        rows.Write([rose.Red, rose.Green, rose.Blue, (byte)Math.Round(255 * cover)]);
    }
}
using MemoryStream packed = new();
using (ZLibStream zip = new(packed, CompressionLevel.SmallestSize, leaveOpen: true))
    zip.Write(rows.ToArray());
byte[] head = new byte[13];
BinaryPrimitives.WriteInt32BigEndian(head, Size);
BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), Size);
(head[8], head[9]) = (8, 6); // eight bits; colour with transparency
using FileStream png = File.Create("docs/icon.png");
png.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10]);
Chunk(png, "IHDR", head);
Chunk(png, "IDAT", packed.ToArray());
Chunk(png, "IEND", []);

// From a point to the nearest of the line's parts.
static double Distance(double[] line, double x, double y) => Enumerable.Range(0, line.Length / 2 - 1).Min(i =>
{
    (double ax, double ay, double bx, double by) = (line[2 * i], line[2 * i + 1], line[2 * i + 2], line[2 * i + 3]);
    (double dx, double dy) = (bx - ax, by - ay);
    double along = Math.Clamp(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy), 0, 1);
    return Math.Sqrt(Math.Pow(x - ax - along * dx, 2) + Math.Pow(y - ay - along * dy, 2));
});

static void Chunk(Stream png, string type, byte[] data)
{
    byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data], number = new byte[4];
    BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
    png.Write(number);
    png.Write(body);
    uint check = 0xFFFFFFFF;
    foreach (byte one in body)
    {
        check ^= one;
        for (int bit = 0; bit < 8; bit++)
            check = (check & 1) == 0 ? check >> 1 : check >> 1 ^ 0xEDB88320;
    }
    BinaryPrimitives.WriteUInt32BigEndian(number, ~check);
    png.Write(number);
}
