namespace Transport.Tests.Records;

/// <summary>What is understood of free words, and what is left for a reader. The words are invented; which way a doubt falls is this project's choice: towards the call.</summary>
public sealed class BookTextTests
{
    [Theory]
    [InlineData("bag looked cloudy", "CloudyFluid")]
    [InlineData("Fluid turbid", "CloudyFluid")]
    [InlineData("drain milky", "CloudyFluid")]
    [InlineData("not quite clear", "CloudyFluid")]
    [InlineData("peritonitis?", "CloudyFluid")]
    [InlineData("stomach sore, vomiting, temp 38.9", "AbdominalPain Vomiting")]
    [InlineData("tummy sore, vomiting, diarrhoea", "AbdominalPain Vomiting Diarrhoea")]
    [InlineData("belly hurts", "AbdominalPain")]
    [InlineData("tender abdomen", "AbdominalPain")]
    [InlineData("stomach-ache", "AbdominalPain")]
    [InlineData("stomachache", "AbdominalPain")]
    [InlineData("exit site red and pus", "ExitSite")]
    [InlineData("tunnel sore", "ExitSite")]
    [InlineData("pus", "ExitSite")]
    [InlineData("can’t breathe", "Breathless")]
    [InlineData("blood in the bag", "Blood")]
    [InlineData("found confused", "Confused")]
    [InlineData("very drowsy", "Confused")]
    [InlineData("sleepy and hard to wake", "Confused")]
    [InlineData("floppy, would not wake up", "Confused")]
    [InlineData("could not lie flat", "Breathless")]
    [InlineData("chest pain and sweating", "ChestPain Shaky")]
    [InlineData("pain in the chest, belly pain", "ChestPain AbdominalPain")]
    [InlineData("denies abdominal pain, vomiting or fever", "")]
    [InlineData("no pain, fever", "Fever")] // may go on to say what there is

    // A denial reaches the complaint directly after it, and no further.
    [InlineData("no change fever", "Fever")]
    [InlineData("not well fever", "Fever")]
    [InlineData("no appetite, fever", "Fever")]
    [InlineData("without pain but fever 38", "Fever")]
    [InlineData("denies pain, has chills", "Fever")]
    [InlineData("no pain fever", "Fever")]
    [InlineData("not just pain", "AbdominalPain")]
    [InlineData("not pain-free", "AbdominalPain")]
    [InlineData("no longer free of pain", "AbdominalPain")]
    [InlineData("pain: no change", "AbdominalPain")]
    [InlineData("no longer cloudy", "CloudyFluid")]
    [InlineData("exit site ok but belly pain", "AbdominalPain")]
    public void A_sign_is_found_in_words(string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    [Theory]
    [InlineData("no pain")]
    [InlineData("pain-free")]
    [InlineData("free of pain")]
    [InlineData("no pain or fever")]
    [InlineData("No abdominal pain, no fever.")]
    [InlineData("no signs of peritonitis")]
    [InlineData("peritonitis ruled out")]
    [InlineData("no evidence of peritonitis")]
    [InlineData("no suspicion of peritonitis")]
    [InlineData("no history of peritonitis")]
    [InlineData("never had peritonitis")]
    [InlineData("pain: none")]
    [InlineData("exit site clean and dry")]
    [InlineData("exit site ok, no redness or pus")]
    [InlineData("all well")]
    [InlineData("nothing to report")]
    [InlineData("fluid clear, temp 36.8")]
    [InlineData("breathing fine")]
    [InlineData("-")]
    [InlineData("")]
    public void Good_news_is_understood(string words)
    {
        var text = BookText.Of(words);
        Assert.Empty(text.Symptoms);
        Assert.False(text.HasUnread);
    }

    // No alarm, and no silence either.
    [Theory]
    [InlineData("backache from gardening")]
    [InlineData("sore throat")]
    [InlineData("unwell")]
    [InlineData("not well")]
    [InlineData("no urine")]
    [InlineData("new dressing")]
    [InlineData("exit site")]
    [InlineData("exit site not good")]
    [InlineData("Bauchschmerzen")]
    [InlineData("took painkillers")]
    [InlineData("blood pressure tablets changed")]
    [InlineData("painted the kitchen")]
    [InlineData("112")]
    public void What_is_not_understood_is_left_for_a_reader(string words)
    {
        var text = BookText.Of(words);
        Assert.Empty(text.Symptoms);
        Assert.True(text.HasUnread);
    }

    // Understood, and no alarm alone: beside icodextrin, a very high pressure or a low drain they are one.
    [Theory]
    [InlineData("headache", "HeadOrSight")]
    [InlineData("headache and blurred sight", "HeadOrSight")]
    [InlineData("can’t see well", "HeadOrSight")]
    [InlineData("sweaty and shaky", "Shaky")]
    [InlineData("very hungry, trembling", "Shaky")]
    [InlineData("clammy; heart racing", "Shaky")]
    [InlineData("nothing drained", "SlowDrain")]
    [InlineData("alarm all night; machine would not drain", "SlowDrain")]
    [InlineData("wouldn't drain", "SlowDrain")]
    [InlineData("slow drains", "SlowDrain")]
    public void What_is_an_alarm_beside_something_else_only_is_understood_and_left_for_a_reader(string words, string expected)
    {
        var text = BookText.Of(words);
        Assert.Equal(expected, string.Join(' ', text.Symptoms));
        Assert.True(text.HasUnread);
    }

    [Theory]
    [InlineData("wet dressing; clear fluid at the exit site", "Leak")]
    [InlineData("bag leaking", "Leak")]
    [InlineData("exit site wet and red", "Leak")]
    [InlineData("wet dressing, exit site red", "Leak ExitSite")]
    [InlineData("no leak", "")]
    [InlineData("no headache, no drain alarms", "")]
    [InlineData("not shaky", "")]
    [InlineData("no headache but sweaty", "Shaky")]
    public void A_leak_is_an_alarm_and_denials_hold_for_it_and_for_the_others(string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms.Order(Comparer<Symptom>.Create((one, other) => other.CompareTo(one)))));

