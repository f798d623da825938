namespace Assistant.Dialogue.Questions;

/// <summary>"Where do I put the probe": where a reading is taken, of the thing that is named, else of what is asked for now.</summary>
internal static class WhereQuestion
{
    public static Answer Answer(Asked asked)
    {
        if ((asked.Arguments.About ?? asked.Wanted) is not { } fact)
        {
            return asked.Answer("answer.where.nothing");
        }

        return asked.Has("answer.where." + fact.Name)
            ? asked.Answer("answer.where." + fact.Name)
            : asked.Answer("answer.where.place-" + fact.Place.ToString().ToLowerInvariant(), ("fact", fact.Name));
    }
}
