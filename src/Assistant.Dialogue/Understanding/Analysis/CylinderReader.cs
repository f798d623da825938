using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Trade.Facts;
using Assistant.Trade.Ledgers;
using UnitsNet;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Reads what a message says of a refrigerant cylinder: its tag, its weights, and where the refrigerant went.</summary>
internal sealed class CylinderReader(Lexicon lexicon)
{
    // No cylinder that is carried to a scale weighs a tonne.
    private const double HeaviestKilograms = 1000;

    private readonly NumberFinder numbers = new(lexicon);
    private readonly RefrigerantReader refrigerants = new(lexicon);
    private readonly CylinderTagReader tags = new(lexicon);

    /// <summary>What is said; null where it is nothing of a cylinder, or where the message reads something else besides.</summary>
    /// <summary>Words in an answer that only says where it went.</summary>
    private const int LongestWhere = 5;

    public CylinderTold? Read(Message message, UnderstandingContext context)
    {
        var (told, slot) = (new CylinderTold(), Slot.None);
        (Slot Slot, Grams Mass, int End)? last = null;
        var (saysLost, saysHoses) = (false, false);
        for (var at = 0; at < message.Tokens.Count;)
        {
            var token = message.Tokens[at];
            if (lexicon.Cylinders.Reasons.LongestAt(message.Tokens, at, out var reasons) is > 0 and var said)
            {
                told = told with { Reason = reasons[0] };
                at += said;
            }
            else if (lexicon.Cylinders.Words.LongestAt(message.Tokens, at, out var words) is > 0 and var length)
            {
                var next = at + length;
                saysLost |= words[0] == CylinderWord.LostWhereSaid;
                saysHoses |= words[0] is CylinderWord.Hoses or CylinderWord.Lost;
                if (words[0] is CylinderWord.Cylinder or CylinderWord.RecoveryCylinder)
                {
                    told = told with { NamesCylinder = true, IsRecovery = told.IsRecovery || words[0] == CylinderWord.RecoveryCylinder };
                    (var tag, next) = tags.Read(message, next);
                    told = told with { Tag = told.Tag ?? tag };
                }
                else if (last is { Slot: Slot.None or Slot.Weighs } number && number.End == at && SlotOf(words[0]) is Slot.Before or Slot.After or Slot.Loss && EndsThere(message, next))
                {
                    // "48 lb before, 43 lb after", "80 g lost in the hoses": the word stands behind its number.
                    told = Put(Put(told, number.Slot, null), SlotOf(words[0]), number.Mass);
                }
                else if (words[0] != CylinderWord.Hoses)
                {
                    told = told with { Purpose = told.Purpose ?? PurposeOf(words[0]), IsUnknown = told.IsUnknown || words[0] == CylinderWord.Unknown };
                    slot = words[0] == CylinderWord.Now && slot != Slot.None ? slot : SlotOf(words[0]);
                }

                at = next;
            }
            else if (token.Kind is TokenKind.Word or TokenKind.Number or TokenKind.Symbol && numbers.Find(message.Text, message.Tokens, at, inOut: false) is { } found)
            {
                if (!QuantityResolver.Fits(found.Number, FactCatalogue.CylinderWeight))
                {
                    return null;
                }

                if (QuantityResolver.Resolve(found.Number, FactCatalogue.CylinderWeight, context.Units).Reading is { Canonical: >= 0 and < HeaviestKilograms } reading)
                {
                    var mass = Grams.From(Mass.FromKilograms(reading.Canonical));
                    told = Put(told, slot, mass) with { HasMassUnit = told.HasMassUnit || !found.Number.IsBare };
                    last = (slot, mass, found.End);
                }
                else
                {
                    told = told with { IsOpen = true };
                }

                (slot, at) = (Slot.None, found.End);
            }
            else if (refrigerants.Read(message.Text, message.Tokens, at) is { Name: { Sure: true, Designation: { } designation } } named)
            {
                told = told with { Refrigerant = designation };
                at = named.End;
            }
            else if (lexicon.Facts.Names.LongestAt(message.Tokens, at, out var names) > 0 && names.All(n => !n.Loose && !IsOfCylinders(n.Fact)))
            {
                return null;
            }
            else
            {
                at++;
            }
        }

        if (saysLost && !told.HasMass && message.Tokens.Count <= LongestWhere)
        {
            // "lost", "lost in the hoses": the answer to where it went, and to nothing else.
            return told with { Purpose = told.Purpose ?? EntryPurpose.HoseLoss };
        }

        return (saysLost && !saysHoses) || told == new CylinderTold() ? null : told;
    }

    // The unit's own charge is a mass too, and no cylinder's: "full charge 8 kg" answers nothing that was asked of a bottle.
    private static bool IsOfCylinders(Fact fact) => fact.Kind == FactKind.Mass && fact != FactCatalogue.FullCharge;

    private static bool EndsThere(Message message, int at) => at >= message.Tokens.Count || message.Tokens[at].EndsClause || message.Tokens[at].Kind == TokenKind.Word;

    private static CylinderTold Put(CylinderTold told, Slot slot, Grams? mass) => slot switch
    {
        Slot.Tare => told with { Tare = mass },
        Slot.Before => told with { Before = mass },
        Slot.After => told with { After = mass },
        Slot.Weighs => told with { Weighs = mass },
        Slot.Amount => told with { Amount = mass },
        Slot.Loss => told with { Loss = mass },
        Slot.WaterCapacity => told with { WaterCapacity = mass },
        _ => told with { Unnamed = mass },
    };

    private static Slot SlotOf(CylinderWord word) => word switch
    {
        CylinderWord.Tare => Slot.Tare,
        CylinderWord.Before => Slot.Before,
        CylinderWord.After => Slot.After,
        CylinderWord.Weighs or CylinderWord.Now => Slot.Weighs,
        CylinderWord.WaterCapacity => Slot.WaterCapacity,
        CylinderWord.Charged or CylinderWord.Recovered or CylinderWord.Transferred => Slot.Amount,
        CylinderWord.Lost or CylinderWord.LostWhereSaid => Slot.Loss,
        _ => Slot.None,
    };

    private static EntryPurpose? PurposeOf(CylinderWord word) => word switch
    {
        CylinderWord.Charged => EntryPurpose.Charge,
        CylinderWord.Recovered => EntryPurpose.Recover,
        CylinderWord.Transferred => EntryPurpose.Transfer,
        _ => null,
    };

    private enum Slot
    {
        None,
        Tare,
        Before,
        After,
        Weighs,
        Amount,
        Loss,
        WaterCapacity,
    }
}
