using System.Text.RegularExpressions;
using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

/// <summary>
/// Each check with a sheet that triggers it and one that just does not. A sheet is Sheets.Clean with one row replaced;
/// further rows may stand behind it with '|' between.
/// </summary>
public class SampleSheetCheckTests
{
    private const string Jaffe = "test,creatinine method,,Jaffe,,|test,glucose factor,,";

    // code, row that is replaced, what triggers it, what just does not
    public static TheoryData<string, string, string, string> Checks => new()
    {
        // The file
        { "missing-column", "section,", "section,item,time,value,remark", "section,item,time,value,unit" },
        { "duplicate-column", "section,", "section,item,time,value,unit,units", "section,item,time,value,unit,remark" },
        { "unknown-column", "section,", "section,item,time,value,unit,ward", "section,item,time,value,unit,note" },
        { "extra-fields", "plasma,urea", "plasma,urea,120,20,5,mmol/L,", "plasma,urea,120,\"20,5\",mmol/L,\"a, b\"" },
        { "extra-fields", "plasma,urea", "plasma,urea,120,20,mmol/L,a, b", "plasma,urea,120,20,mmol/L,a," },
        { "malformed-quotes", "plasma,urea", "plasma,urea,120,20,mmol/L,\"open", "plasma,urea,120,20,mmol/L,\"a \"\"b\"\"\"" },

        // Words and numbers
        { "unknown-section", "plasma,urea", "sweat,urea,120,20,mmol/L,", "blood,urea,120,20,mmol/L," },
        { "unknown-section", "plasma,glucose", ",glucose,120,6,mmol/L,", "p,glucose,120,6,mmol/L," },
        { "unknown-section", "plasma,glucose", "test,glucose,120,6,mmol/L,", "plasma,glucose,120,6,mmol/L,|# test" },
        { "unknown-item", "patient,height", "patient,heigth,,165,cm,", "patient,body height,,165,cm," },
        { "unknown-item", "dialysate,urea,240", "dialysate,urate,240,18,mmol/L,", "dialysate,urate,240,,mmol/L," },
        { "unknown-word", "test,fill basis", "test,fill basis,,guessed,,", "test,fill basis,,WEIGHED,," },
        { "missing-unit", "patient,height", "patient,height,,165,,", "patient,age,,50,,|patient,height,,165,cm," },
        { "unknown-unit", "plasma,urea", "plasma,urea,120,20,mmol,", "plasma,urea,120,20,MMOL/l," },
        { "unknown-unit", "test,fill volume", "test,fill volume,,2.04,gallon,", "test,fill volume,,2.04,L," },
        { "percentage-without-convention", "test,solution glucose", "test,solution glucose,,3.86,%,", "test,solution glucose,,3.86,% anhydrous," },
        { "not-a-number", "plasma,urea", "plasma,urea,120,<20,mmol/L,", "plasma,urea,120,2E1,mmol/L," },
        { "mixed-decimal-marks", "plasma,urea", "plasma,urea,120,\"20,5\",mmol/L,", "plasma,urea,120,\"20\",mmol/L," },
        { "negative-value", "dialysate,creatinine,0", "dialysate,creatinine,0,-1,µmol/L,", "dialysate,creatinine,0,0,µmol/L," },
        { "impossible-value", "patient,age", "patient,age,,111,years,", "patient,age,,110,years," },
        { "impossible-value", "patient,height", "patient,height,,231,cm,", "patient,height,,230,cm," },
        { "impossible-value", "patient,weight", "patient,weight,,301,kg,", "patient,weight,,300,kg," },
        { "impossible-value", "patient,urine", "patient,urine volume,,8001,mL/day,", "patient,urine volume,,8000,mL/day," },
        { "impossible-value", "plasma,sodium", "plasma,sodium,120,171,mmol/L,", "plasma,sodium,120,170,mmol/L," },
        { "impossible-value", "plasma,sodium", "plasma,sodium,120,104,mmol/L,", "plasma,sodium,120,105,mmol/L," },
        { "impossible-value", "dialysate,sodium,240", "dialysate,sodium,240,166,mmol/L,", "dialysate,sodium,240,165,mmol/L," },
        { "impossible-value", "plasma,urea", "plasma,urea,120,0.090,g/L,", "plasma,urea,120,0.091,g/L," },
        { "impossible-value", "plasma,creatinine", "plasma,creatinine,120,99,µmol/L,", "plasma,creatinine,120,100,µmol/L," },
        { "impossible-value", "test,drained", "test,drained volume,,6501,mL,", "test,drained volume,,6500,mL," },
        { "impossible-value", "test,dwell", "test,dwell,,1081,min,", "test,dwell,,1080,min," },
        { "impossible-value", "test,dwell", "test,end of inflow,,08:00,,|test,start of drain,,07:00,,", "test,end of inflow,,08:00,,|test,start of drain,,12:00,," },
        { "impossible-value", "test,dwell", "test,dwell,,0:14,,", "test,dwell,,4:00,," },

        // Units: 9.8 mg/dL is 866 µmol/L, 6 mmol/L of glucose is 108 mg/dL
        { "unit-swap", "plasma,creatinine", "plasma,creatinine,120,866,mg/dL,", "plasma,creatinine,120,866,µmol/L," },
        { "unit-swap", "plasma,creatinine", "plasma,creatinine,120,9.8,µmol/L,", "plasma,creatinine,120,9.8,mg/dL," },
        { "unit-swap", "dialysate,creatinine,240", "dialysate,creatinine,240,6.33,µmol/L,", "dialysate,creatinine,240,6.33,mg/dL," },
        { "unit-swap", "test,solution glucose", "test,solution glucose,,214.3,mg/dL,", "test,solution glucose,,3860,mg/dL," },
        { "unit-swap", "test,solution glucose", "test,solution glucose,,3860,mmol/L,", "test,solution glucose,,38.6,g/L," },
        { "unit-swap", "dialysate,glucose,0", "dialysate,glucose,0,185,mg/dL,", "dialysate,glucose,0,3333,mg/dL," },
        { "unit-swap", "plasma,glucose", "plasma,glucose,120,108,mmol/L,", "plasma,glucose,120,108,mg/dL," },
        { "unit-swap", "plasma,urea", "plasma,urea,120,120,mmol/L,", "plasma,urea,120,120,mg/dL," },
        { "unit-swap", "patient,height", "patient,height,,1.65,cm,", "patient,height,,1.65,m," },
        { "unit-swap", "patient,renal urea", "patient,renal urea clearance,,41,mL/min,", "patient,renal urea clearance,,41,L/week," },
        { "unit-swap", "test,dwell", "test,dwell,,4,min,", "test,dwell,,4,h," },
        { "unit-swap", "test,fill volume", "test,fill volume,,2.04,mL,", "test,fill volume,,2.04,L," },

        // Dates, times, doubles
        { "not-a-date", "test,date", "test,date,,2025-13-11,,", "test,date,,11 Mar 2025,," },
        { "ambiguous-date", "test,date", "test,date,,03/11/2025,,", "test,date,,03/13/2025,," },
        { "ambiguous-date", "test,date", "test,date,,3-11-2025,,", "test,date,,11/11/2025,," },
        { "not-a-time", "plasma,urea", "plasma,urea,noon,20,mmol/L,", "plasma,urea,2:00,20,mmol/L," },
        { "not-a-time", "test,dwell", "test,dwell,,240,min,|test,end of inflow,,25:00,,", "test,dwell,,240,min,|test,end of inflow,,00:00,," },
        { "missing-time", "dialysate,urea,120", "dialysate,urea,,15,mmol/L,", "plasma,creatinine,,800,µmol/L,|dialysate,urea,120,15,mmol/L," },
        { "time-of-fact", "patient,height", "patient,height,0,165,cm,", "patient,height,-,165,cm," },
        { "time-of-fact", "test,fill volume", "test,fill volume,2040,,mL,", "test,fill volume,,2040,mL," }, // slipped: the value is blank, so the row is otherwise read over
        { "duplicate-fact", "patient,age", "patient,age,,50,years,|patient,age,,51,years,", "patient,age,,50,years,|patient,age,,,years," },
        { "duplicate-measurement", "plasma,urea", "plasma,urea,120,20,mmol/L,|plasma,BUN,120,56,mg/dL,", "plasma,urea,120,20,mmol/L,|plasma,urea,0,21,mmol/L," },

        // Missing
        { "missing-patient-fact", "patient,sex", "", "patient,sex,,f,," },
        { "missing-patient-fact", "patient,age", "patient,age,,,years,", "patient,age,,50,years," },
        { "missing-patient-fact", "patient,height", "", "patient,height,,?,cm," },
        { "missing-patient-fact", "patient,weight", "", "patient,weight,,65,kg," },
        { "missing-strength", "test,solution glucose", "", "test,strength,,214.3,mmol/L," },
        { "missing-fill", "test,fill volume", "", "test,fill,,2040,mL," },
        { "missing-dwell", "test,dwell", "test,end of inflow,,08:00,,", "test,end of inflow,,08:00,,|test,start of drain,,12:00,," },
        { "missing-plasma-creatinine", "plasma,creatinine", "", "serum,creatinine,,800,µmol/L," },
        { "missing-final-sample", "dialysate,creatinine,240", "dialysate,creatinine,224,560,µmol/L,", "dialysate,creatinine,225,560,µmol/L," },
        { "missing-initial-glucose", "dialysate,glucose,0", "dialysate,glucose,6,185,mmol/L,", "dialysate,glucose,0,185,mmol/L," },
        { "missing-drained-volume", "test,drained", "", "test,drain,,2640,mL," },
        { "missing-fill-basis", "test,fill basis", "", "test,basis,,weighed,," },
        { "missing-code", "patient,code", "", "patient,id,,T-01,," },
        { "missing-date", "test,date", "", "test,date of test,,2025-03-11,," },
        { "plasma-not-measured", "plasma,sodium", "", "plasma,Na,120,139,mmol/L," },
        { "plasma-not-measured", "plasma,urea", "", "plasma,BUN,120,56,mg/dL," },
        { "plasma-not-measured", "plasma,glucose", "plasma,glucose,120,-,mmol/L,", "plasma,glucose,120,6,mmol/L," },
        { "solution-sodium-assumed", "test,solution sodium", "", "test,sodium,,132,mmol/L," },
        { "residual-clearance-missing", "patient,renal urea", "", "patient,kru,,0,mL/min," },

        // Times
        { "times-out-of-order", "dialysate,urea,0", "dialysate,urea,150,16,mmol/L,", "dialysate,urea,60,9,mmol/L," },
        { "times-nearly-equal", "dialysate,urea,120", "dialysate,urea,124,15,mmol/L,", "dialysate,urea,125,15,mmol/L," },
        { "time-before-dwell", "dialysate,urea,120", "dialysate,urea,-1,15,mmol/L,", "dialysate,urea,8,5,mmol/L," },
        { "time-beyond-dwell", "dialysate,urea,240", "dialysate,urea,256,18,mmol/L,", "dialysate,urea,255,18,mmol/L," },
        { "plasma-time-far", "plasma,urea", "plasma,urea,301,20,mmol/L,", "plasma,urea,300,20,mmol/L," },
        { "dwell-disagrees", "test,dwell", "test,dwell,,240,min,|test,end of inflow,,08:00,,|test,start of drain,,12:06,,", "test,dwell,,240,min,|test,end of inflow,,08:00,,|test,start of drain,,12:05,," },

        // Solution and volumes
        { "not-a-glucose-test", "test,osmotic agent", "test,osmotic agent,,icodextrin,,", "test,osmotic agent,,dextrose,," },
        { "solution-glucose-unusual", "test,solution glucose", "test,solution glucose,,207.8,mmol/L,", "test,solution glucose,,207.9,mmol/L," },
        { "glucose-label-convention", "test,solution glucose", "test,solution glucose,,42.5,g/L,", "test,solution glucose,,42.5,g/L anhydrous," },
        { "glucose-label-convention", "test,solution glucose", "test,solution glucose,,4250,mg/dL,", "test,solution glucose,,42.5,g/L monohydrate," },
        // 108 mmol/L is 0.86 of a 126 mmol/L bag; 140 is 0.65 of the bag written and of no other about 0.86
        { "wrong-strength", "dialysate,glucose,0", "dialysate,glucose,0,108,mmol/L,", "dialysate,glucose,0,140,mmol/L," },
        // 0.75 x 214.3 = 160.7; 1.00 x 214.3
        { "initial-glucose-unexpected", "dialysate,glucose,0", "dialysate,glucose,0,160,mmol/L,", "dialysate,glucose,0,161,mmol/L," },
        { "initial-glucose-unexpected", "dialysate,glucose,0", "dialysate,glucose,0,215,mmol/L,", "dialysate,glucose,0,214,mmol/L," },
        { "solution-sodium-unusual", "test,solution sodium", "test,solution sodium,,124.9,mmol/L,", "test,solution sodium,,125,mmol/L," },
        { "solution-sodium-unusual", "test,solution sodium", "test,solution sodium,,134.1,mmol/L,", "test,solution sodium,,134,mmol/L," },
        { "fill-not-comparable", "test,fill volume", "test,fill volume,,2101,mL,", "test,fill volume,,2100,mL," },
        { "fill-not-comparable", "test,fill volume", "test,fill volume,,1899,mL,", "test,fill volume,,1900,mL," },
        { "dwell-not-comparable", "test,dwell", "test,dwell,,251,min,", "test,dwell,,250,min," },
        { "dwell-not-comparable", "test,dwell", "test,dwell,,229,min,", "test,dwell,,230,min," },
        { "child", "patient,age", "patient,age,,17.9,years,", "patient,age,,18,years," },
        { "label-without-overfill", "test,fill basis", "test,fill basis,,label,,", "test,fill basis,,label,,|test,overfill,,0,mL," },
        { "ultrafiltration-implausible", "test,drained", "test,drained volume,,3741,mL,", "test,drained volume,,3740,mL," },
        { "ultrafiltration-implausible", "test,drained", "test,drained volume,,1039,mL,", "test,drained volume,,1040,mL," },

        // The creatinine assay. With factor 0.001 mg/dL per mg/dL, 185 mmol/L of glucose reads as 0.001 x 3333 mg/dL = 294.6 µmol/L;
        // its spread at about 290 µmol/L is 3 %, 8.7, below the floor of 9 µmol/L.
        { "assay-not-stated", "test,creatinine method", "", "test,assay,,enzymatic,," },
        { "jaffe-without-factor", "test,creatinine method", "test,creatinine method,,Jaffe,,", Jaffe + "0,mg/mg," },
        { "initial-ratio-high", "dialysate,creatinine,0|test,creatinine method", "dialysate,creatinine,0,97,µmol/L,|test,creatinine method,,Jaffe,,", "dialysate,creatinine,0,96,µmol/L,|test,creatinine method,,Jaffe,," },
        { "initial-ratio-high", "dialysate,creatinine,0|test,creatinine method", "dialysate,creatinine,0,97,µmol/L,", "dialysate,creatinine,0,97,µmol/L,|test,creatinine method,,enzymatic,," },
        { "factor-contradicts-method", "test,creatinine method", "test,creatinine method,,enzymatic,,|test,glucose factor,,0.0005,mg/mg,", "test,creatinine method,,enzymatic,,|test,glucose factor,,0,mg/mg," },
        { "missing-glucose-for-correction", "dialysate,glucose,120|test,creatinine method", Jaffe + "0.0001,mg/mg,", "dialysate,glucose,120,90,mmol/L,|" + Jaffe + "0.0001,mg/mg," },
        { "corrected-creatinine-negative", "dialysate,creatinine,0|test,creatinine method", "dialysate,creatinine,0,285,µmol/L,|" + Jaffe + "0.001,mg/mg,", "dialysate,creatinine,0,286,µmol/L,|" + Jaffe + "0.001,mg/mg," },
        { "corrected-creatinine-below-zero", "dialysate,creatinine,0|test,creatinine method", "dialysate,creatinine,0,294,µmol/L,|" + Jaffe + "0.001,mg/mg,", "dialysate,creatinine,0,295,µmol/L,|" + Jaffe + "0.001,mg/mg," },

        // Curves. Plasma is 800 µmol/L of creatinine and 20 mmol/L of urea.
        { "ratio-above-one", "dialysate,creatinine,240", "dialysate,creatinine,240,801,µmol/L,", "dialysate,creatinine,240,800,µmol/L," },
        { "ratio-above-one", "dialysate,urea,240", "dialysate,urea,240,20.1,mmol/L,", "dialysate,urea,240,20,mmol/L," },
        { "ratio-impossible", "dialysate,creatinine,240", "dialysate,creatinine,240,881,µmol/L,", "dialysate,creatinine,240,880,µmol/L," },
        { "ratio-impossible", "dialysate,urea,240", "dialysate,urea,240,22.1,mmol/L,", "dialysate,urea,240,22,mmol/L," },
        { "ratio-not-rising", "dialysate,creatinine,240", "dialysate,creatinine,240,400,µmol/L,", "dialysate,creatinine,240,401,µmol/L," },
        // From 400 by 3 sqrt(12² + (0.03 x 352)²) = 48.0 to 352.0, solved by hand
        { "ratio-falling", "dialysate,creatinine,240", "dialysate,creatinine,240,351,µmol/L,", "dialysate,creatinine,240,353,µmol/L," },
        { "ratio-not-rising", "dialysate,creatinine,240", "dialysate,creatinine,240,353,µmol/L,", "dialysate,creatinine,240,402,µmol/L," },
        { "ratio-falling", "dialysate,urea,240", "dialysate,urea,240,13,mmol/L,", "dialysate,urea,240,13.4,mmol/L," },
        { "glucose-not-falling", "dialysate,glucose,240", "dialysate,glucose,240,90,mmol/L,", "dialysate,glucose,240,89,mmol/L," },
        // From 90 by 3 sqrt(2.7² + (0.03 x 102.2)²) = 12.3 to 102.3
        { "glucose-rising", "dialysate,glucose,240", "dialysate,glucose,240,103,mmol/L,", "dialysate,glucose,240,102,mmol/L," },
        // Plasma 6, spread 0.2: 3 x 0.2 below is 5.4
        { "glucose-below-plasma", "dialysate,glucose,240", "dialysate,glucose,240,5.3,mmol/L,", "dialysate,glucose,240,5.5,mmol/L," },
        { "sodium-not-falling", "dialysate,sodium,60", "dialysate,sodium,60,131,mmol/L,", "dialysate,sodium,60,130.9,mmol/L," },
        { "urea-or-urea-nitrogen", "plasma,urea", "plasma,urea,120,35,mg/dL,", "plasma,urea,120,37,mg/dL," },
        { "urea-or-urea-nitrogen", "plasma,urea", "plasma,urea nitrogen,120,141,mg/dL,", "plasma,urea nitrogen,120,140,mg/dL," },
        // Plasma urea 43 mmol/L against dialysate 18: D/P 0.42, the half of creatinine's 0.70, and 0.90 if one is nitrogen
        { "urea-or-urea-nitrogen", "plasma,urea", "plasma,urea,120,43,mmol/L,", "plasma,urea,120,23,mmol/L," },
        { "urea-or-urea-nitrogen", "dialysate,urea,240", "dialysate,urea,240,38.5,mmol/L,", "dialysate,urea,240,21,mmol/L," },

        // The form and what went before. The test is of 11 March 2025; four weeks before is 11 February.
        { "form-differs", "test,date", "test,test form,,1 h,,", "test,test form,,modified,," },
        { "early-test", "test,date", "test,date,,2025-03-11,,|test,start of dialysis,,2025-02-12,,", "test,date,,2025-03-11,,|test,start of dialysis,,2025-02-11,," },
        { "recent-peritonitis", "test,date", "test,date,,2025-03-11,,|test,last peritonitis,,2025-02-12,,", "test,date,,2025-03-11,,|test,last peritonitis,,2025-02-11,," },
        { "date-after-test", "test,date", "test,date,,2025-03-11,,|test,last peritonitis,,2025-03-12,,", "test,date,,2025-03-11,,|test,last peritonitis,,2025-03-11,," },
        { "preceding-dwell-short", "test,date", "test,preceding dwell,,179,min,", "test,preceding dwell,,180,min," },
        { "preceding-icodextrin", "test,date", "test,preceding agent,,icodextrin,,", "test,preceding agent,,glucose,," },
        { "instillation-slow", "test,date", "test,instillation time,,16,min,", "test,instillation time,,15,min," },
        { "weight-without-tare", "test,fill volume", "test,fill volume,,2.04,kg,", "test,fill volume,,2.10,kg,|test,fill tare,,60,g," },
        // 2040 mL in: 3741 would be 1701 of ultrafiltration in the first hour
        { "temporary-drain-implausible", "test,drained", "test,drained volume,,3740,mL,|test,drained volume at 60 min,,3741,mL,", "test,drained volume,,3740,mL,|test,drained volume at 60 min,,3740,mL," },
        { "initial-sodium-unexpected", "dialysate,sodium,0", "dialysate,sodium,0,139.1,mmol/L,", "dialysate,sodium,0,139,mmol/L," },
        // Enzymatic: 0.20 of 800 is 160
        { "initial-ratio-high", "dialysate,creatinine,0", "dialysate,creatinine,0,161,µmol/L,", "dialysate,creatinine,0,160,µmol/L," },
    };

