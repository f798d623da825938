namespace Assistant.Dialogue.Visits;

/// <summary>
/// Marks text of an event that is a person's own: a name or words. It is stored apart from the rest of the event, so that it
/// can be erased when the person asks for it, and everything else still stands.
/// </summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PersonalAttribute : Attribute;
