namespace Transport.Analysis;

/// <summary>What a book's words about complaints can be read as.</summary>
public enum Symptom
{
    /// <summary>Pain in the belly.</summary>
    AbdominalPain,

    /// <summary>Fever or shivering.</summary>
    Fever,

    /// <summary>Short of breath.</summary>
    Breathless,

    /// <summary>Swelling of legs, belly, groin or face.</summary>
    Swelling,

    /// <summary>Cramps, dizziness, faintness: signs that too much fluid may have been taken.</summary>
    Dry,

    /// <summary>Pain on filling or draining.</summary>
    FlowPain,

    /// <summary>Constipation, which slows drains.</summary>
    Constipation,

    /// <summary>Cloudy fluid, or the word peritonitis.</summary>
    CloudyFluid,

    /// <summary>Blood, which counts as blood in the fluid where the words do not say another place.</summary>
    Blood,

    /// <summary>Vomiting or nausea, which can go with a peritonitis.</summary>
    Vomiting,

    /// <summary>Diarrhoea, which can go with a peritonitis.</summary>
    Diarrhoea,

    /// <summary>Redness, pus, swelling or pain where the catheter leaves the skin, or over its tunnel.</summary>
    ExitSite,

    /// <summary>Confusion or drowsiness, a person who is hard to wake or limp.</summary>
    Confused,

    /// <summary>Pain or pressure in the chest.</summary>
    ChestPain,

    /// <summary>A low blood glucose, by its name.</summary>
    LowGlucose,

    /// <summary>Sweating, shaking, hunger, a racing heart: can be those of a low blood glucose. No alarm by themselves.</summary>
    Shaky,

    /// <summary>Headache or disturbed sight, which with a very high pressure are one emergency. No alarm by themselves.</summary>
    HeadOrSight,

    /// <summary>A leak, a wet dressing, fluid at the exit site.</summary>
    Leak,

    /// <summary>Drains that were slow, stopped or gave an alarm. No alarm by themselves.</summary>
    SlowDrain,

    /// <summary>Brown or green fluid, or fluid that smells of stool, as where a bowel has opened into the belly.</summary>
    StoolInFluid,

    /// <summary>Slurred speech, a face that droops, an arm or leg that is weak: can be those of a stroke.</summary>
    Stroke,

    /// <summary>A fit, a collapse, a loss of consciousness.</summary>
    Collapse,

    /// <summary>Vomited blood, black or bloody stools: can be a bleeding of stomach or bowel.</summary>
    GutBleeding,

    /// <summary>A very high blood glucose by words, or a meter that shows nothing but that it is too high.</summary>
    HighGlucose,
}
