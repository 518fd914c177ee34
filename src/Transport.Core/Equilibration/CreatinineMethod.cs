namespace Transport;

/// <summary>Creatinine methods, as far as glucose matters to them.</summary>
public enum CreatinineMethod
{
    /// <summary>Not written down.</summary>
    NotStated,

    /// <summary>Enzymatic: not disturbed by glucose.</summary>
    Enzymatic,

    /// <summary>Alkaline picrate (Jaffe): reads glucose as creatinine.</summary>
    Jaffe,
}
