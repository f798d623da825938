using QRCoder;

namespace Assistant.App.Commands;

/// <summary>A one-time code as an address that fills it in, and as a code of squares to point a phone at. Opening it uses nothing up: only the sign-in does.</summary>
internal static class Invitation
{
    /// <exception cref="CommandFailure">The address is none that a phone could open.</exception>
    public static string LinkOf(string page, string code) =>
        Uri.TryCreate(page, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https"
            ? $"{uri.GetLeftPart(UriPartial.Authority)}/enter?code={Uri.EscapeDataString(code)}"
            : throw new CommandFailure($"--address {page}: where \"serve\" is reached is wanted, such as https://coldwalk.example.", CommandFailure.BadInput);

    /// <summary>The link as squares, for a terminal with light letters on a dark ground.</summary>
    public static string Drawn(string link)
    {
        using var data = QRCodeGenerator.GenerateQrCode(link, QRCodeGenerator.ECCLevel.M);
        using var drawn = new AsciiQRCode(data);
        return drawn.GetGraphicSmall();
    }
}
