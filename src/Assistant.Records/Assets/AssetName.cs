namespace Assistant.Records.Assets;

/// <summary>An asset by what it is called, without its details.</summary>
internal sealed record AssetName(string Id, string Site, string Unit);
