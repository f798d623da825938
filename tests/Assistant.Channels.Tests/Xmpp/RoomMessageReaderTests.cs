using Assistant.Channels.Xmpp;
using Assistant.Channels.Xmpp.Muc;

namespace Assistant.Channels.Tests.Xmpp;

public class RoomMessageReaderTests
{
    private const string Room = "service@rooms.chat.example";

    private static readonly DateTimeOffset Now = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly RoomSeat seat = new(Jid.Parse(Room), "Coldwalk");

    public RoomMessageReaderTests()
    {
        Present($"<presence from='{Room}/Kim'><x><item jid='kim@chat.example/phone'/></x><occupant-id id='o-kim'/></presence>");
        Present($"<presence from='{Room}/Coldwalk'><x><status code='100'/><status code='110'/></x><occupant-id id='o-own'/></presence>");
        seat.CatchUp();
    }

    [Theory]
    [InlineData("Coldwalk: suction 14", "suction 14", true)]
    [InlineData("coldwalk, why", "why", true)]
    [InlineData("@Coldwalk status", "status", true)]
    [InlineData("Coldwalk status", "status", true)]
    [InlineData("suction 14", "suction 14", false)]
    [InlineData("Coldwalks are cold", "Coldwalks are cold", false)]
    public void Our_name_before_the_words_says_that_they_are_to_us(string body, string text, bool isToUs)
    {
        var words = Read($"<message from='{Room}/Kim' id='m1'><body>{body}</body></message>")!;

        Assert.Equal((text, isToUs), (words.Text, words.IsToUs));
        Assert.Equal("kim@chat.example", words.Account?.ToString());
    }

    [Fact]
    public void What_we_said_ourselves_is_left_out_under_whatever_nick()
    {
        Assert.Null(Read($"<message from='{Room}/Coldwalk' id='m1'><body>Taken.</body><occupant-id id='o-own'/></message>"));
        Assert.Null(Read($"<message from='{Room}/Coldwalk-2' id='m1'><body>Taken.</body><occupant-id id='o-own'/></message>"));
    }

    [Fact]
    public void One_who_had_our_nick_while_we_were_away_is_not_us() =>
        Assert.NotNull(Read($"<message from='{Room}/Coldwalk' id='m1'><body>47</body><occupant-id id='o-lee'/></message>"));

    [Fact]
    public void The_time_of_what_was_said_before_is_the_rooms()
    {
        Enter();

        // 11:55:00 in whole seconds: at the latest at its end.
        Assert.Equal(new(2026, 11, 25, 11, 55, 0, 999, TimeSpan.Zero), Old("<occupant-id id='o-kim'/>").At);
    }

    [Fact]
    public void A_live_message_can_not_set_its_own_time() =>
        Assert.Equal(Now, Read($"<message from='{Room}/Kim' id='m1'><body>47</body><delay from='{Room}' stamp='2026-11-25T11:55:00Z'/></message>")!.At);

    [Fact]
    public void Who_said_it_before_is_the_one_of_that_lasting_name_and_not_of_that_nick()
    {
        Enter();

        Assert.Equal("kim@chat.example", Old("<occupant-id id='o-kim'/>").Account?.ToString());
        Assert.Null(Old("<occupant-id id='o-lee'/>").Account);
        Assert.Null(Old("").Account);
    }

    [Fact]
    public void What_the_archive_says_of_the_speaker_holds_and_not_what_the_speaker_put_there()
    {
        Enter();
        const string Forged = "<x><item jid='lee@chat.example'/></x>", Kept = "<x><item jid='sam@chat.example'/></x>";

        Assert.Equal("sam@chat.example", Old($"{Forged}{Kept}<stanza-id by='{Room}' id='a1'/>").Account?.ToString());
        Assert.Null(Old(Forged).Account);
    }

    [Fact]
    public void In_a_room_that_hides_accounts_nobody_is_known()
    {
        seat.Begin();
        Present($"<presence from='{Room}/Kim'><x><item role='participant'/></x></presence>");
        Present($"<presence from='{Room}/Coldwalk'><x><status code='110'/></x></presence>");

        Assert.Null(Read($"<message from='{Room}/Kim' id='m1'><body>47</body></message>")!.Account);
        Assert.Null(Old($"<x><item jid='boss@chat.example'/></x><stanza-id by='{Room}' id='a1'/>").Account);
    }

    [Fact]
    public void The_same_words_brought_again_have_the_same_id_and_others_another()
    {
        var live = Read($"<message from='{Room}/Kim' id='m1'><body>47</body><stanza-id by='{Room}' id='a1'/></message>")!.Id;
        var bare = Read($"<message from='{Room}/Kim' id='m1'><body>47</body></message>")!.Id;
        var next = Read($"<message from='{Room}/Kim' id='m2'><body>47</body></message>")!.Id;
        Enter();

        Assert.Equal(live, Old($"<stanza-id by='{Room}' id='a1'/>").Id);
        Assert.Equal(bare, Old("<occupant-id id='o-kim'/>").Id);
        Assert.NotEqual(bare, next);
        Assert.NotEqual(live, Old($"<stanza-id by='elsewhere@rooms.chat.example' id='a1'/>").Id);
    }

    [Fact]
    public void Longer_words_than_anybody_types_are_cut() =>
        Assert.Equal(2000, Read($"<message from='{Room}/Kim' id='m1'><body>{new string('9', 9000)}</body></message>")!.Text.Length);

    private void Enter()
    {
        seat.Begin();
        Present($"<presence from='{Room}/Kim'><x><item jid='kim@chat.example/phone'/></x><occupant-id id='o-kim'/></presence>");
        Present($"<presence from='{Room}/Coldwalk'><x><status code='100'/><status code='110'/></x><occupant-id id='o-own'/></presence>");
    }

    private void Present(string presence) => seat.Take(Stanza.Of(presence));

    private RoomWords? Read(string message) => RoomMessageReader.Read(Stanza.Of(message), seat, Now);

    private RoomWords Old(string more) => Read($"<message from='{Room}/Kim' id='m1'><body>47</body><delay from='{Room}' stamp='2026-11-25T11:55:00Z'/>{more}</message>")!;
}
