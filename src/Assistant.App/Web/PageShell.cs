using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.FileProviders;

namespace Assistant.App.Web;

/// <summary>
/// The page's own files. Its styles go out as one file; the service worker is told which files make the page and their common hash, so
/// that a new release is fetched as a whole and an old one stays whole until then.
/// </summary>
internal static class PageShell
{
    /// <summary>In the order they build on each other.</summary>
    private static readonly string[] Styles = ["tokens", "controls", "start", "visit", "sheets"];

    public static void UsePageShell(this WebApplication app)
    {
        var root = Path.Combine(AppContext.BaseDirectory, "wwwroot");
        var files = new PhysicalFileProvider(root);
        var style = string.Join('\n', Styles.Select(name => File.ReadAllText(Path.Combine(root, "css", name + ".css"))));
        var worker = new Lazy<string>(() => Worker(root));
        app.MapGet("/app.css", (HttpContext context) => Text(context, style, "text/css")).AllowAnonymous();
        app.MapGet("/sw.js", (HttpContext context) => Text(context, worker.Value, "text/javascript")).AllowAnonymous();
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions
        {
            FileProvider = files,
            OnPrepareResponse = file => file.Context.Response.Headers.CacheControl = "no-cache",
        });
    }

    /// <summary>The worker's text, with the list of files before it.</summary>
    private static string Worker(string root)
    {
        var kept = Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(root, file).Replace('\\', '/'))
            .Where(file => file != "sw.js").Order(StringComparer.Ordinal).ToList();
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in kept.Append("sw.js"))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(file));
            hash.AppendData(File.ReadAllBytes(Path.Combine(root, file)));
        }

        var shell = new
        {
            version = Convert.ToHexStringLower(hash.GetHashAndReset())[..12],
            files = kept.Where(file => file != "index.html" && !file.StartsWith("css/", StringComparison.Ordinal)).Select(file => "/" + file).Prepend("/app.css").Prepend("/"),
        };
        return $"const shell = {JsonSerializer.Serialize(shell)};\n{File.ReadAllText(Path.Combine(root, "sw.js"))}";
    }

    private static ContentHttpResult Text(HttpContext context, string text, string type)
    {
        context.Response.Headers.CacheControl = "no-cache";
        return TypedResults.Text(text, type, Encoding.UTF8);
    }
}
