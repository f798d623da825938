using System.Net;
using Assistant.Records.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.HttpOverrides;

namespace Assistant.App.Web;

/// <summary>The door: where others than this machine can come, everyone signs in with a one-time code before anything else.</summary>
internal static class SignInEndpoints
{
    public static void AddSignIn(this IServiceCollection services) => services.AddSingleton<SignIn>().AddRateLimits();

    /// <summary>Only the proxy that was named may hand requests over, and only those that came to it over TLS.</summary>
    public static void UseTrustedProxy(this WebApplication app, IPAddress proxy)
    {
        app.Use((context, next) => context.Connection.RemoteIpAddress is { } from && (from.Equals(proxy) || from.MapToIPv4().Equals(proxy))
            ? next(context)
            : throw new RequestRefused("Requests come through the proxy only.", StatusCodes.Status403Forbidden));
        var forwarded = new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto, ForwardLimit = 1 };
        forwarded.KnownIPNetworks.Clear();
        forwarded.KnownProxies.Clear();
        forwarded.KnownProxies.Add(proxy);
        forwarded.KnownProxies.Add(proxy.MapToIPv6());
        app.UseForwardedHeaders(forwarded);
        app.Use((context, next) => context.Request.IsHttps
            ? next(context)
            : throw new RequestRefused("The page is reached over https only; the proxy says X-Forwarded-Proto.", StatusCodes.Status403Forbidden));
    }

    /// <summary>What is no endpoint is a file of the page itself and holds nothing of anybody. An endpoint that has its own key says so with AllowAnonymous.</summary>
    public static void UseSignIn(this WebApplication app)
    {
        app.Use(async (context, next) =>
        {
            var isOpen = context.GetEndpoint() is not { } endpoint || endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null;
            if (isOpen || await context.RequestServices.GetRequiredService<SignIn>().KnowsAsync(context))
            {
                await next(context);
            }
            else if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || !HttpMethods.IsGet(context.Request.Method))
            {
                throw new RequestRefused("Sign in first: this phone is not known.", StatusCodes.Status401Unauthorized);
            }
            else
            {
                context.Response.Redirect($"/enter?to={Uri.EscapeDataString(context.Request.Path + context.Request.QueryString)}");
            }
        });
        // After the sign-in: it is counted by person.
        app.UseRateLimiter();
        if (app.Services.GetService<ProviderSignIn.Settings>() is not null)
        {
            app.MapProviderSignIn();
        }

        app.MapGet("/enter", (string? to, string? trouble, string? code, HttpContext context) => Door(context, to, Trouble(trouble), StatusCodes.Status200OK, code)).AllowAnonymous();
        app.MapPost("/enter", EnterAsync).WithMetadata(new BodyLimit(4096)).AllowAnonymous().RequireRateLimiting(RateLimits.Door);
        app.MapPost("/leave", async (SignIn signIn, HttpContext context) =>
        {
            await signIn.LeaveAsync(context);
            return Results.Redirect("/enter");
        });
    }

    private static async Task<IResult> EnterAsync(SignIn signIn, HttpContext context)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var to = form["to"].ToString();
        return await signIn.EnterAsync(RequestRules.Line("code", form["code"], 40), context) switch
        {
            Enrolled => TypedResults.Redirect(Inside(to)),
            TooManyTries tries => Door(context, to, $"Too many wrong codes. Try again after {tries.Until.UtcDateTime:HH:mm} UTC.", StatusCodes.Status429TooManyRequests),
            _ => Door(context, to, "That code is not known, was used, or is past its time. Ask the office for a new one.", StatusCodes.Status403Forbidden),
        };
    }

    private static string Trouble(string? trouble) => trouble switch
    {
        "account" => "The firm's sign-in knows this account, but the office has not said whose it is. Ask the office, or enter with a code.",
        "provider" => "The firm's sign-in did not let this phone through. Try again, or enter with a code.",
        _ => "",
    };

    private static IResult Door(HttpContext context, string? to, string trouble, int status, string? code = null)
    {
        // Without a referrer the form would come back without its origin, and be taken for another site's.
        context.Response.Headers["Referrer-Policy"] = "same-origin";
        return Results.Content(
        $"""
        <!doctype html>
        <html lang="en">
        <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
        <title>Sign in - Coldwalk</title><link rel="icon" href="/icon.svg" type="image/svg+xml"><link rel="stylesheet" href="/app.css"></head>
        <body>
        <main class="start">
        <header class="start-head"><h1>Coldwalk</h1><p>This phone is not known yet. The office gives you a code; it works once.</p></header>
        <form method="post" action="/enter" autocomplete="off">
        {(trouble.Length == 0 ? "" : $"<p class=\"trouble\" role=\"alert\">{WebUtility.HtmlEncode(trouble)}</p>")}
        <input type="hidden" name="to" value="{WebUtility.HtmlEncode(Inside(to))}">
        <label for="code">Your code</label>
        <input id="code" name="code" value="{WebUtility.HtmlEncode(code is { Length: <= 40 } ? code : "")}" required maxlength="40" autocapitalize="characters" autocomplete="one-time-code">
        <button type="submit" class="main">Sign in</button>
        </form>
        {(context.RequestServices.GetService<ProviderSignIn.Settings>() is null ? "" : $"<p><a href=\"{ProviderSignIn.Path}?to={Uri.EscapeDataString(Inside(to))}\">Sign in with the firm's account</a></p>")}
        </main>
        </body>
        </html>
        """,
        "text/html",
        System.Text.Encoding.UTF8,
        status);
    }

    /// <summary>An address of this page, whatever was asked for.</summary>
    internal static string Inside(string? to) => to is ['/', not ('/' or '\\'), ..] ? to : "/";
}