    [Theory]
    [MemberData(nameof(Checks))]
    public void A_check_fires_beyond_its_limit_and_is_silent_just_within(string code, string replaced, string beyond, string within)
    {
        Assert.Contains(code, CodesOf(Spoiled(replaced, beyond)));
        Assert.DoesNotContain(code, CodesOf(Spoiled(replaced, within)));
    }

    [Fact]
    public void Nothing_about_urine_is_a_note_but_urine_without_clearance_is_a_warning()
    {
        var silent = With(With(With("patient,urine", ""), "patient,renal urea", ""), "patient,renal creatinine", "");
        Assert.Equal(["residual-function-not-given"], CodesOf(silent));
        Assert.Empty(CodesOf(With(silent, "patient,weight", "patient,weight,,65,kg,|patient,urine,,0,mL/day,")));
        Assert.Equal(
            ["residual-clearance-missing", "residual-clearance-missing"],
            CodesOf(With(silent, "patient,weight", "patient,weight,,65,kg,|patient,urine,,1,mL/day,")));
    }

    [Fact]
    public void Without_any_dialysate_creatinine_there_is_a_test_without_a_class()
    {
        var none = With(With(With("dialysate,creatinine,0", ""), "dialysate,creatinine,120", ""), "dialysate,creatinine,240", "");
        Assert.Contains("missing-dialysate-creatinine", CodesOf(none));
        Assert.Null(EquilibrationIndices.Of(Read(none).ToTest()).Classification);
        Assert.DoesNotContain("missing-dialysate-creatinine", CodesOf(With(none, "plasma,urea", "dialysate,creatinine,240,560,µmol/L,")));
    }

