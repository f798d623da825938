using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;

namespace Assistant.Dialogue.Walks;

/// <summary>All walks, each with its machine; checked against each other.</summary>
public sealed class WalkLibrary
{
    /// <summary>The walk every visit begins with.</summary>
    public const string OpeningWalk = "warm-box";

    private readonly FrozenDictionary<string, WalkMachine> machines;

    private WalkLibrary(IReadOnlyCollection<WalkDefinition> walks)
    {
        All = [.. walks.OrderBy(w => w.Name, StringComparer.Ordinal)];
        machines = walks.ToFrozenDictionary(w => w.Name, w => new WalkMachine(w), StringComparer.Ordinal);
        Opening = machines[OpeningWalk].Walk;
    }

    /// <summary>By name.</summary>
    public ImmutableArray<WalkDefinition> All { get; }

    public WalkDefinition Opening { get; }

    /// <exception cref="DialogDataException">With every mistake found, each with file, line and key.</exception>
    public static WalkLibrary Load(IEnumerable<DialogFile> files, PhraseBook phrases)
    {
        var (walks, defects) = (new List<WalkDefinition>(), new List<DialogDefect>());
        foreach (var file in files)
        {
            try
            {
                var walk = WalkLoader.Load(file, phrases);
                if (walks.Exists(w => w.Name == walk.Name))
                {
                    defects.Add(new(DefectKind.DuplicateId, file.Path, 1, walk.Name, "a walk of this name is there already"));
                }
                else
                {
                    walks.Add(walk);
                }
            }
            catch (DialogDataException wrong)
            {
                defects.AddRange(wrong.Defects);
            }
        }

        if (defects.Count == 0)
        {
            defects.AddRange(Unlinked(walks, phrases));
        }

        return defects.Count == 0 ? new(walks) : throw new DialogDataException([.. defects]);
    }

    /// <summary>The walk of that name, or null.</summary>
    public WalkDefinition? Find(string? walk) => walk is not null && machines.TryGetValue(walk, out var machine) ? machine.Walk : null;

    /// <summary>The machine of a walk; the opening walk's where a later release dropped that walk.</summary>
    public WalkMachine Machine(string? walk) => walk is not null && machines.TryGetValue(walk, out var machine) ? machine : machines[OpeningWalk];

    private static IEnumerable<DialogDefect> Unlinked(List<WalkDefinition> walks, PhraseBook phrases)
    {
        if (!walks.Exists(w => w.Name == OpeningWalk))
        {
            yield return new(DefectKind.MissingField, "dialogs/walks", 1, OpeningWalk, "the walk that every visit begins with is missing");
        }

        foreach (var link in walks.SelectMany(w => w.Links))
        {
            if (link.IsChoice)
            {
                if (!walks.SelectMany(w => w.Stops).Any(s => s.Choice?.Name == link.Name))
                {
                    yield return new(DefectKind.UnknownWalk, link.File, link.Line, link.Key, $"no walk lets choose {link.Name}");
                }
            }
            else if (!walks.Exists(w => w.Name == link.Name))
            {
                yield return new(DefectKind.UnknownWalk, link.File, link.Line, link.Key, $"no walk {link.Name}");
            }
            else if (!phrases.Has("offer." + link.Name))
            {
                yield return new(DefectKind.UnknownPhrase, link.File, link.Line, link.Key, $"no phrase offer.{link.Name}, which asks whether to go that walk");
            }
        }
    }
}
