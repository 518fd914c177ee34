using System.CommandLine;
using Transport.Studies;

var names = new Argument<string[]>("studies") { Description = "Which studies; all of them where none is named.", Arity = ArgumentArity.ZeroOrMore };
var directory = new Option<DirectoryInfo>("--out")
{
    Description = "Where tables and pages are written.",
    DefaultValueFactory = _ => new(Path.Combine("docs", "studies")),
};
var command = new RootCommand("Makes the long studies again, whose tables are committed in docs/studies.") { names, directory };
names.AcceptOnlyFromAmong([.. Study.All.Select(study => study.Name)]);
command.SetAction(arguments =>
{
    var wanted = arguments.GetValue(names) is { Length: > 0 } some ? some : [.. Study.All.Select(study => study.Name)];
    foreach (var study in Study.All.Where(study => wanted.Contains(study.Name)))
    {
        study.Write(arguments.GetValue(directory)!.FullName, done =>
        {
            if (done % 100 == 0)
            {
                Console.WriteLine($"{study.Name}: {done} of {study.Count}");
            }
        });
    }
});
var programme = new Command("programme", "Writes the invented programme of reference-data/examples/programme again.");
programme.SetAction(_ => VirtualProgramme.Write(Path.Combine("reference-data", "examples", "programme")));
command.Add(programme);
var speed = new Command("review-speed", "Times the review of a year of nights of a thousand people.");
speed.SetAction(_ => Console.WriteLine(ReviewSpeed.Run()));
command.Add(speed);
return command.Parse(args).Invoke();