    // In a semicolon file neither the delimiter nor any other value says what 1.980 is.
    [Fact]
    public void A_number_that_nothing_settles_is_ambiguous()
    {
        var text = With("dialysate,glucose,120", "dialysate,glucose,120,1.980,mg/dL,")
            .Replace("214.3", "214").Replace("2.4,", "2,").Replace("15.0", "15").Replace("18.0", "18").Replace(',', ';');
        Assert.Contains("ambiguous-number", CodesOf(text));
        Assert.DoesNotContain("ambiguous-number", CodesOf(text.Replace("1.980", "1980")));
    }

    [Fact]
    public void A_thousand_rows_are_read_and_one_more_is_not()
    {
        var rows = Clean.Split('\n').Length - 2;
        string Long(int count) => Clean + string.Concat(Enumerable.Repeat("x,,,,,\n", count - rows));
        Assert.DoesNotContain("too-many-rows", CodesOf(Long(1000)));
        Assert.Contains("too-many-rows", CodesOf(Long(1001)));
    }

    // A child of 7 years, 122 cm, 23 kg has 0.88 m² (Du Bois): 2040 mL would be 2300 mL/m², 1000 mL are 1130.
    [Fact]
    public void A_childs_fill_is_judged_by_body_surface()
    {
        var child = With(With(With("patient,age", "patient,age,,7,years,"), "patient,height", "patient,height,,122,cm,"), "patient,weight", "patient,weight,,23,kg,");
        Assert.Contains("fill-not-comparable", CodesOf(child));
        Assert.DoesNotContain("fill-not-comparable", CodesOf(With(child, "test,fill volume", "test,fill volume,,1000,mL,")));
    }

