using System.Collections.Immutable;
using System.Text.Json;
using Assistant.App.Commands;
using Assistant.Records.Assets;
using Assistant.Trade.Quantities;

namespace Assistant.App.Demo;

/// <summary>The invented call that shows how it goes: its unit, and the words that say it is invented.</summary>
/// <param name="Notice">Says that all of it is invented.</param>
public sealed record DemoVisit(string Notice, string Id, string Site, string Unit, UnitSystem Units, ImmutableSortedDictionary<string, string> Details)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new System.Text.Json.Serialization.JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public Asset Asset => new(Id, Site, Unit, Details);

    /// <exception cref="CommandFailure">The file beside the program can not be read.</exception>
    public static DemoVisit Load()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "demo", "visit.json");
        try
        {
            return JsonSerializer.Deserialize<DemoVisit>(File.ReadAllText(file), Json)
                ?? throw new JsonException("it is empty");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new CommandFailure($"demo/visit.json can not be read ({failure.Message.TrimEnd('.')}).", CommandFailure.BadInput);
        }
    }
}
