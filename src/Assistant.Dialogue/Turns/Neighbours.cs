using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Reads a message in the light of what was just asked.</summary>
public delegate Understood Understand(string text, UnderstandingContext context);

/// <summary>Makes of the facts what the rules say.</summary>
public delegate Assessment Assess(FactSet facts);

/// <summary>Answers a question in the middle from what the visit knows, or null where it is none that is known.</summary>
public delegate Answer? AnswerQuestion(Understood question, VisitState visit);
