namespace Transport.Analysis;

/// <summary>A book beside what the fitted membrane lets expect of each night, and what a nurse may want to act on.</summary>
/// <remarks>An aid to talk about, no monitoring: that nothing is flagged does not mean that all is well. Local protocol rules.</remarks>
public sealed record RecordReview
{
    internal RecordReview()
    {
    }

    /// <summary>Whose book.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The book.</summary>
    public required RecordBook Book { get; init; }

    /// <summary>How it was reviewed.</summary>
    public required RecordReviewOptions Options { get; init; }

    /// <summary>Each night beside its expectation.</summary>
    public required IReadOnlyList<ReviewedNight> Nights { get; init; }

    /// <summary>Lasting changes that the charts signalled.</summary>
    public required IReadOnlyList<ChangeFound> Changes { get; init; }

    /// <summary>What to look at, the most urgent first. Findings of the book's cells are in <see cref="RecordBook.Findings"/>.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>How a single night's ultrafiltration differs from the next, standard deviation, the person's own blended in; null where no night was charted.</summary>
    public required Volume? NightDeviation { get; init; }

    /// <summary>What nobody wrote in the last days, so that nobody looked at it, in sentences.</summary>
    public string NotLookedAt => DangerSigns.NotLookedAt([.. Nights.Select(night => night.Record)], Book, Patient, Options.Limits);

    /// <summary>Reviews a book.</summary>
    /// <param name="patient">Whose, with the plasma of the test.</param>
    /// <param name="ensemble">The fitted membrane with its doubt, at the patient's size.</param>
    /// <param name="book">The nights.</param>
    /// <param name="options">Thresholds and how nights differ.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="ArgumentException">The book carries another patient's code.</exception>
    /// <exception cref="IntegrationException">A regimen of the book could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static RecordReview Run(
        Patient patient, MembraneEnsemble ensemble, RecordBook book, RecordReviewOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(book);
        if (book.PatientCode.Length > 0 && !RecordBook.IsSameCode(book.PatientCode, patient.Code))
        {
            throw new ArgumentException($"Expected a book of '{patient.Code}', as the test is; {book.FileName} is of '{book.PatientCode}'. Take the book and the sheet of one patient.", nameof(book));
        }

        return new ReviewRun(patient, ensemble, book, options ?? RecordReviewOptions.Default, control ?? RunControl.None).Go();
    }
}
