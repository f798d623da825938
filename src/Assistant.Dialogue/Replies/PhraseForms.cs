namespace Assistant.Dialogue.Replies;

/// <summary>What a phrase is said in: whole sentences, few letters, or for the ear.</summary>
internal enum PhraseForm
{
    Full,
    Brief,
    Spoken,
}

/// <summary>The forms of one phrase.</summary>
/// <param name="Spoken">Null where the brief form is said.</param>
internal sealed record PhraseForms(PhraseTemplate Full, PhraseTemplate Brief, PhraseTemplate? Spoken);
