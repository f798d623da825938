using Assistant.App.Hosting;

namespace Assistant.App.Web;

/// <summary>What every answer carries, and what is turned away before it reaches any work.</summary>
internal static class PageGuards
{
    private const string PagePolicy =
        "default-src 'none'; script-src 'self'; worker-src 'self'; manifest-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; frame-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /// <summary>A report is a document with its own styles and pictures inside, and no script. The page shows it in a frame.</summary>
    public const string ReportPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; form-action 'none'; base-uri 'none'; frame-ancestors 'self'";

    public static void UsePageGuards(this WebApplication app, Exposure exposure)
    {
        app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = PagePolicy;
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "SAMEORIGIN";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "geolocation=(), payment=(), usb=(), camera=(self), microphone=(self)";
            if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || context.Request.Path.StartsWithSegments("/visits", StringComparison.Ordinal))
            {
                headers.CacheControl = "no-store";
            }

            if (exposure.IsReachable)
            {
                headers.StrictTransportSecurity = "max-age=31536000";
            }

            return Refusal(context.Request, exposure) is { } line ? RefuseAsync(context, line) : next(context);
        });
    }

    /// <summary>
    /// Another site's page in the same browser can reach this machine too. It is turned away by the name it calls (a name of its own
    /// pointed at this address) and by its origin.
    /// </summary>
    private static string? Refusal(HttpRequest request, Exposure exposure)
    {
        if (!exposure.Accepts(request.Host.Host))
        {
            return exposure.IsReachable
                ? "This program does not go by that name."
                : "This program answers on this machine only: call it as 127.0.0.1 or localhost.";
        }

        var origin = request.Headers.Origin.ToString();
        var own = $"{request.Scheme}://{request.Host}";
        return !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && origin.Length > 0 && !origin.Equals(own, StringComparison.OrdinalIgnoreCase)
            ? "Only this program's own page may send here."
            : null;
    }

    private static Task RefuseAsync(HttpContext context, string line)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return context.Response.WriteAsJsonAsync(new ErrorView(line));
    }
}

/// <summary>What went wrong and what would be right, in one line.</summary>
public sealed record ErrorView(string Error);
