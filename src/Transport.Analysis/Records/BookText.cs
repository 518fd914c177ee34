using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>What can be understood of free words in a book, and whether anything else stands there.</summary>
/// <remarks>
/// Made to err towards an alarm: a false one is a call too many, a missed one may be a peritonitis. A denial reaches the complaint directly after it and no further, and
/// whatever is not understood is left for a reader, not taken for good news. A peritonitis is of the past only where the words say when it was and that is long ago, or call it
/// the history and name no time, and where nothing written beside it, in whatever clause, may speak of now. It is then told apart, for a reader.
/// </remarks>
/// <param name="Symptoms">Complaints, each once.</param>
/// <param name="TemperatureCelsius">The highest body temperature that is written, °C; null where none is.</param>
/// <param name="HasUnread">Whether words or numbers are left that were not understood.</param>
/// <param name="HasPastPeritonitis">Whether a peritonitis is spoken of as long past, which is no complaint.</param>
/// <param name="HasPastComplaint">Whether another complaint is spoken of as over for two weeks or longer.</param>
/// <param name="OfAnother">Complaints that the words give to somebody else: a daughter's fever. Whoever keeps the book for another may mean the patient.</param>
/// <param name="Potassium">Potassium of the blood that is named, as numbers in mmol/L, the same as in mEq/L.</param>
/// <param name="Glucose">Glucose of the blood that is named, mmol/L, by its unit or its size.</param>
/// <param name="GlucoseInDoubt">Numbers of glucose that are very low in mg/dL and very high in mmol/L.</param>
internal sealed partial record BookText(
    ImmutableArray<Symptom> Symptoms, double? TemperatureCelsius, bool HasUnread, bool HasPastPeritonitis, bool HasPastComplaint, ImmutableArray<Symptom> OfAnother,
    ImmutableArray<double> Potassium, ImmutableArray<double> Glucose, ImmutableArray<double> GlucoseInDoubt)
{
    private const string Belly = @"(?:(?:abdominal|abdomen|abdo|belly|tummy|stomach|pelvic)(?: is| was| feels| very| bit)* )?";
    private const string Place = @"(?:exit(?: site)?|esi|tunnel|catheter(?: site)?|(?:line|tube|drain|pd) site|cuff|(?:skin )?(?:around|round|near|by) (?:the |my |his |her )?(?:tube|line))";
    private const string Inflamed = @"(?:redness|red|pus|discharge|discharging|oozing|ooze[sd]?|weeping|crust(?:s|ed|y)?|infect(?:ed|ion)|inflamed|inflammation|warm|hot|sore|tender|pain(?:s|ful)?|hurts?|swollen|swelling|smells?|smelly|bleeds?|bleeding|blood|gunge|gunky?|goo|gooey|yellow|green|weepy|raw|scab(?:s|by)?|pussy|abscess|boil|lump(?:s|y)?)";

    private const string Fluid = @"(?:bags?|fluid|effluent|dialysate|drain(?:s|ed|age)?|drainage|outflow|output|liquid)";
    private const string Looks = @"(?: (?:is|was|were|are|looks?|looked|came|comes|coming|out|has|had|a|an|the|bit|little|very|rather|quite|dark|light|slightly|all|still|now|today|again|colou?r|more|like|this|morning|tonight|in|some|weak|cloudy|turned|went|gone|thick|smelly))*";
    private const string Brown = @"(?:brown(?:ish|y)?|f(?:ae|e)culent|f(?:ae|e)cal|green(?:ish)?|(?:tea|coffee|cola|rust) ?(?:colou?red|brown)|like (?:weak |strong )?(?:tea|coffee|cola|mud|gravy|rust)|muddy|rusty)";
    private const string Stool = @"(?:stools?|poo|poop|shit|f(?:ae|e)ces|f(?:ae|e)cal|sewage|sewer|manure|toilet)";
    private const string Sugar = @"(?:(?:blood )?(?:sugars?|glucose)|(?:glucose |sugar )?meter|bm|bg|bsl|bs)";

    private const string IntraperitonealAntibiotic = "cefazolin|cephazolin|vancomycin|vanc|vanco|ceftazidime|cefepime|gentamicin|gent|tobramycin|amikacin|meropenem";
    private const string Antibiotic = IntraperitonealAntibiotic + "|antibiotics?|abx";

    // White cells of the effluent above which a peritonitis is one, per µL (ISPD, from memory).
    private const double MostCells = 100;

    // Between a potassium and its number; and what follows no number of the blood.
    private const string Level = @"[ :=·]*(?:(?:level|result|of|is|was|at|now|today|yesterday|still|came|back|up|down|to|only|too|high|low|very) )*";
    private const string NoAmount = @"(?![.,]?[0-9]| ?(?:km|kg|g|mg|l|ml|bags?|tablets?|solution|dialysate)\b)";

    // Four digits are as soon a volume or a clock.
    private const string Years = @"(?:19|20)[0-9]{2}(?! ?(?:[0-9]|m?l\b|cc\b|litres?\b|liters?\b|g\b|h\b|hrs?\b|hours?\b|o'?clock\b))";
    private const string MonthNames = "january|february|march|april|may|june|july|august|september|october|november|december";
    private const string When =
        $@"(?:last year|(?:back )?in (?<year>{Years})|(?:back )?in (?<month>{MonthNames})(?: (?<year>{Years}))?|(?<count>a|an|[0-9]{{1,2}}|two|three|four|five|six|many|several|some) (?<unit>month|year)s? ago)";

    /// <summary>So many days ago is long ago: twice the four weeks for which nights stay out after a peritonitis unless a local protocol has more.</summary>
    public const int LongAgoDays = 56;

    // Of glucose in words, which know no limit of a local protocol: below 4 and above 20 mmol/L, as the shipped ones; what no meter shows in mmol/L is mg/dL.
    private const double LowMillimoles = 4;
    public const double VeryHighMillimoles = 20;
    private const double MostMillimoles = 33.4;
    private const double LowMilligrams = 72;

    // Of other complaints, which leave no night out, what ended two weeks ago is over (choice).
    private const int OverDays = 14;

    // "Never well since" is not well.
    private const string Unless = @"(?<!\b(?:not|no|never|nothing|hardly|barely|scarcely|less|far from|nearly|almost|neither|nor|[a-z]+n'?t|cannot)(?: [a-z]+){0,2} )";

    // In the order in which they are looked for: pain on filling is not first read as pain of the belly.
    private static readonly (Symptom Symptom, string Words)[] Vocabulary =
    [
        (Symptom.GutBleeding, @"vomit(?:s|ed|ing)?(?: (?:up|of|fresh|some|dark|red|bright|a|lots?|little))* blood|(?:threw|throwing|brought|bringing|cough(?:ed|ing)|spat|spitting|sicked) up (?:(?:fresh|some|dark|red|a|little|lots? of) )*blood|blood in (?:the |my |his |her )?(?:vomit|sick|stools?|poos?|poop|motions?|bowels?|toilet|faeces|feces)|ha?ematemesis|mela?ena|coffee ?grounds?|(?:sick(?:ed)?|brought|threw|throwing|bringing) up (?:red|brown|black|dark)|(?:black|tarry|bloody|maroon|blood red)(?: (?:tarry|sticky|loose|runny|smelly|like|tar|and))* (?:stools?|motions?|poos?|poop|bowel movements?|faeces|feces|diarrh?o?ea)|(?:stools?|motions?|poos?|poop|faeces|feces)(?: (?:is|are|was|were|very|all|looks?|has|have|gone|turned|jet|pitch|like|a))* (?:black|tarry|bloody|maroon|tar)|(?:rectal|bowel|gut|stomach|gi) bleed(?:ing|s)?|(?:bleed(?:ing|s)?|blood) from (?:the |my |his |her )?(?:back passage|bottom|rectum|bowels?|anus)"),
        (Symptom.StoolInFluid, Fluid + Looks + " " + Brown + "|" + Fluid + @"(?: ?[:=]| (?:is|was|looks?|looked|came|out|like|a|bit))+ (?:tea|coffee|cola|gravy)|(?:effluent|dialysate|drainage|outflow) (?:tea|coffee|cola|gravy)(?! ?(?:with|at|after|before|time)\b)|" + Brown + @"(?: (?:smelly|stinking|dark|looking|colou?red|thick|murky))* " + Fluid + "|" + Fluid + Looks + @" (?:smell(?:s|ed|ing)?|stinks?|stank|reeks?)(?: (?:very|really|so|bad|strongly|a|bit))* (?:foul|bad|badly|off|rotten|awful|terrible|of|like)(?! (?:bleach|chlorine|plastic|soap|disinfectant|nothing|usual|always))|" + Fluid + Looks + @" (?:stinks|stinking|reeks|foul|foul smell(?:ing)?|(?:smelt|smelled|smells) (?:foul|bad|off|rotten))|(?:bile|bilious) (?:like |stained |colou?red )*(?:colou?r|" + Fluid + ")|" + Fluid + Looks + @" (?:bile|bilious)|(?:foul|foul smelling|stinking) " + Fluid + @"|(?:smell(?:s|ed|ing|y)?|stinks?|stank|stinking|reeks?)(?: (?:of|like|a|bit|strongly|bad))* " + Stool + "|" + Stool + @" smell|(?:" + Stool + @"|tea|coffee|cola|gravy|(?:bits? of |remains of )?(?:food|veg|vegetables?)) in (?:the |my |his |her )?(?:drain )?" + Fluid),
        (Symptom.Stroke, @"(?<!(?:breast|back|heat|sun) ?)strokes?(?! (?:the|my|our|of luck)\b)|tia|cva|slur(?:s|red|ring)?|speech(?: (?:is|was|went|has|gone|very|all|a|bit|not|so))* (?:slow|funny|strange|odd|lost|muddled|garbled|unclear|thick|gone|difficult|clear)|(?:lost|loss of|no) (?:his |her |my |the )?speech|(?:smile|face|mouth)(?: (?:is|was|looks|a|bit))* (?:uneven|lop ?sided)|dropping things|clumsy|words(?: (?:come|came|coming|are|is|all|out))* (?:wrong|jumbled|mixed up)|(?:cannot|can'?t|could not|couldn'?t|unable to|hard to|difficult to|difficulty|trouble) (?:speak(?:ing)?|talk(?:ing)?|find(?:ing)? (?:the |my |his |her )?words|get(?:ting)? (?:the |my |his |her )?words out)|(?:face|mouth|smile|eyelid|lip)(?: (?:is|was|has|looks|all|on|one|left|right|side|a|bit|half|gone|went))* (?:droop(?:s|ed|ing|y)?|sag(?:s|ging|ged)?|dropped|lop ?sided|crooked|hanging|numb|fallen|paraly[sz]ed|weak)|(?:droop(?:y|ing|ed)?|crooked|lop ?sided|numb|facial)(?: (?:on|one|side|of|the|left|right|his|her|my))* (?:face|mouth|smile|droop|palsy|weakness)|(?:one|left|right|whole) side(?: (?:of|the|my|his|her|body|face|is|was|has|gone|went|very|feels|felt|all))* (?:weak(?:ness)?|numb(?:ness)?|dead|paraly[sz]ed|limp)|(?:arm|leg|hand)(?: (?:is|was|has|have|are|gone|went|very|feels|felt|a|bit|so|suddenly|all))* (?:weak(?:er|ness)?|numb(?:ness)?|dead|paraly[sz]ed|limp|useless)|(?:weak(?:ness)?|numb(?:ness)?|paraly[sz]ed|limp)(?: (?:in|of|on|down|the|my|his|her|one|left|right))* (?:arm|leg|hand|side|face)|(?:cannot|can'?t|could not|couldn'?t|unable to) (?:move|lift|raise|feel)(?: (?:the|my|his|her|one|left|right))* (?:arm|leg|hand|side)|hemipar[a-z]*|hemipleg[a-z]*|aphasi[ac]|dys(?:phasi|arthri)[ac]"),
        (Symptom.Collapse, @"seizures?|seized (?:once|twice|again|x ?[0-9]|for)|convuls[a-z]*|epilep[a-z]*|(?:had|has|have|having|a|another|two|three|in a) (?:epileptic |big |small |bad |short )?fits?(?! (?:of|as|for|and|well|enough|in with|into)\b)|[0-9] ?(?:am|pm|o'?clock) (?:a )?fits?(?! (?:and|as|for|enough)\b)|fits? (?:in|at|during|last|this|lasting|lasted)(?: (?:the|his|her|my))? ?(?:night|sleep|morning|evening|afternoon|dialysis|treatment|[0-9])|(?<=^\s*)fits?(?=\s*$)|(?:was|is|started|been|kept|found) fitting(?! (?:the|a|in|into|well|new)\b)|fitted (?:x ?[0-9]|again|once|twice|for)|post ?ictal|jerking|bit (?:his |her |my |the )?tongue|keeled over|found (?:him |her |me )?(?:lying )?on (?:the )?(?:floor|ground)|not answering(?! (?:the )?(?:phone|door|call))|collaps(?:ed|e|ing)|pass(?:ed|ing) out|black(?:ed|ing)? ?out|los[st](?: of)? consciousness|loss of consciousness|tloc|unconscious|unresponsive|out cold|(?:went|gone) (?:rigid|stiff)|shook all over|not (?:respond|react)(?:ing)?|(?:does|did|would|will)(?: not|n'?t) (?:respond|react|answer(?! (?:the )?(?:phone|door|call)))|no pulse|cardiac arrest|heart stopped|(?:turned|went|gone|is|lips) blue|blue lips"),
        (Symptom.CloudyFluid, @"cloud(?:y|ie|ed|ier|iness|ish)|cldy|clouds? in (?:the |my |his |her )?" + Fluid + @"|turbid|milky|haze?y|murke?y|unclear|opaque|not see ?through|(?:cannot|can'?t|could not|couldn'?t) (?:see|read)(?: [a-z]+){0,5} (?:through|thru)|" + Fluid + Looks + @" (?:(?:off,? )?not (?:its |the )?(?:normal|usual)|odd|funny|strange|wrong|different|off) colou?r|" + Fluid + Looks + " (?:misty|dirty|milk|lemonade|(?:beef )?broth|soup|dish ?water|yogh?urt|fog)" + @"|(?:misty|dirty|foggy) " + Fluid + @"|(?:positive|pos) (?:(?:pd|fluid|effluent|bag|dialysate|drain) )?cultures?|(?:cultures?|grew|grown|growing|grows)(?: (?:is|was|were|came|back|has|have|grew|grown|growing|grows|a|some))* (?:positive|staph[a-z]*|strep[a-z]*|mrsa|e ?coli|coliforms?|pseudomonas|klebsiella|enterococc[a-z]*|candida|yeasts?|fung(?:us|i|al)|gram|bugs?|bacteria|germs?)|(?:ip|intraperitoneal|in the bags?|into the bags?) (?:" + Antibiotic + ")|(?:" + Antibiotic + @")(?: (?:was|were|given|put|added|started|today|tonight|ip|injected))* (?:ip|intraperitoneally|in(?:to)? (?:the |my |his |her |each |every |all )?(?:bags?|fluid|dialysate|dwells?))|(?:start(?:ed|ing)?|given|gave|having) (?:ip |iv )?(?:" + IntraperitonealAntibiotic + @")|whitecellsinfluid|" + Fluid + Looks + @" (?:foggy|like fog)|peritonitis|perit"),
        (Symptom.Blood, @"bloody|blood stained|blood(?! (?:pressure|sugar|glucose|test|sample|count|work|result|taken|drawn)s?\b)|bleeding|bled from|pink(?:ish)?|reddish|" + Fluid + Looks + " red|red " + Fluid),
        (Symptom.FlowPain, @"(?:pain(?:s|ful)?|hurts?|hurting|sore|cr(?:y|ies|ied|ying)|scream(?:s|ed|ing)?|agony) (?:on|when|while|during|with|as) (?:(?:it|the|he|she|i|is|was|being|bag|machine) )*(?:fill(?:s|ed|ing)?|drain(?:s|ed|ing)?)|(?:drain|fill|inflow|outflow) pain"),
        (Symptom.SlowDrain, @"(?:would|will|does|did|could|can|is|was)(?: not|n'?t) (?:fully |properly |completely )?drain(?:ing)?|(?:won'?t|can'?t|cannot) drain|not drained|not draining|drain(?:s|age|ing)? (?:is |was |were |are |very |so )*(?:alarms?|slow(?:ly|er)?|poor(?:ly)?|incomplete|stopped|stuck|blocked|failed|problems?)|(?:slow|poor|incomplete|low|bad) drain(?:s|age|ing)?|(?:nothing|hardly|barely) drained|(?:nothing|hardly(?: anything)?|barely) (?:comes?|came|coming|runs?|ran) out|alarms?|(?:line|tube|catheter) (?:is |was )?(?:blocked|kinked)|(?:blocked|kinked) (?:line|tube|catheter)"),
        (Symptom.HeadOrSight, @"head ?aches?|migraine|head (?:hurts?|hurting|pounding|pains?|sore)|(?:sore|aching|painful|pounding) head|pain in (?:the |my |his |her )?head|blurr(?:ed|y|ing)(?: (?:vision|sight|eyes))?|(?:vision|sight|eyesight) (?:is |was )?(?:blurr(?:ed|y)|poor|worse|dim|going|gone|lost)|(?:double|loss of|lost|poor|dim|disturbed) (?:vision|sight)|(?:cannot|can'?t|could not|couldn'?t) see|seeing (?:double|spots|stars|flashes)"),
        (Symptom.Leak, @"leak(?:s|ed|ing|age|y)?|(?:line|tube|tubing|cap|connection|catheter|adapt[eo]r) (?:had |has |was |is |got |been )*(?:c[ao]me (?:apart|off|out|loose|undone)|coming out|pulled out|slipp(?:ed|ing) out|missing|fell (?:off|out)|fallen (?:off|out)|disconnected|open|loose|torn|split|cut|cracked|snapped|broken|broke)|disconnected|(?:pulled|pulling|tugged|yanked)(?: (?:on|at|out))? (?:the |my |his |her )?(?:line|catheter|tube)|cap (?:was )?(?:on (?:the )?(?:floor|bed)|off)|(?:hole|split|cut|crack|tear) in (?:the |my |his |her )?(?:transfer set|extension(?: set)?|catheter|line|tube|tubing|bag)|(?:chew(?:s|ed|ing)?|bit|bitten|gnawed|cut)(?: (?:through|on|into))? (?:the |my |his |her )?(?:line|catheter|tube|tubing|transfer set)|(?:transfer set|line|catheter|tube|tubing|connection)(?: (?:is|was|were|has|been|all|still))* (?:dripping|drips|chewed)|(?:touched|dropped|brushed) (?:the |my |his |her )?(?:tip|spike|end|connector|open line|open end|line|tube|catheter)|contaminated|(?:forgot|without|did not|didn'?t) (?:to )?wash(?:ing)? (?:my |his |her )?hands|(?:forgot|without|no) (?:the |my |a )?mask|cuff (?:is |was |has )?(?:come )?(?:out|visible)|wet bed|bed (?:was |is )?(?:wet|soaked)|(?:wet|soaked|damp) (?:dressing|bandage|gauze)|(?:dressing|bandage|gauze|clothes) (?:is |was |were |got |feels )?(?:wet|soaked|damp|soggy)|(?:fluid|water|wet|wetness|dialysate) (?:is |was )?(?:at|from|around|near|by|out of|coming (?:from|out of)) (?:the |my |his |her )?" + Place + "|" + Place + @" (?:is |was |looks |feels )?(?:wet|damp|moist)"),
        (Symptom.ChestPain, @"chest(?: (?:is|was|feels|felt|like|very|a|bit|so|all|still|really))* (?:pains?|painful|tight(?:ness)?|pressure|hurts?|hurting|heavy|heaviness|pressing|crushing|squeez(?:ed|ing)|sore|ach(?:es?|ing)|discomfort|burning)|(?:tight(?:ness)?|painful|heavy|crushing|sore|aching|central|pressing|squeezing|elephant)(?: (?:feeling|sensation|weight|pain))? (?:(?:in|across|of|on|over) )?(?:(?:the|my|his|her) )?chest|(?:pains?|pressure|heaviness|discomfort|ache|aching|squeezing|weight) (?:in|on|across|over) (?:the |my |his |her )?chest|pains? (?:in|down) (?:the |my |his |her )?(?:left arm|jaw)|(?:left arm|jaw) (?:pains?|hurts?|aches?)|angina|heart attack|gtn|cp"),
        (Symptom.AbdominalPain, Belly + @"(?:pain(?:s|ful|fully)?|hurts?|hurting|sore|soreness|tender|tenderness|discomfort|agony|colic(?:ky)?|px|throbbing|stabbing|(?:stomach|belly|tummy)?ach(?:es?|ed|ing|y))|stomache|(?:belly|abdomen|abdo|tummy|stomach)(?: (?:is|was|very|feels|felt|as|rock|so|like|a))* (?:hard|rigid|board)|(?:hard|rigid|tight) (?:belly|abdomen|abdo|tummy|stomach)|(?:belly|abdomen|abdo|tummy|stomach)(?: (?:is|was|very|feels|felt|as|so|like|a))* (?:tight|drum|taut|tense)|guarding|peritonism|doubled (?:over|up)|crampy (?:belly|tummy|stomach|gut)|(?:belly|abdominal|tummy|stomach|gut) cramps?|(?:belly|tummy|stomach|guts?)(?: (?:is|was|are))* killing"),
        (Symptom.Fever, @"fever(?:s|ish)?|febrile|shiver(?:s|ing|y)?|chills?|rigou?rs?|burning up|hot and cold|teeth (?:are |were )?chattering|(?:high|raised) temp(?:erature)?|temp(?:erature)? (?:is |was )?(?:high|up|raised)"),
        (Symptom.Vomiting, @"vomit(?:s|ed|ing)?|threw up|throwing up|(?:being|been|was) (?:violently )?sick|sick (?:[0-9]+|two|three|four|several|many) times|puk(?:ed|ing|es)|retch(?:ed|ing)|(?:cannot|can'?t|could not|couldn'?t) keep (?:anything|food|water|it|fluids?) down|nausea|nauseous|queasy"),
        (Symptom.Diarrhoea, @"diarrh?o?ea|(?:loose|watery|runny) (?:stools?|poos?|poop|motions?)|the runs|runny tummy"),
        (Symptom.Breathless, @"breathless(?:ness)?|(?:short|shortness|out) of breathe?|sob(?:oe)?|pnd|dyspno?ea|breathing|(?:cannot|can'?t|hard to|difficult to|could not|couldn'?t) breathe?|(?:cannot|can'?t|could not|couldn'?t) (?:catch|get) (?:my |his |her )?breath|(?:cannot|can'?t|could not|couldn'?t|unable to) (?:lie|lay|sleep) (?:flat|down)|(?:slept|sleeps|sleeping|sleep) (?:sitting|upright|in (?:the |a |my )?(?:chair|armchair))|orthopno?ea|puffed|gasp(?:s|ed|ing)?|wheez(?:e|es|y|ing)|panting|suffocating"),
        (Symptom.Swelling, @"swelling|swell(?:s|ed)?|swollen|o?edema|puffy|(?:scrotum|testicles?|balls|groin|genitals?|penis|labia)(?: (?:is|are|was|very|has|got|so|as|like|a|the))* (?:grapefruits?|melons?|balloons?|oranges?|footballs?|big|bigger|huge|enlarged|large)|(?:legs|feet|ankles|hands|face)(?: (?:is|are|up|was|were))* like (?:a )?(?:balloons?|tree trunks?|elephants?|melons?)|ankles? (?:is |are )?up|(?:cannot|can'?t|could not|couldn'?t) get (?:my |his |her |the )?shoes on|lump in (?:the |my |his |her )?groin|fluid on (?:the |my |his |her )?(?:lungs?|legs?)"),
        (Symptom.Dry, @"cramps?|cramping|dizz(?:y|iness)|woozy|faint(?:s|ed|ing|ness)?|light ?headed(?:ness)?"),
        (Symptom.Confused, @"confus(?:ed|ion)|muddled|(?<!(?:bags?|fluid|effluent|drain|weather|day|night|morning|outside)(?: is| was)? )foggy(?! (?:weather|day|night|morning|outside))|drows(?:y|iness|ily)|deliri(?:ous|um)|disorient(?:ed|ation)|hallucinat[a-z]*|seeing things|not making sense|talk(?:s|ed|ing)? (?:nonsense|rubbish|gibberish)|rambling|not (?:him|her)self|(?:do|does|did)(?: not|n'?t) (?:know|recogni[sz]e) (?:me|us|where|who|(?:what|which|the) day)|(?:very|so|too) sleepy|sle(?:ep|pt|eps|eping) all day|(?:hard|difficult) to (?:wake|rouse)|(?:cannot|can'?t|could not|couldn'?t|won'?t|would not) (?:be )?(?:wake|woken|roused?)(?: up)?|floppy|(?<!a )limp|listless|letharg(?:ic|y)"),
        (Symptom.Constipation, @"constipat(?:ed|ion)|bno|bowels? (?:not open(?:ed)?|blocked)"),
        (Symptom.LowGlucose, @"hypos?|(?<=^\s*)lo(?=\s*$)|hypoglyca?emi[ac]|low (?:blood )?(?:sugar|glucose)|" + Sugar + @"(?: (?:is|was|feels|felt|went|too|very|says?|said|shows?|showed|reads?|reading|just|only|on|meter))* low?"),
        (Symptom.HighGlucose, Sugar + @"(?: (?:is|was|went|says?|said|shows?|showed|reads?|reading|just|only|still|test|right|on|meter|error|unreadable))* (?:hi|off (?:the )?scale|through the roof|sky high|(?:very|too|really|extremely|dangerously) high|over (?:the )?range)|hyperglyca?emi[ac]|ketones|dka"),
        (Symptom.Shaky, @"sweat(?:s|y|ing|ed)?|shak(?:y|ing|es|iness)|shook|trembl(?:y|ing|es?|ed)|tremors?|clammy|jittery|hungry|hunger|ravenous|palpitations?|(?:heart|pulse) (?:is |was )?(?:racing|pounding)|(?:racing|pounding) heart|tingling (?:lips|mouth|tongue)"),
    ];

    // Understood, and an alarm beside something else only: alone they are left for a reader.
    private static readonly Symptom[] ForReader = [Symptom.Shaky, Symptom.HeadOrSight, Symptom.SlowDrain];

    private static readonly string Known = $"(?:{string.Join('|', Vocabulary.Select(known => known.Words))}|{Inflamed})";

    private static readonly (Symptom Symptom, Regex Words)[] Patterns = [.. Vocabulary.Select(known => (known.Symptom, Made($@"\b(?:{known.Words})\b")))];

    private static readonly Regex Denied = Made(
        $@"\b(?:no|not|without|denies|denied|never|nil|doesn'?t|didn'?t|hasn'?t|isn'?t|wasn'?t)(?: any| more| further| (?:signs?|evidence|suspicion|history) of)* {Known}(?: (?:or|nor) {Known})*\b(?! (?:like|such|until|(?:this|that|so|as) (?:bad|badly|strong|severe|much|long|often|cloudy|high))\b| before ?$)");

    // "Not cloudy yesterday" says nothing of today.
    private static readonly Regex DeniedOfBefore = Made($@"\b(?:no|not|without|denies|denied|never|nil|didn'?t|wasn'?t)(?: any| more)* {Known}(?: (?:or|nor) {Known})* (?:yesterday|earlier|at first|last (?:night|week|month)|until|on (?:mon|tues|wednes|thurs|fri|satur|sun)day)\b");

    private static readonly string Others = $"(?:{string.Join('|', Vocabulary.Where(known => known.Symptom != Symptom.CloudyFluid).Select(known => known.Words))})";
    private static readonly string OtherWhen = $@"(?:{When}|last month|(?<count>a|an|[0-9]{{1,2}}|two|three|four|five|six) (?<unit>week)s? ago)";

    private static readonly Regex PastComplaint = Made(
        $@"\b{Others}(?: (?:was|were|treated|cured|healed|gone|over|settled))* {OtherWhen}\b|\b{OtherWhen},?(?: (?:i|he|she|had|have|was|for|an?|some))* {Others}\b");

    // What may pass of itself; beside anything else it does not count as passed.
    private static readonly Symptom[] Passing = [Symptom.AbdominalPain, Symptom.Dry, Symptom.HeadOrSight];

    // A pain of which the words say that it has gone (and not "gone up"), by itself: under a medicine, for a while or to another place it has not.
    private static readonly Regex Recovered = Made(
        $@"\b(?:{string.Join('|', Vocabulary.Where(known => Array.IndexOf(Passing, known.Symptom) >= 0).Select(known => known.Words))})(?: (?:is|are|has|have|was|now|all|completely|quite|already|totally))* (?:gone(?: away)?|went away|settled|resolved|cleared(?: up)?|disappeared)(?: (?:now|today))?(?= ?(?:$|[.,;!]))");

    // A complaint of somebody else, unless anything beside it may speak of the patient too, as any other complaint may.
    private static readonly Regex OthersComplaint = Made(
        $@"\b(?:(?:my|his|her|our|their|the) )?(?:daughter|son|husband|wife|mother|father|mum|mom|dad|grand(?:son|daughter|child|children|mother|father|ma|pa)|sister|brother|child|children|kids?|baby|neighbou?rs?|friends?|uncle|aunt|cousin|partner|colleagues?|dog|cat)(?: (?:has|had|have|got|is|was|are|were|been|ill with|sick with|down with|in bed with|home with|an?|some|bad|very|high))+ {Others}(?: (?:and|or) {Others})*(?: in (?:his|her|their) [a-z]+)?\b");

    private static readonly Regex MayBePatient = Made(
        @"\b(?:i|i'm|i've|me|my|mine|myself|we|us|our|both|too|also|as well|same|likewise|all|every(?:one|body)|patient|bags?|fluid|drain(?:s|ed|age|ing)?|output|pd|exchanges?|dwells?|effluent|dialysate|like)\b");

    // It was brown, which a reader has to see, and is so no more.
    private static readonly Regex NoLongerBrown = Made($@"\bno (?:longer|more) {Brown}(?: {Fluid})?\b");

    // A list after a denial is denied to its end where it has one: "no pain, fever" may go on to say what there is.
    private static readonly Regex DeniedList = Made($@"\b(?:no|denies|denied|without)(?: any)? {Known}(?:, {Known})+,? (?:or|nor) {Known}(?= ?(?:$|[.;]))");

    private static readonly Regex AnsweredNo = Made($@"\b{Known}(?: ?[:=] ?(?:no|none|nil)| ?[:=]? ?0 ?/ ?10)(?= ?(?:$|[,.;]))");

    private static readonly Regex PastPeritonitis = Made(
        $@"\bperitonitis(?: (?:was|treated|cured|healed|found))* {When}\b|\b{When}(?: (?:i|he|she|had|was|treated|for|an?))* peritonitis\b|\bhistory of peritonitis(?= ?$)");

    // Beside such words, in whatever clause, a peritonitis of the past may be one of now.
    private static readonly Regex AsNow = Made(
        $@"\b(?:again|still|not|now|recurr[a-z]*|relaps[a-z]*|return(?:s|ed|ing)?|back(?! in (?:{MonthNames}|{Years}))|like|as|same|similar|another|wors(?:e|ens?|ened|ening)|ongoing|continu[a-z]*|since|this|today|tonight|yesterday|recent(?:ly)?|last month|days?|weeks?)\b");

    // Beside a time, or a number that may be one, a history may be of that time.
    private static readonly Regex Timed = Made($@"\b(?:last|ago|{MonthNames})\b|[0-9]");

    private static readonly Regex Site = Made($@"\b{Place}\b");

    private static readonly Regex SiteSign = Made($@"\b{Inflamed}\b");

    // Only signs of a site, with no other place or complaint among them: "exit site red, belly sore" are two.
    private static readonly Regex SiteList = Made($@"\b{Place}\b(?: ?[:,+]+ ?| )(?:(?:is|was|looks?|very|a|bit|and|still|slightly|little|all|{Inflamed})(?: ?[:,+]+ ?| ))*{Inflamed}\b(?: to (?:the )?touch)?|\blumps? (?:along|over|on|at|near|in) (?:the |my |his |her )?{Place}, ?{Inflamed}\b");

    private static readonly BookText Blank = new([], null, false, false, false, [], [], [], []);

    /// <summary>Reads words as they stand in a cell.</summary>
    /// <param name="words">The words.</param>
    /// <param name="on">The day on which they were written; null where not known: then nothing is long ago.</param>
    /// <param name="daysLeftOut">For how many days nights stay out after a peritonitis: one within them is not long ago.</param>
    public static BookText Of(string words, DateOnly? on = null, double daysLeftOut = 0)
    {
        if (words.Length == 0)
        {
            return Blank;
        }

        var text = Misspelling.Mended(SheetWords.Normal(OtherPoint().Replace(words.Replace('’', '\''), ".")));
        text = Quotes().Replace(text, "");
        text = Pain().Replace(SickAndRuns().Replace(FluidAnd().Replace(text, "$1 "), match => match.Value[0] == 'd' ? "diarrhoea vomiting" : "nausea vomiting"), "pain");
        ImmutableArray<double> potassium = [.. NamedPotassium().Matches(text).SelectMany(match => match.Groups["number"].Captures).Select(number => Parsed(number.Value)).Where(value => value is >= 1 and <= 12)];
        text = Meter().Replace(text, "$1 ");
        List<double> glucose = [], glucoseInDoubt = [];
        text = NamedGlucose().Replace(text, match => OfGlucose(match, glucose, glucoseInDoubt));
        double? temperature = null;
        foreach (var form in new[] { NamedTemperature(), TemperatureWithUnit(), BareTemperature() })
        {
            text = form.Replace(text, match =>
            {
                if (Celsius(match.Groups["number"].Value) is not { } celsius)
                {
                    return match.Value;
                }

                temperature = Math.Max(temperature ?? celsius, celsius);
                return match.Value.StartsWith('f') ? "fever " : " ";
            });
        }

        // A "no" that is part of a complaint comes before those that deny one: who is not breathing is not well, and may well have "no breathing problems".
        text = NotBreathing().Replace(NotBreathingWell().Replace(text, "breathless"), "unresponsive");
        text = NotHungry().Replace(NotClearHead().Replace(text, "confused"), "appetite");
        text = NotFree().Replace(NotClear().Replace(NoStool().Replace(text, "constipated"), "cloudy"), "pain");
        text = DeniedList.Replace(text, "well");
        text = AnsweredNo.Replace(FreeOf().Replace(text, "well"), "well");
        text = CellsOfFluid().Replace(NamedFluid().Replace(text, "$1 is "), match => Parsed(match.Groups["number"].Value) > MostCells ? "whitecellsinfluid" : match.Value);
        text = NoLongerBrown.Replace(text, "elsewhere");
        text = EverydayWords.Aside(text);
        var ofAnother = ImmutableArray<Symptom>.Empty;
        var without = Weather().Replace(OthersComplaint.Replace(text, "elsewhere"), "elsewhere");
        if (without != text && Denied.Replace(without, "") is var own && !MayBePatient.IsMatch(own) && !Array.Exists(Patterns, known => known.Words.IsMatch(own)))
        {
            var spoken = string.Join(", ", OthersComplaint.Matches(text).Select(match => match.Value));
            foreach (var (symptom, pattern) in Patterns.Where(known => known.Words.IsMatch(spoken)))
            {
                ofAnother = ofAnother.Add(symptom);
                spoken = pattern.Replace(spoken, "");
            }

            text = without;
        }

        var hasOver = false;
        var over = PastComplaint.Replace(text, match => Ended(match, on) is { } ended && on!.Value.DayNumber - ended.DayNumber >= OverDays ? " " : match.Value);
        if (over != text && !AsNow.IsMatch(over = WellNow().Replace(over, "well")))
        {
            (text, hasOver) = (over, true);
        }

        if (on is not null && !Medicine().IsMatch(text) && Denied.Replace(text, "well") is var said && !Array.Exists(Patterns, known => Array.IndexOf(Passing, known.Symptom) < 0 && known.Words.IsMatch(said)) && Recovered.Replace(text, " ") is var recovered && recovered != text && !AsNow.IsMatch(WellNow().Replace(recovered, "well")))
        {
            (text, hasOver) = (recovered, true);
        }

        var mayBeNow = AsNow.IsMatch(WellNow().Replace(Elsewhere().Replace(text, ""), "well"));
        var isTimed = Timed.IsMatch(text);
        if (!mayBeNow)
        {
            text = NeverHad().Replace(text, "well");
        }

        // A number inside its limits is no news; it ends a clause, so that it joins nothing and denies nothing.
        text = NamedPotassium().Replace(text, match => match.Groups["number"].Captures.All(number => Parsed(number.Value) is >= 3.5 and <= 5.5) ? ", " : match.Value);
        text = NamedGlucose().Replace(text, match => match.Groups["number"].Captures.All(number => IsUsualGlucose(Parsed(number.Value), match.Groups["unit"].Value)) ? ", " : match.Value);
        text = NamedPressure().Replace(text, match => Parsed(match.Groups["s"].Value) is >= 100 and < 140 && Parsed(match.Groups["d"].Value) is >= 60 and < 90 ? ", " : match.Value);
        text = NamedPulse().Replace(text, match => Parsed(match.Groups["number"].Value) is >= 55 and <= 100 ? ", " : match.Value);

        // What is listed after a site is of the site: "exit site: crusty, green discharge, sore".
        text = SiteList.Replace(text, match => match.Value.Replace(',', ' ').Replace(':', ' ').Replace('+', ' '));

        var found = ImmutableArray.CreateBuilder<Symptom>();
        var (hasUnread, hasPast) = (false, false);
        foreach (var clause in Ends().Split(text))
        {
            var rest = Elsewhere().Replace(Denied.Replace(DeniedOfBefore.Replace(clause, "elsewhere"), "well"), "elsewhere");
            if (!mayBeNow)
            {
                rest = PastPeritonitis.Replace(rest, match =>
                {
                    var isPast = match.Value.StartsWith("history", StringComparison.Ordinal) ? !isTimed : IsLongAgo(match, on, daysLeftOut);
                    hasPast |= isPast;
                    return isPast ? " " : match.Value;
                });
            }

            if (Pus().IsMatch(rest) || Site.IsMatch(rest) && SiteSign.IsMatch(rest))
            {
                found.Add(Symptom.ExitSite);
                rest = Pus().Replace(SiteSign.Replace(Site.Replace(rest, ""), ""), "");
            }

            foreach (var (symptom, pattern) in Patterns.Where(known => known.Words.IsMatch(rest)))
            {
                found.Add(symptom);
                rest = pattern.Replace(rest, "");
                hasUnread |= Array.IndexOf(ForReader, symptom) >= 0;
            }

            hasUnread |= IsLeft(rest);
        }

        return new([.. found.Distinct()], temperature, hasUnread, hasPast, hasOver, ofAnother, potassium, [.. glucose], [.. glucoseInDoubt]);
    }

    // A unit or a decimal tells what a number is, else its size: 34 to 71 as a whole number is very low in the one unit and very high in the other.
    private static string OfGlucose(Match words, List<double> read, List<double> inDoubt)
    {
        var unit = words.Groups["unit"].Value;
        var (isLow, isHigh) = (false, false);
        foreach (var number in words.Groups["number"].Captures.Select(capture => capture.Value))
        {
            var value = Parsed(number);
            if (unit.Length == 0 && value is > MostMillimoles and < LowMilligrams && number.All(char.IsDigit))
            {
                inDoubt.Add(value);
                isLow = true;
                continue;
            }

            var isMilligrams = unit.StartsWith("mg", StringComparison.Ordinal) || unit.Length == 0 && value >= LowMilligrams;
            var millimoles = isMilligrams ? value * LowMillimoles / LowMilligrams : value;
            if (millimoles > 0.4)
            {
                read.Add(millimoles);
                isLow |= millimoles < LowMillimoles;
                isHigh |= millimoles > VeryHighMillimoles;
            }
        }

        return isLow && isHigh ? "hypo, sugar very high " : isLow ? "hypo " : isHigh ? "sugar very high " : words.Value;
    }

    // 4 to 10 mmol/L.
    private static bool IsUsualGlucose(double number, string unit) =>
        unit.StartsWith("mg", StringComparison.Ordinal) || unit.Length == 0 && number >= LowMilligrams ? number is >= LowMilligrams and <= 180 : number is >= LowMillimoles and <= 10;

    private static bool IsLongAgo(Match words, DateOnly? on, double daysLeftOut) =>
        Ended(words, on) is { } ended && on!.Value.DayNumber - ended.DayNumber is var ago && ago >= LongAgoDays && ago > daysLeftOut;

    // The last day that the words can mean; null where the day on which they were written is not known.
    private static DateOnly? Ended(Match words, DateOnly? on)
    {
        if (on is not { } today)
        {
            return null;
        }

        var year = words.Groups["year"] is { Success: true } written ? int.Parse(written.Value, CultureInfo.InvariantCulture) : (int?)null;
        if (words.Groups["month"] is { Success: true } name)
        {
            var month = Array.IndexOf(MonthNames.Split('|'), name.Value) + 1;
            return new DateOnly(year ?? (month <= today.Month ? today.Year : today.Year - 1), month, 1).AddMonths(1).AddDays(-1);
        }

        if (words.Groups["unit"] is { Success: true } unit)
        {
            var count = words.Groups["count"].Value switch
            {
                "a" or "an" => 1,
                var digits when int.TryParse(digits, CultureInfo.InvariantCulture, out var number) => number,
                "three" => 3,
                "four" => 4,
                "five" => 5,
                "six" => 6,
                _ => 2,
            };
            return unit.Value switch { "year" => today.AddYears(-count), "month" => today.AddMonths(-count), _ => today.AddDays(-7 * count) };
        }

        return words.Value.Contains("last month", StringComparison.Ordinal) ? today.AddDays(-today.Day) : new DateOnly(year ?? today.Year - 1, 12, 31);
    }

    private static bool IsLeft(string clause)
    {
        if (Nothing().IsMatch(clause))
        {
            return false;
        }

        // A place by itself says nothing; a place that is well has been looked at.
        var rest = EverydayWords.Without(clause);
        rest = Good().IsMatch(rest) ? Site.Replace(Good().Replace(rest, ""), "") : rest;
        return Filler().Replace(rest, "").Any(char.IsLetterOrDigit);
    }

    /// <summary>Whether words name a swollen face, lip, tongue or throat beside a rash or the breath. Errs towards it: no denial is read.</summary>
    public static bool IsOfAllergy(string words) => SheetWords.Normal(words) is var text && SwollenFace().IsMatch(text) && RashOrBreath().IsMatch(text);

    /// <summary>°C of a number that is written without its unit, by its size: nobody has 95 °C or 40 °F. Null where it is neither.</summary>
    public static double? Celsius(string number) => Parsed(number) switch
    {
        >= 32 and <= 43 and var celsius => celsius,
        >= 93 and <= 110 and var fahrenheit => Math.Round((fahrenheit - 32) / 1.8, 2),
        _ => null,
    };

    /// <summary>Whether a number can be °F alone.</summary>
    public static bool IsFahrenheit(string number) => Parsed(number) is >= 93 and <= 110;

    /// <summary>The numbers of a text that may be temperatures.</summary>
    public static IEnumerable<string> Numbers(string text) => Number().Matches(text).Select(match => match.Value);

    private static double Parsed(string number) => double.Parse(number.Replace(',', '.'), CultureInfo.InvariantCulture);

    private static Regex Made(string pattern) => new(pattern, RegexOptions.CultureInvariant);

    [GeneratedRegex(@"\b(?:temp(?:erature)?|t|fever|febrile)\b[ .:=]*(?:(?:of|was|is|at|up to|to) )?(?<number>[0-9]{2,3}(?:[.,][0-9]{1,2})?)(?![0-9/])(?: ?°? ?(?:[cf]|celsius|fahrenheit|degrees?|deg)\b| ?°)?")]
    private static partial Regex NamedTemperature();

    [GeneratedRegex(@"(?<![0-9.,/])(?<number>[0-9]{2,3}(?:[.,][0-9]{1,2})?) ?(?:°(?: ?[cf]\b)?|(?:[cf]|celsius|fahrenheit|degrees?|deg)\b(?: [cf]\b)?)")]
    private static partial Regex TemperatureWithUnit();

    // A number with a decimal that is no weight, volume, time or percentage.
    [GeneratedRegex(@"(?<![0-9.,/]|weight |weighs |kg )(?<number>(?:3[5-9]|4[0-2])[.,][0-9])(?![0-9.,/]| ?(?:kg|kilos?|l|ml|min|h|hours?|mmol|mg|g|cm|lbs?|%))")]
    private static partial Regex BareTemperature();

    [GeneratedRegex(@"(?<![0-9.,])[0-9]{2,3}(?:[.,][0-9]{1,2})?(?![0-9.,])")]
    private static partial Regex Number();

    [GeneratedRegex(@"\b(?:face|lips?|mouth|tongue|throat|eyes?)(?: (?:is|are|was|were|has|all|very|up|a|bit|and|throat|tongue|lips?|face))* (?:swollen|swelling|swell(?:s|ed)?|puffy|closing|tight)\b|\b(?:swollen|puffy|swelling (?:of|in))(?: (?:the|my|his|her))* (?:face|lips?|tongue|throat|eyes?)\b")]
    private static partial Regex SwollenFace();

    [GeneratedRegex(@"\b(?:rash|hives|welts|wheals|urticaria|itch[a-z]*|breath[a-z]*|wheez[a-z]*|sob|gasp[a-z]*|throat|tongue)\b")]
    private static partial Regex RashOrBreath();

    [GeneratedRegex(@"\bno (?:stools?|bowel movements?)\b")]
    private static partial Regex NoStool();

    [GeneratedRegex(@"\b(?:not|less|no longer|isn'?t|wasn'?t|never)(?: [a-z]+)? clear\b")]
    private static partial Regex NotClear();

    [GeneratedRegex(@"\b(?:not|less|no longer|isn'?t|wasn'?t|never)(?: [a-z]+)? clear in (?:the|my|his|her) head\b")]
    private static partial Regex NotClearHead();

    [GeneratedRegex(@"(?<![a-z0-9])['""“”‘](?=[a-z])|(?<=[a-z])['""“”](?![a-z])")]
    private static partial Regex Quotes();

    // A lost appetite is no denied hunger.
    [GeneratedRegex(@"\b(?:not|never|no longer|hardly|isn'?t|wasn'?t)(?: (?:at all|very|really|so|even))? (?:hungry|ravenous)\b|\bno hunger\b")]
    private static partial Regex NotHungry();

    [GeneratedRegex(@"\b(brown|brownish|green|black|foul|dark|smelly|stinking) and (?=[a-z])")]
    private static partial Regex FluidAnd();

    [GeneratedRegex(@"\b[nd] ?(?:&|\+|and|/) ?v\b")]
    private static partial Regex SickAndRuns();

    [GeneratedRegex(@"(?<=\b(?:stomach|belly|tummy|abdo|abdomen|abdominal|bad|sever|severe) )(?:pane|pan)s?\b|\b(?:pian|payn|paine)s?\b")]
    private static partial Regex Pain();

    [GeneratedRegex(@"\b(?:(?:blood )?(?:sugars?|glucose)|bm|bg|bsl|bs)\b[ .:=]*(?:(?:of|was|is|at|down to|up to|to|only|level|reading|now|went|this|morning|today|tonight|before|bed) )*(?<number>[0-9]{1,3}(?:[.,][0-9]{1,2})?)(?:[ ,;]+(?:(?:then|now|later|and|to|went|up|down|was|is) )+(?<number>[0-9]{1,3}(?:[.,][0-9]{1,2})?)(?![.,]?[0-9]|[/%]))*(?: ?(?<unit>mmol|mg)(?: ?/ ?d?l|\b))?(?![.,]?[0-9]|[/%]| ?(?:kg|g|h|hours?|times|units?|bags?|ml|l|tablets?|sweets?|cubes?|lumps?|spoons?|teaspoons?|days?|nights?)\b)")]
    private static partial Regex NamedGlucose();

    [GeneratedRegex(@"\b(?:paracetamol|acetaminophen|ibuprofen|codeine|tramadol|morphine|tablets?|pills?|pain ?kill[a-z]*|antibiotics?|medicines?|medication|drugs?|injection)\b")]
    private static partial Regex Medicine();

    [GeneratedRegex(@"(?<!vitamin )\b(?:k|k ?\+|pot|potassium|kalium)" + Level + @"(?<number>[0-9]{1,2}[.,][0-9]{1,2})" + NoAmount + @"(?:[ ,;]+(?:(?:then|now|later|and|to|today|yesterday|repeat(?:ed)?|again|went|up|down|was|is) )+(?<number>[0-9]{1,2}[.,][0-9]{1,2})" + NoAmount + @")*|\b(?:potassium|kalium|k ?\+)" + Level + "(?<number>[0-9]{1,2})" + NoAmount + @"|(?<![0-9.,])(?<number>[0-9][.,][0-9]{1,2})(?: ?(?:mmol/l|mmol|meq/l))?(?: of)? (?:potassium|kalium)\b")]
    private static partial Regex NamedPotassium();

    [GeneratedRegex(@"\b(?:not|never|no longer|hardly|nearly|almost)(?: [a-z]+)? (?:pain ?free|free (?:of|from) pain)\b")]
    private static partial Regex NotFree();

    [GeneratedRegex(@"\b(?:(?:pain|fever|symptom)s? ?free|free (?:of|from) (?:pain|fever|symptoms)|afebrile|peritonitis (?:was |is )?(?:ruled out|excluded)|breathing (?:is )?(?:fine|ok|okay|good|normal|well)|clean and dry|dry and clean|painless)\b")]
    private static partial Regex FreeOf();

    [GeneratedRegex(Unless + @"\b(?:all )?(?:well|fine|ok|okay|good|better|gone|settled|healthy)(?: again)? (?:now|today|since(?: then)?(?! [a-z0-9]))\b|" + Unless + @"\b(?:now|today|since then) (?:all )?(?:well|fine|ok|okay|good|gone|settled)(?: again)?\b")]
    private static partial Regex WellNow();

    // "Never had peritonitis this bad" is one.
    [GeneratedRegex(@"\bnever had peritonitis(?= ?(?:$|[,.;\n]))")]
    private static partial Regex NeverHad();

    [GeneratedRegex(@"[,.;:/?!()+&\n]|\b(?:but|and|then|now)\b")]
    private static partial Regex Ends();

    [GeneratedRegex(@"\b(?:back|leg|knee|hip|foot|feet|hand|joint|tooth|throat|ear|neck|muscle)s? ?(?:pain|ache|hurt|sore)[a-z]*\b|\b(?:sore|aching|painful|tender) (?:back|leg|knee|hip|foot|feet|hand|joint|tooth|throat|ear|neck|muscle)s?\b")]
    private static partial Regex Elsewhere();

    [GeneratedRegex(@"\bcloud(?:y|ed) (?:weather|sk(?:y|ies)|and (?:windy|rainy|sunny) (?:weather|day|outside))\b|\b(?:weather|sky)(?: (?:is|was|very|rather|so|still))* cloudy\b")]
    private static partial Regex Weather();

    [GeneratedRegex(@"(?<=\b[0-9]{1,3})[·٫](?=[0-9]{1,2}\b)")]
    private static partial Regex OtherPoint();

    [GeneratedRegex(@"\b((?:(?:blood )?(?:sugars?|glucose)|meter|bm|bg|bsl|bs)) ?[:=]+ ?")]
    private static partial Regex Meter();

    [GeneratedRegex(@"\b(?:(?:not|no longer|(?:is|was|are|were|has|had)n'?t)(?: (?:been|really|at all))? breathing|(?:did|does|do|could|can)(?: not|n'?t) breathe?) (?:so |very |too |as )?(?:well|properly|easily|easy|right|normally|freely|comfortably|deeply|deep|through)\b")]
    private static partial Regex NotBreathingWell();

    [GeneratedRegex(@"\b(?:(?:not|never|no longer|(?:is|was|are|were|has|had)n'?t)(?: (?:even|really|been|actually|at all))? breathing(?! (?:well|fine|ok|okay|properly|easily|easy|right|very|too|so|normally|freely|hard|heavily|fast|badly|as|comfortably|deeply)\b)|no (?:signs? of )?(?:breathing|breaths?|life)(?! (?:problems?|troubles?|difficult(?:y|ies)|issues?|complaints?|pains?|noises?|exercises?|trouble|changes?|smell|odou?r)\b)|(?:stop(?:s|ped|ping)?|ceased) breathing(?! exercises?\b)|(?:did|does|do|would|will)(?: not|n'?t) breathe?(?! (?:well|properly|easily|right|through|deep(?:ly)?)\b)|apn(?:o?ea|o?eic))\b")]
    private static partial Regex NotBreathing();

    // Of the effluent, not of the blood: beside it stands the fluid, or polymorphs, or it is a cell count by that name.
    [GeneratedRegex(@"\b(?:(?:effluent|pd|pd fluid|fluid|dialysate|bag|drain)(?: fluid)? (?:wcc|wbc|wcs?|white (?:blood )?cells?(?: count)?|cell count|cells|leu[ck]ocytes?)|cell count)[ :=]*(?:(?:was|is|of|at|now|came|back|up|to) )*>?(?<number>[0-9]{2,6})(?![.,]?[0-9])|\b(?:wcc|wbc|cells?)[ :=]*(?<number>[0-9]{2,6})(?= ?(?:/ ?u?l ?)?,? ?[0-9]{1,3} ?% ?(?:polys?|polymorphs?|neutrophils?|pmns?|neuts?))")]
    private static partial Regex CellsOfFluid();

    [GeneratedRegex(@"\b(" + Fluid + @") ?[:=] ?(?!(?:no|none|nil|0)\b)(?=[a-z])")]
    private static partial Regex NamedFluid();

    [GeneratedRegex(@"\b(?:bp|blood pressure)[ :=]*(?:(?:was|is|of|at|now|today|sitting|standing) )*(?<s>[0-9]{2,3}) ?/ ?(?<d>[0-9]{2,3})(?![.,]?[0-9]|[/%])(?: ?mmhg\b)?")]
    private static partial Regex NamedPressure();

    [GeneratedRegex(@"\b(?:pulse|heart rate|hr)[ :=]*(?:(?:was|is|of|at|now|today) )*(?<number>[0-9]{2,3})(?![.,]?[0-9]|[/%-])(?: ?bpm\b)?")]
    private static partial Regex NamedPulse();

    [GeneratedRegex(@"\bpus\b")]
    private static partial Regex Pus();

    [GeneratedRegex(@"^\s*(?:nothing(?: to report| new)?|none|nil|no|0)\s*$")]
    private static partial Regex Nothing();

    [GeneratedRegex(@"\bno (?:changes?|complaints?|problems?|symptoms?|issues?)\b|" + Unless + @"\b(?:well|fine|ok|okay|good|normal|perfect(?:ly)?|excellent|great|lovely|nice|painless|clear|clean|as usual|as before|unchanged|stable)\b")]
    private static partial Regex Good();

    // Words that carry nothing by themselves.
    [GeneratedRegex(@"\b(?:a|an|the|my|his|her|she|he|i|it|is|was|were|has|had|have|feels?|feeling|felt|some|bit|little|slight|slightly|mild|very|of|in|at|on|with|or|since|all|today|tonight|yesterday|this|last|morning|evening|night|day|again|still|fluid|bags?|effluent|dialysate|looks?|looked|temp|temperature)\b")]
    private static partial Regex Filler();
}
