using Assistant.Records.People;

namespace Assistant.Channels.Text;

/// <summary>The firm's people by their numbers.</summary>
public sealed class EnrolledPeople(PeopleService people) : ITextPeople
{
    private const string Channel = TextSettings.Channel;

    public async Task<string?> NameOfAsync(string number, CancellationToken cancellation) =>
        (await people.Phones.WhoIsAsync(Channel, number, cancellation))?.Name;

    public Task<bool> IsStoppedAsync(string number, CancellationToken cancellation) => people.Phones.IsStoppedAsync(Channel, number, cancellation);

    public Task StopAsync(string number, CancellationToken cancellation) => people.Phones.StopAsync(Channel, number, cancellation);

    public Task StartAsync(string number, CancellationToken cancellation) => people.Phones.StartAsync(Channel, number, cancellation);

    public async Task<TextEnrolment> EnrolAsync(string number, string text, CancellationToken cancellation)
    {
        if (SpokenCode.Read(text) is not { } code)
        {
            return new TextEnrolment.NoCode();
        }

        return await people.Enrolment.EnrolAsync(Channel, number, code, cancellation) is Enrolled enrolled
            ? new TextEnrolment.Done(enrolled.Person.Name, enrolled.IsStopped)
            : new TextEnrolment.Refused();
    }

    public async Task<string?> JoinAsync(string number, string code, CancellationToken cancellation)
    {
        var person = await people.Phones.WhoIsAsync(Channel, number, cancellation);
        return await people.Visits.JoinByCodeAsync(code, person, Channel, number, cancellation: cancellation) is Joined joined ? joined.VisitId : null;
    }
}
