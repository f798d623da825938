namespace Assistant.Dialogue.Files;

/// <summary>The mistakes that the dialogue's data is checked for at load; one value a mistake.</summary>
public enum DefectKind
{
    /// <summary>The text is not YAML, or not of the shape expected there.</summary>
    BrokenYaml,
    UnknownField,
    MissingField,

    /// <summary>A key, a walk or a stop is defined twice.</summary>
    DuplicateId,

    /// <summary>A field's value cannot be read, such as a difference without a unit.</summary>
    BadValue,

    /// <summary>A phrase has no full form.</summary>
    MissingFull,

    /// <summary>A phrase has no brief form.</summary>
    MissingBrief,

    /// <summary>A placeholder is not closed, badly named or badly formatted.</summary>
    BadPlaceholder,

    /// <summary>The brief or the spoken form wants a number or word that the full form does not name.</summary>
    UnknownPlaceholder,
    UnknownFact,
    UnknownPhrase,
    UnknownCaution,
    UnknownPlace,

    /// <summary>A stop names a next stop that does not exist.</summary>
    UnknownLink,

    /// <summary>A condition compares a fact with a word it cannot have.</summary>
    UnknownChoice,

    /// <summary>No way leads from the first stop to this one.</summary>
    UnreachableStop,

    /// <summary>From this stop no way leads to an end.</summary>
    DeadEnd,

    /// <summary>A way leads back to a stop it came from: a walk goes forward, what is to be read again is outdated instead.</summary>
    WayBack,

    /// <summary>For some answer no next stop is named: the last way of a stop has a condition.</summary>
    MissingBranch,

    /// <summary>A stop names a judgement that does not exist.</summary>
    UnknownJudgement,

    /// <summary>A judgement cannot come out so.</summary>
    UnknownOutcome,

    /// <summary>A walk or a choice is named that no file defines.</summary>
    UnknownWalk,
}