    // Another person, the weather: no alarm, and not silent.
    [Theory]
    [InlineData("daughter has fever", "Fever")]
    [InlineData("my daughter has a bad fever and vomiting", "Fever Vomiting")]
    [InlineData("husband had pain in his back", "AbdominalPain")]
    [InlineData("wife is ill with diarrhoea", "Diarrhoea")]
    [InlineData("no pain, daughter has fever", "Fever")]
    [InlineData("painted the fence. cloudy weather", "")]
    [InlineData("sky very cloudy", "")]
    public void A_complaint_of_another_person_and_the_weather_are_none_of_the_patient_and_left_for_a_reader(string words, string ofAnother)
    {
        var text = BookText.Of(words);
        Assert.Empty(text.Symptoms);
        Assert.True(text.HasUnread);
        Assert.Equal(ofAnother, string.Join(' ', text.OfAnother.OrderBy(symptom => symptom.ToString(), StringComparer.Ordinal)));
    }

    // Whatever beside it may speak of the patient, or does not plainly give it to the other, is the patient's.
    [Theory]
    [InlineData("daughter has fever, me too", "Fever")]
    [InlineData("daughter has fever. I also", "Fever")]
    [InlineData("me and my daughter have fever", "Fever")]
    [InlineData("my husband and I have diarrhoea", "Diarrhoea")]
    [InlineData("wife has fever, same here", "Fever")]
    [InlineData("all of us: wife has fever", "Fever")]
    [InlineData("husband worried, my bag cloudy", "CloudyFluid")]
    [InlineData("daughter has fever, bag cloudy", "Fever CloudyFluid")]
    [InlineData("daughter has fever; belly pain", "Fever AbdominalPain")]
    [InlineData("mum has fever and is confused", "Fever Confused")]
    [InlineData("son had flu, now I ache all over and shiver", "AbdominalPain Fever")]
    [InlineData("wife has fever. now so have I", "Fever")]
    [InlineData("husband is breathless with worry: I was confused last night", "Breathless Confused")]
    [InlineData("daughter visited, fever", "Fever")]
    [InlineData("daughter noticed fever", "Fever")]
    [InlineData("husband felt swelling of belly", "Swelling")]
    [InlineData("husband says confused", "Confused")]
    [InlineData("wife had peritonitis", "CloudyFluid")]
    [InlineData("cloudy, weather fine", "CloudyFluid")]
    [InlineData("cloudy weather, bag cloudy too", "CloudyFluid")]
    [InlineData("cloudy weather and fluid the same", "CloudyFluid")]
    public void A_relative_or_the_weather_swallows_no_complaint_of_the_patient(string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // Written on 15 June 2026. Plainly past is what ended 56 days (twice the four weeks for which nights stay out) or more before, so up to 20 April; it has a finding of its own.
    [Theory]
    [InlineData("had peritonitis last year")]
    [InlineData("Had peritonitis last year, all well")]
    [InlineData("last year I had peritonitis")]
    [InlineData("peritonitis in March treated")]
    [InlineData("peritonitis treated in March 2026")]
    [InlineData("peritonitis in July")]
    [InlineData("peritonitis back in 2024")]
    [InlineData("peritonitis in 2019")]
    [InlineData("peritonitis back in March")]
    [InlineData("peritonitis in March 2026, backache from gardening")]
    [InlineData("history of peritonitis in 2019")]
    [InlineData("history of peritonitis, all well")]
    [InlineData("had peritonitis in March, fine since")]
    [InlineData("peritonitis in March, all well since then")]
    [InlineData("peritonitis in March, good now")]
    [InlineData("peritonitis two years ago")]
    [InlineData("peritonitis 3 months ago")]
    [InlineData("history of peritonitis")]
    public void A_peritonitis_of_long_ago_is_none_of_these_weeks_and_is_told_apart(string words)
    {
        var text = BookText.Of(words, new DateOnly(2026, 6, 15));
        Assert.Empty(text.Symptoms);
        Assert.True(text.HasPastPeritonitis);
    }

    // Whoever leaves nights out for longer has what is past later: 31 March is 76 days before 15 June.
    [Theory]
    [InlineData(28, true)]
    [InlineData(75, true)]
    [InlineData(76, false)]
    [InlineData(365, false)]
    public void What_is_within_the_days_left_out_is_not_long_ago(double daysLeftOut, bool isPast)
    {
        var text = BookText.Of("peritonitis in March", new DateOnly(2026, 6, 15), daysLeftOut);
        Assert.Equal(isPast, text.HasPastPeritonitis);
        Assert.Equal(isPast, text.Symptoms.IsEmpty);
    }

    // Of these weeks, or it cannot be told: a peritonitis.
    [Theory]
    [InlineData("had peritonitis")]
    [InlineData("previous peritonitis")]
    [InlineData("peritonitis treated")]
    [InlineData("peritonitis in May")]
    [InlineData("peritonitis in June")]
    [InlineData("peritonitis 2026")]
    [InlineData("peritonitis last month")]
    [InlineData("peritonitis last week")]
    [InlineData("peritonitis 2 weeks ago")]
    [InlineData("peritonitis a month ago")]
    [InlineData("peritonitis again as last year")]
    [InlineData("peritonitis like in 2019")]
    [InlineData("peritonitis 3 months ago not healed")]
    [InlineData("had peritonitis last year, peritonitis?")]
    [InlineData("had peritonitis last year and now cloudy")]
    [InlineData("history of peritonitis, bag turbid")]
    [InlineData("never had peritonitis before")]
    [InlineData("never had peritonitis this bad")]
    [InlineData("never had peritonitis as bad")]
    [InlineData("never had peritonitis such as today")]
    [InlineData("never had peritonitis, until today")]
    [InlineData("never had peritonitis?")]
    [InlineData("history of peritonitis last month")]
    [InlineData("history of peritonitis in June")]
    [InlineData("history of peritonitis (June)")]
    [InlineData("history of peritonitis, recently")]
    [InlineData("history of peritonitis treated 3 weeks ago")]

    // It comes back in another clause.
    [InlineData("Peritonitis in March, same again today")]
    [InlineData("peritonitis in 2023, again today")]
    [InlineData("had peritonitis last year. Same again")]
    [InlineData("peritonitis in March, back again")]
    [InlineData("peritonitis in March, not fine since")]
    [InlineData("peritonitis in March, fine since Tuesday")]
    [InlineData("peritonitis in March, fine until now")]
    [InlineData("peritonitis in March, and now again")]
    [InlineData("peritonitis in March, it came back")]
    [InlineData("peritonitis in March, is back")]
    [InlineData("peritonitis in March; seems to be returning")]
    [InlineData("peritonitis in March: return of it")]
    [InlineData("peritonitis in March, now")]
    [InlineData("peritonitis in March, recently too")]
    [InlineData("peritonitis in March, last month too")]

    // Four digits without "in" are no year, nor are a volume and a clock.
    [InlineData("peritonitis 2019")]
    [InlineData("peritonitis 2000 ml bag with antibiotic")]
    [InlineData("peritonitis in 2000 ml bag")]
    [InlineData("peritonitis in 2000ml bag")]
    [InlineData("peritonitis found 2015 called unit")]
    [InlineData("peritonitis found in 2015 h drain")]
    [InlineData("drained 1950 peritonitis")]
    [InlineData("may have peritonitis")]
    [InlineData("fear of peritonitis")]
    public void A_peritonitis_that_may_be_of_these_weeks_counts(string words) =>
        Assert.Equal(Symptom.CloudyFluid, Assert.Single(BookText.Of(words, new DateOnly(2026, 6, 15)).Symptoms));

    // Neither well since nor better now: whatever denies the end of a peritonitis leaves it one of now.
    [Theory]
    [InlineData("peritonitis in March, never well since")]
    [InlineData("peritonitis in March, isn't well now")]
    [InlineData("peritonitis in March, wasn't well today")]
    [InlineData("peritonitis in March, no better today")]
    [InlineData("peritonitis in March, hardly better now")]
    [InlineData("peritonitis in March, far from well now")]
    [InlineData("peritonitis in March. Don't feel good today")]
    [InlineData("had peritonitis last year, less well now")]
    public void A_peritonitis_that_is_not_said_to_be_over_is_one_of_now(string words) =>
        Assert.Contains(Symptom.CloudyFluid, BookText.Of(words, new DateOnly(2026, 6, 15)).Symptoms);

    [Theory]
    [InlineData("drainage cloudy outside")]
    [InlineData("very cloudy outside")]
    [InlineData("sunny weather cloudy drainage")]
    [InlineData("PD was cloudy and windy weather")]
    public void A_drainage_is_no_weather(string words) => Assert.Contains(Symptom.CloudyFluid, BookText.Of(words).Symptoms);

    [Fact]
    public void Without_a_date_nothing_is_long_ago() => Assert.Equal(Symptom.CloudyFluid, Assert.Single(BookText.Of("had peritonitis last year").Symptoms));

    // A denial that compares denies another one.
    [Theory]
    [InlineData("no peritonitis like this before", "CloudyFluid")]
    [InlineData("never pain like this", "AbdominalPain")]
    [InlineData("no pain this bad", "AbdominalPain")]
    [InlineData("no fever as high", "Fever")]
    [InlineData("no such pain, no fever before", "AbdominalPain Fever")]
    [InlineData("no pain this morning", "")]
    [InlineData("no fever today", "")]
    public void A_denial_that_compares_is_none(string words, string expected) => Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // Written on 15 June 2026: May ended 15 days before. Two weeks are over (choice).
    [Theory]
    [InlineData("fever last month, well now")]
    [InlineData("fever in March, all well since")]
    [InlineData("had pain 2 weeks ago")]
    [InlineData("last month I had cramps")]
    [InlineData("vomiting last year")]
    [InlineData("breathless 3 months ago, fine now")]
    public void A_complaint_that_ended_weeks_ago_is_over_and_told_apart(string words)
    {
        var text = BookText.Of(words, new DateOnly(2026, 6, 15));
        Assert.Empty(text.Symptoms);
        Assert.True(text.HasPastComplaint);
        Assert.NotEmpty(BookText.Of(words).Symptoms); // without a day on which it was written nothing is over
    }

    [Theory]
    [InlineData("fever last week", "Fever")]
    [InlineData("fever a week ago", "Fever")]
    [InlineData("pain 2 days ago", "AbdominalPain")]
    [InlineData("fever last month, again now", "Fever")]
    [InlineData("fever last month, not well now", "Fever")]
    [InlineData("fever last month, well since Tuesday", "Fever")]
    [InlineData("fever last month, same today", "Fever")]
    [InlineData("fever last month and still", "Fever")]
    [InlineData("fever last month, pain", "AbdominalPain")]
    [InlineData("fever since last month", "Fever")]
    [InlineData("fever in June", "Fever")]
    [InlineData("cloudy last month", "CloudyFluid")]
    [InlineData("had belly pain 3 weeks ago, worse", "AbdominalPain")]
    [InlineData("belly pain 3 weeks ago, worsening", "AbdominalPain")]
    [InlineData("belly pain 3 weeks ago, ongoing", "AbdominalPain")]
    [InlineData("belly pain 3 weeks ago, continues", "AbdominalPain")]
    public void A_complaint_that_may_be_of_these_days_counts(string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', BookText.Of(words, new DateOnly(2026, 6, 15)).Symptoms));

    // Fahrenheit by its size: 101.5 °F are (101.5 − 32)/1.8 = 38.61 °C.
    [Theory]
    [InlineData("temp 38.9, unwell", 38.9)]
    [InlineData("temp. 38,9", 38.9)]
    [InlineData("T: 39", 39.0)]
    [InlineData("fever 38.6 since yesterday, belly hurts", 38.6)]
    [InlineData("38.4 °C at noon, 39.1 °C at night", 39.1)]
    [InlineData("38.6", 38.6)]
    [InlineData("temperature was 101.5 F", 38.61)]
    [InlineData("temp 36.8", 36.8)]
    [InlineData("fever 3 days", null)]
    [InlineData("weight 38.5 kg", null)]
    [InlineData("drained 39.5 min", null)]
    [InlineData("38/76", null)]
    public void A_temperature_is_found_in_words(string words, double? celsius)
    {
        var found = BookText.Of(words).TemperatureCelsius;
        Assert.Equal(celsius is null, found is null);
        Assert.Equal(celsius ?? 0, found ?? 0, 0.01);
    }

    // For the emergency service, or as urgent as a cloudy bag.
    [Theory]
    [InlineData("speech slurred", "Stroke")]
    [InlineData("left arm weak since morning", "Stroke")]
    [InlineData("face drooping on one side", "Stroke")]
    [InlineData("can’t lift his right arm", "Stroke")]
    [InlineData("?TIA", "Stroke")]
    [InlineData("fit in the night", "Collapse")]
    [InlineData("had a fit, bit tongue", "Collapse")]
    [InlineData("SEIZURE AT 3 AM", "Collapse")]
    [InlineData("collapsed in the bathroom", "Collapse")]
    [InlineData("passed out for a minute", "Collapse")]
    [InlineData("bag brown", "StoolInFluid")]
    [InlineData("brown and smelly fluid", "StoolInFluid")]
    [InlineData("drain smells of stool", "StoolInFluid")]
    [InlineData("green fluid came out", "StoolInFluid")]
    [InlineData("black stools", "GutBleeding")]
    [InlineData("vomited blood", "GutBleeding")]
    [InlineData("coughed up fresh blood", "GutBleeding")]
    [InlineData("chest tight at rest", "ChestPain")]
    [InlineData("pain in left arm", "ChestPain")]
    [InlineData("meter says HI", "HighGlucose")]
    [InlineData("sugar 26 tonight", "HighGlucose")]
    [InlineData("BM 2.9", "LowGlucose")]
    [InlineData("sugar 58", "LowGlucose")] // in mmol/L no meter shows it: mg/dL
    public void What_cannot_wait_is_found_in_words(string words, string expected) => Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // As patients and carers write.
    [Theory]
    [InlineData("HUSBAND FOUND HIM ON FLOOR NOT ANSWERING", "Collapse")]
    [InlineData("pt fitted x1 approx 2 min, post ictal", "Collapse")]
    [InlineData("her words come out wrong", "Stroke")]
    [InlineData("drain bag looks like gravy", "StoolInFluid")]
    [InlineData("bag not see through", "CloudyFluid")]
    [InlineData("cant read newspaper thru bag", "CloudyFluid")]
    [InlineData("fluid a bit misty", "CloudyFluid")]
    [InlineData("crushing feeling in chest", "ChestPain")]
    [InlineData("tummy killing me", "AbdominalPain")]
    [InlineData("DOUBLED OVER WITH STOMACH CRAMPS", "AbdominalPain")]
    [InlineData("felt hot and shivvery", "Fever")]
    [InlineData("temp 37.8 and aching all over", "AbdominalPain")]
    [InlineData("BM 'HI' on meter x2", "HighGlucose")]
    [InlineData("sugar reading LO", "LowGlucose")]
    [InlineData("legs like balloons", "Swelling")]
    [InlineData("dropped the line on the carpet", "Leak")]
    [InlineData("line site red hot angry", "ExitSite")]
    [InlineData("went rigid then shook all over, wet himself", "Collapse")]
    [InlineData("OUT COLD ON THE BATHROOM FLOOR", "Collapse")]
    [InlineData("his smile is uneven today", "Stroke")]
    [InlineData("bag came out like rusty water", "StoolInFluid")]
    [InlineData("smells like toilet when I drain", "StoolInFluid")]
    [InlineData("bag looks a bit off, not its normal colour", "")] // two clauses: for a reader
    [InlineData("cldy bag x2", "CloudyFluid")]
    [InlineData("cannot see the writing on the bag through fluid", "CloudyFluid")]
    [InlineData("poo is pitch black and sticky", "GutBleeding")]
    [InlineData("throbbing round belly button", "AbdominalPain")]
    [InlineData("line snapped at the end", "Leak")]
    [InlineData("ankles up, cant get shoes on", "Swelling")]
    [InlineData("meter error HI HI", "HighGlucose")]
    [InlineData("dont know what day it is", "Confused")]
    [InlineData("eye and mouth sagging, dribbling", "Stroke")]
    [InlineData("seized twice, asleep after", "Collapse")]
    [InlineData("waste bag hazey", "CloudyFluid")]
    [InlineData("crampy belly since fill", "AbdominalPain")]
    [InlineData("chest felt like a tight band", "ChestPain")]
    [InlineData("exit pussy and red", "ExitSite")]
    [InlineData("grandson pulled the line", "Leak")]
    [InlineData("found cap on floor", "Leak")]
    [InlineData("baby limp and grey", "Confused")]
    public void What_cannot_wait_is_found_in_the_words_of_everybody(string words, string expected) => Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // The same words of something else, or denied.
    [Theory]
    [InlineData("fit and well")]
    [InlineData("keeping fit")]
    [InlineData("fit as a fiddle")]
    [InlineData("stroked the cat")]
    [InlineData("breast stroke at the pool")]
    [InlineData("brown bread for tea")]
    [InlineData("bag smells of bleach")]
    [InlineData("black coffee")]
    [InlineData("screen not responding")]
    [InlineData("no slurred speech")]
    [InlineData("no seizures")]
    [InlineData("no black stools")]
    [InlineData("fluid not brown")]
    [InlineData("sugar 2 spoons")]
    [InlineData("sugar was 110")]
    public void What_only_sounds_like_it_is_no_alarm(string words) => Assert.Empty(BookText.Of(words).Symptoms);

    [Theory]
    [InlineData("lab called K 6.9", 6.9)]
    [InlineData("potassium 2.3", 2.3)]
    [InlineData("K+ was 7,1 yesterday", 7.1)]
    [InlineData("potasium 6.4", 6.4)]
    [InlineData("lab called K 6.9.", 6.9)]
    [InlineData("K 6.8, Na 140", 6.8)]
    [InlineData("K 6·9", 6.9)]
    [InlineData("K·6.9", 6.9)]
    [InlineData("k was 4.2, now 7.1", 7.1)]
    [InlineData("potassium 7", 7.0)]
    [InlineData("potassium 12.5.2025", null)]
    [InlineData("vitamin K 5.0", null)]
    [InlineData("potassium tablets 2 daily", null)]
    [InlineData("walked 6.5 km", null)]
    [InlineData("K 2.0 bag", null)]
    public void A_potassium_is_read_where_it_is_named(string words, double? expected) =>
        Assert.Equal(expected, BookText.Of(words).Potassium.Select(value => (double?)value).LastOrDefault());

    // What cannot wait, with the harmless neighbour of each.
    [Theory]
    [InlineData("sugar 2.9.", "LowGlucose")]
    [InlineData("sugar 2.1, ate biscuits", "LowGlucose")]
    [InlineData("sugar 25, thirsty", "HighGlucose")]
    [InlineData("sugar 12.5.2025", "")]
    [InlineData("not breathing", "Collapse")]
    [InlineData("no breathing", "Collapse")]
    [InlineData("isn't breathing", "Collapse")]
    [InlineData("wasn't breathing", "Collapse")]
    [InlineData("no signs of breathing", "Collapse")]
    [InlineData("stopped breathing", "Collapse")]
    [InlineData("not breathing well", "Breathless")]
    [InlineData("no breathing problems", "")]
    [InlineData("not breathless", "")]
    [InlineData("sugar 41 mmol/l at lab", "HighGlucose")]
    [InlineData("sugar 38.5", "HighGlucose")]
    [InlineData("BS 55 mg/dl", "LowGlucose")]
    [InlineData("BM: HI", "HighGlucose")]
    [InlineData("BM = HI", "HighGlucose")]
    [InlineData("coffee in bag", "StoolInFluid")]
    [InlineData("bag: tea", "StoolInFluid")]
    [InlineData("effluent: coffee", "StoolInFluid")]
    [InlineData("coffee with friends", "")]
    [InlineData("3 am fit lasting 5 min", "Collapse")]
    [InlineData("at 4 am fit", "Collapse")]
    [InlineData("I am fit", "")]

    // A peritonitis by its cells (above 100 per µL: ISPD, from memory), its culture or its antibiotic.
    [InlineData("fluid cloudie", "CloudyFluid")]
    [InlineData("bag murkey", "CloudyFluid")]
    [InlineData("effluent WCC 1200 80% polys", "CloudyFluid")]
    [InlineData("PD fluid WBC 450", "CloudyFluid")]
    [InlineData("cell count 350", "CloudyFluid")]
    [InlineData("cell count 40", "")]
    [InlineData("wbc 8.2", "")]
    [InlineData("culture grew staph", "CloudyFluid")]
    [InlineData("positive culture", "CloudyFluid")]
    [InlineData("culture negative", "")]
    [InlineData("positive covid test", "")]
    [InlineData("started IP cefazolin", "CloudyFluid")]
    [InlineData("given antibiotics in the bag", "CloudyFluid")]
    [InlineData("given antibiotics for chest", "")]
    [InlineData("bag smelt foul", "StoolInFluid")]
    [InlineData("bile like colour", "StoolInFluid")]
    [InlineData("fluid foggy", "CloudyFluid")]
    [InlineData("feel foggy", "Confused")]
    [InlineData("foggy morning", "")]

    // What is listed after a site is of the site, and another place is not.
    [InlineData("exit site: crusty, green discharge, sore to touch", "ExitSite")]
    [InlineData("exit site red, belly sore", "ExitSite AbdominalPain")]
    [InlineData("exit site good, belly sore", "AbdominalPain")]
    [InlineData("ESI ++ green", "ExitSite")]
    [InlineData("lump along the tunnel, hot", "ExitSite")]
    [InlineData("no lump at exit site", "")]
    [InlineData("scrotum like a grapefruit", "Swelling")]
    [InlineData("found cap off", "Leak")]
    [InlineData("hole in transfer set, dripping", "Leak")]
    [InlineData("dog chewed the line", "Leak")]
    [InlineData("dog cut its paw", "")]
    [InlineData("belly tight as a drum", "AbdominalPain")]
    [InlineData("played the drum", "")]
    [InlineData("BM 7.2 and sweating", "Shaky")]
    [InlineData("no BM 7 pain", "AbdominalPain")]
    public void A_sign_is_told_from_its_neighbour(string words, string expected) => Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // Inside 100 to 139 and 60 to 89 mmHg, 3.5 to 5.5 and 4 to 10 mmol/L, 55 to 100 /min (choice).
    [Theory]
    [InlineData("potassium 4.6 at clinic", false)]
    [InlineData("potassium 5.6 at clinic", true)]
    [InlineData("BM 7.2", false)]
    [InlineData("BM 14.2", true)]
    [InlineData("BP 124/76 at GP", false)]
    [InlineData("BP 99/60 at GP", true)]
    [InlineData("BP 190/110", true)]
    [InlineData("pulse 72", false)]
    [InlineData("pulse 140", true)]
    [InlineData("bowels open x2, normal", false)]
    [InlineData("bowels open x9", true)]
    [InlineData("no cloudy bag this month", false)]
    [InlineData("pain free", false)]
    [InlineData("stomach fine", false)]
    [InlineData("stomach not fine", true)]
    [InlineData("exit site looks lovely", false)]
    public void A_usual_number_is_quiet_and_another_is_read(string words, bool isRead) => Assert.Equal(isRead, BookText.Of(words).HasUnread);

    // The column of the fluid: brown is an alarm, no longer brown is for a reader. Of glucose: low fat is a meal.
    [Theory]
    [InlineData("effluent", "brown", "StoolInFluid")]
    [InlineData("effluent", "no longer brown", "")]
    [InlineData("effluent", "no longer brown, green", "StoolInFluid")]
    [InlineData("effluent", "foggy", "CloudyFluid")]
    [InlineData("blood glucose", "low fat dinner, 12.0", "")]
    [InlineData("blood glucose", "3.1 then 3.0", "LowGlucose")]
    [InlineData("blood glucose", "low this morning", "LowGlucose")]
    public void Words_are_read_with_their_column(string column, string words, string expected)
    {
        var text = BookText.Of(new BookCell(column, words, true).Words);
        Assert.Equal(expected, string.Join(' ', text.Symptoms));
        Assert.True(expected.Length > 0 || text.HasUnread);
    }

    [Theory]
    [InlineData("lip swollen and a rash", true)]
    [InlineData("face swollen, wheezing", true)]
    [InlineData("ankles swollen, breathless", false)]
    [InlineData("face swollen", false)]
    public void A_swollen_face_with_rash_or_breath_may_be_an_allergy(string words, bool expected) => Assert.Equal(expected, BookText.IsOfAllergy(words));

    // A tea beside the fluid is its color, and for a reader; beside friends it is a tea.
    [Fact]
    public void Tea_beside_the_fluid_is_read()
    {
        Assert.True(BookText.Of("fluid tea").HasUnread);
        Assert.False(BookText.Of("tea with friends").HasUnread);
    }

    // 34 to 71 as a whole number without a unit: 41 mg/dL are 2.3 mmol/L, and 41 mmol/L are 740 mg/dL.
    [Fact]
    public void A_glucose_that_may_be_low_or_high_is_kept_as_both()
    {
        Assert.Equal(41, Assert.Single(BookText.Of("sugar 41").GlucoseInDoubt));
        Assert.Empty(BookText.Of("sugar 41 mmol/l").GlucoseInDoubt);
        Assert.Equal([3.1, 3.0], BookText.Of("BM 3.1 then 3.0").Glucose.ToArray());
    }

    // "Gone up" has not gone.
    [Fact]
    public void A_pain_that_has_gone_up_is_one_of_now()
    {
        Assert.Contains(Symptom.AbdominalPain, BookText.Of("belly pain has gone up", new DateOnly(2026, 6, 15)).Symptoms);
        Assert.Empty(BookText.Of("belly pain has gone", new DateOnly(2026, 6, 15)).Symptoms);
    }

    [Theory]
    [InlineData("fluid cloudly", "CloudyFluid")]
    [InlineData("bag clowdy", "CloudyFluid")]
    [InlineData("peritonitus", "CloudyFluid")]
    [InlineData("feaver", "Fever")]
    [InlineData("stomack pane", "AbdominalPain")]
    [InlineData("pian in tummy", "AbdominalPain")]
    [InlineData("diarea and vommiting", "Diarrhoea Vomiting")]
    [InlineData("brethless", "Breathless")]
    [InlineData("N&V", "Vomiting")]
    [InlineData("abdo px ++", "AbdominalPain")]
    [InlineData("SOBOE; PND", "Breathless")]

    // Words of their own, one letter away.
    [InlineData("fewer bags", "")]
    [InlineData("clouds in the sky", "")]
    [InlineData("leaving tomorrow", "")]
    [InlineData("spelling test at school", "")]
    [InlineData("machine bleeping", "")]
    [InlineData("bloods taken", "")]
    public void A_slip_of_the_pen_hides_no_danger_and_makes_none(string words, string expected) => Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms));

