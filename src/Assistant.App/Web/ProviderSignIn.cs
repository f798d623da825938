using System.Security.Claims;
using Assistant.App.Commands;
using Assistant.App.Hosting;
using Assistant.Records.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.OpenIdConnect;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;

namespace Assistant.App.Web;

/// <summary>
/// Sign-in by the firm's OpenID Connect provider, beside the one-time code. The provider says which account it is; which person that
/// account speaks for the office has said before (<c>people account</c>), so that a new account alone lets nobody in. What the phone keeps
/// after it is the same secret as after a code, and is revoked the same way.
/// </summary>
internal static class ProviderSignIn
{
    /// <summary>The channel under which a provider's accounts are bound to people.</summary>
    public const string Channel = "oidc";

    public const string Path = "/enter/provider";

    private const string Passing = "provider-passing";

    /// <param name="Claim">The claim that names the account.</param>
    public sealed record Settings(Uri Authority, string ClientId, string ClientSecret, string Claim)
    {
        /// <summary>From the environment, or null where no provider is set.</summary>
        /// <exception cref="CommandFailure">The settings are not whole.</exception>
        public static Settings? Read()
        {
            var told = Secrets.Read("COLDWALK_OIDC_AUTHORITY");
            if (told.Length == 0)
            {
                return null;
            }

            var authority = Uri.TryCreate(told, UriKind.Absolute, out var uri) && (uri.Scheme == Uri.UriSchemeHttps || uri.IsLoopback)
                ? uri
                : throw new CommandFailure("COLDWALK_OIDC_AUTHORITY: the provider's https address is wanted, the one before /.well-known/openid-configuration.");
            return new(authority, Needed("COLDWALK_OIDC_CLIENT_ID"), Needed("COLDWALK_OIDC_CLIENT_SECRET"), Secrets.Read("COLDWALK_OIDC_CLAIM") is { Length: > 0 } claim ? claim : "sub");
        }

        private static string Needed(string name) => Secrets.Read(name) is { Length: > 0 } value ? value : throw new CommandFailure($"{name}: it goes with COLDWALK_OIDC_AUTHORITY, and is missing.");
    }

    /// <param name="keys">Where the keys lie that seal what passes by the browser; several programs behind one balancer share them.</param>
    public static void AddProviderSignIn(this IServiceCollection services, Settings settings, string keys)
    {
        services.AddDataProtection().SetApplicationName("coldwalk").PersistKeysToFileSystem(new(keys));
        services.AddSingleton(settings).AddAuthentication().AddPassing().AddProvider(settings);
    }

    private static AuthenticationBuilder AddPassing(this AuthenticationBuilder authentication) => authentication
        .AddCookie(Passing, cookie =>
        {
            cookie.Cookie.Name = "__Host-coldwalk-passing";
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.Always;
            cookie.ExpireTimeSpan = TimeSpan.FromMinutes(5);
        });

    private static void AddProvider(this AuthenticationBuilder authentication, Settings settings) => authentication
        .AddOpenIdConnect(options =>
        {
            options.SignInScheme = Passing;
            options.Authority = settings.Authority.ToString().TrimEnd('/');
            options.RequireHttpsMetadata = !settings.Authority.IsLoopback;
            options.ClientId = settings.ClientId;
            options.ClientSecret = settings.ClientSecret;
            options.ResponseType = OpenIdConnectResponseType.Code;
            options.ResponseMode = OpenIdConnectResponseMode.Query;
            options.UsePkce = true;
            options.MapInboundClaims = false;
            options.GetClaimsFromUserInfoEndpoint = false;
            options.CallbackPath = Path + "/back";
            options.Scope.Clear();
            options.Scope.Add("openid");
            if (settings.Claim == "email")
            {
                options.Scope.Add("email");
            }

            // What went wrong at the provider is one line at the door, and no page of a stack.
            options.Events.OnRemoteFailure = failure =>
            {
                failure.Response.Redirect("/enter?trouble=provider");
                failure.HandleResponse();
                return Task.CompletedTask;
            };
        });

    public static void MapProviderSignIn(this WebApplication app)
    {
        app.UseAuthentication();
        app.MapGet(Path, (string? to) => TypedResults.Challenge(
            new AuthenticationProperties { RedirectUri = $"{Path}/known?to={Uri.EscapeDataString(SignInEndpoints.Inside(to))}" }, [OpenIdConnectDefaults.AuthenticationScheme]))
            .AllowAnonymous().RequireRateLimiting(RateLimits.Door);
        app.MapGet(Path + "/known", KnownAsync).AllowAnonymous().RequireRateLimiting(RateLimits.Door);
    }

    private static async Task<IResult> KnownAsync(string? to, Settings settings, SignIn signIn, PeopleService people, HttpContext context)
    {
        var passed = await context.AuthenticateAsync(Passing);
        await context.SignOutAsync(Passing);
        var account = passed.Principal is { } principal ? Account(principal, settings.Claim) : null;
        if (account is null || await people.Phones.WhoIsAsync(Channel, account, context.RequestAborted) is not { } person)
        {
            return TypedResults.Redirect("/enter?trouble=account");
        }

        await signIn.EnterAsync(person, context);
        return TypedResults.Redirect(SignInEndpoints.Inside(to));
    }

    /// <summary>An e-mail address counts only where the provider has verified it: else anybody writes another's there.</summary>
    private static string? Account(ClaimsPrincipal principal, string claim) =>
        claim == "email" && !string.Equals(principal.FindFirstValue("email_verified"), "true", StringComparison.OrdinalIgnoreCase) ? null : principal.FindFirstValue(claim);
}
