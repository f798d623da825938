using System.Buffers;
using System.Collections.Frozen;
using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Log;

/// <summary>Events to JSON and back, with what is <see cref="PersonalAttribute">personal</see> kept apart.</summary>
internal static class EventJson
{
    /// <summary>Stands for the name of a person who was erased.</summary>
    public const string ErasedName = "(erased)";

    /// <summary>The stored kind of <see cref="PersonErased"/>.</summary>
    public const string PersonErasedKind = "person-erased";

    /// <summary>The stored kind of <see cref="VisitClosed"/>.</summary>
    public const string VisitClosedKind = "visit-closed";

    /// <summary>The stored kind of <see cref="CylinderUsed"/>.</summary>
    public const string CylinderUsedKind = "cylinder-used";

    /// <summary>The stored kind of <see cref="EventWithdrawn"/>.</summary>
    public const string EventWithdrawnKind = "event-withdrawn";

    private const string Discriminator = "kind";

    public static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        AllowOutOfOrderMetadataProperties = true,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string ByName = Options.PropertyNamingPolicy!.ConvertName(nameof(VisitEvent.By));

    /// <summary>The personal properties of each kind, by their JSON names.</summary>
    private static readonly FrozenDictionary<string, string[]> PersonalNames = typeof(VisitEvent)
        .GetCustomAttributes<JsonDerivedTypeAttribute>()
        .ToFrozenDictionary(
            kind => (string)kind.TypeDiscriminator!,
            kind => kind.DerivedType.GetProperties()
                .Where(property => property.IsDefined(typeof(PersonalAttribute), inherit: true))
                .Select(property => Options.PropertyNamingPolicy!.ConvertName(property.Name))
                .ToArray());

    private static readonly FrozenDictionary<string, byte[][]> PersonalKeys = PersonalNames.ToFrozenDictionary(kind => kind.Key, kind => kind.Value.Select(Encoding.UTF8.GetBytes).ToArray());

    public static StoredEvent Write(VisitEvent happened)
    {
        // Written once and parted by its properties as they stand: making a tree of it takes longer than all the rest.
        var whole = JsonSerializer.SerializeToUtf8Bytes(happened, Options);
        var (body, personal) = (new Part(whole.Length + 2), new Part(whole.Length + 2));
        var reader = new Utf8JsonReader(whole);
        reader.Read();
        var kind = "";
        byte[][] apart = [];
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var (begins, isPersonal) = ((int)reader.TokenStartIndex, IsAnyOf(apart, ref reader));
            var isKind = kind.Length == 0 && reader.ValueTextEquals(Discriminator);
            reader.Read();
            if (isKind)
            {
                kind = reader.GetString()!;
                apart = PersonalKeys[kind];
            }

            reader.Skip();
            (isPersonal ? personal : body).Add(whole.AsSpan(begins, (int)reader.BytesConsumed - begins));
        }

        return new(kind, body.Text(), personal.Text());
    }

    private static bool IsAnyOf(byte[][] keys, ref Utf8JsonReader reader)
    {
        foreach (var key in keys)
        {
            if (reader.ValueTextEquals(key))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The event again; where what was personal is gone, the name is <see cref="ErasedName"/> and the words are empty.</summary>
    /// <exception cref="JsonException">The text is not an event this release knows.</exception>
    public static VisitEvent Read(string kind, string bodyJson, string? personalJson, int number)
    {
        var body = JsonNode.Parse(bodyJson)!.AsObject();
        var personal = personalJson is null ? null : JsonNode.Parse(personalJson)!.AsObject();
        foreach (var name in PersonalNames.GetValueOrDefault(kind) ?? throw new JsonException($"This release knows no event of the kind {kind}."))
        {
            if (personal is null)
            {
                body[name] = name == ByName ? ErasedName : "";
            }
            else if (personal.Remove(name, out var value))
            {
                body[name] = value;
            }
        }

        return body.Deserialize<VisitEvent>(Options)! with { Number = number };
    }

    /// <summary>Properties put together as an object.</summary>
    private readonly struct Part(int most)
    {
        private readonly ArrayBufferWriter<byte> properties = new(most);

        public void Add(ReadOnlySpan<byte> property)
        {
            properties.Write(properties.WrittenCount == 0 ? "{"u8 : ","u8);
            properties.Write(property);
        }

        public string Text()
        {
            properties.Write(properties.WrittenCount == 0 ? "{}"u8 : "}"u8);
            return Encoding.UTF8.GetString(properties.WrittenSpan);
        }
    }
}
