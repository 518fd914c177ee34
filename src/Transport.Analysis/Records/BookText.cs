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
internal sealed partial record BookText(
    ImmutableArray<Symptom> Symptoms, double? TemperatureCelsius, bool HasUnread, bool HasPastPeritonitis, bool HasPastComplaint, ImmutableArray<Symptom> OfAnother)
{
    private const string Belly = @"(?:(?:abdominal|abdomen|abdo|belly|tummy|stomach|pelvic)(?: is| was| feels| very| bit)* )?";
    private const string Place = @"(?:exit(?: site)?|tunnel|catheter(?: site)?|cuff)";
    private const string Inflamed = @"(?:redness|red|pus|discharge|discharging|oozing|ooze[sd]?|weeping|crust(?:s|ed|y)?|infect(?:ed|ion)|inflamed|inflammation|warm|hot|sore|tender|pain(?:s|ful)?|hurts?|swollen|swelling|smells?|smelly|bleeds?|bleeding|blood)";

    // Four digits are as soon a volume or a clock.
    private const string Years = @"(?:19|20)[0-9]{2}(?! ?(?:[0-9]|m?l\b|cc\b|litres?\b|liters?\b|g\b|h\b|hrs?\b|hours?\b|o'?clock\b))";
    private const string MonthNames = "january|february|march|april|may|june|july|august|september|october|november|december";
    private const string When =
        $@"(?:last year|(?:back )?in (?<year>{Years})|(?:back )?in (?<month>{MonthNames})(?: (?<year>{Years}))?|(?<count>a|an|[0-9]{{1,2}}|two|three|four|five|six|many|several|some) (?<unit>month|year)s? ago)";

    /// <summary>So many days ago is long ago: twice the four weeks for which nights stay out after a peritonitis unless a local protocol has more.</summary>
    public const int LongAgoDays = 56;

    // Of other complaints, which leave no night out, what ended two weeks ago is over (choice).
    private const int OverDays = 14;

    // "Never well since" is not well.
    private const string Unless = @"(?<!\b(?:not|no|never|nothing|hardly|barely|scarcely|less|far from|nearly|almost|neither|nor|[a-z]+n'?t|cannot)(?: [a-z]+){0,2} )";

    // In the order in which they are looked for: pain on filling is not first read as pain of the belly.
    private static readonly (Symptom Symptom, string Words)[] Vocabulary =
    [
        (Symptom.CloudyFluid, @"cloud(?:y|ed|ier|iness)|turbid|milky|hazy|murky|peritonitis"),
        (Symptom.Blood, @"bloody|blood stained|blood(?! (?:pressure|sugar|glucose|test|sample|count|work|result|taken|drawn)s?\b)|bleeding|pink"),
        (Symptom.FlowPain, @"pain (?:on|when|while|during|with) (?:fill|filling|drain|draining)|(?:drain|fill|inflow|outflow) pain"),
        (Symptom.SlowDrain, @"(?:would|will|does|did|could|can|is|was)(?: not|n'?t) (?:fully |properly |completely )?drain(?:ing)?|(?:won'?t|can'?t|cannot) drain|not drained|not draining|drain(?:s|age|ing)? (?:is |was |were |are |very |so )*(?:alarms?|slow(?:ly|er)?|poor(?:ly)?|incomplete|stopped|stuck|blocked|failed|problems?)|(?:slow|poor|incomplete|low|bad) drain(?:s|age|ing)?|(?:nothing|hardly|barely) drained|(?:nothing|hardly(?: anything)?|barely) (?:comes?|came|coming|runs?|ran) out|alarms?|(?:line|tube|catheter) (?:is |was )?(?:blocked|kinked)|(?:blocked|kinked) (?:line|tube|catheter)"),
        (Symptom.HeadOrSight, @"head ?aches?|migraine|head (?:hurts?|hurting|pounding|pains?|sore)|(?:sore|aching|painful|pounding) head|pain in (?:the |my |his |her )?head|blurr(?:ed|y|ing)(?: (?:vision|sight|eyes))?|(?:vision|sight|eyesight) (?:is |was )?(?:blurr(?:ed|y)|poor|worse|dim|going|gone|lost)|(?:double|loss of|lost|poor|dim|disturbed) (?:vision|sight)|(?:cannot|can'?t|could not|couldn'?t) see|seeing (?:double|spots|stars|flashes)"),
        (Symptom.Leak, @"leak(?:s|ed|ing|age|y)?|(?:line|tube|tubing|cap|connection|catheter|adapt[eo]r) (?:had |has |was |is |got )?(?:c[ao]me (?:apart|off|loose|undone)|fell off|fallen off|disconnected|open|loose|torn|cracked)|disconnected|hole in (?:the |my |his |her )?(?:catheter|line|tube|bag)|touched (?:the |my |his |her )?(?:tip|end|connector)|contaminated|(?:forgot|without|no) (?:the |my |a )?mask|cuff (?:is |was )?(?:out|visible)|(?:wet|soaked|damp) (?:dressing|bandage|gauze)|(?:dressing|bandage|gauze|clothes) (?:is |was |were |got |feels )?(?:wet|soaked|damp|soggy)|(?:fluid|water|wet|wetness|dialysate) (?:is |was )?(?:at|from|around|near|by|out of|coming (?:from|out of)) (?:the |my |his |her )?" + Place + "|" + Place + @" (?:is |was |looks |feels )?(?:wet|damp|moist)"),
        (Symptom.ChestPain, @"chest (?:pain(?:s|ful)?|tightness|pressure|hurts?)|(?:tight|painful) chest|(?:pain|pressure) in (?:the |my |his |her )?chest|angina"),
        (Symptom.AbdominalPain, Belly + @"(?:pain(?:s|ful|fully)?|hurts?|hurting|sore|soreness|tender|tenderness|discomfort|(?:stomach|belly|tummy)?ach(?:es?|ed|ing|y))"),
        (Symptom.Fever, @"fever(?:s|ish)?|febrile|shiver(?:s|ing|y)?|chills?|rigors?|(?:high|raised) temp(?:erature)?|temp(?:erature)? (?:is |was )?(?:high|up|raised)"),
        (Symptom.Vomiting, @"vomit(?:s|ed|ing)?|threw up|throwing up|being sick|nausea|nauseous"),
        (Symptom.Diarrhoea, @"diarrh?o?ea|loose stools?"),
        (Symptom.Breathless, @"breathless(?:ness)?|(?:short|shortness|out) of breath|sob|dyspno?ea|breathing|(?:cannot|can'?t|hard to|difficult to) breathe|(?:cannot|can'?t|could not|couldn'?t|unable to) (?:lie|lay|sleep) (?:flat|down)|orthopno?ea|puffed|gasping"),
        (Symptom.Swelling, @"swelling|swell(?:s|ed)?|swollen|o?edema|puffy"),
        (Symptom.Dry, @"cramps?|cramping|dizz(?:y|iness)|faint(?:s|ed|ing|ness)?|light ?headed(?:ness)?|collapsed?|passed out|black(?:ed)? ?out"),
        (Symptom.Confused, @"confus(?:ed|ion)|muddled|foggy|drows(?:y|iness|ily)|deliri(?:ous|um)|disorient(?:ed|ation)|unresponsive|unconscious|(?:very|so|too) sleepy|(?:hard|difficult) to (?:wake|rouse)|(?:cannot|can'?t|could not|couldn'?t|won'?t|would not) (?:be )?(?:wake|woken|roused?)(?: up)?|floppy|listless|letharg(?:ic|y)"),
        (Symptom.Constipation, @"constipat(?:ed|ion)"),
        (Symptom.LowGlucose, @"hypos?|(?<=^\s*)lo(?=\s*$)|hypoglyca?emi[ac]|low (?:blood )?(?:sugar|glucose)|(?:blood )?(?:sugar|glucose) (?:is |was |feels |felt |went |too |very )*low"),
        (Symptom.Shaky, @"sweat(?:s|y|ing|ed)?|shak(?:y|ing|es|iness)|shook|trembl(?:y|ing|es?|ed)|tremors?|clammy|jittery|hungry|hunger|ravenous|palpitations?|(?:heart|pulse) (?:is |was )?(?:racing|pounding)|(?:racing|pounding) heart|tingling (?:lips|mouth|tongue)"),
    ];

    // Understood, and an alarm beside something else only: alone they are left for a reader.
    private static readonly Symptom[] ForReader = [Symptom.Shaky, Symptom.HeadOrSight, Symptom.SlowDrain];

    private static readonly string Known = $"(?:{string.Join('|', Vocabulary.Select(known => known.Words))}|{Inflamed})";

    private static readonly (Symptom Symptom, Regex Words)[] Patterns = [.. Vocabulary.Select(known => (known.Symptom, Made($@"\b(?:{known.Words})\b")))];

    private static readonly Regex Denied = Made(
        $@"\b(?:no|not|without|denies|denied|never|nil|doesn'?t|didn'?t|hasn'?t|isn'?t|wasn'?t)(?: any| more| further| (?:signs?|evidence|suspicion|history) of)* {Known}(?: (?:or|nor) {Known})*\b(?! (?:like|such|until|(?:this|that|so|as) (?:bad|badly|strong|severe|much|long|often|cloudy|high))\b| before ?$)");

    private static readonly string Others = $"(?:{string.Join('|', Vocabulary.Where(known => known.Symptom != Symptom.CloudyFluid).Select(known => known.Words))})";
    private static readonly string OtherWhen = $@"(?:{When}|last month|(?<count>a|an|[0-9]{{1,2}}|two|three|four|five|six) (?<unit>week)s? ago)";

    private static readonly Regex PastComplaint = Made(
        $@"\b{Others}(?: (?:was|were|treated|cured|healed|gone|over|settled))* {OtherWhen}\b|\b{OtherWhen},?(?: (?:i|he|she|had|have|was|for|an?|some))* {Others}\b");

    // A complaint of somebody else, unless anything beside it may speak of the patient too, as any other complaint may.
    private static readonly Regex OthersComplaint = Made(
        $@"\b(?:(?:my|his|her|our|their|the) )?(?:daughter|son|husband|wife|mother|father|mum|mom|dad|grand(?:son|daughter|child|children|mother|father|ma|pa)|sister|brother|child|children|kids?|baby|neighbou?rs?|friends?|uncle|aunt|cousin|partner|colleagues?|dog|cat)(?: (?:has|had|have|got|is|was|are|were|been|ill with|sick with|down with|in bed with|home with|an?|some|bad|very|high))+ {Others}(?: (?:and|or) {Others})*(?: in (?:his|her|their) [a-z]+)?\b");

    private static readonly Regex MayBePatient = Made(
        @"\b(?:i|i'm|i've|me|my|mine|myself|we|us|our|both|too|also|as well|same|likewise|all|every(?:one|body)|patient|bags?|fluid|drain(?:s|ed|age|ing)?|output|pd|exchanges?|dwells?|effluent|dialysate|like)\b");

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

    private static readonly BookText Blank = new([], null, false, false, false, []);

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

        var text = SheetWords.Normal(OtherPoint().Replace(words.Replace('’', '\''), "."));
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

        // A "no" that is part of a complaint comes before those that deny one.
        text = NotClearHead().Replace(text, "confused");
        text = NotFree().Replace(NotClear().Replace(NoStool().Replace(text, "constipated"), "cloudy"), "pain");
        text = DeniedList.Replace(text, "well");
        text = AnsweredNo.Replace(FreeOf().Replace(text, "well"), "well");
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

        var mayBeNow = AsNow.IsMatch(WellNow().Replace(Elsewhere().Replace(text, ""), "well"));
        var isTimed = Timed.IsMatch(text);
        if (!mayBeNow)
        {
            text = NeverHad().Replace(text, "well");
        }

        var found = ImmutableArray.CreateBuilder<Symptom>();
        var (hasUnread, hasPast) = (false, false);
        foreach (var clause in Ends().Split(text))
        {
            var rest = Elsewhere().Replace(Denied.Replace(clause, "well"), "elsewhere");
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

        return new([.. found.Distinct()], temperature, hasUnread, hasPast, hasOver, ofAnother);
    }

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
        var rest = Good().IsMatch(clause) ? Site.Replace(Good().Replace(clause, ""), "") : clause;
        return Filler().Replace(rest, "").Any(char.IsLetterOrDigit);
    }

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

    [GeneratedRegex(@"\bno (?:stools?|bowel movements?)\b")]
    private static partial Regex NoStool();

    [GeneratedRegex(@"\b(?:not|less|no longer|isn'?t|wasn'?t|never)(?: [a-z]+)? clear\b")]
    private static partial Regex NotClear();

    [GeneratedRegex(@"\b(?:not|less|no longer|isn'?t|wasn'?t|never)(?: [a-z]+)? clear in (?:the|my|his|her) head\b")]
    private static partial Regex NotClearHead();

    [GeneratedRegex(@"\b(?:not|never|no longer|hardly|nearly|almost)(?: [a-z]+)? (?:pain ?free|free (?:of|from) pain)\b")]
    private static partial Regex NotFree();

    [GeneratedRegex(@"\b(?:(?:pain|fever|symptom)s? ?free|free (?:of|from) (?:pain|fever|symptoms)|afebrile|peritonitis (?:was |is )?(?:ruled out|excluded)|breathing (?:is )?(?:fine|ok|okay|good|normal|well)|clean and dry)\b")]
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

    [GeneratedRegex(@"(?<=\b3[0-9]|\b4[0-2])[·٫](?=[0-9]\b)")]
    private static partial Regex OtherPoint();

    [GeneratedRegex(@"\bpus\b")]
    private static partial Regex Pus();

    [GeneratedRegex(@"^\s*(?:nothing(?: to report| new)?|none|nil|no|0)\s*$")]
    private static partial Regex Nothing();

    [GeneratedRegex(@"\bno (?:changes?|complaints?|problems?|symptoms?|issues?)\b|" + Unless + @"\b(?:well|fine|ok|okay|good|normal|clear|clean|as usual|as before|unchanged|stable)\b")]
    private static partial Regex Good();

    // Words that carry nothing by themselves.
    [GeneratedRegex(@"\b(?:a|an|the|my|his|her|she|he|i|it|is|was|were|has|had|have|feels?|feeling|felt|some|bit|little|slight|slightly|mild|very|of|in|at|on|with|or|since|all|today|tonight|yesterday|this|last|morning|evening|night|day|again|still|fluid|bags?|effluent|dialysate|looks?|looked|temp|temperature)\b")]
    private static partial Regex Filler();
}
