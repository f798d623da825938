namespace Assistant.Records.Pictures;

/// <summary>What was sent can not be kept as a picture; the message says in one line why and what would do.</summary>
public sealed class PictureRefusedException(string message) : Exception(message);
