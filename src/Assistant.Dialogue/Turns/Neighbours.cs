using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Reads a message in the light of what was just asked.</summary>
public delegate Understood Understand(string text, UnderstandingContext context);

/// <summary>Makes of the facts what the rules say.</summary>
public delegate Assessment Assess(FactSet facts);

/// <summary>Answers a question in the middle, or null where it can not.</summary>
public delegate Phrase? AnswerQuestion(Understood question, FactSet facts, UnitSystem units);
