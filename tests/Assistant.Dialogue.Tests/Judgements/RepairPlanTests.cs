namespace Assistant.Dialogue.Tests.Judgements;

/// <summary>Which repair comes out of part, parts, access, hot work and shut-off. Common practice.</summary>
public class RepairPlanTests
{
    [Theory]
    [InlineData("take-apart-valve", "rebuild-kit", "good-access", "no", "no", "rebuild", "kit")]
    [InlineData("take-apart-valve", "whole-part", "good-access", "no", "no", "replace-flared", "whole-part hot-work-forbidden")]
    [InlineData("take-apart-valve", "whole-part", "good-access", "yes", "no", "braze", "hot-work-allowed")]
    [InlineData("flare", "whole-part", "good-access", "no", "no", "make-anew", "no-flame-needed")]
    [InlineData("stem-or-core", "rebuild-kit", "good-access", "no", "no", "make-anew", "no-flame-needed")]
    [InlineData("pipe-or-braze", "whole-part", "good-access", "yes", "no", "braze", "hot-work-allowed")]
    [InlineData("pipe-or-braze", "whole-part", "good-access", "no", "can-be-shut-off", "isolate", "hot-work-forbidden shut-off")]
    [InlineData("pipe-or-braze", "whole-part", "good-access", null, "can-not-be-shut-off", "make-safe", "hot-work-unknown no-shut-off")]
    [InlineData("coil-or-vessel", "no-parts", "good-access", "yes", "can-be-shut-off", "isolate", "no-parts shut-off")]
    [InlineData("flare", "no-parts", "good-access", "yes", "no", "make-safe", "no-parts no-shut-off")]
    [InlineData("take-apart-valve", "rebuild-kit", "poor-access", "yes", "can-be-shut-off", "isolate", "poor-access shut-off")]
    [InlineData("take-apart-valve", "rebuild-kit", "poor-access", "yes", "no", "make-safe", "poor-access no-shut-off")]
    public void The_repair_follows_from_what_is_there_with_its_reasons(string part, string parts, string access, string? hotWork, string shutOff, string outcome, string reasons)
    {
        List<string> said = [$"choice: repair-part = {part}", $"choice: repair-parts = {parts}", $"choice: repair-access = {access}", $"choice: repair-shut-off = {shutOff}"];
        if (hotWork is not null)
        {
            said.Add($"hot_work_allowed = {hotWork}");
        }

        var judged = Judging.Of("repair-plan", said);

        Assert.Equal((outcome, reasons), (judged.Outcome, Judging.Reasons(judged)));
    }

    [Theory]
    [InlineData("R290", true)]
    [InlineData("R454C", true)]
    [InlineData("R448A", false)]
    public void A_flame_at_a_refrigerant_that_burns_says_so_and_warns(string refrigerant, bool burns)
    {
        var judged = Judging.Of("repair-plan", "choice: repair-part = pipe-or-braze", "choice: repair-parts = whole-part", "hot_work_allowed = yes", $"refrigerant = {refrigerant}");

        Assert.Equal("braze", judged.Outcome);
        Assert.Equal(burns, Judging.Reasons(judged).Contains("flammable", StringComparison.Ordinal));
        Assert.Equal(burns, judged.Cautions.Contains(Assistant.Trade.Cautions.CautionCode.FlammableRefrigerant));
    }

    [Fact]
    public void Nothing_said_makes_it_safe() => Assert.Equal(("make-safe", "unknown no-shut-off"), (Judging.Of("repair-plan").Outcome, Judging.Reasons(Judging.Of("repair-plan"))));
}