    [Fact]
    public void Sodium_need_not_fall_in_a_weaker_solution()
    {
        var weaker = With(With(With("test,solution glucose", "test,solution glucose,,126,mmol/L,"), "dialysate,glucose,0", "dialysate,glucose,0,108,mmol/L,"), "dialysate,sodium,60", "dialysate,sodium,60,131,mmol/L,");
        Assert.Empty(CodesOf(weaker));
    }

    // An average patient's Jaffe values, with the laboratory's factor: raw D/P at 0 min is 0.163, corrected 0.056 (computed).
    [Fact]
    public void A_corrected_jaffe_sheet_is_not_blamed_for_its_glucose()
    {
        var text = With(With(With(With(
            With("test,creatinine method", Jaffe + "0.000531415,mg/dL per mg/dL,"),
            "dialysate,creatinine,0", "dialysate,creatinine,0,1.60,mg/dL,"),
            "dialysate,creatinine,120", "dialysate,creatinine,120,6.10,mg/dL,"),
            "dialysate,creatinine,240", "dialysate,creatinine,240,8.10,mg/dL,"),
            "plasma,creatinine", "plasma,creatinine,120,9.80,mg/dL,");
        text = With(With(With(With(
            With(text, "test,solution glucose", "test,solution glucose,,2270,mg/dL,"),
            "dialysate,glucose,0", "dialysate,glucose,0,1980,mg/dL,"),
            "dialysate,glucose,120", "dialysate,glucose,120,1120,mg/dL,"),
            "dialysate,glucose,240", "dialysate,glucose,240,760,mg/dL,"),
            "plasma,glucose", "plasma,glucose,120,110,mg/dL,");
        var sheet = Read(text);
        Assert.Empty(sheet.Findings);

        var test = sheet.ToTest();
        var last = test.CorrectedDialysateCreatinine(test.Dialysate[^1])!.Value / test.CorrectedPlasmaCreatinine!.Value;
        Assert.Equal(0.790031, last, 6); // 7.696125 / 9.741544 mg/dL, exact arithmetic
        Assert.Contains("initial-ratio-high", CodesOf(text.Replace("0.000531415", "0")));
    }

