namespace Assistant.Trade.Rules.Faults;

/// <summary>The words of the things seen, as positions in their facts' choices.</summary>
internal static class Words
{
    public const int Yes = 0;
    public const int No = 1;
    public const int Clear = 0;
    public const int Flashing = 1;
    public const int Empty = 2;
    public const int NoIce = 0;
    public const int LightIce = 1;
    public const int DistributorEnd = 2;
    public const int Blocked = 3;
    public const int AllFans = 0;
    public const int SomeFans = 1;
    public const int NoFans = 2;
    public const int CyclingFans = 3;
    public const int Clean = 0;
    public const int Dirty = 1;
    public const int Snowed = 2;
    public const int Running = 0;
    public const int Off = 1;
    public const int ShortCycling = 2;
    public const int GoodDoor = 0;
    public const int LeakingDoor = 1;
    public const int OpenDoor = 2;
    public const int NoControl = 0;
    public const int Valve = 1;
    public const int FanCycling = 2;
}
