using System.Net;
using Assistant.Records.Assets;
using QRCoder;

namespace Assistant.App.Web;

/// <summary>A label for the unit's housing: whoever points a phone at it is at its record and one press from a visit.</summary>
internal static class UnitLabel
{
    /// <summary>A page to print.</summary>
    /// <param name="address">What the code opens.</param>
    public static string Page(Asset asset, string address) => $$"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
        <title>Label: {{Text(asset.Unit)}}, {{Text(asset.Site)}}</title>
        <style>
          body { font: 16px/1.3 system-ui, "DejaVu Sans", sans-serif; margin: 1rem; color: #000; background: #fff; }
          .label { width: 80mm; max-width: 100%; border: 0.6mm solid #000; border-radius: 2mm; padding: 4mm; }
          .label svg { display: block; width: 46mm; height: 46mm; margin: 0 auto 3mm; }
          h1 { font-size: 18px; margin: 0; } p { margin: 1mm 0 0; overflow-wrap: anywhere; } .small { font-size: 12px; }
          @media print { body { margin: 0; } .hint { display: none; } }
        </style>
        </head>
        <body>
        <main class="label">{{Code(address)}}<h1>{{Text(asset.Site)}}</h1><p>{{Text(asset.Unit)}}</p><p class="small">{{Text(address)}}</p></main>
        {{(IsOfThisMachine(address) ? "<p class=\"hint\"><strong>This page is served on this machine only, so no phone will open this code.</strong> Serve it over TLS first (deploy/README.md), and print the label from that address.</p>" : "")}}
        <p class="hint">Print this page and stick the label where rain and hot gas do not reach it.</p>
        </body>
        </html>
        """;

    /// <summary>The address as a code to point a phone at, SVG. It is still read with a quarter of it gone.</summary>
    public static string Code(string address)
    {
        using var data = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.Q);
        using var drawn = new SvgQRCode(data);
        return drawn.GetGraphic(new System.Drawing.Size(300, 300), "#000000", "#ffffff", drawQuietZones: true, SvgQRCode.SizingMode.ViewBoxAttribute);
    }

    private static bool IsOfThisMachine(string address) => Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.IsLoopback;

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
