namespace Assistant.Channels.Text;

/// <summary>A signed address that shows a visit's report until it expires.</summary>
public delegate Task<(string Address, DateTimeOffset Until)> ReportAddress(string visitId, CancellationToken cancellation);

/// <summary>How text messages come and go.</summary>
/// <param name="Secret">What the gateway proves itself with when it calls; never empty.</param>
/// <param name="SendUrl">
/// The gateway's address that sends, with {to}, {text} (UTF-8) and, where the gateway reports deliveries, {report} in it; each is put in
/// percent-encoded.
/// </param>
/// <param name="ReportUrl">
/// The address at which the gateway reaches this program's <c>/text/report</c>, or null where it does not report deliveries. What stands
/// for the report's type in the gateway's own way, such as <c>%d</c>, is part of it; id and attempt are added.
/// </param>
/// <param name="PictureUrl">Where pictures are added, with {visit} in it; null where there is no such page.</param>
public sealed record TextSettings(string Secret, string SendUrl, string? ReportUrl, string? PictureUrl = null)
{
    /// <summary>The name under which conversations by text message are kept.</summary>
    public const string Channel = "sms";

    /// <summary>Longer messages are cut: ten segments are more than anybody types at a unit.</summary>
    public const int LongestText = 1600;
}
