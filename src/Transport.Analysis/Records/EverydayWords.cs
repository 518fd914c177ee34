using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>What is written in a book and is nothing of a treatment or a body: a birthday, a walk, a bag that leaked in its box.</summary>
/// <remarks>
/// A vocabulary, so that whatever is not in it stays for a reader: another language, a slip of the pen, a word nobody thought of. No word is in it that can deny, weaken or lie beside
/// a complaint ("not", "only", "bed", "out", "down"): what a harmless word is joined with has to be harmless too. Words of one's own choice.
/// </remarks>
internal static partial class EverydayWords
{
    private const string Kin =
        "daughters?|sons?|husband|wife|mother|father|mum|mom|dad|grand(?:son|daughter|child|mother|father|kid)s?|grandchildren|grandma|grandpa|sisters?|brothers?|children|kids?|baby|neighbou?rs?|friends?|uncle|aunt|cousins?|partner|family|nephew|niece|in laws?";

    private static readonly Regex Words = new(
        $@"\b(?:(?:{Kin})(?:'s)?|day out|everything|sang|singing|fed|haircut|visit(?:s|ed|ing|ors?)?|birthday|party|wedding|anniversary|christmas|easter|new year|holidays?|weekend|monday|tuesday|wednesday|thursday|friday|saturday|sunday|church|school|choir|bingo|chess|cinema|film|movie|tv|television|football|match|concert|theatre|museum|shopping|shops?|market|garden|gardening|cooked|cooking|baked|baking|cakes?|coffee|tea|lunch|dinner|breakfast|restaurant|picnic|barbecue|book|reading|music|danc(?:ed?|ing)|drive|trip|beach|park|zoo|lake|walk(?:s|ed|ing)?|sunny|sunshine|rain(?:y|ed)?|snow(?:y|ed)?|weather|spring|summer|autumn|winter|dogs?|cats?|puppy|came|went|met|played|watched|enjoyed|fun|happy|clinic|nurse|appointment|check ?up|and|for|to|from|we|us|our|me|also|together)\b",
        RegexOptions.CultureInvariant);

    /// <summary>A complaint that is none of the treatment or the body's inside, put aside: what is left for a reader says "elsewhere", what is plainly harmless says "well".</summary>
    public static string Aside(string text)
    {
        text = Vaccination().IsMatch(text) ? ArmOfVaccination().Replace(text, "well") : text;
        text = Fit().Replace(Arm().Replace(text, "elsewhere"), "well");
        return Machine().Replace(Swelling().Replace(Cramp().Replace(Box().Replace(text, "elsewhere"), "elsewhere"), "elsewhere"), "elsewhere");
    }

    /// <summary>What of a clause is left without what everybody writes.</summary>
    public static string Without(string clause) => Words.Replace(Phrases().Replace(Fluid().IsMatch(clause) ? Drink().Replace(clause, "color") : clause, " "), " ");

    // Beside the fluid they are its color: "fluid tea".
    [GeneratedRegex(@"\b(?:coffee|tea)\b")]
    private static partial Regex Drink();

    [GeneratedRegex(@"\b(?:bags?|fluid|effluent|dialysate|drain(?:s|ed|age)?|outflow|output)\b")]
    private static partial Regex Fluid();

    [GeneratedRegex(@"\b(?:(?<!insulin )jabs?|vaccin[a-z]*|booster|injection for flu|flu shot|covid shot)\b")]
    private static partial Regex Vaccination();

    [GeneratedRegex(@"\b(?:sore|tender|aching|painful|stiff) (?:left |right |upper )?arm\b|\b(?:left |right |upper )?arm(?: (?:is|was|a|bit|little|still|very))* (?:sore|tender|aching|aches|painful|stiff|hurts)\b")]
    private static partial Regex ArmOfVaccination();

    // A sore arm alone. Pain in an arm may be of the heart.
    [GeneratedRegex(@"\bsore (?:left |right |upper )?arms?\b|\barms?(?: (?:is|are|was|a|bit|little|still|very))* sore\b")]
    private static partial Regex Arm();

    [GeneratedRegex(@"\b(?:fit and (?:well|healthy|strong)|(?:keep(?:ing)?|stay(?:ing)?|feel(?:ing)?|felt|(?<=\bi )am|i'?m|very|still) fit(?! (?:in|at|during|last|this|lasting|lasted)\b)|fit as)\b")]
    private static partial Regex Fit();

