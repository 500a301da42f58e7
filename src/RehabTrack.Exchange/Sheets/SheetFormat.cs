using System.Text;

namespace RehabTrack.Exchange.Sheets;

/// <summary>How a sheet is written: what its bytes and its separators mean.</summary>
/// <param name="Encoding">The encoding of the text.</param>
/// <param name="Separator">Semicolon, comma or tab.</param>
public sealed record SheetFormat(Encoding Encoding, char Separator);
