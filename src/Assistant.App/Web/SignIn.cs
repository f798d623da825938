using System.Security.Cryptography;
using Assistant.Records.People;

namespace Assistant.App.Web;

/// <summary>
/// Who a phone speaks for. A one-time code binds it: the phone gets a secret in a cookie that no script can read, the records keep its
/// digest alone, and a lost phone is revoked as any other address is.
/// </summary>
internal sealed class SignIn(PeopleService people)
{
    private const string Cookie = "__Host-coldwalk";
    private const int SecretLength = 32;
    private static readonly object PersonKey = new();
    private static readonly TimeSpan Kept = TimeSpan.FromDays(180);

    /// <summary>The person this request comes from, where people sign in; null where nobody does.</summary>
    public static Person? PersonOf(HttpContext context) => context.Items.TryGetValue(PersonKey, out var person) ? (Person?)person : null;

    /// <summary>The name said on a record: the one signed in with, else the one the page gives.</summary>
    public static string NameOf(HttpContext context, string? by) => PersonOf(context)?.Name ?? RequestRules.Person(by);

    /// <summary>Finds out who it is.</summary>
    /// <returns>False for one who has not signed in, or whose phone was revoked.</returns>
    public async Task<bool> KnowsAsync(HttpContext context)
    {
        var person = ApiKeys.Of(context.Request) is { } key ? await people.Phones.WhoIsAsync(ApiKeys.Channel, ApiKeys.AddressOf(key), context.RequestAborted)
            : context.Request.Cookies[Cookie] is { Length: > 0 } secret ? await people.Phones.WhoIsAsync(VisitEndpoints.Channel, AddressOf(secret), context.RequestAborted)
            : null;
        if (person is null)
        {
            return false;
        }

        context.Items[PersonKey] = person;
        return true;
    }

    public async Task<EnrolmentResult> EnterAsync(string code, HttpContext context)
    {
        var secret = NewSecret();
        var result = await people.Enrolment.EnrolAsync(VisitEndpoints.Channel, AddressOf(secret), code, context.RequestAborted);
        if (result is Enrolled)
        {
            Keep(secret, context);
        }

        return result;
    }

    /// <summary>Lets in one whom the firm's own sign-in has vouched for.</summary>
    public async Task EnterAsync(Person person, HttpContext context)
    {
        var secret = NewSecret();
        await people.Enrolment.BindAsync(person, VisitEndpoints.Channel, AddressOf(secret), context.RequestAborted);
        Keep(secret, context);
    }

    /// <summary>The phone speaks for nobody from now on.</summary>
    public async Task LeaveAsync(HttpContext context)
    {
        if (context.Request.Cookies[Cookie] is { Length: > 0 } secret)
        {
            await people.Phones.RevokeAsync(VisitEndpoints.Channel, AddressOf(secret), context.RequestAborted);
        }

        context.Response.Cookies.Delete(Cookie, new() { Secure = true, Path = "/" });
    }

    private static string NewSecret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SecretLength));

    private static void Keep(string secret, HttpContext context) =>
        context.Response.Cookies.Append(Cookie, secret, new() { HttpOnly = true, Secure = true, SameSite = SameSiteMode.Lax, Path = "/", MaxAge = Kept, IsEssential = true });

    private static string AddressOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(secret)));
}