    // Before it was opened: what is told of a bag in use is a leak.
    [GeneratedRegex(@"\b(?:bags?|box|carton)(?: (?:of fluid|had|has|was|were))* leak(?:ed|ing|s|y)? (?:in|inside) (?:the |its |their |a )?(?:box|carton|package|packaging|wrapping|delivery|cupboard|store ?room|garage)\b|\b(?:bags?|box|carton)(?: (?:had|has|was|were))* leak(?:ed|ing|s|y)?,? (?:on|at|when|during) (?:delivery|delivered)\b")]
    private static partial Regex Box();

    [GeneratedRegex(@"\bcramps? in (?:the |my |his |her )?(?:left |right )?(?:hands?|fingers?|thumbs?|wrists?)\b|\b(?:hand|finger|thumb|writer'?s) cramps?\b")]
    private static partial Regex Cramp();

    // One joint and what it comes from: both ankles are fluid.
    [GeneratedRegex(@"\b(?:swollen|puffy|swelling of|swelling in)(?: (?:my|his|her|the|left|right|one))* (?:ankle|knee|finger|thumb|wrist|toe|elbow|lip|cheek|hand|foot)(?: (?:is|was|a|bit))* (?:from|after|because of|due to) (?:a |the |my |his |her |playing )*(?:football|soccer|tennis|sports?|running|sprain|twist(?:ing)?|knock|bump|sting|insect|wasp|bee|mosquito|bite|bitten|dentist|gardening)\b|\b(?:sprained|twisted)(?: (?:my|his|her|the|left|right))* (?:ankle|knee|wrist|foot),? ?(?:a |bit |is |and |so |it |now )*swollen\b")]
    private static partial Regex Swelling();

    [GeneratedRegex(@"\b(?:machine|cycler|screen|display|monitor|phone|computer|app)(?: (?:is|was|went|has|became|suddenly|froze|and))* (?:unresponsive|not responding|no response|blacked out|black ?out|confused)\b|\b(?:power|electricity) black ?out\b")]
    private static partial Regex Machine();

    [GeneratedRegex(@"\bbowels? (?:(?:is|are|was|were) )?open(?:ed)?(?: (?:x ?[1-3]|once|twice|daily|normally|today))*(?! [a-z0-9])|\bthis (?:week|month)\b|\b(?:stomach|belly|tummy|abdomen) (?:(?:is|was|feels|felt|all) )?(?:fine|ok|okay|good|soft|normal)\b|\b(?:at|by) (?:the )?(?:gp|doctors?|surgery)\b|\bslept (?:very |really )?(?:well|fine|good|ok|okay|soundly|great|like a (?:log|baby)|through|(?:6|7|8|9) ?h(?:ours?)?)\b|\bgood (?:night'?s )?(?:sleep|rest|night|morning|day|evening)\b|\b(?:forgot|did not|didn'?t|no time) (?:to )?(?:weigh|be weighed)(?: (?:myself|me|him|her|in))?\b|\b(?:not weighed|scales? (?:was |were )?(?:away|not here))\b|\b(?:walk(?:ed|s| of)?|cycled|swam|hiked)(?: (?:for|about|a|the|dog))* [0-9]{1,2}(?:[.,][0-9])? ?(?:km|kilomet(?:re|er)s?|miles?|min(?:utes)?|h|hours?)\b|\b(?:drain(?:ed|s|ing)?|fill(?:ed|s|ing)?)(?: all| very)? (?:well|fine|ok|okay|good|perfectly|easily|smoothly|normally)\b|\b(?:as )?clear as (?:water|glass|crystal|ever|always|usual)\b|\b(?:quiet|peaceful|calm) (?:night|day|evening|weekend)\b|\bclear like water\b|\b(?:bp|blood pressure|pulse|weight|sugar|temp|temperature) (?:is |was )?(?:good|fine|ok|okay|normal|stable)\b|\bscales? (?:is |are |was |were )?broken\b|\bhair cut\b|\bsat in the (?:garden|sun)\b|\b(?:crystal|water|totally|completely) clear\b|\bchanged (?:the |my |his |her )?dressing\b|\bdressing (?:was )?changed\b|\bbloods? (?:tests? )?(?:were |was )?(?:taken|drawn|done)\b|\bblood (?:test|sample)s?(?: (?:taken|drawn|done))?\b|\b(?:flu|covid|pneumonia) (?:jab|vaccine|vaccination|booster|shot)\b|\b(?:jab|vaccination|vaccinated|vaccine|booster)\b")]
    private static partial Regex Phrases();
}
