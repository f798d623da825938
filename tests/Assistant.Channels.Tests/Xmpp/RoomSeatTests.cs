using Assistant.Channels.Xmpp;
using Assistant.Channels.Xmpp.Muc;

namespace Assistant.Channels.Tests.Xmpp;

/// <summary>The seat in a room as its presences tell it; status codes after XEP-0045, section 15.6.</summary>
public class RoomSeatTests
{
    private const string Room = "service@rooms.chat.example";

    private readonly RoomSeat seat = new(Jid.Parse(Room), "Coldwalk");

    [Fact]
    public void Our_own_presence_says_that_we_are_in_and_the_others_are_known_by_their_accounts()
    {
        Assert.IsType<NoChange>(Take("<presence from='service@rooms.chat.example/Kim'><x><item jid='kim@chat.example/phone'/></x></presence>"));

        var entered = Assert.IsType<Entered>(Take("<presence from='service@rooms.chat.example/Coldwalk'><x><status code='100'/><status code='110'/></x></presence>"));

        Assert.False(entered.IsNew);
        Assert.True(seat.IsIn && seat.ShowsAccounts);
        Assert.Equal("kim@chat.example", seat.Find("Kim")?.Account?.ToString());
    }

    [Fact]
    public void A_room_that_our_entering_made_waits_to_be_set_up() =>
        Assert.True(Assert.IsType<Entered>(Take("<presence from='service@rooms.chat.example/Coldwalk'><x><status code='110'/><status code='201'/></x></presence>")).IsNew);

    [Fact]
    public void Where_the_nick_is_taken_others_are_tried_and_in_the_end_the_first_again()
    {
        Assert.IsType<NickTaken>(Take(Error("conflict")));

        var nicks = new List<string>();
        while (seat.TakeAnotherNick())
        {
            nicks.Add(seat.Nick);
        }

        Assert.Equal("Coldwalk-2", nicks[0]);
        Assert.Equal(8, nicks.Count);
        Assert.Equal("Coldwalk", seat.Nick);
    }

    [Fact]
    public void The_room_may_give_us_another_nick()
    {
        Take("<presence from='service@rooms.chat.example/coldwalk'><x><status code='110'/><status code='210'/></x></presence>");

        Assert.Equal("coldwalk", seat.Nick);
    }

    [Theory]
    [InlineData("registration-required", "the room is for members: make it a member")]
    [InlineData("forbidden", "it is banned from the room")]
    [InlineData("not-authorized", "the room asks for a password: take the password off and make the room one for members")]
    [InlineData("not-allowed", "rooms can not be made there: make the room first")]
    public void A_room_that_does_not_let_us_in_says_why(string condition, string trouble) =>
        Assert.Equal(trouble, Assert.IsType<NotLetIn>(Take(Error(condition))).Trouble);

    [Theory]
    [InlineData("<status code='307'/>", true, "it was sent out of the room")]
    [InlineData("<status code='301'/>", false, "it is banned from the room")]
    [InlineData("<status code='321'/>", false, "the room is for members now, and it is none")]
    [InlineData("<status code='307'/><status code='333'/>", true, "the room lost it")]
    [InlineData("<status code='332'/>", true, "the room lost it")]
    [InlineData("<destroy/>", false, "the room was closed for good")]
    public void Put_out_we_know_why_and_whether_to_come_back(string told, bool mayReturn, string trouble)
    {
        Enter();

        var lost = Assert.IsType<PutOut>(Take($"<presence type='unavailable' from='{Room}/Coldwalk'><x><item role='none'/><status code='110'/>{told}</x></presence>"));

        Assert.Equal((mayReturn, trouble), (lost.MayReturn, lost.Trouble));
        Assert.False(seat.IsIn);
    }

    [Fact]
    public void One_who_leaves_is_no_longer_known()
    {
        Enter();
        Take($"<presence from='{Room}/Kim'><x><item jid='kim@chat.example/phone'/></x></presence>");

        Take($"<presence type='unavailable' from='{Room}/Kim'><x><item role='none'/></x></presence>");

        Assert.Null(seat.Find("Kim"));
        Assert.True(seat.IsIn);
    }

    private static string Error(string condition) =>
        $"<presence type='error' from='{Room}/Coldwalk'><error type='cancel'><{condition} xmlns='urn:ietf:params:xml:ns:xmpp-stanzas'/></error></presence>";

    private void Enter() => Take($"<presence from='{Room}/Coldwalk'><x><status code='110'/></x></presence>");

    private SeatChange Take(string presence) => seat.Take(Stanza.Of(presence));
}
