namespace Transport.Tests;

/// <summary>One hour of a pair; invented, with the numbers of worked vector C. Both test projects compile this file.</summary>
internal static class HourSheet
{
    public static string Of(string bag, string drained, string first, string last, string sodium) => $"""
        section,item,time,value,unit,remark
        patient,code,,T-02,,
        patient,sex,,male,,
        patient,age,,50,years,
        patient,height,,175,cm,
        patient,weight,,75,kg,
        patient,urine volume,,0,mL/day,
        test,date,,2025-03-11,,
        test,solution glucose,,{bag},mmol/L,
        test,solution sodium,,132,mmol/L,
        test,fill volume,,2000,mL,
        test,fill basis,,weighed,,
        test,dwell,,60,min,
        test,drained volume,,{drained},mL,
        test,creatinine method,,enzymatic,,
        dialysate,creatinine,0,60,µmol/L,
        dialysate,creatinine,60,260,µmol/L,
        dialysate,glucose,0,{first},mmol/L,
        dialysate,glucose,60,{last},mmol/L,
        dialysate,sodium,0,132,mmol/L,
        dialysate,sodium,60,{sodium},mmol/L,
        plasma,creatinine,60,800,µmol/L,
        plasma,urea,60,20,mmol/L,
        plasma,glucose,60,6,mmol/L,
        plasma,sodium,60,138,mmol/L,

        """;
}