    [Fact]
    public void Every_kind_of_finding_is_listed_once_with_its_own_code()
    {
        var members = typeof(SampleSheetCodes).GetProperties().Where(member => member.PropertyType == typeof(SheetFindingKind))
            .Select(member => (SheetFindingKind)member.GetValue(null)!).ToList();
        Assert.Equal(members, SampleSheetCodes.All);
        Assert.Equal(members.Count, members.Select(kind => kind.Code).Distinct().Count());
        Assert.All(members, kind => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", kind.Code));
    }

    // A new code without a test that names it fails here.
    [Fact]
    public void Every_kind_of_finding_is_tested()
    {
        var tests = string.Concat(Directory.GetFiles(Repository("tests", "Transport.Tests", "SampleSheets"), "*.cs").Select(File.ReadAllText));
        Assert.Empty(SampleSheetCodes.All.Where(kind => !tests.Contains($"\"{kind.Code}\"")).Select(kind => kind.Code));
    }

    [Fact]
    public void The_documentation_lists_every_code_with_its_severity_and_no_other()
    {
        var page = File.ReadAllText(Repository("docs", "sample-sheet.md"));
        var listed = Regex.Matches(page, @"^\| `(?<code>[a-z0-9-]+)` \| (?<severity>error|warning|note) \| \S.*\| \S.* \|\r?$", RegexOptions.Multiline)
            .Select(match => $"{match.Groups["code"].Value} {match.Groups["severity"].Value}");
        Assert.Equal(SampleSheetCodes.All.Select(kind => $"{kind.Code} {kind.Severity.ToString().ToLowerInvariant()}"), listed);
    }

    [Fact]
    public void The_documentations_own_sheet_is_a_test()
    {
        var page = File.ReadAllText(Repository("docs", "sample-sheet.md"));
        var sheet = Read(Regex.Match(page, "```csv\r?\n(?<sheet>.*?)```", RegexOptions.Singleline).Groups["sheet"].Value);
        Assert.Equal(0.70, sheet.ToTest() is var test ? test.Dialysate[^1].Creatinine!.Value / test.CorrectedPlasmaCreatinine!.Value : 0, 2);
        Assert.DoesNotContain(sheet.Findings, finding => finding.Severity != Severity.Note);
    }

    [Fact]
    public void The_documentation_lists_every_word_that_a_sheet_may_use()
    {
        var page = File.ReadAllText(Repository("docs", "sample-sheet.md"));
        var words = SheetWords.Columns.SelectMany(column => column.Synonyms.Append(column.Name))
            .Concat(SheetWords.Fluids.Keys).Concat(SheetWords.FactSections).Concat(SheetWords.Analytes.Keys)
            .Concat(SheetWords.Facts.SelectMany(item => item.Synonyms.Append(item.Name).Concat(item.Choices?.Keys ?? [])));
        Assert.Empty(words.Where(word => !page.Contains(word, StringComparison.OrdinalIgnoreCase)).Distinct());
    }

    // '|' in the first column: further rows that are taken out, their replacements stand where the first was.
    private static string Spoiled(string replaced, string rows)
    {
        var beginnings = replaced.Split('|');
        return With(beginnings.Skip(1).Aggregate(Clean, (text, beginning) => With(text, beginning, "")), beginnings[0], rows);
    }
}
