using System.Text.Json;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Cylinders;

/// <summary>The stored names of purposes and kinds: the ledger's words, kebab-case.</summary>
public static class CylinderNames
{
    public static string Of<TWord>(TWord word)
        where TWord : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString());

    /// <exception cref="JsonException">This release knows no such purpose.</exception>
    public static EntryPurpose Purpose(string stored) => Find<EntryPurpose>(stored);

    /// <exception cref="JsonException">This release knows no such kind.</exception>
    public static CylinderKind Kind(string stored) => Find<CylinderKind>(stored);

    private static TWord Find<TWord>(string stored)
        where TWord : struct, Enum
    {
        foreach (var word in Enum.GetValues<TWord>())
        {
            if (Of(word) == stored)
            {
                return word;
            }
        }

        throw new JsonException($"This release knows no {typeof(TWord).Name} called {stored}.");
    }
}
