using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Understanding;

/// <summary>What a question brings with it: "what is saturation for 404A at 117 pounds" brings R404A and 117 psig.</summary>
/// <param name="Refrigerant">A designation named in the question, such as R404A, or null.</param>
/// <param name="Numbers">The numbers in the order they were said, each with its unit and, where it was named, its fact.</param>
/// <param name="TargetUnit">The unit asked for ("in C", "to psi"), or null.</param>
public sealed record QuestionArguments(string? Refrigerant, ImmutableArray<QuestionNumber> Numbers, UnitOfMeasure? TargetUnit)
{
    public static QuestionArguments None { get; } = new(null, [], null);

    /// <summary>
    /// What is asked after, where the words say it: superheat in "what superheat should I have", discharge_pressure in "what should my head be",
    /// head_pressure_control_setting or setpoint in a setpoint question, cylinder_weight in "how much is left"; null where they do not.
    /// </summary>
    public Fact? About { get; init; }

    /// <summary>The faults that "could it be the valve" means; empty where none is named.</summary>
    public ImmutableArray<FaultCode> Suspects { get; init; } = [];
}

/// <summary>A number inside a question.</summary>
/// <param name="Fact">The fact named with it, or null.</param>
/// <param name="Unit">The unit said with it, or null where it was bare.</param>
public sealed record QuestionNumber(double Value, UnitOfMeasure? Unit, Fact? Fact);