    // Each beside its dangerous neighbor, which no harmless word may silence.
    [Theory]
    [InlineData("flu jab; sore arm", "")]
    [InlineData("flu jab; belly sore", "AbdominalPain")]
    [InlineData("flu jab, sore arm, bag cloudy", "CloudyFluid")]
    [InlineData("flu jab; left arm weak", "Stroke")]
    [InlineData("sore arm", "")]
    [InlineData("sore arm and chest pain", "ChestPain")]
    [InlineData("bag leaked in the box", "")]
    [InlineData("bag leaked in the bed", "Leak")]
    [InlineData("bag leaked; fluid cloudy", "Leak CloudyFluid")]
    [InlineData("bag leaked in the box, next bag leaking too", "Leak")]
    [InlineData("cramp in hand", "")]
    [InlineData("cramp in legs", "Dry")]
    [InlineData("cramp in hand and belly cramps", "AbdominalPain")]
    [InlineData("swollen ankle from football", "")]
    [InlineData("swollen ankles", "Swelling")]
    [InlineData("swollen ankle from football, belly swollen", "Swelling")]
    [InlineData("swollen ankle from fluid", "Swelling")]
    [InlineData("birthday party, bag cloudy", "CloudyFluid")]
    [InlineData("slept well. fever in the morning", "Fever")]
    [InlineData("slept all day", "Confused")]
    [InlineData("slept sitting up", "Breathless")]
    [InlineData("forgot to weigh", "")]
    [InlineData("forgot mask", "Leak")]
    public void Innocent_words_do_not_alarm_and_silence_nothing(string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', BookText.Of(words).Symptoms.Order(Comparer<Symptom>.Create((one, other) => other.CompareTo(one)))));

    // Written on a day that is known, and gone of itself: told as over. Anything that lets it come back, move, or be hidden by a medicine leaves it an alarm.
    [Theory]
    [InlineData("belly ache gone", true)]
    [InlineData("belly ache has now gone", true)]
    [InlineData("headache gone", true)]
    [InlineData("belly ache gone, then worse again", false)]
    [InlineData("belly ache not gone", false)]
    [InlineData("belly ache nearly gone", false)]
    [InlineData("belly ache gone with paracetamol", false)]
    [InlineData("belly ache gone for an hour", false)]
    [InlineData("belly pain gone to the shoulder", false)]
    [InlineData("belly ache gone, came back at night", false)]
    [InlineData("belly ache gone, bag cloudy", false)]
    [InlineData("pain over my belly", false)]
    [InlineData("pain all over", false)]
    [InlineData("pain settled in the right side", false)]
    [InlineData("pain stopped me sleeping", false)]
    [InlineData("belly ache gone worse", false)]
    [InlineData("cloudiness gone", false)]
    [InlineData("fever gone", false)]
    [InlineData("chest pain gone", false)]
    public void A_pain_that_has_gone_is_over_only_where_nothing_calls_it_back(string words, bool isOver)
    {
        var text = BookText.Of(words, new DateOnly(2026, 6, 15));
        Assert.Equal(isOver, text.Symptoms.IsEmpty);
        Assert.NotEmpty(BookText.Of(words).Symptoms); // of a day that is not known nothing is over
    }

    // What everybody writes, and nothing beside it: nothing to judge.
    [Theory]
    [InlineData("slept well")]
    [InlineData("birthday party")]
    [InlineData("no blood")]
    [InlineData("exit site perfect")]
    [InlineData("walked 3 km")]
    [InlineData("grandson visited")]
    [InlineData("all good")]
    [InlineData("Forgot to weigh myself")]
    [InlineData("no pain, no blood, not cloudy")]
    [InlineData("changed dressing - dry and clean")]
    [InlineData("clinic visit; bloods taken; all good")]
    [InlineData("nurse visit: exit site perfect")]
    [InlineData("drained well; clear as water. no blood")]
    [InlineData("flu jab today; sore arm")]
    [InlineData("dinner with family and friends, happy")]
    [InlineData("EVERYTHING FINE")]
    [InlineData("quiet night, no alarms")]
    [InlineData("no swelling, no cramps, bp good")]
    [InlineData("walked the dog 30 min")]
    [InlineData("painless")]
    public void Everyday_words_are_nothing_to_judge(string words)
    {
        var text = BookText.Of(words);
        Assert.Empty(text.Symptoms);
        Assert.False(text.HasUnread);
    }

    // One word that is not of every day, and it is for a reader: too little, a fall, an appetite, another language.
    [Theory]
    [InlineData("did not sleep well")]
    [InlineData("hardly slept well")]
    [InlineData("party cancelled")]
    [InlineData("walked into hospital")]
    [InlineData("fell in the garden")]
    [InlineData("went to bed")]
    [InlineData("no dinner")]
    [InlineData("not hungry")]
    [InlineData("grandson died")]
    [InlineData("not perfect")]
    [InlineData("exit site not perfect")]
    [InlineData("changed dressing, crusts")]
    [InlineData("walked 3 km, odd feeling")]
    [InlineData("dog at the machine")]
    [InlineData("forgot to clamp")]
    [InlineData("forgot the night")]
    [InlineData("trüb")]
    [InlineData("dolor de barriga")]
    [InlineData("not cloudy yesterday, today it is")]
    [InlineData("very quiet today")]
    [InlineData("fluid was coffee")]
    [InlineData("insulin jab, arm swollen")]
    [InlineData("no pain until last night")]
    [InlineData("nosebleed would not stop")]
    [InlineData("brown")]
    public void One_word_that_is_not_of_every_day_is_for_a_reader(string words) => Assert.True(BookText.Of(words) is { HasUnread: true } or { Symptoms.Length: > 0 });
}
