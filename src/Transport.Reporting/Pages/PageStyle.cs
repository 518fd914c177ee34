using System.Net;

namespace Transport.Reporting;

/// <summary>The document around a page: A4, one hue and grey, no letter smaller than 8 points.</summary>
internal static class PageStyle
{
    // Enforced by the browser: a page of results asks for nothing from outside.
    private const string NoNetwork = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

    private const string Rules =
        "@page{size:A4;margin:9mm 11mm}*{box-sizing:border-box}" +
        "html{background:#fff;color:" + ChartColors.Ink + "}body{font:8.6pt/1.27 Arial,Helvetica,'Liberation Sans',sans-serif;margin:0 auto;max-width:188mm}" +
        "@media screen{body{padding:9mm 0}}" +
        "h1{font-size:14pt;line-height:1.1;margin:0;color:#0b4651}h2{font-size:9.2pt;margin:1.9mm 0 .5mm;padding-bottom:.3mm;border-bottom:.6pt solid #559ca8;color:#0b4651}" +
        "p,ul{margin:.5mm 0}ul{padding:0;list-style:none}li{padding-left:2.2mm;margin:.6mm 0}" +
        "li.error{border-left:2.4pt solid}li.warning{border-left:1.2pt solid}li.note{border-left:.7pt dotted}" +
        "small,.small{font-size:8pt;color:#4a565c}strong{font-weight:700}" +
        ".head{display:flex;justify-content:space-between;align-items:baseline;gap:6mm}.mark{border:1pt solid;padding:.4mm 2mm;font-weight:700;white-space:nowrap}" +
        ".who{display:grid;grid-template-columns:repeat(4,1fr);gap:.4mm 4mm;margin:1.2mm 0 0;padding:.9mm 0;border-top:.6pt solid #7a858b;border-bottom:.6pt solid #7a858b}" +
        ".who span{color:#4a565c;font-size:8pt;display:block;line-height:1.1}" +
        ".lead{display:grid;grid-template-columns:32mm 1fr;gap:.5mm 3mm;margin:1.4mm 0 0}.lead b{color:#0b4651}" +
        "table{border-collapse:collapse;font-variant-numeric:tabular-nums}th{font-weight:700;text-align:left;font-size:8pt}" +
        "td,th{padding:.25mm 3.2mm .25mm 0;vertical-align:baseline;border-bottom:.4pt solid #d3dadd}td.n,th.n{text-align:right;white-space:nowrap}" +
        "td:last-child,th:last-child{padding-right:0}td small{white-space:nowrap}" +
        ".two{display:grid;grid-template-columns:1fr 1fr;gap:0 6mm}.two table{width:100%}" +
        ".drawn{width:100%}.drawn td{vertical-align:middle}.drawn td:first-child{white-space:nowrap}.strip{padding:0 3mm 0 0;width:72mm}.strip svg{display:block;width:69mm;height:3.9mm}" +
        "body.tight{font-size:8pt;line-height:1.2}.tight h2{font-size:8.6pt;margin-top:1.1mm}.tight td,.tight th{padding-top:.1mm;padding-bottom:.1mm}.tight .strip svg{height:3.7mm}.tight li{margin:.3mm 0}" +
        "figure{margin:.8mm 0 0}figure svg{display:block;width:100%}figcaption{font-size:8pt;color:#4a565c}";

    public static string Document(string title, string body, bool isTight = false) =>
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n" +
        $"<meta http-equiv=\"Content-Security-Policy\" content=\"{NoNetwork}\">\n<title>{WebUtility.HtmlEncode(title)}</title>\n<style>{Rules}</style>\n</head>\n<body{(isTight ? " class=\"tight\"" : "")}>\n{body}</body>\n</html>\n";
}
