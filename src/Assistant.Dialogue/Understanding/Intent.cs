namespace Assistant.Dialogue.Understanding;

public enum Intent
{
    Answer,
    Question,
    Command,
    Unknown,
}
