namespace Assistant.Dialogue.Visits;

/// <summary>The person wants to hear how the visit stands at each verdict, and nothing otherwise, on the channel they asked by.</summary>
public sealed record WatchBegan(string Channel) : VisitEvent;

/// <summary>The person no longer only watches.</summary>
public sealed record WatchEnded : VisitEvent;

/// <summary>The last one on site wanted to leave and was asked whom to hand over to; asked again they leave.</summary>
public sealed record LeaveQueried : VisitEvent;
